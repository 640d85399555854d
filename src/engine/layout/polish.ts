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
};

type Settings = { readonly clash: Clash; readonly rooms: readonly Room[]; readonly inch: number };

class Bench {
  readonly roots: readonly Knot[];
  private readonly costs: number[];
  private readonly forks: readonly { readonly knot: Knot; readonly root: number }[];
  private readonly alike: readonly (readonly { readonly knot: Knot; readonly root: number }[])[];
  private readonly settings: Settings;

  constructor(twigs: readonly Twig[], settings: Settings) {
    this.settings = settings;
    this.roots = twigs.map((twig, at) => knotOf(twig, settings.rooms[at]?.cloth ?? ""));
    this.costs = this.roots.map((_, at) => this.costOf(at));
    const all = this.roots.flatMap((knot, root) => within(knot).map((inner) => ({ knot: inner, root })));
    this.forks = all.filter(({ knot }) => knot.parts.length > 1);
    this.alike = sameSize(all.filter(({ knot }) => knot.face !== null));
  }

  /** One try: kept if it is no worse. */
  change(random: Random): void {
    if (this.alike.length > 0 && random.chance(0.4)) this.exchange(random);
    else if (this.forks.length > 0) this.rearrange(random);
  }

  private exchange(random: Random): void {
    const group = this.alike[random.below(this.alike.length)];
    const one = group?.[random.below(group.length)];
    const other = group?.[random.below(group.length)];
    if (one === undefined || other === undefined || one.knot.fabric === other.knot.fabric) return;
    swapFaces(one.knot, other.knot);
    if (!this.keeps([one.root, other.root])) swapFaces(one.knot, other.knot);
  }

  private rearrange(random: Random): void {
    const fork = this.forks[random.below(this.forks.length)];
    if (fork === undefined) return;
    const { parts } = fork.knot;
    const before = [...parts];
    if (random.chance(0.5)) parts.reverse();
    else moveOne(parts, random.below(parts.length), random.below(parts.length));
    if (!this.keeps([fork.root])) parts.splice(0, parts.length, ...before);
  }

  private keeps(roots: readonly number[]): boolean {
    const changed = [...new Set(roots)];
    const costs = changed.map((root) => this.costOf(root));
    const before = changed.reduce((sum, root) => sum + (this.costs[root] as number), 0);
    if (costs.reduce((sum, cost) => sum + cost, 0) > before) return false;
    changed.forEach((root, at) => {
      this.costs[root] = costs[at] as number;
    });
    return true;
  }

  private costOf(at: number): number {
    const root = this.roots[at] as Knot;
    const leaves: Knot[] = [];
    place(root, 0, 0, leaves);
    const { inch, rooms } = this.settings;
    const outline = rooms[at]?.outline ?? null;
    const lost = outline === null ? 0 : leaves.reduce((sum, leaf) => sum + cutAway(leaf, outline, inch), 0);
    return this.clashes(leaves) + nearMisses(root, inch) * 4 + lost;
  }

  private clashes(leaves: readonly Knot[]): number {
    let cost = 0;
    for (let at = 0; at < leaves.length; at++) {
      const one = leaves[at] as Knot;
      for (let next = at + 1; next < leaves.length; next++) {
        const other = leaves[next] as Knot;
        const shared = sharedEdge(one, other);
        if (shared > 0) cost += this.settings.clash(one.fabric, other.fabric) * shared;
      }
    }
    return cost / this.settings.inch;
  }
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

function knotOf(twig: Twig, cloth: string): Knot {
  const size = { width: twig.width, height: twig.height, x: 0, y: 0 };
  if (twig.kind === "fork") {
    const parts = twig.parts.map((part) => knotOf(part, cloth));
    return { ...size, face: null, fabric: "", beside: twig.beside, parts };
  }
  return { ...size, face: twig.face, fabric: fabricOf(twig, cloth), beside: false, parts: [] };
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

function sameSize<T extends { readonly knot: Knot }>(leaves: readonly T[]): T[][] {
  const groups = new Map<string, T[]>();
  for (const leaf of leaves) {
    const key = `${leaf.knot.width} ${leaf.knot.height}`;
    groups.set(key, [...(groups.get(key) ?? []), leaf]);
  }
  return [...groups.values()].filter((group) => new Set(group.map(({ knot }) => knot.fabric)).size > 1);
}

function swapFaces(one: Knot, other: Knot): void {
  [one.face, other.face] = [other.face, one.face];
  [one.fabric, other.fabric] = [other.fabric, one.fabric];
}

function moveOne(parts: Knot[], from: number, to: number): void {
  const [part] = parts.splice(from, 1);
  if (part !== undefined) parts.splice(to, 0, part);
}

function place(knot: Knot, x: number, y: number, leaves: Knot[]): void {
  knot.x = x;
  knot.y = y;
  if (knot.parts.length === 0) leaves.push(knot);
  let along = 0;
  for (const part of knot.parts) {
    if (knot.beside) place(part, x + along, y, leaves);
    else place(part, x, y + along, leaves);
    along += knot.beside ? part.width : part.height;
  }
}

function sharedEdge(one: Knot, other: Knot): number {
  const across = Math.min(one.x + one.width, other.x + other.width) - Math.max(one.x, other.x);
  if (across < 0) return 0;
  const down = Math.min(one.y + one.height, other.y + other.height) - Math.max(one.y, other.y);
  if (across === 0) return down;
  return down === 0 ? across : 0;
}

/** Places where seams on the two sides of a join come within an inch of each other and don't meet. */
function nearMisses(knot: Knot, inch: number): number {
  let count = 0;
  for (let at = 0; at < knot.parts.length; at++) {
    const part = knot.parts[at] as Knot;
    count += nearMisses(part, inch);
    const next = knot.parts[at + 1];
    if (next === undefined) continue;
    const one: number[] = [];
    const other: number[] = [];
    endings(part, knot.beside, true, one);
    endings(next, knot.beside, false, other);
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
