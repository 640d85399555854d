import type { BoardRow } from "../boardRow.ts";
import type { Raw } from "../raw.ts";
import { markdown, origin } from "./table.ts";

export type BoardFigure = { readonly what: string; readonly reached: string; readonly floor: string };

export function boardFigures(rows: readonly BoardRow[]): readonly BoardFigure[] {
  const off = sorted(rows.flatMap(({ off }) => off));
  const found = rows.filter((row) => row.found).length;
  return [
    { what: "boards found", reached: `${found} of ${rows.length}`, floor: "–" },
    { what: "lengths measured", reached: String(off.length), floor: "–" },
    { what: "off, per cent: median", reached: at(off, 0.5), floor: "0.25" },
    { what: "off, per cent: 95 %", reached: at(off, 0.95), floor: "0.8" },
    { what: "off, per cent: most", reached: at(off, 1), floor: "–" },
  ];
}

export function chessboardsText(raws: readonly Raw<BoardRow>[]): string {
  return raws.length === 0 ? "" : [opening, ...raws.map(runText)].join("\n\n");
}

const opening = `## Lengths in photographs of a chessboard

Photographs by others, 640 × 480, through a lens that bends much, of a board of nine by six inner corners whose squares are known to be
alike: \`left01.jpg\` to \`left14.jpg\` of Debian's package \`opencv-doc\`, fetched by the system's package manager. Three by three corners at
two opposite ends of the board stand for two printed sheets; from these alone come the camera, its bend and the board's plane. Then
every length of four squares, along rows and columns, is measured with it. Nothing was tuned on these photographs.`;

function runText(raw: Raw<BoardRow>): string {
  const figures = boardFigures(raw.rows).map(({ what, reached, floor }) => [what, reached, floor]);
  return [
    origin([raw]),
    markdown({ heads: ["", "measured", "floor"], rows: figures }),
    markdown({
      heads: ["photograph", "residual, px", "k1", "median, %", "most, %"],
      rows: raw.rows.map(line),
    }),
  ].join("\n\n");
}

function line({ name, residual, k1, off }: BoardRow): readonly string[] {
  const sizes = sorted(off);
  return [name, residual?.toFixed(2) ?? "–", k1?.toFixed(2) ?? "–", at(sizes, 0.5), at(sizes, 1)];
}

function sorted(values: readonly number[]): readonly number[] {
  return values.map(Math.abs).toSorted((one, other) => one - other);
}

function at(sizes: readonly number[], share: number): string {
  return sizes[Math.min(sizes.length - 1, Math.floor(share * sizes.length))]?.toFixed(2) ?? "–";
}
