import { Candidates } from "./candidates.ts";
import { Cooling } from "./cooling.ts";
import { endToEnd } from "./endToEnd.ts";
import { exponential } from "./exponential.ts";
import { withFill } from "./fill.ts";
import type { Filling } from "./filling.ts";
import { liesOf } from "./lies.ts";
import { type Pool, poolOf } from "./pool.ts";
import { type Random, randomFrom } from "./random.ts";
import type { Face, Lot, Stock } from "./stock.ts";
import { force } from "./strategies/force.ts";
import { type Fork, type Leaf, type Sawmill, type Twig, twigsFor } from "./twig.ts";

/** A region of the back that leftovers are pieced into, in steps. */
export type Space = {
  readonly width: number;
  readonly height: number;
  /** Lots that may go in. */
  readonly allows: (lot: Lot) => boolean;
};

export type SearchOptions = {
  readonly seed: number;
  /** After so many moves it is done. */
  readonly effort: number;
  /** Most leaves all spaces may have together. */
  readonly mostLeaves: number;
  /** Every leftover is to go in: see `Filling`. */
  readonly dense?: boolean;
};

/** A search that can be stopped between any two steps: `best` is always whole and valid. */
export type Search = {
  step(moves: number): void;
  readonly moves: number;
  readonly done: boolean;
  /** One twig for each space. */
  readonly best: readonly Twig[];
  readonly bestCost: number;
};

/** Fills the spaces once, then keeps taking out a bad part and filling it again (ruin and recreate, annealed). */
export function startSearch(stock: Stock, spaces: readonly Space[], options: SearchOptions): Search {
  return new Annealing(stock, spaces, options);
}

class Annealing implements Search {
  moves = 0;
  best: readonly Twig[];
  bestCost: number;
  private current: readonly Twig[];
  private currentCost: number;
  private readonly pool: Pool;
  private readonly random: Random;
  private readonly twigs: Sawmill;
  private readonly fillings: readonly Filling[];
  private readonly stock: Stock;
  private readonly options: SearchOptions;
  private readonly square: number;
  private readonly cooling: Cooling;

  constructor(stock: Stock, spaces: readonly Space[], options: SearchOptions) {
    this.stock = stock;
    this.options = options;
    this.square = stock.stepsPerInch ** 2;
    this.cooling = new Cooling(piecesIn(stock));
    this.pool = poolOf(stock);
    this.random = randomFrom(options.seed);
    this.twigs = twigsFor(stock);
    const longest = Math.max(...spaces.map((space) => Math.max(space.width, space.height)), 1);
    const ends = endToEnd(Math.ceil(longest + 2 * stock.stepsPerInch));
    this.fillings = spaces.map((space) => this.fillingFor(space, ends));
    this.current = spaces.map((space, index) =>
      (this.fillings[index] as Filling).fill(space.width, space.height),
    );
    this.pool.forget();
    this.currentCost = this.costOf(this.current);
    this.best = this.current;
    this.bestCost = this.currentCost;
  }

  get done(): boolean {
    return this.moves >= this.options.effort || this.fillings.length === 0 || this.stock.lots.length === 0;
  }

  step(moves: number): void {
    if (this.done) return;
    const until = Math.min(this.options.effort, this.moves + moves);
    while (this.moves < until) {
      this.move();
      this.moves++;
      this.cooling.next();
    }
  }

  private fillingFor(space: Space, ends: Filling["ends"]): Filling {
    const faces = this.stock.faces.filter((face) => space.allows(face.lot));
    const { stock, pool, random, twigs } = this;
    const dense = this.options.dense === true;
    const candidates = new Candidates();
    const lies = { beside: liesOf(stock, faces, true), below: liesOf(stock, faces, false) };
    return withFill(
      { stock, pool, random, twigs, ends, dense, candidates, faces, ...lies },
      900 * this.square,
    );
  }

  private costOf(twigs: readonly Twig[]): number {
    let cost = this.pool.cost;
    let leaves = 0;
    for (const twig of twigs) {
      cost += twig.cost;
      leaves += twig.leaves;
    }
    return cost + Math.max(0, leaves - this.options.mostLeaves) * 30 * this.square;
  }

  /** Takes out one to three parts, fills them again, keeps the change if it is better or, while hot, not much worse. */
  private move(): void {
    const forced = this.random.chance(0.5) ? this.leftOut() : null;
    const changed = [...this.current];
    const mark = this.pool.mark();
    const holes = this.random.chance(0.75) ? 1 : 2 + this.random.below(2);
    const touched = new Set<number>();
    for (let hole = 0; hole < holes; hole++) {
      const at = this.pickSpace(changed);
      touched.add(at);
      changed[at] = this.dig(changed[at] as Twig, this.size(), hole === 0 ? forced : null);
    }
    let force = forced;
    for (const at of touched) {
      changed[at] = this.refill(changed[at] as Twig, this.fillings[at] as Filling, () => {
        const lot = force;
        force = null;
        return lot;
      });
    }
    this.decide(changed, mark);
  }

  private decide(changed: readonly Twig[], mark: number): void {
    const cost = this.costOf(changed);
    const worse = cost - this.currentCost;
    if (worse > 0 && this.random.next() >= exponential(-worse / (this.cooling.temperature * this.square))) {
      this.pool.undo(mark);
      return;
    }
    this.pool.forget();
    this.current = changed;
    this.currentCost = cost;
    if (cost < this.bestCost) {
      this.best = changed;
      this.bestCost = cost;
    }
  }

  private size(): number {
    if (this.random.chance(0.03)) return 20 + this.random.below(70);
    return 2 + this.random.below(8);
  }

  private pickSpace(twigs: readonly Twig[]): number {
    if (twigs.length === 1) return 0;
    const total = twigs.reduce((sum, twig) => sum + badness(twig, this.square), 0);
    let ticket = this.random.next() * total;
    for (let at = 0; at < twigs.length; at++) {
      ticket -= badness(twigs[at] as Twig, this.square);
      if (ticket < 0) return at;
    }
    return twigs.length - 1;
  }

  /** A piece that is not used yet, so that the next filling has to start with it. */
  private leftOut(): Lot | null {
    const { open } = this.pool;
    if (this.options.dense === true) return open[this.random.below(open.length)] ?? null;
    const { lots } = this.stock;
    const start = this.random.below(lots.length);
    for (let look = 0; look < lots.length; look++) {
      const lot = lots[(start + look) % lots.length] as Lot;
      if (this.pool.isOpen(lot)) return lot;
    }
    return null;
  }

  /** Replaces about `size` leaves round a bad spot, large enough for `lot`, by a hole; their pieces go back. */
  private dig(twig: Twig, size: number, lot: Lot | null): Twig {
    if (twig.kind === "leaf" || twig.leaves <= size * 1.3) return this.hole(twig);
    const at = this.pickPart(twig);
    const part = twig.parts[at] as Twig;
    if (part.leaves >= size * 0.6 && (lot === null || holds(part, lot))) {
      const inner = this.dig(part, size, lot);
      return this.twigs.join(twig.beside, twig.parts.with(at, inner));
    }
    return this.digSome(twig, at, size, lot);
  }

  private digSome(twig: Fork, at: number, size: number, lot: Lot | null): Twig {
    const taken = new Set([at]);
    let leaves = (twig.parts[at] as Twig).leaves;
    let along = lengthOf(twig.parts[at] as Twig, twig.beside);
    for (let look = 0; look < twig.parts.length * 2; look++) {
      if (leaves >= size && (lot === null || holds(span(twig, along), lot))) break;
      const other = this.random.below(twig.parts.length);
      if (taken.has(other)) continue;
      taken.add(other);
      leaves += (twig.parts[other] as Twig).leaves;
      along += lengthOf(twig.parts[other] as Twig, twig.beside);
    }
    const out = twig.parts.filter((_, index) => taken.has(index));
    const kept = twig.parts.filter((_, index) => !taken.has(index));
    for (const part of out) this.release(part);
    const { width, height } = span(twig, along);
    const hole = this.twigs.hole(width, height);
    return kept.length === 0 ? hole : this.twigs.join(twig.beside, [...kept, hole]);
  }

  private hole(twig: Twig): Leaf {
    this.release(twig);
    return this.twigs.hole(twig.width, twig.height);
  }

  private release(twig: Twig): void {
    if (twig.kind === "fork") for (const part of twig.parts) this.release(part);
    else if (twig.face !== null) this.pool.putBack(twig.face, twig.width, twig.height);
  }

  private pickPart(twig: Fork): number {
    const total = badness(twig, this.square);
    let ticket = this.random.next() * total;
    for (let at = 0; at < twig.parts.length; at++) {
      ticket -= badness(twig.parts[at] as Twig, this.square);
      if (ticket < 0) return at;
    }
    return twig.parts.length - 1;
  }

  private refill(twig: Twig, filling: Filling, forced: () => Lot | null): Twig {
    if (twig.holes === 0) return twig;
    if (twig.kind === "leaf") return fillHole(filling, twig, forced());
    const parts = twig.parts.map((part) => this.refill(part, filling, forced));
    return this.twigs.join(twig.beside, parts);
  }
}

export function piecesIn({ lots }: Stock): number {
  return lots.reduce((sum, { count }) => sum + count, 0);
}

function fillHole(filling: Filling, hole: Leaf, lot: Lot | null): Twig {
  const forced = lot === null ? null : force(lot)(filling, hole.width, hole.height);
  return forced ?? filling.fill(hole.width, hole.height);
}

function badness(twig: Twig, square: number): number {
  return twig.cost + twig.leaves * 0.4 * square;
}

function lengthOf(twig: Twig, beside: boolean): number {
  return beside ? twig.width : twig.height;
}

function span(twig: Fork, along: number): { width: number; height: number } {
  return twig.beside ? { width: along, height: twig.height } : { width: twig.width, height: along };
}

function holds(room: { width: number; height: number }, lot: Lot): boolean {
  return lot.faces.some((face: Face) => {
    const width = face.along === "width" ? face.minWidth : face.maxWidth;
    const height = face.along === "height" ? face.minHeight : face.maxHeight;
    return width <= room.width && height <= room.height;
  });
}
