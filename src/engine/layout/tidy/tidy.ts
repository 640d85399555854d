import type { Job } from "../../cloth/index.ts";
import { joinsFor } from "../../work/index.ts";
import type { LayoutNode, LeafNode } from "../types.ts";
import { mapLeaves } from "../walk.ts";
import { type Bough, boughFrom, layoutFrom, partAt, type Rect, type Way } from "./bough.ts";
import { eyeOf, isHalf, limitsOf } from "./eye.ts";
import { type Eye, type Fault, inch } from "./fault.ts";
import { givingWay } from "./giveWay.ts";
import { type Glance, Known } from "./glance.ts";
import { joinsIn } from "./joins.ts";
import { likesIn } from "./likes.ts";
import { type Mending, plainer, plainerBeside, plainerByTwo, rearranged } from "./moves.ts";
import { Boldly, mattering, partedBoldly } from "./partBoldly.ts";
import { coloursParted } from "./partColours.ts";
import { gapsIn, type Refilling, refilled, refillingOf } from "./refill.ts";
import { Sameness } from "./sameness.ts";
import { Viewer } from "./scene.ts";
import { smallestTaken } from "./smallestTaken.ts";
import { spaced } from "./spaced.ts";

export type Tidying = {
  readonly job: Job;
  /** The composition's pieced regions where they lie, and the cloth that closes their gaps. */
  readonly spots: readonly (Rect & { readonly cloth: string })[];
  /** Of those, the two that lie above and under a row across. */
  readonly halves: readonly [number, number] | null;
  /** Of all the back, so that some seams may nearly meet. */
  readonly mayMiss: boolean;
  /** What stays as and where it is. */
  readonly stays: readonly Rect[];
  /** How many layouts may be looked at. */
  readonly tries: number;
};

/**
 * The last look over a layout, as a quilter takes it before she cuts: what she would say no to is laid otherwise and,
 * where nothing else helps, made plain. The layout stays whole and takes no more time than she has.
 */
export function tidied(layout: LayoutNode, tidying: Tidying): Tidied {
  const table = new Table(layout, tidying);
  table.mend(rearranged);
  // With the back's size alone there is no top that something could spoil: the rules are costs, no refusals.
  if (tidying.job.top !== null) {
    table.mend(plainer);
    table.mend(rearranged);
    table.mend(plainer);
    table.refill();
    table.insist();
  }
  table.partAlike();
  const tidy = withCopiesNamed(layoutFrom(table.root, tidying.job));
  return {
    // What stays keeps its own piece, even where a smaller one would serve.
    layout: tidying.stays.length > 0 ? tidy : smallestFitted(tidy, tidying),
    ...table.outcome,
  };
}

/**
 * Pieces change places once more, now that it is known which cloth is bought: what touched its like need not touch it
 * any more, and the other way round.
 */
export function recoloured(layout: LayoutNode, tidying: Tidying): LayoutNode {
  const table = new Table(layout, tidying);
  table.partAlike();
  return table.isChanged ? withCopiesNamed(layoutFrom(table.root, tidying.job)) : layout;
}

/** What came of the last look. */
export type Tidied = {
  readonly layout: LayoutNode;
  /** Of her leftovers that much shows, in square inches. */
  readonly used: number;
  /** Of what showed before, 0 to 1. */
  readonly kept: number;
  /** How much is still wrong with it, but for what may be. */
  readonly wrong: number;
  /** It was looked at as long as something could be mended, not only as long as there was time. */
  readonly hasEnded: boolean;
};

/** A smaller piece that has taken the place of a big one is trimmed no more than it must be. */
function smallestFitted(layout: LayoutNode, tidying: Tidying): LayoutNode {
  const { job } = tidying;
  const smallest = smallestTaken(layout, job);
  const table = new Table(smallest, tidying);
  table.mend(rearranged, ({ kind }) => kind === "silly cut");
  return table.isChanged ? withCopiesNamed(layoutFrom(table.root, job)) : smallest;
}

type Ways = (fault: Fault, mending: Mending) => Generator<Bough>;

/** As much as that many square inches of her leftovers. */
const usual = 250;
const insisting = 10_000;
/** Of layouts that are worse at first so many are tried. */
const mostWorse = 6;

type Looked = {
  readonly known: Known;
  /** What it costs without its faults. */
  readonly base: number;
  readonly cost: number;
};

type Trying = {
  readonly ways: Ways;
  readonly tried: () => Tried;
  /** Null: it is no better than what is best so far. */
  readonly look: (root: Bough) => Looked | null;
  readonly isEnough: (before: Looked) => boolean;
};

/** Beside the layout that is best so far. */
type Tried = { readonly layouts: Set<number>; readonly begun: Set<string> };

function nothingTried(): Tried {
  return { layouts: new Set(), begun: new Set() };
}

class Table {
  private looked: Looked;
  private readonly begun: Looked;
  private left: number;
  private insists = false;
  private readonly sameness = new Sameness();
  private triedForFaults = nothingTried();
  private triedForLikes = nothingTried();
  private readonly eye: Eye;
  private readonly viewer: Viewer;
  private readonly mostJoins: number;
  private readonly mayMiss: boolean;
  private readonly mending: Omit<Mending, "root" | "begun">;

  constructor(layout: LayoutNode, { job, spots, halves, mayMiss, stays, tries }: Tidying) {
    this.mayMiss = mayMiss;
    this.eye = eyeOf(layout, job, halves);
    this.viewer = new Viewer((node) => isHalf(node, this.eye));
    this.left = tries;
    const root = boughFrom(layout, { spots, stays }, job);
    this.mending = {
      cloths: spots.map(({ cloth }) => cloth),
      isHalf: (leaf) => isHalf(leaf.node, this.eye),
      limits: limitsOf(this.eye),
    };
    this.mostJoins = Math.max(joinsFor(job), joinsIn(root));
    this.looked = this.lookWhole(root);
    this.begun = this.looked;
  }

  get root(): Bough {
    return this.looked.known.root;
  }

  get outcome(): Omit<Tidied, "layout"> {
    const { known } = this.looked;
    const { used } = known;
    const before = this.begun.known.used;
    return {
      used,
      kept: before > 0 ? Math.min(1, used / before) : 1,
      wrong: mattering(known, this.mayMiss),
      hasEnded: this.left > 0,
    };
  }

  get isChanged(): boolean {
    return this.looked !== this.begun;
  }

  /** Goes through what is wrong, again and again until nothing can be mended this way. */
  mend(ways: Ways, isAsked: (fault: Fault) => boolean = () => true): void {
    this.rounds(() => this.looked.known.faults.filter(isAsked), {
      ways,
      tried: () => this.triedForFaults,
      look: (root) => this.look(root, this.looked.cost - 1e-6),
      isEnough: (before) => this.looked.cost <= before.cost - (this.insists ? insisting / 2 - usual : usual),
    });
  }

  partAlike(): void {
    this.partLikes();
    this.partColours();
    if (this.eye.job.top !== null && this.partBoldly()) this.partColours();
  }

  /** Like fabrics come apart wherever nothing else becomes worse by it. */
  private partLikes(): void {
    this.rounds(() => likesIn(this.looked.known.scene, this.eye), {
      ways: rearranged,
      tried: () => this.triedForLikes,
      look: (root) => this.lookAtLikes(root),
      isEnough: (before) => this.looked !== before,
    });
  }

  /** Where like still touches like. Has anything changed? */
  private partBoldly(): boolean {
    const { eye, viewer, mending, mostJoins, sameness, mayMiss, looked } = this;
    const boldness = { eye, viewer, mending, mostJoins, sameness, mayMiss, boldly: new Boldly() };
    for (;;) {
      const root = partedBoldly(this.looked.known, boldness);
      if (root === null) return this.looked !== looked;
      this.lookOn(this.lookWhole(root));
    }
  }

  /** Pieces change places, cells don't: how fabrics meet, and how they are spread. */
  private partColours(): void {
    const { known } = this.looked;
    const most = known.faults.length;
    const { eye } = this;
    const { limits } = this.mending;
    const isSound = (root: Bough) => known.glanceAt(root).faults(most) !== null;
    const root = coloursParted(known.scene, { eye, limits, isSound });
    if (root !== this.root) this.lookOn(this.lookWhole(root));
  }

  /** What is still wrong goes, whatever it costs of her leftovers. */
  insist(): void {
    if (this.looked.known.faults.length === 0) return;
    this.insists = true;
    this.lookOn(this.lookWhole(this.root));
    for (const ways of [rearranged, spaced, givingWay, plainer, plainerByTwo, plainerBeside, rearranged])
      this.mend(ways);
    while (this.mendByWorse()) this.mend(rearranged);
    this.refill();
  }

  /**
   * Plain cloth in one place may spoil another first: what was a row's end is then a lonely bit beside it. And so may
   * what is laid otherwise.
   */
  private mendByWorse(): boolean {
    if (this.left <= 0) return false;
    const before = this.looked;
    const plain = this.others([plainer, plainerByTwo, plainerBeside]).slice(0, mostWorse);
    const worse = [...plain, ...this.others([rearranged]).slice(0, mostWorse)];
    return worse.some((looked) => {
      if (this.left <= 0) return false;
      this.lookOn(looked);
      for (const ways of [plainer, rearranged, plainerByTwo]) this.mend(ways);
      if (this.looked.cost < before.cost - insisting / 2) return true;
      this.lookOn(before);
      return false;
    });
  }

  /** All layouts in which what is still wrong is changed in these ways, the best first. */
  private others(all: readonly Ways[]): Looked[] {
    const mending = { ...this.mending, root: this.root, begun: new Set<string>() };
    return this.looked.known.faults
      .flatMap((fault) => all.flatMap((ways) => [...ways(fault, mending)]))
      .filter((root) => joinsIn(root) <= this.mostJoins)
      .map((root) => this.lookWhole(root))
      .sort((one, other) => one.cost - other.cost);
  }

  /** What was made plain is pieced otherwise, as far as nothing is wrong with it then. */
  refill(): void {
    const tried = new WeakSet<Bough>();
    for (let filled = true; filled && this.left > 0; ) filled = this.refillOne(tried);
  }

  /** A gap that nothing fitted stays: later even less lies unused. */
  private refillOne(tried: WeakSet<Bough>): boolean {
    const { job } = this.eye;
    const { limits } = this.mending;
    const joins = this.mostJoins - joinsIn(this.root);
    if (joins < 0) return false;
    const refilling = refillingOf(this.root, { job, limits, joins });
    return gapsIn(this.root, limits).some((way) => {
      const gap = partAt(this.root, way);
      if (gap === undefined || tried.has(gap)) return false;
      tried.add(gap);
      return this.refillGap(way, refilling);
    });
  }

  private refillGap(gap: Way, refilling: Refilling): boolean {
    const now = this.looked;
    for (const other of refilled(gap, refilling)) {
      if (this.left <= 0) break;
      if (joinsIn(other) > this.mostJoins) continue;
      const better = this.lookAtFilling(other, now.known);
      if (better !== null) this.lookOn(better);
    }
    return this.looked !== now;
  }

  private rounds(faults: () => readonly Fault[], trying: Trying): void {
    for (let mended = true; mended && this.left > 0; ) {
      mended = false;
      let all = faults();
      for (let at = 0; at < all.length && this.left > 0; ) {
        const fault = all[at];
        if (fault === undefined || !this.better(fault, trying)) at++;
        else [all, mended] = [faults(), true];
      }
    }
  }

  /** The first that is enough, else the best of them. */
  private better(fault: Fault, { ways, tried, look, isEnough }: Trying): boolean {
    const now = this.looked;
    for (const other of ways(fault, { ...this.mending, root: this.root, begun: tried().begun })) {
      if (this.left <= 0) break;
      if (this.wasTried(other, tried()) || joinsIn(other) > this.mostJoins) continue;
      const better = look(other);
      if (better !== null) this.lookOn(better);
      if (isEnough(now)) break;
    }
    return this.looked !== now;
  }

  private wasTried(root: Bough, { layouts }: Tried): boolean {
    const number = this.sameness.of(root);
    if (layouts.has(number)) return true;
    layouts.add(number);
    return false;
  }

  /** What was no better than the last may be better than this. */
  private lookOn(looked: Looked): void {
    this.looked = looked;
    this.triedForFaults = nothingTried();
    this.triedForLikes = nothingTried();
  }

  private lookWhole(root: Bough): Looked {
    const known = new Known(root, this.eye, this.viewer);
    const base = baseOf(known);
    const cost = known.faults.reduce((sum, fault) => sum + this.costOf(fault), base);
    return { known, base, cost };
  }

  private costOf(fault: Fault): number {
    if (!this.insists) return usual;
    // What is made plain often leaves a trim beside it without a reason, and that is soon mended.
    return fault.kind === "silly cut" ? insisting / 2 : insisting;
  }

  /** Null: it costs as much as that or more. */
  private look(root: Bough, bound: number): Looked | null {
    this.left--;
    return this.judged(root, this.looked.known.glanceAt(root), bound);
  }

  /** Most exchanges part no likes; that is quickly seen. */
  private lookAtLikes(root: Bough): Looked | null {
    this.left -= 0.25;
    const glance = this.looked.known.glanceAt(root);
    if (baseOf(glance) >= this.looked.base - 1e-6) return null;
    this.left--;
    return this.judged(root, glance, this.looked.cost - 1e-6);
  }

  /** Null too: more is wrong than before, or more like touches like. */
  private lookAtFilling(root: Bough, before: Known): Looked | null {
    this.left--;
    const glance = this.looked.known.glanceAt(root);
    if (glance.like > before.like || glance.faults(before.faults.length) === null) return null;
    return this.judged(root, glance, this.looked.cost - 1e-6);
  }

  private judged(root: Bough, glance: Glance, bound: number): Looked | null {
    const most = Math.ceil((bound - baseOf(glance)) / usual) - 1;
    if (glance.faults(most) === null) return null;
    const looked = this.lookWhole(root);
    return looked.cost < bound ? looked : null;
  }
}

function baseOf({ like, used }: Pick<Glance, "like" | "used">): number {
  return like / inch - used;
}

/** Which of several equal strips a cell comes from is said only where it gives more than one. */
function withCopiesNamed(layout: LayoutNode): LayoutNode {
  const counts = new Map<string, number>();
  const keyOf = (node: LeafNode) =>
    node.kind === "piece" && node.copy !== undefined ? `${node.piece} ${node.copy}` : null;
  mapLeaves(layout, (leaf) => {
    const key = keyOf(leaf);
    if (key !== null) counts.set(key, (counts.get(key) ?? 0) + 1);
    return leaf;
  });
  return mapLeaves(layout, (leaf) => {
    const key = keyOf(leaf);
    if (leaf.kind !== "piece" || key === null || counts.get(key) !== 1) return leaf;
    const { copy: _, ...alone } = leaf;
    return alone;
  });
}
