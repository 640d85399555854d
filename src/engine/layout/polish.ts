import type { Clash } from "./contrast.ts";
import type { Random } from "./random.ts";
import type { Face, Stock } from "./stock.ts";
import type { Leaf, Sawmill, Twig } from "./twig.ts";
import { twigsFor } from "./twig.ts";

/**
 * Arranges what has been found without changing what is used: parts of a join change places, parts are mirrored,
 * pieces of one size are exchanged. Like fabrics come apart, and seams that would nearly meet across a join move on.
 */
export function polish(
  twigs: readonly Twig[],
  { stock, clash, rooms, random, tries }: Polishing,
): readonly Twig[] {
  if (tries === 0) return twigs;
  const bench = new Bench(twigs, { clash, rooms, inch: stock.stepsPerInch });
  for (let look = 0; look < tries; look++) bench.change(random);
  const mill = twigsFor(stock);
  return bench.roots.map((knot) => twigOf(knot, mill));
}

export type Polishing = {
  readonly stock: Stock;
  readonly clash: Clash;
  readonly rooms: readonly Room[];
  readonly random: Random;
  readonly tries: number;
};

/** What lies round a twig: the cloth its gaps take, and the top's outline from its own corner, in steps. */
export type Room = { readonly cloth: string; readonly outline: Outline | null };

export type Outline = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

/** A twig that can be rearranged: a leaf's face may change, a fork's parts may change places. */
type Knot = {
  face: Face | null;
  fabric: string;
  readonly beside: boolean;
  readonly parts: Knot[];
  readonly width: number;
  readonly height: number;
  x: number;
  y: number;
  readonly parent: Knot | null;
  /** Number of the space it is in. */
  readonly root: number;
};

type Settings = { readonly clash: Clash; readonly rooms: readonly Room[]; readonly inch: number };

class Bench {
  readonly roots: readonly Knot[];
  private readonly forks: readonly Knot[];
  private readonly alike: readonly (readonly Knot[])[];
  private readonly settings: Settings;

  constructor(twigs: readonly Twig[], settings: Settings) {
    this.settings = settings;
    this.roots = twigs.map((twig, root) => {
      const knot = knotOf(twig, { cloth: settings.rooms[root]?.cloth ?? "", parent: null, root });
      place(knot, 0, 0);
      return knot;
    });
    const all = this.roots.flatMap(within);
    this.forks = all.filter(({ parts }) => parts.length > 1);
    this.alike = sameSize(all.filter(({ face }) => face !== null));
  }

  /** One try: kept if it is no worse. */
  change(random: Random): void {
    if (this.alike.length > 0 && random.chance(0.4)) this.exchange(random);
    else if (this.forks.length > 0) this.rearrange(random);
  }

  private exchange(random: Random): void {
    const group = this.alike[random.below(this.alike.length)] as readonly Knot[];
    const one = group[random.below(group.length)] as Knot;
    const other = group[random.below(group.length)] as Knot;
    if (one.fabric === other.fabric) return;
    const before = this.costOfTwo(one, other);
    swapFaces(one, other);
    if (this.costOfTwo(one, other) > before) swapFaces(one, other);
  }

  private rearrange(random: Random): void {
    const fork = this.forks[random.below(this.forks.length)] as Knot;
    const { parts, x, y } = fork;
    const order = [...parts];
    const before = this.costOfOrder(fork);
    if (random.chance(0.5)) parts.reverse();
    else moveOne(parts, random.below(parts.length), random.below(parts.length));
    place(fork, x, y);
    if (this.costOfOrder(fork) <= before) return;
    parts.splice(0, parts.length, ...order);
    place(fork, x, y);
  }

  /** All that depends on which of two leaves lies where; seams stay where they are. */
  private costOfTwo(one: Knot, other: Knot): number {
    const cut = this.cutAwayIn(one) + this.cutAwayIn(other);
    const round = this.clashesOf(one, emptyHanded) + this.clashesOf(other, new Set([one]));
    return cut + round / this.settings.inch;
  }

  /**
   * All that depends on the order of a fork's parts: what is cut away of them, near misses at and above it, edges
   * between them and round all of them. Within a part nothing changes.
   */
  private costOfOrder(fork: Knot): number {
    const { inch, rooms, clash } = this.settings;
    const outline = rooms[fork.root]?.outline ?? null;
    let cost = outline === null ? 0 : this.cutAwayIn(fork);
    for (let at: Knot | null = fork; at !== null; at = at.parent) cost += missesIn(at, inch) * 4;
    let edges = clashesBetweenParts(fork, clash);
    if (fork.parent !== null) {
      const itself = new Set([fork]);
      for (const leaf of rimOf(fork)) edges += this.clashesOf(leaf, itself);
    }
    return cost + edges / inch;
  }

  private cutAwayIn(knot: Knot): number {
    const outline = this.settings.rooms[knot.root]?.outline ?? null;
    if (outline === null) return 0;
    if (knot.parts.length === 0) return cutAway(knot, outline, this.settings.inch);
    return knot.parts.reduce((sum, part) => sum + this.cutAwayIn(part), 0);
  }

  private clashesOf(leaf: Knot, passed: ReadonlySet<Knot>): number {
    return clashRound(leaf, this.roots[leaf.root] as Knot, { passed, clash: this.settings.clash });
  }
}

const emptyHanded: ReadonlySet<Knot> = new Set();

type Looking = { readonly passed: ReadonlySet<Knot>; readonly clash: Clash };

/** Clashes of a leaf with all that touch it but what is `passed` over; so are whole branches that lie elsewhere. */
function clashRound(one: Knot, other: Knot, looking: Looking): number {
  const shared = sharedEdge(one, other);
  if (shared < 0 || looking.passed.has(other)) return 0;
  if (other.parts.length > 0) {
    let cost = 0;
    for (const part of other.parts) cost += clashRound(one, part, looking);
    return cost;
  }
  if (shared === 0 || one === other) return 0;
  return looking.clash(one.fabric, other.fabric) * shared;
}

/** Clashes along the seams between a fork's parts. */
function clashesBetweenParts({ parts, beside }: Knot, clash: Clash): number {
  let cost = 0;
  for (let at = 0; at + 1 < parts.length; at++) {
    const before = leavesAlong(parts[at] as Knot, { beside, far: true }, []);
    const after = leavesAlong(parts[at + 1] as Knot, { beside, far: false }, []);
    cost += clashesAlong(before, after, { beside, clash });
  }
  return cost;
}

/** Two rows of leaves that face each other along a seam; both are in order and equally long. */
function clashesAlong(
  before: readonly Knot[],
  after: readonly Knot[],
  { beside, clash }: { readonly beside: boolean; readonly clash: Clash },
): number {
  const end = (leaf: Knot) => (beside ? leaf.y + leaf.height : leaf.x + leaf.width);
  const [first] = before;
  if (first === undefined) return 0;
  let cost = 0;
  let from = beside ? first.y : first.x;
  for (let one = 0, other = 0; one < before.length && other < after.length; ) {
    const [a, b] = [before[one] as Knot, after[other] as Knot];
    const to = Math.min(end(a), end(b));
    cost += clash(a.fabric, b.fabric) * (to - from);
    from = to;
    if (end(a) === to) one++;
    if (end(b) === to) other++;
  }
  return cost;
}

type Side = { readonly beside: boolean; readonly far: boolean };

/** The leaves along one side, in order; `beside`: along its right or left. */
function leavesAlong(knot: Knot, side: Side, found: Knot[]): Knot[] {
  const { parts } = knot;
  if (parts.length === 0) found.push(knot);
  else if (knot.beside === side.beside)
    leavesAlong(parts[side.far ? parts.length - 1 : 0] as Knot, side, found);
  else for (const part of parts) leavesAlong(part, side, found);
  return found;
}

function rimOf(knot: Knot): Set<Knot> {
  const found: Knot[] = [];
  for (const beside of [true, false])
    for (const far of [true, false]) leavesAlong(knot, { beside, far }, found);
  return new Set(found);
}

/** What is cut away of small pieces, blocks and those marked to be used first should be something else. */
function cutAway({ face, x, y, width, height }: Knot, outline: Outline, inch: number): number {
  if (face === null) return 0;
  const across = Math.min(x + width, outline.right) - Math.max(x, outline.left);
  const down = Math.min(y + height, outline.bottom) - Math.max(y, outline.top);
  const lost = 1 - (Math.max(0, across) * Math.max(0, down)) / (width * height);
  return lost <= 0 ? 0 : lost * dearness(face, Math.min(width, height) / inch);
}

function dearness({ lot: { piece } }: Face, narrowest: number): number {
  if (piece.use === "edge") return -4;
  if (piece.use === "first" || piece.use === "must") return 12;
  switch (piece.kind) {
    case "block":
    case "part-block":
    case "half-square-triangle":
    case "triangle":
      return 12;
    case "strip":
    case "square":
    case "rectangle":
    case "length":
    case "odd":
      return narrowest < 4 ? 6 : 2;
  }
}

type Rooted = { readonly cloth: string; readonly parent: Knot | null; readonly root: number };

function knotOf(twig: Twig, { cloth, parent, root }: Rooted): Knot {
  const place = { width: twig.width, height: twig.height, x: 0, y: 0, parent, root };
  if (twig.kind === "leaf") {
    return { ...place, face: twig.face, fabric: fabricOf(twig, cloth), beside: false, parts: [] };
  }
  const knot: Knot = { ...place, face: null, fabric: "", beside: twig.beside, parts: [] };
  for (const part of twig.parts) knot.parts.push(knotOf(part, { cloth, parent: knot, root }));
  return knot;
}

function fabricOf(leaf: Leaf, cloth: string): string {
  return leaf.face === null ? cloth : leaf.face.lot.piece.fabric;
}

function twigOf(knot: Knot, mill: Sawmill): Twig {
  if (knot.parts.length > 0) {
    return mill.join(
      knot.beside,
      knot.parts.map((part) => twigOf(part, mill)),
    );
  }
  return knot.face === null
    ? mill.cloth(knot.width, knot.height)
    : mill.leaf(knot.face, knot.width, knot.height);
}

function within(knot: Knot): Knot[] {
  return [knot, ...knot.parts.flatMap(within)];
}

function sameSize(leaves: readonly Knot[]): Knot[][] {
  const groups = new Map<string, Knot[]>();
  for (const leaf of leaves) {
    const key = `${leaf.width} ${leaf.height}`;
    groups.set(key, [...(groups.get(key) ?? []), leaf]);
  }
  return [...groups.values()].filter((group) => new Set(group.map(({ fabric }) => fabric)).size > 1);
}

function swapFaces(one: Knot, other: Knot): void {
  [one.face, other.face] = [other.face, one.face];
  [one.fabric, other.fabric] = [other.fabric, one.fabric];
}

function moveOne(parts: Knot[], from: number, to: number): void {
  const [part] = parts.splice(from, 1);
  if (part !== undefined) parts.splice(to, 0, part);
}

function place(knot: Knot, x: number, y: number): void {
  knot.x = x;
  knot.y = y;
  let along = 0;
  for (const part of knot.parts) {
    if (knot.beside) place(part, x + along, y);
    else place(part, x, y + along);
    along += knot.beside ? part.width : part.height;
  }
}

/** How long the edge is that two share: 0 where they meet at a corner or one lies in the other, less where they are apart. */
function sharedEdge(one: Knot, other: Knot): number {
  const across = Math.min(one.x + one.width, other.x + other.width) - Math.max(one.x, other.x);
  const down = Math.min(one.y + one.height, other.y + other.height) - Math.max(one.y, other.y);
  if (across < 0 || down < 0) return -1;
  if (across === 0) return down;
  return down === 0 ? across : 0;
}

/** Places where seams on the two sides of one of its own joins come within an inch of each other and don't meet. */
function missesIn(knot: Knot, inch: number): number {
  let count = 0;
  for (let at = 0; at + 1 < knot.parts.length; at++) {
    const one: number[] = [];
    const other: number[] = [];
    endings(knot.parts[at] as Knot, knot.beside, true, one);
    endings(knot.parts[at + 1] as Knot, knot.beside, false, other);
    count += missesBetween(one, other, inch);
  }
  return count;
}

function missesBetween(one: readonly number[], other: readonly number[], inch: number): number {
  let count = 0;
  for (const a of one) for (const b of other) if (a !== b && Math.abs(a - b) < inch) count++;
  return count;
}

/** Where seams of a part run out at its far or near side; `beside`: at its right or left. */
function endings(knot: Knot, beside: boolean, far: boolean, found: number[]): void {
  const { parts } = knot;
  if (parts.length === 0) return;
  if (knot.beside === beside) {
    endings(parts[far ? parts.length - 1 : 0] as Knot, beside, far, found);
    return;
  }
  parts.forEach((part, at) => {
    if (at > 0) found.push(beside ? part.y : part.x);
    endings(part, beside, far, found);
  });
}
