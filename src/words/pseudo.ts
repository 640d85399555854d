import type { Words } from "./types.ts";

const plain = "ABCDEGHIJKLNOPRSTUWYZabcdeghijklnoprstuwyz";
const accented = "ÀƁĈĎÉĜĤÎĴĶĹÑÔÞŔŠŢÛŴÝŽàƀćďéĝĥîĵķĺñôþŕšţûŵýž";

/** A text that is still readable and cannot be mistaken for one that was never in the catalogue. */
export function bracketed(text: string): string {
  const letters = [...text].map((letter) => [...accented][[...plain].indexOf(letter)] ?? letter);
  return `⟦${letters.join("")}⟧`;
}

export function isBracketed(text: string): boolean {
  return text.startsWith("⟦") && text.endsWith("⟧");
}

/** The same catalogue with every text in brackets. */
export function pseudo(words: Words): Words {
  return { ...inBrackets(words), locale: words.locale };
}

/** Any table of texts, and of functions that give texts, with every text in brackets. */
export function inBrackets<T extends object>(words: T): T {
  const entries = Object.entries(words).map(([name, entry]) => [name, entryInBrackets(entry)]);
  // Each entry keeps its own shape: only the texts inside it change.
  return Object.fromEntries(entries) as T;
}

function entryInBrackets(entry: unknown): unknown {
  if (typeof entry === "string") return bracketed(entry);
  if (Array.isArray(entry)) return entry.map(entryInBrackets);
  if (typeof entry === "object" && entry !== null) return inBrackets(entry);
  if (typeof entry !== "function") return entry;
  return (...given: readonly unknown[]) => entryInBrackets(entry(...given));
}
