import type { Grid, Marks } from "./marks.ts";
import type { Sort } from "./sorts.ts";

/**
 * The task with as many copies of everything as one likes, which is solved at once for every region up to the whole
 * one (Gilmore and Gomory 1966): nothing cut from a region counts more. `worths` say what one of each sort counts.
 */
export class Relaxed {
  readonly #sorts: readonly Sort[];
  readonly #across: Marks;
  readonly #down: Marks;
  readonly #most: Float64Array;
  /** How the most is reached: a sort's number, or one of `ways`, or a cut. */
  readonly #how: Int32Array;
  readonly #around: Float64Array;

  constructor(sorts: readonly Sort[], { across, down }: Grid) {
    this.#sorts = sorts;
    this.#across = across;
    this.#down = down;
    const cells = across.at.length * down.at.length;
    this.#most = new Float64Array(cells);
    this.#how = new Int32Array(cells);
    this.#around = new Float64Array(cells);
  }

  /** What the whole region counts at most. */
  solve(worths: readonly number[]): number {
    this.#placeSingles(worths);
    const [columns, rows] = [this.#across.at.length, this.#down.at.length];
    for (let column = 1; column < columns; column++)
      for (let row = 1; row < rows; row++) this.#cut(column, row);
    return this.#most.at(-1) ?? 0;
  }

  #placeSingles(worths: readonly number[]): void {
    this.#most.fill(0);
    this.#how.fill(ways.empty);
    for (const [index, { faces }] of this.#sorts.entries()) {
      const worth = worths[index] ?? 0;
      for (const { width, height } of faces) {
        const cell = this.#cellOf(width, height);
        if (worth > (this.#most[cell] ?? 0)) this.#set(cell, worth, index);
      }
    }
  }

  #set(cell: number, worth: number, how: number): void {
    this.#most[cell] = worth;
    this.#how[cell] = how;
  }

  #cellOf(width: number, height: number): number {
    return (this.#across.upTo[width] ?? 0) * this.#down.at.length + (this.#down.upTo[height] ?? 0);
  }

  #cut(column: number, row: number): void {
    const rows = this.#down.at.length;
    const cell = column * rows + row;
    const most = this.#most;
    if ((most[cell - rows] ?? 0) > (most[cell] ?? 0)) this.#set(cell, most[cell - rows] ?? 0, ways.narrower);
    if ((most[cell - 1] ?? 0) > (most[cell] ?? 0)) this.#set(cell, most[cell - 1] ?? 0, ways.lower);
    this.#cutAlong(cell, { marks: this.#across, index: column, step: rows, start: row, beside: 1 });
    this.#cutAlong(cell, { marks: this.#down, index: row, step: 1, start: column * rows, beside: 0 });
  }

  #cutAlong(cell: number, { marks: { at, upTo }, index, step, start, beside }: Line): void {
    const most = this.#most;
    const long = at[index] ?? 0;
    let best = most[cell] ?? 0;
    let found = 0;
    for (let cut = 1, place = at[1] ?? 0; 2 * place <= long; cut++, place = at[cut] ?? 0) {
      const rest = upTo[long - place] ?? 0;
      const both = (most[start + cut * step] ?? 0) + (most[start + rest * step] ?? 0);
      if (both > best) {
        best = both;
        found = cut;
      }
    }
    if (found > 0) this.#set(cell, best, ways.firstCut - 2 * found - beside);
  }

  /** How many of each sort the last solution takes. */
  used(): number[] {
    const counts = this.#sorts.map(() => 0);
    const open: [number, number][] = [[this.#across.at.length - 1, this.#down.at.length - 1]];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      const [column, row] = next;
      const how = this.#how[column * this.#down.at.length + row] ?? ways.empty;
      if (how >= 0) counts[how] = (counts[how] ?? 0) + 1;
      else if (how === ways.narrower) open.push([column - 1, row]);
      else if (how === ways.lower) open.push([column, row - 1]);
      else if (how !== ways.empty) open.push(...this.#halves(column, row, ways.firstCut - how));
    }
    return counts;
  }

  #halves(column: number, row: number, code: number): [number, number][] {
    const cut = code >> 1;
    if (code % 2 === 1)
      return [
        [cut, row],
        [restOf(this.#across, column, cut), row],
      ];
    return [
      [column, cut],
      [column, restOf(this.#down, row, cut)],
    ];
  }

  /**
   * From the last solution: what can come to a part of each size until the whole region is full, wherever the part
   * lies in it (Viswanathan and Bagchi 1993). `around` then answers for any size.
   */
  look(): void {
    const [columns, rows] = [this.#across.at.length, this.#down.at.length];
    for (let column = columns - 1; column >= 0; column--)
      for (let row = rows - 1; row >= 0; row--) this.#lookAround(column, row);
  }

  #lookAround(column: number, row: number): void {
    const rows = this.#down.at.length;
    const cell = column * rows + row;
    const wider = this.#grown(cell, {
      marks: this.#across,
      index: column,
      step: rows,
      start: row,
      beside: 1,
    });
    const taller = this.#grown(cell, {
      marks: this.#down,
      index: row,
      step: 1,
      start: column * rows,
      beside: 0,
    });
    this.#around[cell] = Math.max(0, wider, taller);
  }

  #grown(cell: number, { marks: { at, upTo }, index, step, start }: Line): number {
    const own = at[index] ?? 0;
    let best = index + 1 < at.length ? (this.#around[cell + step] ?? 0) : 0;
    for (let more = 1; more < at.length; more++) {
      const long = own + (at[more] ?? 0);
      if (long >= upTo.length) break;
      const reached = upTo[long] ?? 0;
      best = Math.max(
        best,
        (this.#most[start + more * step] ?? 0) + (this.#around[start + reached * step] ?? 0),
      );
    }
    return best;
  }

  around(width: number, height: number): number {
    return this.#around[this.#cellOf(width, height)] ?? 0;
  }
}

/** The cells that a cut in one direction goes through. */
type Line = {
  readonly marks: Marks;
  readonly index: number;
  readonly step: number;
  readonly start: number;
  readonly beside: 0 | 1;
};

const ways = { empty: -1, narrower: -2, lower: -3, firstCut: -4 } as const;

function restOf({ at, upTo }: Marks, index: number, cut: number): number {
  return upTo[(at[index] ?? 0) - (at[cut] ?? 0)] ?? 0;
}
