import {
  type Area,
  type DisplayUnit,
  isMonthName,
  type Length,
  type LengthProblem,
  parseArea,
  parseLength,
  parseWeight,
  type Result,
  type WritingHabit,
} from "../engine/length/index.ts";
import type { Token } from "./line-tokens.ts";
import type { Span } from "./line-types.ts";
import { longestPhrase, spelledOut, unitWords } from "./line-words.ts";

/** A line in its tokens, and how it is to be read. */
export type Line = {
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly unit: DisplayUnit;
  readonly habit: WritingHabit;
  /** Usable width of cloth, for what reaches from selvage to selvage. */
  readonly clothWidth: Length;
};

/** Tokens from one to another; `to` is the first one after. */
export type Range = { readonly from: number; readonly to: number };

export type Found<T> = Range & { readonly value: T };
export type Measure<T> = Range & { readonly read: Result<T, LengthProblem>; readonly text: string };

export function spanOf({ tokens }: Line, { from, to }: Range): Span {
  return { start: tokens[from]?.start ?? 0, end: tokens[to - 1]?.end ?? 0 };
}

export function textOfRange(line: Line, range: Range): string {
  const { start, end } = spanOf(line, range);
  return line.text.slice(start, end);
}

// `2 ft 6 1/2 in` in its smallest parts, and a date of a spreadsheet with its year.
const longestMeasure = 7;

/** The longest length that begins here; null: none, not even one that can't be read. */
export function lengthFrom(line: Line, from: number): Measure<Length> | null {
  return best(line, startingAt(line, from), (text) => parseLength(text, line.unit, line.habit));
}

/** The longest length that ends before token `to`. */
export function lengthUpTo(line: Line, to: number): Measure<Length> | null {
  const ranges = Array.from({ length: Math.min(longestMeasure, to) }, (_, index) => ({
    from: to - 1 - index,
    to,
  }));
  return best(line, ranges.reverse(), (text) => parseLength(text, line.unit, line.habit));
}

/** An area with its unit: a number alone is none. */
export function areaFrom(line: Line, from: number): Measure<Area> | null {
  const withUnit = startingAt(line, from).filter((range) => /\p{L}/u.test(textOfRange(line, range)));
  return best(line, withUnit, (text) => parseArea(text, line.unit, line.habit));
}

export function weightFrom(line: Line, from: number): Measure<number> | null {
  return best(line, startingAt(line, from), (text) => parseWeight(text, line.habit));
}

/** The longest first. */
function startingAt({ tokens }: Line, from: number): Range[] {
  const most = Math.min(longestMeasure, tokens.length - from);
  return Array.from({ length: most }, (_, index) => ({ from, to: from + most - index }));
}

type Read<T> = (text: string) => Result<T, LengthProblem>;

/** The longest that can be read; where none can, the longest that says what it might have been. */
function best<T>(line: Line, ranges: readonly Range[], read: Read<T>): Measure<T> | null {
  const tried = ranges
    .filter((range) => mayBegin(line.tokens[range.from]) && isOneStretch(line, range))
    .map((range) => {
      const text = textOfRange(line, range);
      return { ...range, text, read: read(text) };
    });
  const good = tried.find((measure) => measure.read.ok || isDateInOneWord(measure));
  return good ?? tried.find((measure) => isTelling(line, measure)) ?? null;
}

/** Numbers, units and months alone. Her own words in quotation marks are hers, even where a number goes on in them. */
function isOneStretch({ tokens }: Line, { from, to }: Range): boolean {
  return tokens.slice(from, to).every(({ kind, text }) => {
    if (kind !== "word") return kind === "number" || kind === "sign";
    const word = text.toLowerCase();
    return unitWords.has(word) || isMonthName(word);
  });
}

// A date may begin with its month.
function mayBegin(token: Token | undefined): boolean {
  return token?.kind === "number" || (token?.kind === "word" && /^\p{L}{3,10}$/u.test(token.text));
}

// Of `Jan-02` the end alone would be a number; of `2 may` the may is more likely hers.
function isDateInOneWord({
  read,
  text,
}: {
  readonly read: Result<unknown, LengthProblem>;
  readonly text: string;
}) {
  return !read.ok && read.error.kind === "date" && !/\s/.test(text);
}

/** Whether a text that can't be read says what it might have been. */
function isTelling<T>(line: Line, { read, ...range }: Measure<T>): boolean {
  if (read.ok) return false;
  switch (read.error.kind) {
    case "date":
      return true;
    case "ambiguous":
    case "negative":
    case "too-large":
    case "zero":
      return isNumberWithUnit(line, range);
    case "empty":
    case "not-a-number":
    case "other-digits":
    case "unknown-unit":
    case "no-unit":
      return false;
  }
}

function isNumberWithUnit({ tokens }: Line, { from, to }: Range): boolean {
  return tokens.slice(from + 1, to).every(({ kind, text }) => {
    return kind === "word" ? unitWords.has(spelledOut(text)) : kind === "sign" && !/[,;:()]/.test(text);
  });
}

/** A phrase of a few words that begins here; the longest one the table knows. */
export function phraseFrom<T>(
  line: Line,
  from: number,
  lookUp: (phrase: string) => T | undefined,
): Found<T> | null {
  for (let count = longestPhrase; count > 0; count--) {
    const range = { from, to: from + count };
    if (range.to > line.tokens.length) continue;
    const value = lookUp(spelledOut(textOfRange(line, range)));
    if (value !== undefined) return { ...range, value };
  }
  return null;
}

/** A whole number without a sign or a unit. */
export function wholeNumber(token: Token | undefined): number | null {
  return token?.kind === "number" && /^\d{1,6}$/.test(token.text) ? Number(token.text) : null;
}

/** Every number or measure of the line, from the left. */
export function numbersIn(line: Line): readonly Measure<Length>[] {
  const found: Measure<Length>[] = [];
  let at = 0;
  while (at < line.tokens.length) {
    const measure = mayStandAlone(line, at) ? lengthFrom(line, at) : null;
    if (measure !== null) found.push(measure);
    at = measure?.to ?? at + 1;
  }
  return found;
}

/** A number, or a date that begins with its month. With a space between it may be her words: `may 12`. */
function mayStandAlone({ tokens }: Line, at: number): boolean {
  const [token, next] = [tokens[at], tokens[at + 1]];
  return (
    token?.kind === "number" || (token?.kind === "word" && next?.text === "-" && next.start === token.end)
  );
}
