import { type Site, steps } from "./site.ts";

/**
 * How much cloth to buy for plain parts that run the full width of the layout, in steps of length off the bolt.
 * Parts deeper than one width of cloth are seamed. Her own lengths are used where one is long enough.
 */
export function boughtFor(site: Site, depths: readonly number[]): number {
  const free = site.lengths.flatMap((one) => {
    const need = site.width + steps(site, 0.5);
    if (one.width >= need) return [one.height];
    return one.height >= need ? [one.width] : [];
  });
  const bolts: number[] = [];
  for (const depth of cellsOf(site, depths)) {
    if (takeFrom(free, depth)) continue;
    if (takeFrom(bolts, depth)) continue;
    bolts.push(site.widest + steps(site, 0.5) - depth);
  }
  return bolts.length * site.width;
}

/** Parts too deep for one width of cloth become equal cells. Deepest first. */
function cellsOf(site: Site, depths: readonly number[]): number[] {
  return depths
    .flatMap((depth) => {
      const count = splits(site, depth);
      return Array.from({ length: count }, () => Math.ceil(depth / count) + steps(site, 0.5));
    })
    .sort((one, other) => other - one);
}

export function splits(site: Pick<Site, "widest">, depth: number): number {
  return Math.max(1, Math.ceil(depth / site.widest));
}

function takeFrom(bins: number[], depth: number): boolean {
  const at = bins.findIndex((room) => room >= depth);
  if (at < 0) return false;
  bins[at] = (bins[at] as number) - depth;
  return true;
}

/** Of all splits of `total` into two plain parts (with `row` between them), the one that serves best. */
export function twoPlainParts(site: Site, row: number): readonly [number, number] {
  const total = site.height - row;
  const grid = steps(site, 0.5);
  const half = Math.floor(total / 2);
  let best: readonly [number, number] = [half, total - half];
  let least = Number.POSITIVE_INFINITY;
  for (let first = Math.round(total * 0.2); first <= total * 0.5; first += grid) {
    const cost = costOfParts(site, first, row, total - first);
    if (cost < least) {
      least = cost;
      best = [first, total - first];
    }
  }
  return best;
}

/** In yards of cloth, or what is as unwelcome. */
function costOfParts(site: Site, first: number, row: number, second: number): number {
  const yards = boughtFor(site, [first, second]) / site.inch / 36;
  const middle = (first + row / 2) / site.height;
  const offPlace = Math.abs(middle - 0.375) * 6;
  const seams = splits(site, first) + splits(site, second) - 2;
  return yards + offPlace + seams * 0.35 + centreLine(site, [first, first + row]);
}

/** Long seams keep 3 in off the centre line, where a quilt is folded. */
export function centreLine(site: Site, seams: readonly number[]): number {
  const near = seams.filter((at) => Math.abs(at - site.height / 2) < 3 * site.inch);
  return near.length * 0.8;
}
