import { areaOf, inches, length } from "./arithmetic.ts";
import { fractionBehindDate } from "./dates.ts";
import type {
  LengthProblem,
  ParseArea,
  ParseLength,
  ParseSizePair,
  ParseWeight,
  WritingHabit,
} from "./problems.ts";
import { err, ok, type Result } from "./result.ts";
import type { DisplayUnit, Length, Size } from "./types.ts";
import { areaUnits, lengthUnits, type WrittenUnit, weightUnits } from "./units.ts";
import { type DecimalReading, numberPattern, plainSpelling, type Rational, readNumber } from "./written.ts";

/** Longer than any bolt of cloth. */
export const longestLength: Length = inches(10_000);
const largestArea = BigInt(longestLength) ** 2n;
const heaviestGrams = 100_000n;
/** No measure is written in more signs than this. */
const longestText = 60;

/**
 * Reads a length as people write it: `2 1/2`, `2½`, `2-1/2`, `2.5"`, `2,5`, `63 mm`, `1 1/8 yd`, `2 ft 6 in`; a bare
 * number takes `unit`. Exact; what 1/320 mm cannot hold (1/3 in) is rounded DOWN to it, since measured cloth is never
 * promised larger than it is. Whatever could mean something else is refused with the reason.
 */
export const parseLength: ParseLength = (text, unit, habit = {}) => {
  const read = readMeasure(text, { units: lengthUnits, bare: unit, most: BigInt(longestLength), habit });
  if (!read.ok) return read;
  const units = roundedDown(read.value);
  return units > 0 ? ok(length(units)) : err({ kind: "zero", text: text.trim() });
};

/**
 * Reads `120 sq in`, `120 in²`, `3 cm²`, `1/4 sq yd`; a bare number takes square inches or square centimetres.
 * Rounded down to whole units.
 */
export const parseArea: ParseArea = (text, unit, habit = {}) => {
  const bare = unit === "in" ? "sq in" : "cm²";
  const read = readMeasure(text, { units: areaUnits, bare, most: largestArea, habit });
  if (!read.ok) return read;
  const units = roundedDown(read.value);
  return units > 0 ? ok(areaOf(units)) : err({ kind: "zero", text: text.trim() });
};

/** Reads `3 oz`, `85 g`, `0.2 kg`, `1 lb 4 oz` as grams. */
export const parseWeight: ParseWeight = (text, habit = {}) => {
  const read = readMeasure(text, { units: weightUnits, bare: null, most: heaviestGrams, habit });
  return read.ok ? ok(Number(read.value.over) / Number(read.value.under)) : read;
};

/**
 * Reads two lengths with × or x between them, width first: `60x80`, `67 1/2 x 87 1/2`, `60 × 80 cm`. A unit that is
 * written once goes for both.
 */
export const parseSizePair: ParseSizePair = (text, unit, habit = {}) => {
  const [width, height, ...more] = text.split(/\s*(?:[x×✕*]|\bby\b)\s*/i);
  if (width === undefined || height === undefined || more.length > 0) {
    return err({ kind: "not-two-lengths", text: text.trim() });
  }
  const sides = withSharedUnit(width, height);
  if (sides === null) return err({ kind: "not-two-lengths", text: text.trim() });
  const size = {
    width: parseLength(sides.width, unit, habit),
    height: parseLength(sides.height, unit, habit),
  };
  if (!size.width.ok) return err({ kind: "side", side: "width", problem: size.width.error });
  if (!size.height.ok) return err({ kind: "side", side: "height", problem: size.height.error });
  const value: Size = { width: size.width.value, height: size.height.value };
  return ok(value);
};

type WrittenSides = { readonly width: string; readonly height: string };

function withSharedUnit(width: string, height: string): WrittenSides | null {
  const [ofWidth, ofHeight] = [unitOf(width), unitOf(height)];
  if ((ofWidth === "" && ofHeight === null) || (ofHeight === "" && ofWidth === null)) return null;
  return {
    width: ofWidth === "" ? `${width} ${ofHeight}` : width,
    height: ofHeight === "" ? `${height} ${ofWidth}` : height,
  };
}

// null: several units. In `5 ft 2 in x 8` nobody can say whether 8 is feet or inches.
function unitOf(side: string): string | null {
  const spelling = plainSpelling(side);
  if (!/["'\p{L}]/u.test(spelling)) return "";
  return /^[\d ./,-]+(["']|[\p{L}.]+)$/u.exec(spelling)?.[1] ?? null;
}

type Reading = {
  readonly units: readonly WrittenUnit[];
  /** The unit's name that a number without one takes; null: it must have one. */
  readonly bare: DisplayUnit | "sq in" | "cm²" | null;
  /** In base units. */
  readonly most: bigint;
  readonly habit: WritingHabit;
};

function readMeasure(text: string, reading: Reading): Result<Rational, LengthProblem> {
  const written = text.trim();
  const problem = unreadable(written);
  if (problem) return err(problem);
  const spelling = plainSpelling(written);
  if (/^[-−–]/.test(spelling)) return err(negative(written, spelling, reading));
  const terms = readTerms(written, spelling, reading);
  return terms.ok ? bounded(written, sumOf(terms.value), reading.most) : terms;
}

function unreadable(text: string): LengthProblem | null {
  if (text === "") return { kind: "empty", text };
  if (text.length > longestText) return { kind: "not-a-number", text };
  if (/\p{Nd}/u.test(text.replace(/[0-9]/g, ""))) return { kind: "other-digits", text };
  const fraction = fractionBehindDate(text.toLowerCase().replace(/\s+/g, " "));
  if (fraction !== undefined) return { kind: "date", text, fraction };
  return twoSigns(text);
}

// 1,234.5: the last sign is most likely the decimal one, but such a number is no size of cloth.
function twoSigns(text: string): LengthProblem | null {
  const [, first, middle, last] = /(\d{1,3})[.,](\d+)[.,](\d+)/.exec(text) ?? [];
  if (first === undefined) return null;
  const bothKinds = text.includes(".") && text.includes(",");
  if (!bothKinds) return { kind: "not-a-number", text };
  return { kind: "ambiguous", text, readings: [`${first}${middle}.${last}`, `${first}.${middle}${last}`] };
}

function negative(text: string, spelling: string, reading: Reading): LengthProblem {
  const rest = readTerms(text, spelling.slice(1).trim(), reading);
  return rest.ok ? { kind: "negative", text } : rest.error;
}

function bounded(text: string, value: Rational, most: bigint): Result<Rational, LengthProblem> {
  if (value.over === 0n) return err({ kind: "zero", text });
  return value.over > most * value.under ? err({ kind: "too-large", text }) : ok(value);
}

function roundedDown({ over, under }: Rational): number {
  return Number(over / under);
}

type Term = { readonly value: Rational; readonly unit: WrittenUnit };

const termPattern = new RegExp(String.raw`^(${numberPattern}) ?(.*?)(?= \d|(?<=['"]) ?\d|$)`, "u");

// One number with or without a unit, or several from large to small as in 2 ft 6 in.
function readTerms(text: string, spelling: string, reading: Reading): Result<Term[], LengthProblem> {
  const terms: Term[] = [];
  let rest = spelling;
  while (rest !== "") {
    const [all, number, name] = termPattern.exec(rest) ?? [];
    if (all === undefined || number === undefined || name === undefined)
      return err({ kind: "not-a-number", text });
    rest = rest.slice(all.length).trim();
    const alone = terms.length === 0 && rest === "";
    const term = readTerm({ text, number, name: name.trim() }, alone, reading);
    if (!term.ok) return term;
    terms.push(term.value);
  }
  return descends(terms) ? ok(terms) : err({ kind: "not-a-number", text });
}

type WrittenTerm = { readonly text: string; readonly number: string; readonly name: string };

function readTerm(
  { text, number, name }: WrittenTerm,
  alone: boolean,
  reading: Reading,
): Result<Term, LengthProblem> {
  const unitName = name === "" && alone ? reading.bare : name;
  if (unitName === null) return err({ kind: "no-unit", text });
  const unit = reading.units.find(
    ({ names }) => names.includes(unitName) || names.includes(withoutStop(unitName)),
  );
  if (!unit) return err(noSuchUnit(text, name));
  const value = readNumber(number, decimalReading(unit, reading));
  return value.ok ? ok({ value: value.value, unit }) : err({ text, ...value.error });
}

function withoutStop(name: string): string {
  return name.endsWith(".") ? name.slice(0, -1) : name;
}

function noSuchUnit(text: string, name: string): LengthProblem {
  const isWord = /^[\p{L}²"'.^ ]*\p{L}[\p{L}²"'.^ ]*$/u.test(name);
  return isWord ? { kind: "unknown-unit", text, unit: name } : { kind: "not-a-number", text };
}

// 1,500 may be 1500 where that many exist. A full stop before three digits is English and a decimal (2.125 in), but
// metric sizes are never written to the thousandth, and 1.500 mm is a metre and a half in German.
function decimalReading(unit: WrittenUnit, { habit, most }: Reading): DecimalReading {
  return (sign, thousands) => {
    if (habit.decimal === sign) return "decimal";
    if (habit.decimal === undefined && sign === "." && !unit.metric) return "decimal";
    return thousands * unit.over > most * unit.under ? "decimal" : "ambiguous";
  };
}

/** Whole numbers of ever smaller units of one system, each less than one of the unit before it. */
function descends(terms: readonly Term[]): boolean {
  return (
    terms.length > 0 &&
    terms.slice(1).every((term, index) => {
      const before = terms[index];
      if (before?.value.under !== 1n || before.unit.metric !== term.unit.metric) return false;
      const amount = inBase(term);
      return amount.over * before.unit.under < before.unit.over * amount.under;
    })
  );
}

function inBase({ value, unit }: Term): Rational {
  return { over: value.over * unit.over, under: value.under * unit.under };
}

function sumOf(terms: readonly Term[]): Rational {
  return terms.map(inBase).reduce((sum, next) => ({
    over: sum.over * next.under + next.over * sum.under,
    under: sum.under * next.under,
  }));
}
