import { checkDraft } from "../../../engine/cloth/index.ts";
import { inches, type Length, length } from "../../../engine/length/index.ts";
import type { LineProblem, LineReading } from "../../../files/index.ts";
import { pictureOf, type RowPicture, widthAcross } from "./pictures.ts";

/** What was understood of a line, to be drawn. */
export type Preview = { readonly picture: RowPicture; readonly across: Length };

/** null: there is nothing to draw yet. */
export function previewOf({ piece, problems }: LineReading): Preview | null {
  if (problems.length > 0) return null;
  const side = inches(100);
  const checked = checkDraft({
    unit: "in",
    back: { width: side, height: side },
    plain: { name: "" },
    // Its mark and its colour make no difference to its shape.
    pieces: [{ ...piece, colour: "grey", use: "yes", row: 1 }],
  });
  const [only] = checked.ok ? checked.value.job.pieces : [];
  if (only === undefined) return null;
  const picture = pictureOf(only);
  // Twice as wide as tall, so that a tall pile doesn't push the page away while she types.
  const tall = length(picture.height * 2);
  return { picture, across: widthAcross([picture, { width: tall, height: picture.height }]) };
}

/** What had to be taken for granted: the size a name stands for, how wide the cloth is. */
export function takenForGranted({ piece, parts, problems }: LineReading) {
  const named = parts.find(({ is }) => is === "named-size");
  const across = parts.some(({ is }) => is === "cloth-width");
  const isYardage = parts.some(({ is }) => is === "height") && !parts.some(({ is }) => is === "width");
  const long =
    piece.width === undefined || piece.height === undefined ? null : clothWidthOf(piece, across, isYardage);
  if (problems.length > 0 || (named === undefined && long === null)) return null;
  return { named: named?.text ?? null, clothWidth: long, size: piece };
}

function clothWidthOf(
  { width, height }: LineReading["piece"],
  across: boolean,
  isYardage: boolean,
): Length | null {
  if (isYardage && !across) return width ?? null;
  if (!across || width === undefined || height === undefined) return null;
  return height > width ? height : width;
}

/** The line with one of the readings in place of what could mean several things. */
export function withReading(
  line: string,
  span: { readonly start: number; readonly end: number },
  reading: string,
): string {
  return `${line.slice(0, span.start)}${reading}${line.slice(span.end)}`;
}

/** The readings she may have meant, to choose from. */
export function readingsIn(problem: LineProblem): readonly string[] {
  if (problem.kind !== "not-a-size") return [];
  const { problem: why } = problem;
  if (why.kind === "ambiguous") return why.readings;
  return why.kind === "date" && why.fraction !== null ? [why.fraction] : [];
}
