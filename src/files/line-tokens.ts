import type { Span } from "./line-types.ts";
import { countWords, fillers, kindPhrases, pieceWords, spelledOut, unitWords } from "./line-words.ts";

export type TokenKind =
  | "number"
  /** × or x between two sides, or after a count. */
  | "times"
  | "word"
  /** `#3e4257`. */
  | "colour"
  /** Her own words, kept together by quotation marks. */
  | "quoted"
  | "sign";

export type Token = Span & { readonly kind: TokenKind; readonly text: string };

const digit = "\\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉";
const letters = "\\p{L}[\\p{L}\\p{M}]*";

/** In this order: the first that fits at a place is the token there. */
const patterns: readonly (readonly [TokenKind, RegExp])[] = [
  ["colour", /#[0-9a-f]{3}(?:[0-9a-f]{3})?(?![\p{L}\p{N}])/iuy],
  // An inch mark follows its number; a quotation mark stands before a letter or after a space.
  [
    "quoted",
    new RegExp(`(?<![${digit}.])["“„](?=[^\\s"”“])[^"”“]*["”“]|(?<=\\s)["“„](?=\\p{L})[^"”“]*["”“]`, "uy"),
  ],
  [
    "number",
    new RegExp(`(?:(?<=^|\\s)[-−–](?=[${digit}.,]))?[.,]?[${digit}](?:[${digit}.,/⁄∕‐‑-]*[${digit}])?`, "uy"),
  ],
  ["times", /[×✕✖*]|(?<![\p{L}])x(?![\p{L}])/iuy],
  ["times", /by(?![\p{L}\p{N}])/iuy],
  ["word", new RegExp(`${letters}(?:['’‐‑-]${letters})*`, "uy")],
  ["sign", /[^\s]/uy],
];

/** The line in the smallest parts that mean something. A digit inside a word, as in `no5` or `1930s`, is a word. */
export function tokensOf(text: string): readonly Token[] {
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.length) {
    const token = tokenAt(text, at);
    if (token !== null) tokens.push(token);
    at = token === null ? at + 1 : token.end;
  }
  return tokens.map((token, index) =>
    isPartOfWord(token, index, tokens) ? { ...token, kind: "word" } : token,
  );
}

function tokenAt(text: string, start: number): Token | null {
  if (/\s/.test(text.charAt(start))) return null;
  for (const [kind, pattern] of patterns) {
    pattern.lastIndex = start;
    const [found] = pattern.exec(text) ?? [];
    if (found !== undefined && found !== "") return { kind, text: found, start, end: start + found.length };
  }
  // Half of a letter that takes two places: what is left of it says nothing.
  return { kind: "sign", text: text.charAt(start), start, end: start + 1 };
}

function isPartOfWord(token: Token, index: number, tokens: readonly Token[]): boolean {
  if (token.kind !== "number") return false;
  const before = tokens[index - 1];
  const after = tokens[index + 1];
  const clings = before?.end === token.start && before.kind === "word";
  if (clings && !isKnown(spelledOut(before.text))) return true;
  if (before?.end === token.start && /[#&_]/.test(before.text)) return true;
  return after?.start === token.end && after.kind === "word" && !isKnown(spelledOut(after.text));
}

function isKnown(word: string): boolean {
  return (
    unitWords.has(word) ||
    kindPhrases.has(word) ||
    pieceWords.has(word) ||
    countWords.has(word) ||
    fillers.has(word) ||
    word === "wof"
  );
}
