import { type Kind, readColour } from "../engine/cloth/index.ts";
import { type DisplayUnit, typedLength } from "../engine/length/index.ts";
import { exactArea } from "./leftovers-write.ts";
import { readLine } from "./line.ts";
import type { LinePiece } from "./line-types.ts";
import { useSpelled } from "./line-words.ts";

/** What a line can say. The rest of a row (grain, washed, its own name …) is for the table. */
export const lineFields = [
  "kind",
  "width",
  "height",
  "count",
  "fabric",
  "colour",
  "use",
  "area",
  "weight",
] as const;

/**
 * A leftover as a line that reads back the same, sizes to the last 1/320 mm. Law: `readLine(writeLine(piece))` gives
 * the piece, as far as `lineFields` go, with its colour as `#rrggbb` and a double quotation mark in a fabric's name as
 * a single one.
 */
export function writeLine(piece: LinePiece, unit: DisplayUnit): string {
  const line = wordsOf(piece, unit, (fabric) => fabric);
  const { piece: read, problems } = readLine(line, unit);
  const isSame =
    read.fabric === piece.fabric && read.count === (piece.kind === "crumbs" ? undefined : (piece.count ?? 1));
  return isSame && problems.length === 0
    ? line
    : wordsOf(piece, unit, (fabric) => `"${fabric.replace(/["”“„]/g, "'")}"`);
}

function wordsOf(piece: LinePiece, unit: DisplayUnit, quote: (fabric: string) => string): string {
  const { count, kind, fabric, colour, use } = piece;
  const words = [
    // Without a number in front, one at the end of the fabric's name would be taken for it.
    kind === "crumbs" ? "" : String(count ?? 1),
    kindSpelled(kind, count ?? 1),
    amountOf(piece, unit),
    fabric === undefined ? "" : quote(fabric),
    colour === undefined ? "" : (readColour(colour)?.hex ?? ""),
    use === undefined ? "" : useSpelled[use],
  ];
  return words.filter((word) => word !== "").join(" ");
}

// A word stands between the count and the size in any case: 1 and 1/2 in would be 1 1/2.
function kindSpelled(kind: Kind | undefined, count: number): string {
  if (kind === "crumbs") return kind;
  const one = kind === undefined ? "piece" : kind === "odd" ? "odd piece" : kind.replace("part-", "part ");
  return count === 1 ? one : `${one}s`;
}

function amountOf({ width, height, area, weight }: LinePiece, unit: DisplayUnit): string {
  if (area !== undefined) return exactArea(area);
  if (weight !== undefined) return `${weight} g`;
  const sides = [width, height].flatMap((side) => (side === undefined ? [] : [typedLength(side, unit)]));
  // A unit that is written once would go for both.
  const isMixed = sides.some((side) => side.endsWith("mm"));
  return sides.map((side) => (isMixed && !side.endsWith("mm") ? `${side} ${unit}` : side)).join(" x ");
}
