import { naturalDepth } from "../natural.ts";
import { type Site, steps, turned } from "../site.ts";
import { below, beside, cloth, pieced, ringed, type Sketch } from "../sketch.ts";

/** Three to five rows of three to six big chunks, seams of neighbour rows staggered by 3 in or more (trade-facts §15). */
export function chunks(site: Site): Sketch {
  const width = site.width - 2 * site.ringX;
  const height = site.height - 2 * site.ringY;
  const rows = Math.max(3, Math.min(5, Math.round(height / steps(site, 19))));
  const depths = natural(site, shared(height, rowWeights(rows)), width / 2);
  const columns = Math.max(3, Math.min(5, Math.round(width / steps(site, 17))));
  const usual = depths.map((_, at) => shared(width, columnWeights(columns, at)));
  const widths = naturalColumns(site, depths, usual);
  const busy = busyChunks(site, depths, widths);
  const chunked = depths.map((depth, at) =>
    beside(calmed(widths[at] as number[], busy[at] as boolean[]).map((one) => chunk(one, depth, at % 2))),
  );
  return ringed(site, below(chunked));
}

/** As deep as her leftovers stand; the last part takes what is left, if it is none too deep or too shallow. */
function natural(site: Site, usual: readonly number[], long: number): readonly number[] {
  const first = usual.slice(0, -1).map((deep) => {
    const range = { least: Math.round(deep * 0.75), most: Math.round(deep * 1.15), long };
    return naturalDepth(site, deep, range);
  });
  const whole = sum(usual);
  const last = whole - sum(first);
  const mean = whole / usual.length;
  return last >= mean * 0.6 && last <= mean * 1.5 ? [...first, last] : usual;
}

/** The same for the chunks of each row, where their seams stay 3 in off those of the row above. */
function naturalColumns(site: Site, depths: readonly number[], usual: readonly number[][]): number[][] {
  const lying = turned(site);
  const rows: number[][] = [];
  for (const [at, widths] of usual.entries()) {
    const own = natural(lying, widths, depths[at] as number);
    const above = rows[at - 1];
    rows.push(above === undefined || isStaggered(own, above, steps(site, 3)) ? [...own] : widths);
  }
  return rows;
}

function isStaggered(one: readonly number[], other: readonly number[], least: number): boolean {
  const seams = seamsOf(other);
  return seamsOf(one).every((at) => seams.every((seam) => Math.abs(at - seam) >= least));
}

function seamsOf(widths: readonly number[]): number[] {
  return widths.slice(0, -1).map((_, at) => sum(widths.slice(0, at + 1)));
}

function sum(all: readonly number[]): number {
  return all.reduce((total, one) => total + one, 0);
}

type Chunk = { readonly width: number; readonly busy: boolean };

function chunk({ width, busy }: Chunk, depth: number, tone: number): Sketch {
  return busy ? pieced(width, depth) : cloth(width, depth, "plain", tone);
}

function rowWeights(count: number): number[] {
  return [1.1, 0.9, 1.2, 0.8, 1].slice(0, count);
}

// No two rows share a seam: even rows lean one way, odd rows the other.
function columnWeights(count: number, at: number): number[] {
  const lean = [
    [1.25, 0.8, 1.1, 0.9, 1],
    [0.8, 1.15, 0.95, 1.2, 0.9],
    [1.05, 1.25, 0.75, 1, 1.1],
  ];
  return (lean[at % 3] as number[]).slice(0, count);
}

/** Chess-like from the middle outwards, until the heap is used up. */
function busyChunks(site: Site, depths: readonly number[], widths: readonly number[][]): boolean[][] {
  const busy = widths.map((row) => row.map(() => false));
  const order = widths.flatMap((row, y) =>
    row.map((width, x) => ({ x, y, area: width * (depths[y] as number) })),
  );
  const middle = (depths.length - 1) / 2;
  const far = (cell: { x: number; y: number }) => ((cell.x + cell.y) % 2) * 100 + Math.abs(cell.y - middle);
  order.sort((one, other) => far(one) - far(other) || one.x - other.x);
  let left = site.target * 0.95;
  for (const { x, y, area } of order) {
    if (area > left * 1.05) continue;
    (busy[y] as boolean[])[x] = true;
    left -= area;
  }
  return busy;
}

/** Plain beside plain needs no seam. */
function calmed(widths: readonly number[], busy: readonly boolean[]): Chunk[] {
  const chunks: Chunk[] = [];
  widths.forEach((width, at) => {
    const last = chunks[chunks.length - 1];
    const isBusy = busy[at] as boolean;
    if (last === undefined || last.busy || isBusy) chunks.push({ width, busy: isBusy });
    else chunks[chunks.length - 1] = { width: last.width + width, busy: false };
  });
  return chunks;
}

/** Whole steps in proportion to the weights; they add up to the total. */
export function shared(total: number, weights: readonly number[]): number[] {
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  let given = 0;
  let weighed = 0;
  return weights.map((weight) => {
    weighed += weight;
    const part = Math.round((total * weighed) / whole) - given;
    given += part;
    return part;
  });
}
