import type { Taken } from "./line-count.ts";
import { type Line, numbersIn, phraseFrom, type Range, spanOf, textOfRange } from "./line-measures.ts";
import type { LinePart, LineProblem } from "./line-types.ts";
import {
  fillers,
  finishedWords,
  fractionWords,
  lastWords,
  longestPhrase,
  originPhrases,
  pieceWords,
  spelledOut,
} from "./line-words.ts";

const hasDigit = /[\p{Nd}\p{No}]/u;

/** What is left once sizes, count and kind are read: the fabric, in her words. */
export type Rest = {
  readonly fabric: string;
  readonly parts: readonly LinePart[];
  readonly problems: readonly LineProblem[];
};

/** `isCounted`: a whole number among her words is then a part of the name, as in `stripe 5`. */
export function restOf(line: Line, taken: Taken, isCounted: boolean): Rest {
  const chunks = chunksOf(line, taken).map((chunk) => trimmed(line, chunk, taken));
  const worded = chunks.filter((chunk) => isWorded(line, chunk));
  const numbers = extraNumbers(line, chunks, isCounted);
  return {
    fabric: worded
      .map((chunk) => nameIn(line, chunk))
      .filter((name) => name !== "")
      .join(" "),
    parts: worded.map((chunk) => ({ is: "fabric", ...spanOf(line, chunk), text: textOfRange(line, chunk) })),
    problems: numbers.map((range) => ({
      kind: "extra-number",
      ...spanOf(line, range),
      text: textOfRange(line, range),
    })),
  };
}

/** Stretches that nothing else has taken. A quotation is one of its own. */
function chunksOf({ tokens }: Line, taken: Taken): Range[] {
  const chunks: Range[] = [];
  for (const [at, { kind }] of tokens.entries()) {
    const last = chunks.at(-1);
    if (taken.has(at)) continue;
    const goesOn = last?.to === at && kind !== "quoted" && tokens[at - 1]?.kind !== "quoted";
    if (last !== undefined && goesOn) chunks[chunks.length - 1] = { from: last.from, to: at + 1 };
    else chunks.push({ from: at, to: at + 1 });
  }
  return chunks;
}

/** Without the small words and signs that only join it to the rest. */
function trimmed(line: Line, chunk: Range, taken: Taken): Range {
  let { from, to } = chunk;
  for (let next = pastJoint(line, from, to); next > from; next = pastJoint(line, from, to)) from = next;
  for (let last = beforeJoint(line, from, to); last < to; last = beforeJoint(line, from, to)) to = last;
  // `4 pieces 2 x 5`: the word stands between what is read.
  const isPieceWord =
    to === from + 1 && pieceWords.has(wordAt(line, from)) && (from === 0 || taken.has(from - 1));
  return isPieceWord ? { from, to: from } : startsWithPieces(line, { from, to }, taken);
}

function pastJoint(line: Line, from: number, to: number): number {
  const origin = from < to ? phraseFrom(line, from, isOrigin) : null;
  if (origin !== null && origin.to <= to) return origin.to;
  return from < to && joins(line, from) ? from + 1 : from;
}

function beforeJoint(line: Line, from: number, to: number): number {
  for (let start = Math.max(from, to - longestPhrase); start < to; start++) {
    if (phraseFrom(line, start, isOrigin)?.to === to) return start;
  }
  return from < to && joins(line, to - 1, "at end") ? to - 1 : to;
}

function isOrigin(phrase: string): true | undefined {
  return originPhrases.has(phrase) ? true : undefined;
}

function startsWithPieces(line: Line, { from, to }: Range, taken: Taken): Range {
  const starts = from < to && pieceWords.has(wordAt(line, from)) && from > 0 && taken.has(from - 1);
  return starts ? trimmedFront(line, { from: from + 1, to }) : { from, to };
}

function trimmedFront(line: Line, { from, to }: Range): Range {
  let first = from;
  while (first < to && joins(line, first)) first++;
  return { from: first, to };
}

// A closing bracket may belong to the name, as in `dots (old)`; a full stop never does.
function joins({ tokens }: Line, at: number, where: "in front" | "at end" = "in front"): boolean {
  const token = tokens[at];
  if (token === undefined) return false;
  if (token.kind === "times") return true;
  if (token.kind === "sign") return where === "in front" || token.text !== ")";
  const word = spelledOut(token.text);
  return where === "in front" ? fillers.has(word) : lastWords.has(word);
}

function wordAt({ tokens }: Line, at: number): string {
  return spelledOut(tokens[at]?.text ?? "");
}

function isWorded(line: Line, range: Range): boolean {
  if (range.to === range.from) return false;
  return line.tokens[range.from]?.kind === "quoted" || /\p{L}/u.test(textOfRange(line, range));
}

function nameIn(line: Line, range: Range): string {
  const text = textOfRange(line, range);
  const isQuoted = line.tokens[range.from]?.kind === "quoted";
  const name = isQuoted ? text.replace(/^["“„]|["”“]$/g, "") : text;
  return name.replace(/[\s\p{Cc}\p{Cf}]+/gu, " ").trim();
}

/** `6 finished`: what is listed is the size as cut, and that one leaves out the seams. */
export function finishedIn(line: Line, taken: Taken): LineProblem[] {
  const at = line.tokens.findIndex(
    ({ kind, text }, index) => kind === "word" && finishedWords.has(spelledOut(text)) && taken.has(index - 1),
  );
  const { from, to } = { from: at, to: at + 1 };
  return at < 0
    ? []
    : [{ kind: "finished-size", ...spanOf(line, { from, to }), text: textOfRange(line, { from, to }) }];
}

function extraNumbers(line: Line, chunks: readonly Range[], isCounted: boolean): Range[] {
  const numbers = numbersAmong(line, chunks, isCounted);
  return [...fractionsInWords(line, chunks), ...numbers, ...unreadDigits(line, chunks, numbers)];
}

/** Digits that are neither a number nor part of a word. */
function unreadDigits(line: Line, chunks: readonly Range[], numbers: readonly Range[]): Range[] {
  return chunks.filter((chunk) => {
    const isRead = numbers.some(({ from, to }) => from >= chunk.from && to <= chunk.to);
    return (
      chunk.to > chunk.from && !isWorded(line, chunk) && !isRead && hasDigit.test(textOfRange(line, chunk))
    );
  });
}

/** `2 and a half`: read without them, a size would be short of what she meant. */
function fractionsInWords(line: Line, chunks: readonly Range[]): Range[] {
  return chunks.flatMap((chunk) => {
    const from = chunk.from > 0 && wordAt(line, chunk.from - 1) === "and" ? chunk.from - 1 : chunk.from;
    if (line.tokens[from - 1]?.kind !== "number") return [];
    const found = phraseFrom(line, from, (phrase) => (fractionWords.test(phrase) ? true : undefined));
    return found === null ? [] : [{ from: found.from, to: found.to }];
  });
}

function numbersAmong(line: Line, chunks: readonly Range[], isCounted: boolean): Range[] {
  return chunks.flatMap((chunk) => {
    const inside = numbersIn(line).filter(({ from, to }) => from >= chunk.from && to <= chunk.to);
    if (!isWorded(line, chunk) || !isCounted) return inside;
    return inside.filter((measure) => !/^\d+$/.test(measure.text));
  });
}
