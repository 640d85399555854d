import type { Kind } from "../engine/cloth/index.ts";
import { type Area, inches, type Length, length, millimetres, parseLength } from "../engine/length/index.ts";
import {
  areaFrom,
  type Found,
  type Line,
  lengthFrom,
  lengthUpTo,
  type Measure,
  numbersIn,
  phraseFrom,
  type Range,
  textOfRange,
  weightFrom,
  wholeNumber,
} from "./line-measures.ts";
import { clothWidthPhrases, fillers, type NamedSize, namedSizes, spelledOut } from "./line-words.ts";

/** One side: as it was measured, or as wide as the cloth is. */
export type Side = Measure<Length> & { readonly isClothWidth?: true };

/** How the line gives the size. */
export type SizeFound =
  | { readonly kind: "pair"; readonly width: Side; readonly height: Side; readonly count: Range | null }
  | { readonly kind: "three-numbers"; readonly range: Range }
  | { readonly kind: "named"; readonly size: Found<NamedSize> }
  | { readonly kind: "area"; readonly area: Measure<Area> }
  | { readonly kind: "weight"; readonly weight: Measure<number> }
  /** About so much of strips of one width. */
  | { readonly kind: "strips"; readonly total: Measure<Length>; readonly width: Measure<Length> }
  | { readonly kind: "one"; readonly side: Measure<Length>; readonly acrossCloth: Range | null }
  | { readonly kind: "none" };

export function sizeIn(line: Line, kind: Found<Kind> | null): SizeFound {
  return pairIn(line) ?? namedIn(line) ?? amountIn(line) ?? measureIn(line, kind) ?? { kind: "none" };
}

function pairIn(line: Line): SizeFound | null {
  for (const [at, token] of line.tokens.entries()) {
    if (token.kind !== "times") continue;
    const pair = pairAround(line, at);
    if (pair !== null) return pair;
  }
  return null;
}

function pairAround(line: Line, at: number): SizeFound | null {
  const width = clothWidthUpTo(line, at) ?? lengthUpTo(line, at);
  const height = sideFrom(line, at + 1);
  if (width === null || height === null) return null;
  const third = line.tokens[height.to]?.kind === "times" ? sideFrom(line, height.to + 1) : null;
  if (third === null) return pairOf(line, width, height, null);
  return threeFactors(line, width, [height, third]);
}

/** Before the first × or behind the last stands how many there are. Whole numbers throughout may mean either. */
function threeFactors(line: Line, first: Side, [second, third]: readonly [Side, Side]): SizeFound {
  const [isFirst, isSecond, isThird] = [first, second, third].map((side) => isWhole(line, side));
  if (isFirst && isSecond && isThird) {
    return { kind: "three-numbers", range: { from: first.from, to: third.to } };
  }
  return isFirst ? pairOf(line, second, third, first) : pairOf(line, first, second, isThird ? third : null);
}

function isWhole({ tokens }: Line, { from, to }: Range): boolean {
  return to === from + 1 && wholeNumber(tokens[from]) !== null;
}

/** A unit that is written once goes for both sides; in `2 1/2 x 1 yd` nobody means yards both times. */
function pairOf(line: Line, width: Side, height: Side, count: Range | null): SizeFound {
  return {
    kind: "pair",
    width: isBare(width) ? inUnit(line, width, smallUnitOf(height)) : width,
    height: isBare(height) ? inUnit(line, height, smallUnitOf(width)) : height,
    count,
  };
}

function isBare({ text, isClothWidth }: Side): boolean {
  return !isClothWidth && !/["'”“″′’\p{L}]/u.test(text);
}

/** Inches, centimetres or millimetres behind the one number of a side; empty: none. */
function smallUnitOf(side: Side): string {
  // Of a date the month looks like a unit.
  if (side.isClothWidth || !side.read.ok) return "";
  return (
    /^[^"'\p{L}]*(["”″]|''|(?:ins?|inch|inches|cm|mm|[cm]\p{L}*met\p{L}+)\.?)$/iu.exec(side.text)?.[1] ?? ""
  );
}

function inUnit(line: Line, side: Side, unit: string): Side {
  if (unit === "" || !side.read.ok) return side;
  const text = `${side.text} ${unit}`;
  return { ...side, text, read: parseLength(text, line.unit, line.habit) };
}

function sideFrom(line: Line, start: number): Side | null {
  const from = isFiller(line, start) ? start + 1 : start;
  return clothWidthFrom(line, from) ?? lengthFrom(line, from);
}

function isFiller({ tokens }: Line, at: number): boolean {
  const token = tokens[at];
  return token !== undefined && fillers.has(spelledOut(token.text));
}

function clothWidthFrom(line: Line, from: number): Side | null {
  const found = phraseFrom(line, from, isClothWidth);
  return found === null ? null : clothWidthAt(line, found);
}

function clothWidthUpTo(line: Line, to: number): Side | null {
  for (let from = Math.max(0, to - 3); from < to; from++) {
    const found = phraseFrom(line, from, isClothWidth);
    if (found?.to === to) return clothWidthAt(line, found);
  }
  return null;
}

function isClothWidth(phrase: string): true | undefined {
  return clothWidthPhrases.has(phrase) ? true : undefined;
}

function clothWidthAt(line: Line, { from, to }: Range): Side {
  const text = textOfRange(line, { from, to });
  return { from, to, text, read: { ok: true, value: line.clothWidth }, isClothWidth: true };
}

function namedIn(line: Line): SizeFound | null {
  for (const from of line.tokens.keys()) {
    const size = phraseFrom(line, from, (phrase) => namedSizes.get(phrase));
    if (size !== null) return { kind: "named", size };
  }
  return null;
}

/** As cut from cloth of that width: published sizes name the cloth with its selvages (18 × 22 of 44 in). */
export function sizeOfNamed({ eighths, metric, widths }: NamedSize, { unit, clothWidth }: Line) {
  const eighth = metric === true || unit === "cm" ? millimetres(125) : inches(9, 2);
  return { width: length(eighth * eighths), height: length(Math.floor(clothWidth * widths)) };
}

function amountIn(line: Line): SizeFound | null {
  for (const from of line.tokens.keys()) {
    const weight = weightFrom(line, from);
    if (weight !== null && hasUnitOf(weight, /(?:g|oz|lbs?|ounces?|pounds?|grams?)\.?$/i))
      return { kind: "weight", weight };
    const area = areaFrom(line, from);
    if (area !== null && hasUnitOf(area, /sq|²|2$/i)) return { kind: "area", area };
  }
  return null;
}

/** What can't be read may still be told by its unit: `1,500 g`. A date has none. */
function hasUnitOf({ read, text }: Measure<unknown>, unit: RegExp): boolean {
  return read.ok || unit.test(text);
}

/** Without ×: what is written with a fraction or a unit is a size, a whole number may be how many. */
function measureIn(line: Line, kind: Found<Kind> | null): SizeFound | null {
  const measures = numbersIn(line);
  const [sized, next] = measures.filter((measure) => !isWhole(line, measure));
  if (
    sized !== undefined &&
    next !== undefined &&
    (kind === null || kind.value === "strip") &&
    isOfBetween(line, sized, next)
  ) {
    return { kind: "strips", total: sized, width: next };
  }
  const side = sized ?? wholeSide(line, measures, kind);
  return side === null ? null : { kind: "one", side, acrossCloth: acrossClothIn(line) };
}

function isOfBetween(line: Line, total: Range, width: Range): boolean {
  const between = textOfRange(line, { from: total.to, to: width.from });
  return spelledOut(between.trim()) === "of";
}

/** Of `12 blocks 6` the 6, and of `12 6 squares` too; of `12 blocks` nothing. */
function wholeSide(
  line: Line,
  measures: readonly Measure<Length>[],
  kind: Found<Kind> | null,
): Measure<Length> | null {
  const whole = measures.filter((measure) => isWhole(line, measure));
  if (kind === null) return null;
  const behind = whole.find(({ from }) => from >= kind.to);
  if (behind !== undefined) return behind;
  return whole.length > 1 ? (whole.findLast(({ to }) => to <= kind.from) ?? null) : null;
}

function acrossClothIn(line: Line): Range | null {
  for (const from of line.tokens.keys()) {
    const found = clothWidthFrom(line, from);
    if (found !== null) return found;
  }
  return null;
}

/** Cloth by the yard or the metre is as wide as it came. */
export function isYardage(text: string): boolean {
  return /(?:\d|\s)(?:yds?|yards?|m|met(?:er|re)s?)\.?$/i.test(text);
}
