import type { FoundRow, PhotoRow, PieceRow } from "../photoRow.ts";
import type { Raw } from "../raw.ts";
import { markdown, origin } from "./table.ts";

export type PhotoFigure = {
  readonly what: string;
  readonly reached: string;
  /** What it must reach, and what it should. */
  readonly floor: string;
  readonly aim: string;
};

/** What was reached on photographs, beside what is asked for: of pieces that lie apart, with two sheets or the cards. */
export function photoFigures(rows: readonly PhotoRow[]): readonly PhotoFigure[] {
  const good = rows.filter(({ group }) => group !== "one-sheet" && group !== "touching");
  const apart = good.flatMap((row) => row.pieces.map((piece) => ({ ...piece, row })));
  const touching = rows.filter(({ group }) => group === "touching").flatMap(({ pieces }) => pieces);
  const clear = apart.filter(({ contrast }) => contrast >= 8);
  const found = apart.flatMap(({ found, row }) => (found ? [{ ...found, row }] : []));
  const wrong = good.flatMap((row) => row.wrong);
  const told = found.length + wrong.length;
  return [
    figure("markers found", share(sum(rows, "markersFound"), sum(rows, "markers"), 1), "99.5 %", "100 %"),
    figure("false ids", String(sum(rows, "falseIds")), "0", "0"),
    figure("pieces found, contrast from 8", foundShare(clear), "98 %", "99.5 %"),
    figure("pieces found, contrast 5–8", foundShare(apart.filter(between(5, 8))), "88 %", "95 %"),
    figure("pieces found, contrast under 5", foundShare(apart.filter(between(0, 5))), "–", "–"),
    figure("low-volume prints on a white wall found", foundShare(apart.filter(isPale)), "85 %", "95 %"),
    figure("false pieces", share(wrong.length, told, 1), "2 %", "0.5 %"),
    figure("right class", share(found.filter(({ fits }) => fits).length, found.length, 1), "97 %", "99 %"),
    ...sizeFigures(found),
    ...colourFigures(found),
    ...touchingFigures(touching.filter(({ touches }) => touches)),
    ...markedFigures(good),
    figure("seconds of one core: median / most", secondsOf(rows), "2.5", "1.5"),
  ];
}

function figure(what: string, reached: string, floor: string, aim: string): PhotoFigure {
  return { what, reached, floor, aim };
}

type Found = FoundRow & { readonly row: PhotoRow };

function sizeFigures(found: readonly Found[]): readonly PhotoFigure[] {
  const off = sorted(found.flatMap(({ off }) => off.map(Math.abs)));
  const over = found.flatMap(({ over }) => over);
  return [
    figure(
      "side error, in: median / 95 % / 99 %",
      [0.5, 0.95, 0.99].map((share) => at(off, share).toFixed(3)).join(" / "),
      ".02 / .09 / .16",
      ".01 / .05 / .10",
    ),
    figure(
      "stated size over .02 in above the truth",
      share(over.filter((more) => more > 0.02).length, over.length, 1),
      "4 %",
      "1 %",
    ),
  ];
}

function colourFigures(found: readonly Found[]): readonly PhotoFigure[] {
  const of = (tone: string) =>
    sorted(found.filter(({ row }) => row.tone === tone).map(({ colour }) => colour));
  const both = (colours: readonly number[]) =>
    [0.5, 0.95].map((share) => at(colours, share).toFixed(1)).join(" / ");
  const [linear, phone] = [of("linear"), of("phone")];
  return [
    figure("color ΔE00, linear renders: median / 95 %", both(linear), "2 / 4", "1 / 3"),
    ...(phone.length > 0
      ? [figure("color ΔE00, a phone's tone curve: median / 95 %", both(phone), "4 / 6.5", "2.5 / 5")]
      : []),
  ];
}

/** Two that touch, one after the other: both found, or whatever was found of them marked. */
function touchingFigures(pieces: readonly PieceRow[]): readonly PhotoFigure[] {
  if (pieces.length === 0) return [];
  const pairs = pieces
    .filter((_, at) => at % 2 === 0)
    .map((piece, at) => [piece, pieces[2 * at + 1]] as const);
  const handled = pairs.filter(([one, other]) => one.found && other?.found);
  return [figure("touching pairs told apart", share(handled.length, pairs.length, 0), "65 %", "90 %")];
}

const wrongSize = 0.1;

/** Wrong is what is no piece, what is of another class, and a size more than a tenth of an inch off. */
function markedFigures(good: readonly PhotoRow[]): readonly PhotoFigure[] {
  const found = good.flatMap((row) => row.pieces.flatMap(({ found }) => (found ? [found] : [])));
  const wrong = [
    ...good.flatMap((row) => row.wrong),
    ...found.filter(({ fits, off }) => !fits || off.some((value) => Math.abs(value) > wrongSize)),
  ];
  const all = [...good.flatMap((row) => row.wrong), ...found];
  const marked = (some: readonly { readonly check: readonly string[] }[]) =>
    some.filter(({ check }) => check.length > 0).length;
  return [
    figure("wrong pieces that are marked", share(marked(wrong), wrong.length, 0), "65 %", "90 %"),
    figure("pieces marked, of all", share(marked(all), all.length, 1), "16 %", "15 %"),
  ];
}

function secondsOf(rows: readonly PhotoRow[]): string {
  const seconds = sorted(rows.map(({ seconds }) => seconds));
  return [at(seconds, 0.5), at(seconds, 1)].map((value) => value.toFixed(1)).join(" / ");
}

function between(least: number, most: number) {
  return ({ contrast }: PieceRow) => contrast >= least && contrast < most;
}

function isPale({ print, row }: PieceRow & { readonly row: PhotoRow }): boolean {
  return row.group === "white" && print === "low-volume";
}

function foundShare(pieces: readonly PieceRow[]): string {
  return share(pieces.filter(({ found }) => found !== null).length, pieces.length, 1);
}

function share(part: number, all: number, digits: number): string {
  return all === 0 ? "–" : `${((100 * part) / all).toFixed(digits)} % (${part} of ${all})`;
}

function sum(rows: readonly PhotoRow[], key: "markers" | "markersFound" | "falseIds"): number {
  return rows.reduce((total, row) => total + row[key], 0);
}

function sorted(values: readonly number[]): readonly number[] {
  return values.toSorted((one, other) => one - other);
}

function at(values: readonly number[], share: number): number {
  return values[Math.min(values.length - 1, Math.floor(share * values.length))] ?? 0;
}

export function photoText(rendered: readonly Raw<PhotoRow>[], folder: readonly Raw<PhotoRow>[]): string {
  const parts = [
    ...rendered.map((raw) => part(raw, renderedAbout)),
    ...folder.map((raw) => part(raw, folderAbout)),
  ];
  return parts.length === 0 ? "" : ["## Pieces measured in photographs", ...parts].join("\n\n");
}

const renderedAbout = `### Rendered photographs

4000 × 3000 JPEG by the tests' own renderer, numbers nobody tunes on: boards, carpet, a gridded mat, plain floors and a white wall; ten
kinds of print; frayed edges, soft shadows, a cast, noise, tilt to 35°. Photographs with one sheet
alone are in the markers' and the seconds' lines only, those in which pieces touch in these and in the line on touching pairs.`;

const folderAbout = `### Photographs of another renderer

Twelve, also never tuned on; those with one sheet alone are in the markers' and the seconds' lines only.`;

function part(raw: Raw<PhotoRow>, about: string): string {
  const rows = photoFigures(raw.rows).map(({ what, reached, floor, aim }) => [what, reached, floor, aim]);
  return [about, origin([raw]), markdown({ heads: ["", "measured", "floor", "aim"], rows })].join("\n\n");
}
