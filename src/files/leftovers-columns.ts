import { directions, grains, keeps, kinds, uses } from "../engine/cloth/index.ts";

/** The columns of a leftovers table, in the order they are written. */
export const columns = [
  "kind",
  "width",
  "height",
  "count",
  "fabric",
  "colour",
  "name",
  "keep",
  "use",
  "direction",
  "grain",
  "washed",
  "cloth",
  "area",
  "weight",
] as const;
export type Column = (typeof columns)[number];
/** The columns that take one of a few words. */
export type WordColumn = "kind" | "keep" | "use" | "direction" | "grain" | "washed";

// A count that went unread would turn forty squares into one, so its other names are taken too.
const otherHeadings: ReadonlyMap<string, Column> = new Map([
  ["color", "colour"],
  ["quantity", "count"],
  ["qty", "count"],
  ["number", "count"],
  ["how many", "count"],
]);

/** The column a heading stands for, whatever its case and spaces; null: not one of ours. */
export function columnOf(heading: string): Column | null {
  const plain = heading
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, " ")
    .replace(/[:?]$/, "")
    .trim();
  return columns.find((column) => column === plain) ?? otherHeadings.get(plain) ?? null;
}

/** What may stand in a column of few words, and the other ways to write each. */
export type WordList<W extends string> = {
  readonly words: readonly W[];
  readonly others: Readonly<Record<string, W>>;
};

export const kindWords: WordList<(typeof kinds)[number]> = {
  words: kinds,
  others: {
    hst: "half-square-triangle",
    "orphan-block": "block",
    crumb: "crumbs",
    "partial-block": "part-block",
    "odd-shape": "odd",
  },
};

export const keepWords: WordList<(typeof keeps)[number]> = {
  words: keeps,
  others: { "may-be-trimmed": "trim", "keep-whole": "whole", "may-be-cut": "cut" },
};

export const useWords: WordList<(typeof uses)[number]> = {
  words: uses,
  others: { "use-first": "first", "edge-only": "edge", "must-be-in": "must", keep: "keep-back" },
};

export const directionWords: WordList<(typeof directions)[number]> = {
  words: directions,
  others: { oneway: "one-way", directional: "one-way", striped: "stripe" },
};

export const grainWords: WordList<(typeof grains)[number]> = {
  words: grains,
  others: { leg: "legs", "on-grain": "straight" },
};

export const washedWords: WordList<"yes" | "no"> = {
  words: ["yes", "no"],
  others: {
    true: "yes",
    y: "yes",
    "1": "yes",
    washed: "yes",
    false: "no",
    n: "no",
    "0": "no",
    unwashed: "no",
  },
};

/** The word a cell means, whatever its case, hyphens and plural; null: none of the list. */
export function wordOf<W extends string>(text: string, list: WordList<W>): W | null {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, "-");
  return exact(plain, list) ?? exact(plain.replace(/s$/, ""), list);
}

function exact<W extends string>(plain: string, list: WordList<W>): W | null {
  const own = list.words.find((word) => word === plain);
  if (own !== undefined) return own;
  return Object.hasOwn(list.others, plain) ? (list.others[plain] ?? null) : null;
}
