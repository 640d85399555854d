import type { Style } from "../engine/back/index.ts";
import {
  type Direction,
  type Grain,
  type Keep,
  type Kind,
  kinds,
  type Method,
  type Time,
  type Use,
} from "../engine/cloth/index.ts";
import type { ClothRole, LayoutNode } from "../engine/layout/index.ts";
import type { Column } from "../files/index.ts";
import type { Voice } from "../words/index.ts";
import { ownWords, quoted } from "./measures.ts";

const kindNames: { readonly [K in Kind]: readonly [one: string, many: string] } = {
  strip: ["Streifen", "Streifen"],
  square: ["Quadrat", "Quadrate"],
  rectangle: ["Rechteck", "Rechtecke"],
  block: ["Block", "Blöcke"],
  "part-block": ["Teilblock", "Teilblöcke"],
  triangle: ["Dreieck", "Dreiecke"],
  "half-square-triangle": ["Dreiecksquadrat", "Dreiecksquadrate"],
  length: ["Stoffbahn", "Stoffbahnen"],
  crumbs: ["Schnipsel", "Schnipsel"],
  odd: ["Sonderform", "Sonderformen"],
};

export function kindName(kind: Kind, count: number, { isOne }: Voice): string {
  const [one, many] = kindNames[kind];
  return isOne(count) ? one : many;
}

/** "Streifen 4" for `strip-4`. An id that is none of ours is shown as it is. */
export function pieceName(id: string): string {
  const kind = kinds.find((name) => id.startsWith(`${name}-`) && /^\d+$/.test(id.slice(name.length + 1)));
  return kind === undefined ? quoted(id) : `${kindNames[kind][0]} ${id.slice(kind.length + 1)}`;
}

export function unitName(stepId: string): string {
  return /^\d+$/.test(stepId) ? `Einheit ${stepId}` : `Einheit ${quoted(stepId)}`;
}

/** Rows are counted from the top, places from the left. */
export function placeName(path: readonly number[], layout?: LayoutNode): string {
  if (path.length === 0) return "die ganze Rückseite";
  const words: string[] = [];
  let node = layout;
  for (const index of path) {
    const direction = node?.kind === "join" ? node.direction : null;
    words.push(`${direction === null ? "Teil" : direction === "below" ? "Reihe" : "Platz"} ${index + 1}`);
    node = node?.kind === "join" ? node.parts[index] : undefined;
  }
  return words.join(", ");
}

export const styleNames: { readonly [S in Style]: string } = {
  "insert-across": "gepatchte Reihe quer",
  "insert-down": "gepatchte Reihe längs",
  cross: "Kreuz neben der Mitte",
  chunks: "große Flächen",
  strippy: "Streifen",
  "block-line": "Blöcke in einer Linie",
  centred: "um eine Mitte herum",
  squares: "gleiche Quadrate",
  "all-over": "Reste überall",
};

export function styleSentence(style: Style): string {
  switch (style) {
    case "insert-across":
      return "Eine gepatchte Reihe läuft quer zwischen zwei Flächen Grundstoff.";
    case "insert-down":
      return "Eine gepatchte Reihe läuft längs zwischen zwei Flächen Grundstoff.";
    case "cross":
      return "Zwei gepatchte Reihen kreuzen sich neben der Mitte, in den Ecken liegt Grundstoff.";
    case "chunks":
      return "Wenige Reihen aus großen Flächen liegen übereinander.";
    case "strippy":
      return "Streifen laufen über die ganze Breite, einer oder zwei davon sind gepatcht.";
    case "block-line":
      return "Blöcke werden auf eine Breite gebracht und stehen in einer Linie.";
    case "centred":
      return "Streifen wachsen um eine Mitte, die nicht genau in der Mitte liegt.";
    case "squares":
      return "Gleich große Quadrate füllen die Rückseite.";
    case "all-over":
      return "Reste bedecken die ganze Rückseite. Das kostet die meiste Zeit.";
  }
}

export const useNames: { readonly [U in Use]: string } = {
  first: "zuerst verwenden",
  yes: "verwenden",
  "if-needed": "bei Bedarf verwenden",
  edge: "nur am Rand",
  must: "muss hinein",
  "keep-back": "zurückbehalten",
  "give-away": "verschenken",
};

export const keepNames: { readonly [K in Keep]: string } = {
  trim: "darf beschnitten werden",
  whole: "bleibt ganz",
  cut: "darf zerschnitten werden",
};

export const directionNames: { readonly [D in Direction]: string } = {
  none: "ohne Richtung",
  "one-way": "hat ein Oben",
  stripe: "gestreift",
};

export const grainNames: { readonly [G in Grain]: string } = {
  straight: "Kanten im Fadenlauf",
  bias: "Kanten schräg zum Fadenlauf",
  unknown: "Fadenlauf nicht bekannt",
  legs: "kurze Seiten im Fadenlauf",
  "long-side": "lange Seite im Fadenlauf",
};

export const methodNames: { readonly [M in Method]: string } = {
  frame: "auf dem Longarm-Rahmen",
  machine: "auf der Nähmaschine",
  hand: "von Hand",
};

export const timeNames: { readonly [T in Time]: string } = {
  afternoon: "ein Nachmittag",
  weekend: "ein Wochenende",
  any: "so lange es eben dauert",
};

export const roleNames: { readonly [R in ClothRole]: string } = {
  plain: "Grundstoff",
  spacer: "Zwischenstreifen",
  coping: "Ausgleichsstreifen",
};

const patternNames = new Map([
  ["pinwheel", "Windmühle"],
  ["broken-dishes", "Broken Dishes"],
  ["diamond", "Raute"],
  ["hourglass", "Sanduhr"],
  ["half-square-triangle", "Dreiecksquadrat"],
  ["square-in-square", "Quadrat im Quadrat"],
  ["squares", "Satz Quadrate"],
  ["strip-set", "Streifenset"],
  ["four-patch", "Four-Patch"],
  ["rounds", "Streifenrunden"],
  ["on-point", "Reihe auf der Spitze"],
  ["unit", "Einheit"],
]);

/** A pattern we have no word for is said as it is written, its hyphens opened. */
export function patternName(pattern: string): string {
  return patternNames.get(pattern) ?? ownWords(pattern.replaceAll("-", " "));
}

export const columnNames: { readonly [C in Column]: string } = {
  kind: "Art",
  width: "Breite",
  height: "Höhe",
  count: "Anzahl",
  fabric: "Stoff",
  colour: "Farbe",
  name: "Notiz",
  keep: "Schneiden",
  use: "Verwenden",
  direction: "Druck",
  grain: "Fadenlauf",
  washed: "Gewaschen",
  cloth: "Stoffart",
  area: "Fläche",
  weight: "Gewicht",
};
