import type { LengthProblem } from "../engine/length/index.ts";
import type { Measured } from "../words/index.ts";
import { quoted } from "./measures.ts";

const examples: { readonly [M in Measured]: string } = {
  size: "6,5 cm, 63 mm oder 2 1/2 Inch",
  area: "800 cm² oder 120 in²",
  weight: "110 g oder 4 oz",
};

const units: { readonly [M in Measured]: string } = {
  size: "mm, cm, m, Inch, ft oder yd",
  area: "cm², m² oder in²",
  weight: "g, kg, oz oder lb",
};

const measures: { readonly [M in Measured]: string } = { size: "Maß", area: "Fläche", weight: "Gewicht" };

/** What was written and why it is no size, area or weight. */
export function lengthProblem(problem: LengthProblem, measured: Measured = "size"): string {
  const text = quoted(problem.text);
  const example = examples[measured];
  switch (problem.kind) {
    case "empty":
      return `hier steht nichts. Schreib es wie ${example}.`;
    case "not-a-number":
      return `${text} lässt sich nicht als ${measures[measured]} lesen. Schreib es wie ${example}.`;
    case "other-digits":
      return `${text} hat andere Ziffern als 0 bis 9. Schreib es mit diesen.`;
    case "unknown-unit":
      return `${text} hat die Einheit ${quoted(problem.unit)}, die hier nicht bekannt ist. Nimm ${units[measured]}.`;
    case "no-unit":
      return `${text} hat keine Einheit. Schreib ${units[measured]} dazu.`;
    case "zero":
      return `bei ${text} bleibt nichts zum Nähen. Miss noch einmal, oder lass es weg.`;
    case "negative":
      return `${text} ist weniger als nichts. Nimm das Minus weg.`;
    case "too-large":
      return `${text} ist größer, als ein Quilt es je braucht. Sieh dir Zahl und Einheit noch einmal an.`;
    case "ambiguous":
      return `${text} kann ${problem.readings.join(" oder ")} heißen. Schreib, was du meinst.`;
    case "date":
      return `${text} sieht wie ein Datum aus. ${dateAdvice(problem.fraction)}`;
  }
}

function dateAdvice(fraction: string | null): string {
  return fraction === null
    ? "Vielleicht hat eine Tabellenkalkulation es verändert. Schreib das Maß noch einmal als Text, oder mit Komma wie 2,5."
    : `Vielleicht hat eine Tabellenkalkulation ${fraction} verändert. Schreib ${fraction} noch einmal als Text.`;
}
