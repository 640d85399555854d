import { type Site, steps } from "./site.ts";

/**
 * How much cloth to buy for plain parts that run the full width of the layout, in steps of length off the bolt, and
 * how many seams they take. Her own lengths are used where one is large enough; a part that is deeper than one width of
 * bought cloth is seamed.
 */
export function boughtFor(site: Site, depths: readonly number[]): { long: number; seams: number } {
  const allowance = steps(site, 0.5);
  const free = site.lengths.flatMap((one) => {
    const need = site.width + allowance;
    if (one.width >= need) return [one.height];
    return Array.from({ length: Math.floor(one.height / need) }, () => one.width);
  });
  const bolts: number[] = [];
  let seams = 0;
  for (const depth of [...depths].sort((one, other) => other - one)) {
    if (takeFrom(free, depth + allowance)) continue;
    const count = splits(site, depth);
    seams += count - 1;
    for (let cell = 0; cell < count; cell++) {
      const deep = Math.ceil(depth / count) + allowance;
      if (takeFrom(free, deep) || takeFrom(bolts, deep)) continue;
      bolts.push(site.widest + allowance - deep);
    }
  }
  return { long: bolts.length * site.width, seams };
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

export type PlainParts = { readonly parts: readonly [number, number]; readonly cost: number };

/** Of all splits of `total` into two plain parts (with `row` between them), the one that serves best. */
export function twoPlainParts(site: Site, row: number): readonly [number, number] {
  return plainPartsFor(site, row).parts;
}

/** The same with what it costs, in yards of cloth or what is as unwelcome. */
export function plainPartsFor(site: Site, row: number): PlainParts {
  const total = site.height - row;
  const grid = steps(site, 0.5);
  const half = Math.floor(total / 2);
  let best: PlainParts = { parts: [half, total - half], cost: costOfParts(site, half, row, total - half) };
  for (let first = Math.round(total * 0.2); first <= total * 0.5; first += grid) {
    const cost = costOfParts(site, first, row, total - first);
    if (cost < best.cost) best = { parts: [first, total - first], cost };
  }
  return best;
}

/** In yards of cloth, or what is as unwelcome. */
function costOfParts(site: Site, first: number, row: number, second: number): number {
  const { long, seams } = boughtFor(site, [first, second]);
  const middle = (first + row / 2) / site.height;
  const offPlace = Math.abs(middle - 0.375) * 6;
  return long / site.inch / 36 + offPlace + seams * 0.35 + centreLine(site, [first, first + row]);
}

/** Long seams keep 3 in off the centre line, where a quilt is folded. */
export function centreLine(site: Site, seams: readonly number[]): number {
  const near = seams.filter((at) => Math.abs(at - site.height / 2) < 3 * site.inch);
  return near.length * 0.8;
}
