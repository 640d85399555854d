import { twoPlainParts } from "../plainParts.ts";
import { type Site, steps } from "../site.ts";
import { below, beside, cloth, type Sketch } from "../sketch.ts";

const fewest = 3;

/**
 * Square blocks of one size on their points, in a line across between two plain parts of about 1 : 2; the triangles
 * between them are of the plain cloth too. null: too few alike, no room, or more seams than she has time for.
 */
export function lineOnPoint(site: Site): Sketch | null {
  const { side, blocks } = mostAlike(site);
  const diagonal = side * Math.SQRT2;
  // Pieced cloth may go 2 in past the top's outline, blocks begin 2 in inside it (trade-facts §15).
  const least = site.ringX + steps(site, 4);
  const room = Math.floor((site.width - 2 * least) / diagonal);
  const count = Math.min(blocks.length, room, inTime(site));
  const deep = Math.ceil(diagonal);
  if (count < fewest || deep > site.height * 0.3) return null;
  const [first, second] = twoPlainParts(site, deep);
  const line = lineOf(blocks.slice(0, count), { long: Math.ceil(count * diagonal), deep, site });
  return below([cloth(site.width, first), line, cloth(site.width, second)]);
}

/** Three seams a block and one more; both ends and both plain parts. */
function inTime({ joins }: Site): number {
  return Math.floor((joins - 5) / 3);
}

type Line = { readonly long: number; readonly deep: number; readonly site: Site };

function lineOf(blocks: readonly string[], { long, deep, site }: Line): Sketch {
  const rest = site.width - long;
  const end = Math.floor(rest / 2);
  return beside([
    cloth(end, deep, "spacer"),
    { kind: "on-point", blocks, width: long, height: deep },
    cloth(rest - end, deep, "spacer"),
  ]);
}

type Alike = { readonly side: number; readonly blocks: readonly string[] };

/** The size of which most cloth is there. Prints with an up would lie askew. */
function mostAlike(site: Site): Alike {
  const squares = site.blocks.filter(({ width, height, upright }) => width === height && !upright);
  const bySide = [...new Set(squares.map(({ width }) => width))].map((side): Alike => {
    const rows = squares.filter(({ width }) => width === side);
    return { side, blocks: byTurns(rows) };
  });
  const none: Alike = { side: 0, blocks: [] };
  return bySide.reduce((best, next) => (areaOf(next) > areaOf(best) ? next : best), none);
}

function areaOf({ side, blocks }: Alike): number {
  return side * side * blocks.length;
}

/** One of each row, then again. */
function byTurns(rows: readonly { readonly piece: string; readonly count: number }[]): readonly string[] {
  const longest = Math.max(...rows.map(({ count }) => count));
  return Array.from({ length: longest }, (_, turn) =>
    rows.flatMap(({ piece, count }) => (turn < count ? [piece] : [])),
  ).flat();
}
