import { twoPlainParts } from "../plainParts.ts";
import { type Site, type SiteBlock, steps, turned } from "../site.ts";
import { below, beside, cloth, pieced, type Sketch, turnedSketch } from "../sketch.ts";
import { lineOnPoint } from "./lineOnPoint.ts";

/**
 * Blocks brought to one width by coping strips, in a line down the back with plain spacers between; plain 2 to 3 in
 * down each side of the line, the rest in two plain parts of about 1 : 2 (trade-facts §15). Where she has too few
 * blocks, pieced ones fill the line. Every other variant stands them on their points, where they allow it.
 */
export function blockLine(site: Site, variant: number): Sketch {
  const lying = turned(site);
  const onPoint = variant % 2 === 1 ? lineOnPoint(lying) : null;
  return turnedSketch(onPoint ?? lineAcross(lying));
}

type Line = {
  readonly places: readonly Place[];
  readonly deep: number;
  readonly spacer: number;
  readonly last: number;
  /** What the cloth at either end is longer than a spacer, so that no block comes near the top's outline. */
  readonly cap: number;
};
type Place = { readonly width: number; readonly block: SiteBlock | null; readonly turned: boolean };

function lineAcross(site: Site): Sketch {
  const line = lineOf(site);
  const side = steps(site, 2.5);
  const deep = line.deep + 2 * side;
  const [first, second] = twoPlainParts(site, deep);
  const middle = below([
    cloth(site.width, side, "spacer", 1),
    beside(partsOf(site, line)),
    cloth(site.width, side, "spacer", 1),
  ]);
  return below([cloth(site.width, first), middle, cloth(site.width, second)]);
}

function partsOf(site: Site, line: Line): Sketch[] {
  const parts: Sketch[] = [cloth(line.cap + line.spacer, line.deep, "spacer", 1)];
  line.places.forEach((place, at) => {
    parts.push(coped(place, { deep: line.deep, first: at % 2 === 1 }, site));
    const end = at === line.places.length - 1;
    parts.push(cloth(end ? line.last : line.spacer, line.deep, "spacer", 1));
  });
  return parts;
}

type Coping = { readonly deep: number; readonly first: boolean };

/** A block with coping strips above and below that bring it to the line's depth; one alone goes `first` by turns. */
function coped({ width, block, turned: lies }: Place, { deep, first }: Coping, site: Site): Sketch {
  if (block === null) return pieced(width, deep);
  const height = lies === block.turned ? block.height : block.width;
  const piece: Sketch = { kind: "block", piece: block.piece, turned: lies, width, height };
  const rest = deep - height;
  if (rest === 0) return piece;
  const strip = cloth(width, rest, "coping", 1);
  if (rest < 2 * site.smallest) return below(first ? [strip, piece] : [piece, strip]);
  const above = Math.floor(rest / 2);
  return below([cloth(width, above, "coping", 1), piece, cloth(width, rest - above, "coping", 1)]);
}

function lineOf(site: Site): Line {
  const blocks = usable(site);
  const deep = depthOf(site, blocks);
  const least = leastSpacer(site);
  const long = site.width - 2 * capOf(site);
  const places: Place[] = [];
  let used = least;
  const queue = blocks.map((block) => placeOf(block, site, deep)).filter((place) => place !== null);
  for (;;) {
    const place = queue.shift() ?? { width: Math.round(deep * 0.9), block: null, turned: false };
    if (used + place.width + least > long || places.length >= 9) break;
    places.push(place);
    used += place.width + least;
  }
  return spaced(site, mixed(places), deep);
}

/** Shares what is left over the spacers; the last takes the odd steps, the ring's end included. */
function spaced(site: Site, places: readonly Place[], deep: number): Line {
  const cap = capOf(site);
  const long = site.width - 2 * cap;
  const blocks = places.reduce((sum, place) => sum + place.width, 0);
  const spacer = Math.floor((long - blocks) / (places.length + 1));
  const last = long - blocks - spacer * places.length + cap;
  return { places, deep, spacer, last, cap };
}

function leastSpacer(site: Site): number {
  return Math.max(steps(site, 2), site.smallest);
}

function capOf(site: Site): number {
  if (site.outlineX === null) return site.ringX;
  const least = Math.max(site.outlineX + site.inside, steps(site, 4));
  return Math.max(site.ringX, Math.ceil(least - leastSpacer(site)));
}

/** Pieced blocks among her own, not all at one end. */
function mixed(places: readonly Place[]): Place[] {
  const own = places.filter((place) => place.block !== null);
  const made = places.filter((place) => place.block === null);
  const line: Place[] = [];
  const every = Math.max(1, Math.round(own.length / (made.length + 1)));
  while (own.length + made.length > 0) {
    line.push(...own.splice(0, every));
    line.push(...made.splice(0, 1));
  }
  return line;
}

/** Larger ones first, since small ones want wide coping; a block wider than 14 in is a row of its own elsewhere. */
function usable(site: Site): SiteBlock[] {
  const least = steps(site, 5);
  const most = steps(site, 14);
  return site.blocks
    .filter(
      (block) => Math.max(block.width, block.height) <= most && Math.min(block.width, block.height) >= least,
    )
    .sort((one, other) => other.width * other.height - one.width * one.height)
    .flatMap((block) => Array.from({ length: Math.min(9, block.count) }, () => block));
}

function depthOf(site: Site, blocks: readonly SiteBlock[]): number {
  const line = blocks.slice(0, 8);
  const tallest = Math.max(...line.map((block) => Math.min(block.width, block.height)), 0);
  return Math.max(steps(site, 9), Math.min(steps(site, 13), tallest || steps(site, 10)));
}

/** Standing as it is, or turned so that it is no taller than the line; null when the coping would be a sliver. */
function placeOf(block: SiteBlock, site: Site, deep: number): Place | null {
  const ways = [
    { width: block.width, height: block.height, turned: block.turned },
    ...(block.upright ? [] : [{ width: block.height, height: block.width, turned: !block.turned }]),
  ];
  const way = ways.find(({ height }) => height === deep || height <= deep - site.smallest);
  return way === undefined ? null : { width: way.width, block, turned: way.turned };
}
