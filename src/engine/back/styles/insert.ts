import { type Depth, naturalDepths } from "../natural.ts";
import { plainPartsFor } from "../plainParts.ts";
import { type Site, steps, turned } from "../site.ts";
import { below, cloth, row, type Sketch, turnedSketch } from "../sketch.ts";

/**
 * One pieced row between two plain parts of about 1 : 2. The row is 8 to 16 in deep on a bed quilt, less on a small
 * one (trade-facts §15), and as deep as the heap fills.
 */
export function insertAcross(site: Site): Sketch {
  const ways = rowDepths(site).map(({ deep, worth }) => {
    const { parts, cost } = plainPartsFor(site, deep);
    return { deep, parts, cost: cost - worth * fullRow };
  });
  const { deep, parts } = ways.reduce((best, next) => (next.cost < best.cost ? next : best));
  return below([cloth(site.width, parts[0]), row(site, deep), cloth(site.width, parts[1])]);
}

// A row that is full is worth three yards of cloth.
const fullRow = 3;

export function insertDown(site: Site): Sketch {
  return turnedSketch(insertAcross(turned(site)));
}

function rowDepths(site: Site): readonly Depth[] {
  const long = site.width - 2 * site.ringX;
  const wanted = Math.round((site.target * 0.9) / long);
  const most = Math.round(Math.min(Math.max(steps(site, 16), site.height * 0.18), site.height * 0.24));
  const least = Math.min(most, Math.max(steps(site, 4), 2 * site.smallest));
  return naturalDepths(site, Math.max(wanted, Math.min(most, site.tall)), { least, most, long });
}
