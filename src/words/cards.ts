/** What stands on the reference pages, in the order of their notes. */
import type { ReferencePage } from "../engine/cards/index.ts";
import { type DisplayUnit, formatWithUnit, inches, millimetres } from "../engine/length/index.ts";
import type { Locale } from "./locales.ts";
import type { Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

export type CardsWords = {
  /** Of the file. */
  readonly title: string;
  /** A language tag, for a voice that reads the page. */
  readonly language: string;
  /** One text for each note of the page. */
  readonly notes: (page: ReferencePage) => readonly string[];
  /** For who can't see a page's markers. */
  readonly markers: (page: ReferencePage) => string;
};

export function cardsWords(locale: Locale, unit: DisplayUnit): CardsWords {
  return inWordSet(locale, unit, { name: "cards", english });
}

function english(voice: Voice): CardsWords {
  const apart =
    voice.unit === "in"
      ? formatWithUnit(inches(1, 2), { unit: "in" })
      : formatWithUnit(millimetres(12), { unit: "mm" });
  return {
    title: "Verso: reference cards and sheets",
    language: voice.trade.language,
    notes: (page) => (page.kind === "cards" ? cardNotes(page, apart) : sheetNotes(page, apart)),
    markers: (page) =>
      page.kind === "cards"
        ? "Four black markers, one in the middle of each card."
        : "Four black markers, one near each corner of the sheet.",
  };
}

function cardNotes(page: ReferencePage, apart: string): readonly string[] {
  return [
    measureFirst(page),
    "Then cut along both lines. Lay one card at each corner of your pieces, flat and face up; it may be turned as you like.",
    `Press first. Lay the pieces ${apart} apart on one even color, all of them inside the cards.`,
    softLight,
  ];
}

function sheetNotes(page: ReferencePage, apart: string): readonly string[] {
  return [
    `${measureFirst(page)} Leave the sheet whole, and lay it flat and face up. Two sheets on opposite sides of your pieces measure best; with one alone the sizes are approximate.`,
    `Press first. Lay the pieces ${apart} apart on one even color. ${softLight}`,
  ];
}

function measureFirst({ bar, paper }: ReferencePage): string {
  const length = formatWithUnit(bar, { unit: paper === "a4" ? "mm" : "in" });
  return `Print at 100 %, not fitted to the page. Both lines between end marks must be ${length}: measure them.`;
}

const softLight =
  "Soft light, no flash. Hold the camera as flat above them as you can, with every card or sheet whole in the photo.";
