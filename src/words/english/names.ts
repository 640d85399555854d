import type { Style } from "../../engine/back/index.ts";
import {
  type Direction,
  type Grain,
  type Keep,
  type Kind,
  kinds,
  type Method,
  type Time,
  type Use,
} from "../../engine/cloth/index.ts";
import type { ClothRole, LayoutNode } from "../../engine/layout/index.ts";
import { quoted, type Voice } from "../voice.ts";

const kindNames: { readonly [K in Kind]: readonly [one: string, many: string] } = {
  strip: ["strip", "strips"],
  square: ["square", "squares"],
  rectangle: ["rectangle", "rectangles"],
  block: ["block", "blocks"],
  "part-block": ["part block", "part blocks"],
  triangle: ["triangle", "triangles"],
  "half-square-triangle": ["half-square triangle", "half-square triangles"],
  length: ["length", "lengths"],
  crumbs: ["crumbs", "crumbs"],
  odd: ["odd piece", "odd pieces"],
};

export function kindName(kind: Kind, count: number, { isOne }: Voice): string {
  const [one, many] = kindNames[kind];
  return isOne(count) ? one : many;
}

/** "strip 4" for `strip-4`. An id that is none of ours is shown as it is. */
export function pieceName(id: string): string {
  const kind = kinds.find((name) => id.startsWith(`${name}-`) && /^\d+$/.test(id.slice(name.length + 1)));
  return kind === undefined ? quoted(id) : `${kindNames[kind][0]} ${id.slice(kind.length + 1)}`;
}

export function unitName(stepId: string): string {
  return /^\d+$/.test(stepId) ? `unit ${stepId}` : `unit ${quoted(stepId)}`;
}

/** Rows are counted from the top, places from the left. */
export function placeName(path: readonly number[], layout?: LayoutNode): string {
  if (path.length === 0) return "the whole back";
  const words: string[] = [];
  let node = layout;
  for (const index of path) {
    const direction = node?.kind === "join" ? node.direction : null;
    words.push(`${direction === null ? "part" : direction === "below" ? "row" : "place"} ${index + 1}`);
    node = node?.kind === "join" ? node.parts[index] : undefined;
  }
  return words.join(", ");
}

export const styleNames: { readonly [S in Style]: string } = {
  "insert-across": "a pieced row across",
  "insert-down": "a pieced row down",
  cross: "an off-centre cross",
  chunks: "big chunks",
  strippy: "strippy",
  "block-line": "a line of blocks",
  centred: "grown from a middle",
  squares: "equal squares",
  "all-over": "leftovers all over",
};

export function styleName(style: Style, { trade }: Voice): string {
  return styleNames[style].replace("centre", trade.centre);
}

export function styleSentence(style: Style, { trade }: Voice): string {
  switch (style) {
    case "insert-across":
      return "One pieced row runs across between two plain parts.";
    case "insert-down":
      return "One pieced row runs down between two plain parts.";
    case "cross":
      return `Two pieced rows cross away from the ${trade.centre}, with plain cloth in the corners.`;
    case "chunks":
      return "A few rows of big chunks are stacked.";
    case "strippy":
      return "Strips run the full width, one or two of them pieced.";
    case "block-line":
      return "Blocks are brought to one width and stand in a line.";
    case "centred":
      return `Strips grow round a middle that lies off the ${trade.centre}.`;
    case "squares":
      return "Equal squares fill the back.";
    case "all-over":
      return "Leftovers cover the whole back. It takes the most time.";
  }
}

export const useNames: { readonly [U in Use]: string } = {
  first: "use first",
  yes: "use",
  "if-needed": "use if needed",
  edge: "only at the edge",
  must: "must be in",
  "keep-back": "keep back",
  "give-away": "give away",
};

export const keepNames: { readonly [K in Keep]: string } = {
  trim: "may be trimmed",
  whole: "keep whole",
  cut: "may be cut up",
};

export const directionNames: { readonly [D in Direction]: string } = {
  none: "any way up",
  "one-way": "one way up",
  stripe: "striped",
};

export const grainNames: { readonly [G in Grain]: string } = {
  straight: "edges on the grain",
  bias: "edges on the bias",
  unknown: "grain not known",
  legs: "short sides on the grain",
  "long-side": "long side on the grain",
};

export function methodName(method: Method, { trade }: Voice): string {
  switch (method) {
    case "frame":
      return "on a frame";
    case "machine":
      return `on a ${trade.homeMachine}`;
    case "hand":
      return "by hand";
  }
}

export const timeNames: { readonly [T in Time]: string } = {
  afternoon: "an afternoon",
  weekend: "a weekend",
  any: "as long as it takes",
};

export const roleNames: { readonly [R in ClothRole]: string } = {
  plain: "plain cloth",
  spacer: "spacer",
  coping: "coping strip",
};

const patternNames = new Map([
  ["pinwheel", "pinwheel"],
  ["broken-dishes", "broken dishes"],
  ["diamond", "diamond"],
  ["hourglass", "hourglass"],
  ["half-square-triangle", "half-square triangle"],
  ["square-in-square", "square in a square"],
  ["squares", "set of squares"],
  ["strip-set", "strip set"],
  ["four-patch", "four-patch"],
  ["rounds", "rounds of strips"],
  ["on-point", "row on point"],
]);

/** Words of the trade for a unit's pattern; one we have no word for is said as it is written, its hyphens opened. */
export function patternName(pattern: string): string {
  return patternNames.get(pattern) ?? quoted(pattern.replaceAll("-", " ")).slice(1, -1);
}

/** "a pinwheel"; names of many go without. */
export function onePattern(pattern: string): string {
  const name = patternName(pattern);
  if (name === "broken dishes" || name === "rounds of strips") return name;
  return /^([aeiou]|hour)/.test(name) ? `an ${name}` : `a ${name}`;
}
