import type { MeasuredPiece, Photo, Place } from "./types.ts";

export type OverlayRequest = {
  /** As it was measured: the outlines are in its pixels. */
  readonly photo: Pick<Photo, "width" | "height">;
  readonly pieces: readonly MeasuredPiece[];
  /** The photo's own picture, however large, as an address: "data:…". */
  readonly picture: string;
  /** What stands in the middle of a piece; `number` counts from 1. */
  readonly label: (piece: MeasuredPiece, number: number) => string;
};

const sure = "#ffffff";
const doubted = "#ffb000";
const under = "#101418";

/** A photo as SVG with what was found drawn over it: numbered, dashed and in amber where it must be looked at. */
export function writeOverlay({ photo: { width, height }, pieces, picture, label }: OverlayRequest): string {
  const line = Math.max(width, height) / 500;
  const marks = pieces.map((piece, at) => markOf(piece, { text: label(piece, at + 1), line }));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">`,
    `<image href="${escaped(picture)}" width="${width}" height="${height}" preserveAspectRatio="none"/>`,
    `<g font-family="sans-serif" font-size="${round(9 * line)}" text-anchor="middle" stroke-linejoin="round">`,
    ...marks,
    "</g>",
    "</svg>\n",
  ].join("\n");
}

/** Outlines count from the first pixel's middle, pictures from its corner. */
function markOf({ pixels, check }: MeasuredPiece, { text, line }: { text: string; line: number }): string {
  const corners = pixels.map(([x, y]): Place => [round(x + 0.5), round(y + 0.5)]);
  const points = corners.map((place) => place.join(",")).join(" ");
  const [x, y] = [0, 1].map((axis) =>
    round(corners.reduce((sum, place) => sum + (place[axis] ?? 0), 0) / corners.length),
  );
  const [colour, dash] =
    check.length > 0 ? [doubted, ` stroke-dasharray="${round(4 * line)} ${round(2.5 * line)}"`] : [sure, ""];
  return [
    `<polygon points="${points}" fill="none" stroke="${under}" stroke-width="${round(2 * line)}"/>`,
    `<polygon points="${points}" fill="none" stroke="${colour}" stroke-width="${round(line)}"${dash}/>`,
    `<text x="${x}" y="${y}" fill="${colour}" stroke="${under}" stroke-width="${round(1.6 * line)}" paint-order="stroke">${escaped(text)}</text>`,
  ].join("");
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

function round(value: number): number {
  return Math.round(100 * value) / 100;
}
