import type { DraftProblem, JobField, JobProblem, PieceProblem } from "../engine/cloth/index.ts";
import type { Voice } from "../words/index.ts";
import { quoted } from "./measures.ts";
import { columnNames, grainNames, kindName } from "./names.ts";

export function draftProblem(problem: DraftProblem, voice: Voice): string {
  if (problem.row === null) return jobProblem(problem, voice);
  return `Zeile ${problem.row}, ${columnNames[problem.field]}: ${pieceProblem(problem, voice)}`;
}

export function pieceProblem(problem: PieceProblem, voice: Voice): string {
  switch (problem.kind) {
    case "size-missing":
      return "hier steht nichts. Trag das zugeschnittene Maß ein.";
    case "size-zero":
      return "das Maß ist 0. Trag das zugeschnittene Maß ein, oder lass die Zeile weg.";
    case "piece-too-large":
      return `${voice.length(problem.size)} ist mehr als die ${voice.length(problem.most)}, die ein Stück haben darf. Sieh dir Zahl und Einheit an.`;
    case "narrower-than-seams":
      return `${voice.length(problem.size)} ist nicht breiter als die beiden Nahtzugaben, zusammen ${voice.length(problem.seams)}. Näh es in einen Schnipselblock, oder lass es weg.`;
    case "count-not-whole":
      return `${voice.number(problem.count)} ist keine ganze Anzahl. Schreib, wie viele es sind.`;
    case "count-too-small":
      return `davon gibt es ${voice.number(problem.count)}. Schreib 1 oder mehr, oder lass die Zeile weg.`;
    case "count-too-large":
      return `${voice.number(problem.count)} ist mehr als die ${voice.number(problem.most)} Stücke, die eine Zeile haben darf. Schreib, wie viele es sind.`;
    default:
      return otherPieceProblem(problem, voice);
  }
}

type Other = Exclude<
  PieceProblem,
  {
    kind:
      | "size-missing"
      | "size-zero"
      | "piece-too-large"
      | "narrower-than-seams"
      | "count-not-whole"
      | "count-too-small"
      | "count-too-large";
  }
>;

function otherPieceProblem(problem: Other, voice: Voice): string {
  switch (problem.kind) {
    case "crumbs-counted":
      return "Schnipsel sind ein einziger Haufen. Lass die Anzahl weg, und gib Fläche oder Gewicht von allen zusammen an.";
    case "crumbs-without-amount":
      return "Schnipsel brauchen eine Fläche oder ein Gewicht. Wieg sie, oder breite sie aus und miss.";
    case "amount-zero":
      return "es bleibt nichts zum Nähen. Wieg oder miss noch einmal, oder lass die Zeile weg.";
    case "amount-too-large":
      return `das ist mehr als ${voice.area(problem.most)} Stoff. Sieh dir Zahl und Einheit an.`;
    case "area-and-weight":
      return "es ist auch eine Fläche angegeben, darum zählt das Gewicht nicht.";
    case "not-used":
      return notUsed(problem.field);
    case "no-colour":
      return "es ist keine Farbe angegeben, darum zählt dieser Stoff beim Kontrast nicht mit. Gib eine Farbe an, etwa teal oder #3e4257.";
    case "unknown-colour":
      return `${quoted(problem.colour)} ist keine Farbe, die hier bekannt ist. Schreib eine einfache wie teal, oder eine wie #3e4257.`;
    case "colour-conflict":
      return `${quoted(problem.fabric)} ist hier ${quoted(problem.colour)} und in Zeile ${problem.firstRow} ${quoted(problem.firstColour)}. Sie gelten als zwei Stoffe. Ist es einer, gib beiden Zeilen dieselbe Farbe.`;
    case "grain-not-for-kind":
      return grainNotForKind(problem, voice);
  }
}

function notUsed(field: "width" | "height" | "area" | "weight"): string {
  return field === "width" || field === "height"
    ? "Schnipsel kennt man nach Fläche oder Gewicht, darum zählt das nicht."
    : "ein Stück mit Breite und Höhe braucht nichts weiter, darum zählt das nicht.";
}

function grainNotForKind(
  problem: Extract<PieceProblem, { kind: "grain-not-for-kind" }>,
  voice: Voice,
): string {
  const kinds = kindName(problem.pieceKind, 2, voice);
  const words =
    problem.pieceKind === "triangle" ? ["legs", "long-side", "unknown"] : ["straight", "bias", "unknown"];
  return `${quoted(problem.grain)} (${grainNames[problem.grain]}) passt nicht für ${kinds}. Schreib ${voice.either(words)}.`;
}

const sideNames = { width: "Breite", height: "Höhe" } as const;

function jobProblem(problem: JobProblem, voice: Voice): string {
  switch (problem.kind) {
    case "back-zero":
      return `Die ${sideNames[problem.side]} der Rückseite ist 0. Gib an, wie groß die Rückseite von Kante zu Kante ist.`;
    case "back-too-small":
      return `Die ${sideNames[problem.side]} der Rückseite ist ${voice.length(problem.size)}, und ${voice.length(problem.least)} ist das Mindeste, um darin etwas zu patchen. Sieh dir Zahl und Einheit an.`;
    case "back-too-large":
      return `Die ${sideNames[problem.side]} der Rückseite ist ${voice.length(problem.size)}, und ${voice.length(problem.most)} ist das Höchste. Sieh dir Zahl und Einheit an.`;
    case "back-off-step":
      return `Die ${sideNames[problem.side]} der Rückseite, ${voice.length(problem.size)}, liegt zwischen zwei Strichen des Lineals. Sie wird auf ${voice.length(problem.made)} gebracht.`;
    case "top-zero":
      return `Die ${sideNames[problem.side]} des Tops ist 0. Miss das Top, und gib beide Seiten an.`;
    case "top-larger-than-back":
      return `Die ${sideNames[problem.side]} des Tops ist ${voice.length(problem.top)} und die der Rückseite ${voice.length(problem.back)}. Mach die Rückseite größer als das Top.`;
    case "back-short-of-extra":
      return `Die ${sideNames[problem.side]} der Rückseite ist ${voice.length(problem.back)}; mit der gewünschten Zugabe wären es ${voice.length(problem.wanted)}. Mach die Rückseite größer, oder gib weniger zu.`;
    case "extra-out-of-range":
      return `Die Zugabe an jeder Seite ist ${voice.length(problem.size)}. Wähle sie zwischen ${voice.length(problem.least)} und ${voice.length(problem.most)}.`;
    case "out-of-range":
      return `${jobFieldNames[problem.field]}: ${voice.length(problem.size)}. Wähle es zwischen ${voice.length(problem.least)} und ${voice.length(problem.most)}.`;
    case "unknown-plain-colour":
      return `Der Grundstoff: ${quoted(problem.colour)} ist keine Farbe, die hier bekannt ist. Schreib eine einfache wie teal, oder eine wie #3e4257.`;
    case "too-many-pieces":
      return `Es sind ${voice.count(problem.total, "Stück", "Stücke")}, und ein Plan fasst ${voice.number(problem.most)}. Heb einige für den nächsten Quilt auf.`;
    case "nothing-to-plan":
      return "Es ist kein Rest da, der verwendet werden kann: Die Liste ist leer, oder alles darin wird zurückbehalten oder verschenkt. Trag einen ein, oder gib einen frei.";
  }
}

const jobFieldNames: { readonly [F in JobField]: string } = {
  step: "Der kleinste Strich des Lineals",
  seam: "Die Nahtzugabe",
  plainSeam: "Die Nahtzugabe zwischen Flächen aus Grundstoff",
  top: "Das Top",
  back: "Die Rückseite",
  floor: "Das kleinste einzeln gelegte Stück",
  clothWidth: "Die nutzbare Stoffbreite",
  plain: "Der Grundstoff",
  pieces: "Die Reste",
};
