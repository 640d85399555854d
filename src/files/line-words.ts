import type { Kind, Use } from "../engine/cloth/index.ts";

/**
 * Words she may type in a line, all in the trade's own English. They are read, never shown. Each is written in the
 * singular; a plural `s` is taken too.
 */
const kindsTyped: readonly (readonly [Kind, string])[] = [
  ["strip", "strip"],
  ["square", "square"],
  ["rectangle", "rectangle|rect"],
  ["block", "block|orphan block|orphan"],
  ["part-block", "part block|partial block|half block|piece of block|bit of block"],
  ["triangle", "triangle|tri"],
  ["half-square-triangle", "half square triangle|half square|hst"],
  ["length", "length|yardage|length of cloth"],
  ["crumbs", "crumb|crumbs|bag of crumbs|bag of scraps|bag of bits|bag"],
  ["odd", "odd piece|odd shape|odd one|odd"],
];

/** Words that say there are pieces and not of which kind. */
const plainPieces = "piece|pc|patch|scrap|offcut|off-cut|bit";
const plural = /s$/;

export const kindPhrases: ReadonlyMap<string, Kind> = new Map(
  kindsTyped.flatMap(([kind, phrases]) => forms(phrases).map((phrase): [string, Kind] => [phrase, kind])),
);

export const pieceWords: ReadonlySet<string> = new Set([...forms(plainPieces), "patches"]);

function forms(phrases: string): string[] {
  return phrases.split("|").flatMap((phrase) => {
    const spelled = spelledOut(phrase);
    return plural.test(spelled) ? [spelled] : [spelled, `${spelled}s`];
  });
}

/** Lower case, hyphens opened: how phrases are looked up. */
export function spelledOut(phrase: string): string {
  return phrase.toLowerCase().replace(/[\s‐‑-]+/g, " ");
}

/** The longest phrase has so many words. */
export const longestPhrase = 4;

export const usePhrases: ReadonlyMap<string, Use> = new Map([
  ["use first", "first"],
  ["if needed", "if-needed"],
  ["edge only", "edge"],
  ["only at the edge", "edge"],
  ["must be in", "must"],
  ["keep back", "keep-back"],
  ["give away", "give-away"],
]);

export const useSpelled: { readonly [U in Use]: string } = {
  first: "use first",
  yes: "",
  "if-needed": "if needed",
  edge: "edge only",
  must: "must be in",
  "keep-back": "keep back",
  "give-away": "give away",
};

/** From selvage to selvage. */
export const clothWidthPhrases: ReadonlySet<string> = new Set([
  "wof",
  "width of fabric",
  "width of cloth",
  "cloth width",
  "fabric width",
  "full width",
]);

/**
 * What cloth is cut into at the bolt, by its share of the yard (or metre) and of the width. Makers' own names for
 * packs are left out: several are registered marks.
 */
export type NamedSize = {
  /** Eighths of a yard, or of a metre where the yard would be strange. */
  readonly eighths: number;
  readonly metric?: true;
  readonly widths: 1 | 0.5;
};

const sizesTyped: readonly (readonly [string, NamedSize])[] = [
  ["fat quarter|fq", { eighths: 4, widths: 0.5 }],
  ["fat eighth|f8", { eighths: 2, widths: 0.5 }],
  ["long quarter|quarter yard|quarter of a yard", { eighths: 2, widths: 1 }],
  ["long eighth|eighth of a yard", { eighths: 1, widths: 1 }],
  ["half yard|half a yard", { eighths: 4, widths: 1 }],
  ["half metre|half meter|half a metre|half a meter", { eighths: 4, metric: true, widths: 1 }],
  ["quarter metre|quarter meter", { eighths: 2, metric: true, widths: 1 }],
];

export const namedSizes: ReadonlyMap<string, NamedSize> = new Map(
  sizesTyped.flatMap(([phrases, size]) =>
    forms(phrases).map((phrase): [string, NamedSize] => [phrase, size]),
  ),
);

export const countWords: ReadonlyMap<string, number> = new Map(
  [
    ["a", 1],
    ["an", 1],
    ..."one two three four five six seven eight nine ten eleven twelve"
      .split(" ")
      .map((word, index) => [word, index + 1] as const),
    ["a dozen", 12],
    ["dozen", 12],
    ["a pair of", 2],
  ].map(([word, count]): [string, number] => [String(word), Number(count)]),
);

/** Words between the parts that say nothing themselves. */
export const fillers: ReadonlySet<string> = new Set(
  "of in at each ea about approx approximately ca roughly or so and with the off cut @ = per".split(" "),
);

/** Behind a number these would be a part of it: `2 and a half`. */
export const fractionWords =
  /^(?:and )?(?:an? |one |three |five |seven )?(?:half|quarter|third|eighth|sixteenth)s?$/;

/** Units, as they may stand behind a number. */
export const unitWords: ReadonlySet<string> = new Set(
  [
    "in inch inches ins zoll ft foot feet fuß yd yds yard yards",
    "mm millimetre millimetres millimeter millimeters m metre metres meter meters",
    "cm centimetre centimetres centimeter centimeters zentimeter",
    "g gr gram grams gramme grammes gramm kg kilo kilos kilogram kilograms kilogramm",
    "oz ounce ounces unze unzen lb lbs pound pounds",
    "sq square sqin sqft sqyd sqcm qcm",
  ].flatMap((words) => words.split(" ")),
);
