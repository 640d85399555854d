import { barLengths, type Paper } from "../../engine/cards/index.ts";
import { type Length, toNumber } from "../../engine/length/index.ts";
import type { Measured } from "../../files/index.ts";
import type { Preferences } from "../../store/index.ts";
import type { Locale } from "../../words/index.ts";

/** What she prints on: as she chose, or what is usual where such words are spoken. */
export function paperFor({ paper }: Pick<Preferences, "paper">, locale: Locale): Paper {
  return paper ?? (locale === "en-US" || locale === "en-XA" ? "letter" : "a4");
}

// Printers are off by a few hundredths; further off it is the ruler that was misread.
const mostOff = 1 / 16;

type Printed = {
  readonly paper: Paper;
  /** What her ruler says of the printed line; null: as it should be. */
  readonly bar: Measured<Length> | null;
};

/** What her ruler says of the printed line, as a share of what it should be; null where that can't be. */
export function printedOf({ bar, paper }: Printed): number | null {
  if (bar === null) return 1;
  if (bar.value === null) return null;
  const share = toNumber(bar.value, "in") / toNumber(barLengths[paper], "in");
  return Math.abs(share - 1) <= mostOff ? share : null;
}
