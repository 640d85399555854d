/** A leftover and its line, said. */
import type { Kind } from "../../engine/cloth/index.ts";
import type { Length } from "../../engine/length/index.ts";
import type { LinePiece, LineProblem } from "../../files/index.ts";
import { quoted, sentence, type Voice } from "../voice.ts";
import { lengthProblem } from "./lengthProblems.ts";
import { kindName, useNames } from "./names.ts";

/** What is said of a piece. */
export type SpokenPiece = Pick<
  LinePiece,
  "count" | "kind" | "width" | "height" | "area" | "weight" | "fabric" | "use"
>;

/** What a line left unsaid: the size a name stands for, or how wide the cloth is. */
export type TakenForGranted = {
  readonly named: string | null;
  readonly clothWidth: Length | null;
  readonly size: SpokenPiece;
};

/** "4 strips, 2½ × 31 in, teal dots". What isn't known is left out. */
export function pieceText(piece: SpokenPiece, voice: Voice): string {
  const { count = 1, kind, width, height, area, weight, fabric = "", use = "yes" } = piece;
  const what = kind === undefined ? voice.count(count, "piece", "pieces") : kindText(kind, count, voice);
  const sized = width !== undefined && height !== undefined ? voice.size({ width, height }) : "";
  const amount =
    area === undefined ? (weight === undefined ? sized : weightText(weight, voice)) : voice.area(area);
  return [what, amount, fabric, use === "yes" ? "" : useNames[use]].filter((text) => text !== "").join(", ");
}

function kindText(kind: Kind, count: number, voice: Voice): string {
  const name = kindName(kind, count, voice);
  return kind === "crumbs" ? name : `${voice.number(count)} ${name}`;
}

const gramsPerOunce = 28.349523125;

function weightText(grams: number, voice: Voice): string {
  const [amount, unit] = voice.unit === "in" ? [grams / gramsPerOunce, "oz"] : [grams, "g"];
  return `${voice.number(Math.round(amount * 10) / 10)}\u00a0${unit}`;
}

export function takenText({ named, clothWidth, size }: TakenForGranted, voice: Voice): string {
  const { width, height } = size;
  if (named !== null && width !== undefined && height !== undefined) {
    return `${sentence(quoted(named))} is taken as ${voice.size({ width, height })}. Measure yours, they differ.`;
  }
  return clothWidth === null
    ? ""
    : `From ${voice.trade.selvage} to ${voice.trade.selvage} is taken as ${voice.length(clothWidth)}.`;
}

export function lineProblemText(problem: LineProblem, voice: Voice): string {
  const inInches = voice.unit === "in";
  const strip = inInches ? "2 1/2 x 31" : "6.5 x 80";
  switch (problem.kind) {
    case "not-a-size":
      return sentence(
        lengthProblem(
          problem.problem,
          problem.field === "area" || problem.field === "weight" ? problem.field : "size",
        ),
      );
    case "no-size":
      return `No size stands here yet. Write it as cut, like ${strip}.`;
    case "one-side":
      return oneSideText(problem.pieceKind, strip, voice);
    case "no-amount":
      return `Crumbs need a weight or an area. Write ${inInches ? "crumbs 6 oz" : "crumbs 170 g"}, or ${inInches ? "crumbs 120 sq in" : "crumbs 800 cm²"}.`;
    case "not-square":
      return `A square has one size, and ${quoted(problem.text)} gives two. Write how many first, like 10 squares 5.`;
    case "three-numbers":
      return `${quoted(problem.text)} can be read in two ways. Write how many first, like 4 squares 5 x 5.`;
    case "not-a-count":
      return `${quoted(problem.text)} is no number of pieces. Write how many there are, like 4.`;
    case "extra-number":
      return `${quoted(problem.text)} has no place in this line. Take it out, or put the fabric's name in quotation marks.`;
    case "finished-size":
      return `${sentence(quoted(problem.text))} leaves out the seams. Write the size as it was cut, seams and all.`;
    case "too-long":
      return `This line has ${voice.number(problem.length)} letters, and ${voice.number(problem.most)} is the most. Write one leftover in a line.`;
  }
}

function oneSideText(kind: Kind | null, strip: string, voice: Voice): string {
  if (kind === null)
    return `Only one measure stands here. Say that it is a square or a block, or add the other side, like ${strip}.`;
  const name = sentence(kindName(kind, 2, voice));
  const across =
    kind === "strip" ? `, or ${voice.unit === "in" ? "2 1/2" : "6.5"} x wof for the width of the fabric` : "";
  return `${name} have two sides. Write both, like ${strip}${across}.`;
}

/** "4 of 2½ × 31 in": what a picture can't say. */
export function captionText({ count = 1, width, height, area, weight }: SpokenPiece, voice: Voice): string {
  if (area !== undefined) return voice.area(area);
  if (weight !== undefined) return weightText(weight, voice);
  if (width === undefined || height === undefined) return voice.number(count);
  const size = width === height ? voice.length(width) : voice.size({ width, height });
  return voice.isOne(count) ? size : `${voice.number(count)} of ${size}`;
}
