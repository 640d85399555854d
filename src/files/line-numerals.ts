import type { Span } from "./line-types.ts";
import {
  fractionByWords,
  kindPhrases,
  numberWords,
  oneOf,
  pieceWords,
  spelledOut,
  tensByWord,
  unitWords,
} from "./line-words.ts";

/** A line with its numbers in digits, and where each stretch of it stood in the line as it was typed. */
export type Respelled = { readonly text: string; readonly original: (span: Span) => Span };

type Replacement = Span & { readonly by: string };
type Word = Span & { readonly text: string };

const times = /^(?:x|×|\*|by)$/i;
const beginsNumber = /^[\d½¼¾⅓⅔⅛⅜⅝⅞]/;
const directions = /^(?:wide|broad|long|tall|high|deep|breit|lang|hoch)$/i;

/**
 * Numbers in words where they can only be numbers (`six squares, five inches`, `two and a half by thirty`), and sides
 * by their direction (`2½ wide and a yard long`), as digits and ×. Other words are hers: `two-tone`.
 */
export function respelled(text: string): Respelled {
  const numerals = replaced(text, numeralsIn(text));
  const sides = replaced(numerals.text, directionsIn(numerals.text));
  return { text: sides.text, original: (span) => numerals.original(sides.original(span)) };
}

function replaced(text: string, replacements: readonly Replacement[]): Respelled {
  let changed = "";
  let end = 0;
  const places = replacements.map((one) => {
    changed += text.slice(end, one.start);
    const start = changed.length;
    changed += one.by;
    end = one.end;
    return { ...one, newStart: start, newEnd: changed.length };
  });
  changed += text.slice(end);
  const back = (at: number, side: "start" | "end") => {
    const place = places.findLast(({ newStart }) => newStart <= at);
    if (place === undefined) return at;
    if (at >= place.newEnd) return place.end + at - place.newEnd;
    return at === place.newStart && side === "end" ? place.start : place[side];
  };
  return {
    text: changed,
    original: ({ start, end: last }) => ({ start: back(start, "start"), end: back(last, "end") }),
  };
}

const wordOrNumber = /[\p{L}½¼¾⅓⅔⅛⅜⅝⅞\d.,/⁄]*[\p{L}½¼¾⅓⅔⅛⅜⅝⅞\d]|×|"[^"]*"|“[^”]*”|[^\s\p{L}\d]/gu;

function wordsOf(text: string): Word[] {
  return [...text.matchAll(wordOrNumber)].map(({ 0: word, index }) => ({
    text: word,
    start: index,
    end: index + word.length,
  }));
}

function numeralsIn(text: string): Replacement[] {
  const words = wordsOf(text);
  const found: Replacement[] = [];
  for (let at = 0; at < words.length; at++) {
    const numeral = numeralAt(text, words, at);
    if (numeral === null) continue;
    found.push(numeral.replacement);
    at = numeral.to - 1;
  }
  return found;
}

type Numeral = { readonly replacement: Replacement; readonly to: number };

function numeralAt(text: string, words: readonly Word[], at: number): Numeral | null {
  const whole = wholeAt(text, words, at);
  if (whole === null) return null;
  const fraction = fractionAt(text, words, whole.to);
  const to = fraction?.to ?? whole.to;
  const isNumber = fraction !== null || isPlaceOfNumber(words, at, to);
  const isInDigits = fraction === null && /^\d/.test(words[at]?.text ?? "");
  if (!isNumber || isInDigits) return null;
  // Of `six-inch` the hyphen goes too: it would stand for a fraction between digits.
  const isHyphened = isHyphen(words, to) && unitWords.has(wordAt(words, to + 1));
  const span = { start: words[at]?.start ?? 0, end: words[isHyphened ? to : to - 1]?.end ?? 0 };
  const by = `${whole.value}${fraction?.sign ?? ""}${isHyphened ? " " : ""}`;
  return { replacement: { ...span, by }, to };
}

type Whole = { readonly value: number; readonly to: number };

/** `six`, `twenty-five`, `a` yard; digits too, which a fraction in words may follow. */
function wholeAt(text: string, words: readonly Word[], at: number): Whole | null {
  const word = words[at]?.text.toLowerCase() ?? "";
  if (/^\d{1,3}$/.test(word)) return { value: Number(word), to: at + 1 };
  const isOneOf = oneOf.has(wordAt(words, at + 1)) && !/^(?:half|of)$/.test(wordAt(words, at - 1));
  if (/^an?$/.test(word)) return isOneOf ? { value: 1, to: at + 1 } : null;
  const value = numberWords.get(word);
  return (
    compoundAt(text, words, at) ??
    dozensAt(words, at, value) ??
    (value === undefined ? null : { value, to: at + 1 })
  );
}

/** `half a dozen`, `two dozen`. A dozen alone is one of the words that count. */
function dozensAt(words: readonly Word[], at: number, dozens: number | undefined): Whole | null {
  const half = wordAt(words, at) === "half" ? (wordAt(words, at + 1) === "a" ? at + 2 : at + 1) : null;
  if (wordAt(words, half ?? at + 1) !== "dozen") return null;
  if (half !== null) return { value: 6, to: half + 1 };
  return dozens === undefined ? null : { value: 12 * dozens, to: at + 2 };
}

/** Of `twenty five inch squares` the twenty says how many, unless a hyphen joins it. */
function compoundAt(text: string, words: readonly Word[], at: number): Whole | null {
  const hyphen = /^[-‐‑]$/.test(wordAt(words, at + 1)) ? 1 : 0;
  const unit = at + 1 + hyphen;
  if (!tensByWord.some(([word]) => word === wordAt(words, at))) return null;
  const value = numberWords.get(`${wordAt(words, at)} ${wordAt(words, unit)}`);
  if (value === undefined) return null;
  const isMeasure = unitWords.has(wordAt(words, unit + 1)) || fractionAt(text, words, unit + 1) !== null;
  return at === 0 && hyphen === 0 && isMeasure ? null : { value, to: unit + 1 };
}

/** `and a half`, also with hyphens. */
function fractionAt(text: string, words: readonly Word[], at: number) {
  for (const to of [at + 6, at + 5, at + 4, at + 3, at + 2]) {
    const [first, last] = [words[at], words[to - 1]];
    if (first === undefined || last === undefined) continue;
    const phrase = spelledOut(text.slice(first.start, last.end)).trim();
    const sign = phrase.startsWith("and ") ? fractionByWords.get(phrase.slice(4)) : undefined;
    if (sign !== undefined) return { sign, to };
  }
  return null;
}

function wordAt(words: readonly Word[], at: number): string {
  return words[at]?.text.toLowerCase() ?? "";
}

function isHyphen(words: readonly Word[], at: number): boolean {
  return /^[-‐‑]$/.test(wordAt(words, at)) && words[at]?.start === words[at - 1]?.end;
}

/** Where a line begins, before a unit or what it counts, beside an × or a direction. */
function isPlaceOfNumber(words: readonly Word[], from: number, to: number): boolean {
  const [before, next] = [wordAt(words, from - 1), wordAt(words, to)];
  if (isHyphen(words, to)) return unitWords.has(wordAt(words, to + 1));
  if (isHyphen(words, from - 1)) return false;
  if (from === 0) return next !== "" && !/^["']/.test(next);
  const isBesideTimes = times.test(before) || times.test(next);
  const isCounted = kindPhrases.has(next) || pieceWords.has(next) || unitWords.has(next);
  return isBesideTimes || isCounted || directions.test(next);
}

/** `2½ wide and 36 long`: an × between the sides, and nothing behind them. */
function directionsIn(text: string): Replacement[] {
  const words = wordsOf(text);
  const [first, second, third] = [...words.keys()].filter((at) => isDirection(words, at));
  if (first === undefined || second === undefined || third !== undefined) return [];
  const next = words.findIndex(({ text: word }, at) => at > first && beginsNumber.test(word));
  const isElsewhere = words.some(({ text: word }, at) => times.test(word) && (at < first || at > next));
  if (next < 0 || next > second || isElsewhere) return [];
  const [one, number, other] = [words[first], words[next], words[second]];
  if (one === undefined || number === undefined || other === undefined) return [];
  return [
    { start: one.start, end: number.start, by: "x " },
    { start: other.start, end: other.end, by: "" },
  ];
}

function isDirection(words: readonly Word[], at: number): boolean {
  const before = wordAt(words, at - 1);
  const endsMeasure = beginsNumber.test(before) || /["”″]/.test(before) || unitWords.has(before);
  return directions.test(wordAt(words, at)) && endsMeasure;
}
