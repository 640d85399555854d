import { twoPlainParts } from "../plainParts.ts";
import { type Site, steps, turned } from "../site.ts";
import { below, cloth, row, type Sketch, turnedSketch } from "../sketch.ts";

/**
 * One pieced row between two plain parts of about 1 : 2. The row is 8 to 16 in deep on a bed quilt, less on a small
 * one (trade-facts §15), and as deep as the heap fills.
 */
export function insertAcross(site: Site): Sketch {
  const deep = rowDepth(site);
  const [first, second] = twoPlainParts(site, deep);
  return below([cloth(site.width, first), row(site, deep), cloth(site.width, second)]);
}

export function insertDown(site: Site): Sketch {
  return turnedSketch(insertAcross(turned(site)));
}

function rowDepth(site: Site): number {
  const long = site.width - 2 * site.ringX;
  const wanted = Math.round((site.target * 0.9) / long);
  const most = Math.min(steps(site, 16), Math.round(site.height * 0.24));
  const least = Math.min(most, Math.max(steps(site, 5), 2 * site.smallest, site.tall));
  return Math.max(least, Math.min(most, wanted));
}
