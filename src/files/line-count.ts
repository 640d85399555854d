import type { Kind } from "../engine/cloth/index.ts";
import { type Found, type Line, lengthFrom, phraseFrom, type Range, wholeNumber } from "./line-measures.ts";
import { countWords, fillers, pieceWords, spelledOut } from "./line-words.ts";

/** What of the line is read already. */
export type Taken = {
  readonly kind: Found<Kind> | null;
  /** Where the size begins; null: nowhere. */
  readonly sizeFrom: number | null;
  readonly has: (at: number) => boolean;
};

/** How many there are: before what they are, behind an ×, or as the last word of the line. */
export function countIn(line: Line, taken: Taken): Found<number> | null {
  return (
    countBesideTimes(line, taken) ??
    countInFront(line, taken) ??
    countInWords(line, taken) ??
    countAtEnd(line, taken)
  );
}

function free(line: Line, taken: Taken, at: number): Found<number> | null {
  const value = wholeNumber(line.tokens[at]);
  return value === null || taken.has(at) ? null : { from: at, to: at + 1, value };
}

/** `3 x fat quarter`, `teal x4`. The × belongs to it. */
function countBesideTimes(line: Line, taken: Taken): Found<number> | null {
  for (const [at, { kind }] of line.tokens.entries()) {
    if (kind !== "times" || taken.has(at)) continue;
    const before = free(line, taken, at - 1);
    if (before !== null) return { ...before, to: at + 1 };
    const behind = free(line, taken, at + 1);
    if (behind !== null) return { ...behind, from: at };
  }
  return null;
}

function countInFront(line: Line, taken: Taken): Found<number> | null {
  for (const at of line.tokens.keys()) {
    const number = free(line, taken, at);
    if (number !== null && (at === 0 || standsBeforePieces(line, taken, at + 1))) return number;
  }
  return null;
}

function standsBeforePieces(line: Line, taken: Taken, at: number): boolean {
  const token = line.tokens[at];
  if (token === undefined) return false;
  const word = spelledOut(token.text);
  if (fillers.has(word)) return standsBeforePieces(line, taken, at + 1);
  return at === taken.kind?.from || at === taken.sizeFrom || pieceWords.has(word);
}

function countInWords(line: Line, taken: Taken): Found<number> | null {
  const places = [0, ...(taken.kind === null ? [] : [taken.kind.from - 1])];
  for (const at of places) {
    const found = phraseFrom(line, at, (phrase) => countWords.get(phrase));
    if (found !== null && !taken.has(at) && standsBeforePieces(line, taken, found.to)) return found;
  }
  return null;
}

/** `blue stripe 5`, `blue stripe (5)`, `blue stripe, 5 pieces`. */
function countAtEnd(line: Line, taken: Taken): Found<number> | null {
  const last = line.tokens.findLastIndex(
    ({ kind, text }) => kind !== "sign" && !pieceWords.has(spelledOut(text)),
  );
  return free(line, taken, last);
}

/** A number that stands where how many there are should, and is none: `2½ strips 3 x 5`. */
export function wrongCount(line: Line, taken: Taken): Range | null {
  for (const [at, { kind }] of line.tokens.entries()) {
    if (kind !== "number" || taken.has(at)) continue;
    const number = lengthFrom(line, at);
    if (number !== null && standsBeforePieces(line, taken, number.to)) return number;
  }
  return null;
}
