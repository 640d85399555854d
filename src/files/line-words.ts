import type { Kind, Use } from "../engine/cloth/index.ts";

/**
 * Words she may type in a line, in the trade's own English and German, whichever language the app speaks. They are
 * read, never shown. Each is written in the singular; a plural `s` is taken too.
 */
const kindsTyped: readonly (readonly [Kind, string])[] = [
  ["strip", "strip|streifen"],
  ["square", "square|quadrat|quadrate"],
  ["rectangle", "rectangle|rect|rechteck|rechtecke"],
  ["block", "block|orphan block|orphan|blöcke"],
  ["part-block", "part block|partial block|half block|piece of block|bit of block|teilblock|teilblöcke"],
  ["triangle", "triangle|tri|dreieck|dreiecke"],
  ["half-square-triangle", "half square triangle|half square|hst|dreiecksquadrat|dreiecksquadrate"],
  ["length", "length|yardage|length of cloth|stoffbahn|stoffbahnen|bahn|bahnen"],
  ["crumbs", "crumb|crumbs|bag of crumbs|bag of scraps|bag of bits|bag|schnipsel|tüte schnipsel"],
  ["odd", "odd piece|odd shape|odd one|odd|sonderform|sonderformen"],
];

/** Words that say there are pieces and not of which kind. */
const plainPieces = "piece|pc|patch|scrap|offcut|off-cut|bit|stück|stücke";
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
  ["zuerst", "first"],
  ["bei bedarf", "if-needed"],
  ["nur am rand", "edge"],
  ["muss hinein", "must"],
  ["zurückbehalten", "keep-back"],
  ["verschenken", "give-away"],
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
  "stoffbreite",
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
    ["pair of", 2],
    ["a couple of", 2],
    ["couple of", 2],
    ..."ein zwei drei vier fünf sechs sieben acht neun zehn elf zwölf"
      .split(" ")
      .map((word, index) => [word, index + 1] as const),
    ["eine", 1],
    ["einen", 1],
  ].map(([word, count]): [string, number] => [String(word), Number(count)]),
);

/** Words between the parts that say nothing themselves. */
export const fillers: ReadonlySet<string> = new Set(
  "of in at each ea about approx approximately ca roughly or so and with the off cut long @ = per je zu von à etwa".split(
    " ",
  ),
);

/** What may stand behind the rest and says nothing: every size is one as cut. */
export const lastWords: ReadonlySet<string> = new Set(
  "each ea of unfinished roughly about approx ca".split(" "),
);

/** Where cloth came from, which is no part of its name: `the end of a bolt, grey`, `a piece of denim`. */
export const originPhrases: ReadonlySet<string> = new Set(
  ["end of a bolt|end of bolt|rest of a bolt|left over|leftover|rest von"]
    .concat(
      "remnant|handful|piece|bit|scrap|offcut".split("|").flatMap((word) => [`${word} of`, `a ${word} of`]),
    )
    .flatMap((phrases) => phrases.split("|")),
);

/** A size without its seams. */
export const finishedWords: ReadonlySet<string> = new Set(["finished", "fertig"]);

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

const unitNumbers = [
  "one two three four five six seven eight nine".split(" "),
  "ein zwei drei vier fünf sechs sieben acht neun".split(" "),
];
const teens = [
  "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(" "),
  "zehn elf zwölf dreizehn vierzehn fünfzehn sechzehn siebzehn achtzehn neunzehn".split(" "),
];
const tens = [
  "twenty thirty forty fifty sixty seventy eighty ninety".split(" "),
  "zwanzig dreißig vierzig fünfzig sechzig siebzig achtzig neunzig".split(" "),
];

const small = numbered(unitNumbers, (index) => index + 1);
export const tensByWord = numbered(tens, (index) => 10 * (index + 2));
/** Numbers as they are said, in English and German. */
export const numberWords: ReadonlyMap<string, number> = new Map([
  ...small,
  ...["eine", "einen"].map((word): [string, number] => [word, 1]),
  ...numbered(teens, (index) => index + 10),
  ...tensByWord,
  ...twoDigits(0, (ten, unit) => `${ten} ${unit}`),
  ...twoDigits(1, (ten, unit) => `${unit}und${ten}`),
]);

const fractions: readonly (readonly [string, string])[] = [
  ["½", "a half|one half|half|1/2"],
  ["¼", "a quarter|one quarter|1/4"],
  ["¾", "three quarters|3/4"],
  ["⅓", "a third|one third|1/3"],
  ["⅔", "two thirds|2/3"],
  ["⅛", "an eighth|one eighth|1/8"],
  ["⅜", "three eighths|3/8"],
  ["⅝", "five eighths|5/8"],
  ["⅞", "seven eighths|7/8"],
];
/** What `and a half` adds. */
export const fractionByWords: ReadonlyMap<string, string> = new Map(
  fractions.flatMap(([sign, words]) => words.split("|").map((word) => [word, sign] as const)),
);

/** What she may measure with one of: `a yard`, `a foot`. An inch is no leftover. */
export const oneOf = new Set("yard yd metre meter foot".split(" "));

function numbered(
  languages: readonly (readonly string[])[],
  value: (index: number) => number,
): [string, number][] {
  return languages.flatMap((words) => words.map((word, index): [string, number] => [word, value(index)]));
}

function twoDigits(language: number, spell: (ten: string, unit: string) => string): [string, number][] {
  return (tens[language] ?? []).flatMap((ten, above) =>
    (unitNumbers[language] ?? []).map((unit, below): [string, number] => [
      spell(ten, unit),
      10 * (above + 2) + below + 1,
    ]),
  );
}
