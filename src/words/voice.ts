import type { Area, DisplayUnit, Length, Size } from "../engine/length/index.ts";
import type { TradeWords } from "./trade.ts";

/** What every sentence is made with: one set of trade words, one unit. */
export type Voice = {
  readonly trade: TradeWords;
  readonly unit: DisplayUnit;
  readonly length: (length: Length) => string;
  readonly size: (size: Size) => string;
  readonly area: (area: Area) => string;
  readonly number: (count: number) => string;
  readonly percent: (share: number) => string;
  readonly isOne: (count: number) => boolean;
  /** The number and its noun: "1 piece", "12 pieces". */
  readonly count: (count: number, one: string, many: string) => string;
  /** "a, b and c". */
  readonly list: (parts: readonly string[]) => string;
  readonly either: (parts: readonly string[]) => string;
};

// Long enough to know one's own words again, short enough for one line.
const mostShown = 40;

/** Her own words in quotation marks, on one line, cut short where they run on. Control characters never get out. */
export function quoted(text: string): string {
  const plain = text
    .replace(/\s+/g, " ")
    .replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cn}]/gu, "\ufffd")
    .trim();
  const letters = [...plain];
  return `“${letters.length > mostShown ? `${letters.slice(0, mostShown).join("")}…` : plain}”`;
}

/** The first letter large, for a name that begins a sentence. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
