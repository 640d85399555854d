import type { Cell } from "./scene.ts";
import type { Swatches } from "./swatches.ts";

/** So many cells of one fabric shouldn't lie in one third alone. */
const spreadFrom = 6;
/** What it costs when they do, as inches of edge. */
const crowdPrice = 30;
/** So much may a third be lighter or darker than all of it (L*). Common practice has no figure; ours. */
const balance = 12;
/** For each L* beyond. */
const lopsidedPrice = 10;
/** With fewer cells in a third there is no balance to speak of. */
const fewest = 4;

type Third = { cells: number; area: number; value: number; readonly fabrics: Map<number, number> };

/**
 * The pieced part in thirds along its longer side: which fabrics lie in each, and how light it is. Fabrics are spread
 * over it, and no third is much lighter or darker than all of it.
 */
export class Thirds {
  private readonly thirds: readonly Third[] = [0, 1, 2].map(() => ({
    cells: 0,
    area: 0,
    value: 0,
    fabrics: new Map(),
  }));
  private readonly places: readonly number[];
  private readonly areas: readonly number[];
  private readonly valueOf: Swatches["valueOf"];

  constructor(cells: readonly Cell[], fabrics: readonly number[], swatches: Swatches) {
    this.valueOf = swatches.valueOf;
    this.places = placesOf(cells);
    this.areas = cells.map((cell) => (cell.right - cell.x) * (cell.bottom - cell.y));
    for (const [at, place] of this.places.entries()) {
      const third = this.thirds[place];
      if (third === undefined) continue;
      third.cells++;
      this.put(at, fabrics[at] ?? -1, 1);
    }
  }

  areApart(one: number, other: number): boolean {
    return this.places[one] !== this.places[other];
  }

  /** `one` and `other` have changed fabrics: these are the ones they had. */
  swap([one, other]: readonly [number, number], [first, second]: readonly [number, number]): void {
    this.put(one, first, -1);
    this.put(other, second, -1);
    this.put(one, second, 1);
    this.put(other, first, 1);
  }

  get cost(): number {
    return this.crowded() * crowdPrice + this.lopsided() * lopsidedPrice;
  }

  private put(at: number, fabric: number, sign: 1 | -1): void {
    const third = this.thirds[this.places[at] ?? -1];
    if (third === undefined) return;
    third.fabrics.set(fabric, (third.fabrics.get(fabric) ?? 0) + sign);
    const value = this.valueOf(fabric);
    if (value === null) return;
    const area = sign * (this.areas[at] ?? 0);
    third.area += area;
    third.value += area * value;
  }

  private crowded(): number {
    let crowds = 0;
    for (const third of this.thirds)
      for (const [fabric, count] of third.fabrics)
        if (count >= spreadFrom && this.isAloneIn(third, fabric)) crowds++;
    return crowds;
  }

  private isAloneIn(third: Third, fabric: number): boolean {
    return this.thirds.every((other) => other === third || (other.fabrics.get(fabric) ?? 0) === 0);
  }

  private lopsided(): number {
    const { thirds } = this;
    if (thirds.some(({ cells }) => cells < fewest)) return 0;
    const area = thirds.reduce((sum, third) => sum + third.area, 0);
    if (area === 0) return 0;
    const mean = thirds.reduce((sum, third) => sum + third.value, 0) / area;
    return thirds.reduce((sum, third) => {
      const off = third.area === 0 ? 0 : Math.abs(third.value / third.area - mean);
      return sum + Math.max(0, off - balance);
    }, 0);
  }
}

/** In which third the middle of each cell lies; −1 for cloth. */
function placesOf(cells: readonly Cell[]): number[] {
  const pieced = cells.filter(({ cloth }) => cloth === null);
  const [left, right] = [least(pieced, "x"), most(pieced, "right")];
  const [top, bottom] = [least(pieced, "y"), most(pieced, "bottom")];
  const wide = right - left >= bottom - top;
  const [start, whole] = wide ? [left, right - left] : [top, bottom - top];
  return cells.map(({ cloth, x, y, right: end, bottom: foot }) => {
    if (cloth !== null) return -1;
    const middle = wide ? (x + end) / 2 : (y + foot) / 2;
    return Math.min(2, Math.floor((3 * (middle - start)) / whole));
  });
}

function least(cells: readonly Cell[], side: "x" | "y"): number {
  return cells.reduce((found, cell) => Math.min(found, cell[side]), Number.POSITIVE_INFINITY);
}

function most(cells: readonly Cell[], side: "right" | "bottom"): number {
  return cells.reduce((found, cell) => Math.max(found, cell[side]), Number.NEGATIVE_INFINITY);
}
