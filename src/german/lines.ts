/** A leftover and its line, said. */
import type { Kind } from "../engine/cloth/index.ts";
import type { LineProblem } from "../files/index.ts";
import { type SpokenPiece, sentence, type TakenForGranted, type Voice } from "../words/index.ts";
import { lengthProblem } from "./lengthProblems.ts";
import { quoted } from "./measures.ts";
import { kindName, useNames } from "./names.ts";

/** "4 Streifen, 6,5 × 80 cm, petrol". What isn't known is left out. */
export function pieceText(piece: SpokenPiece, voice: Voice): string {
  const { count = 1, kind, width, height, area, weight, fabric = "", use = "yes" } = piece;
  const what = kind === undefined ? voice.count(count, "Stück", "Stücke") : kindText(kind, count, voice);
  const sized = width !== undefined && height !== undefined ? voice.size({ width, height }) : "";
  const amount =
    area === undefined ? (weight === undefined ? sized : weightText(weight, voice)) : voice.area(area);
  return [what, amount, fabric, use === "yes" ? "" : useNames[use]].filter((text) => text !== "").join(", ");
}

function kindText(kind: Kind, count: number, voice: Voice): string {
  const name = kindName(kind, count, voice);
  return kind === "crumbs" ? name : `${voice.number(count)} ${name}`;
}

/** Cloth is weighed in grams, also by those who cut in inches. */
function weightText(grams: number, voice: Voice): string {
  return `${voice.number(Math.round(grams * 10) / 10)}\u00a0g`;
}

export function takenText({ named, clothWidth, size }: TakenForGranted, voice: Voice): string {
  const { width, height } = size;
  if (named !== null && width !== undefined && height !== undefined)
    return `${quoted(named)} gilt als ${voice.size({ width, height })}. Miss deine nach, sie sind verschieden.`;
  return clothWidth === null ? "" : `Von Webkante zu Webkante gelten ${voice.length(clothWidth)}.`;
}

export function lineProblemText(problem: LineProblem, voice: Voice): string {
  const strip = stripSize(voice);
  switch (problem.kind) {
    case "not-a-size":
      return sentence(
        lengthProblem(
          problem.problem,
          problem.field === "area" || problem.field === "weight" ? problem.field : "size",
        ),
      );
    case "no-size":
      return `Hier steht noch kein Maß. Schreib es, wie es zugeschnitten ist, etwa ${strip}.`;
    case "one-side":
      return oneSideText(problem.pieceKind, voice);
    case "no-amount":
      return "Schnipsel brauchen ein Gewicht oder eine Fläche. Schreib Schnipsel 170 g oder Schnipsel 800 cm².";
    case "not-square":
      return `Ein Quadrat hat ein Maß, und ${quoted(problem.text)} gibt zwei. Schreib zuerst, wie viele, etwa 10 Quadrate 5.`;
    case "three-numbers":
      return `${quoted(problem.text)} lässt sich auf zwei Arten lesen. Schreib zuerst, wie viele, etwa 4 Quadrate 5 x 5.`;
    case "not-a-count":
      return `${quoted(problem.text)} ist keine Anzahl. Schreib, wie viele es sind, etwa 4.`;
    case "extra-number":
      return `${quoted(problem.text)} hat in dieser Zeile keinen Platz. Nimm es heraus, oder setz den Namen des Stoffs in Anführungszeichen.`;
    case "finished-size":
      return `${quoted(problem.text)} ist ohne die Nähte gemessen. Schreib das Maß, wie es zugeschnitten ist, mit den Nahtzugaben.`;
    case "too-long":
      return `Diese Zeile hat ${voice.number(problem.length)} Zeichen, und ${voice.number(problem.most)} ist das Höchste. Schreib einen Rest in eine Zeile.`;
  }
}

function stripSize({ unit }: Voice): string {
  return unit === "in" ? "2 1/2 x 31" : "6,5 x 80";
}

function oneSideText(kind: Kind | null, voice: Voice): string {
  const strip = stripSize(voice);
  if (kind === null)
    return `Hier steht nur ein Maß. Schreib dazu, dass es ein Quadrat oder ein Block ist, oder ergänze die andere Seite, etwa ${strip}.`;
  const across = kind === "strip" ? `, oder ${voice.unit === "in" ? "2 1/2" : "6,5"} x Stoffbreite` : "";
  return `${kindName(kind, 2, voice)} haben zwei Seiten. Schreib beide, etwa ${strip}${across}.`;
}

/** "4 × 6,5 × 80 cm" would be read wrongly: the number stands apart. */
export function captionText({ count = 1, width, height, area, weight }: SpokenPiece, voice: Voice): string {
  if (area !== undefined) return voice.area(area);
  if (weight !== undefined) return weightText(weight, voice);
  if (width === undefined || height === undefined) return voice.number(count);
  const size = width === height ? voice.length(width) : voice.size({ width, height });
  return voice.isOne(count) ? size : `${voice.number(count)} zu ${size}`;
}
