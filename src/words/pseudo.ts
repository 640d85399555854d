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
  const entries = Object.entries(words).map(([name, entry]) => [name, inBrackets(entry)]);
  // Each entry keeps its own shape: only the texts inside it change.
  return { ...(Object.fromEntries(entries) as Words), locale: words.locale };
}

function inBrackets(entry: unknown): unknown {
  if (typeof entry === "string") return bracketed(entry);
  if (Array.isArray(entry)) return entry.map(inBrackets);
  if (typeof entry !== "function") return entry;
  return (...given: readonly unknown[]) => inBrackets(entry(...given));
}
