/** What is said of pieces that were measured in a photo. */
import { fromNumber, type Length, length } from "../engine/length/index.ts";
import type * as photo from "../photo/index.ts";
import type { Locale } from "./locales.ts";
import type { Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

export type PhotoWords = {
  /** Of one photo: a line for each piece, its size and why it must be looked at. */
  readonly found: (file: string, measured: photo.MeasuredPhoto) => string;
  readonly warning: (warning: photo.PhotoWarning) => string;
  readonly doubt: (doubt: photo.Doubt) => string;
  readonly table: photo.PiecesTableWords;
};

export function photoWords(locale: Locale): PhotoWords {
  return inWordSet(locale, "in", { name: "photoFound", english });
}

function english(voice: Voice): PhotoWords {
  return {
    found: (file, measured) => foundText(file, measured, voice),
    warning: (warning) => warnings[warning],
    doubt: (doubt) => doubtText(doubt, voice),
    table: {
      fabric: (number) => `cloth ${number}`,
      checkHeading: "please check",
      check: (piece) => piece.check.map((doubt) => doubtText(doubt, voice)).join("; "),
    },
  };
}

function foundText(file: string, { pieces }: photo.MeasuredPhoto, voice: Voice): string {
  const count = voice.count(pieces.length, "piece", "pieces");
  const name = file.replace(/\p{Cc}/gu, "\ufffd");
  return [`${name}: ${count}`, ...pieces.map((piece, at) => `  ${at + 1}. ${pieceText(piece, voice)}`)].join(
    "\n",
  );
}

function pieceText(piece: photo.MeasuredPiece, voice: Voice): string {
  const size = voice.size({ width: lengthOf(piece.width), height: lengthOf(piece.height) });
  const doubts = piece.check.map((doubt) => doubtText(doubt, voice));
  const check = doubts.length === 0 ? "" : `; please check: ${doubts.join(", ")}`;
  return `${kinds[piece.kind]}, ${size}${check}`;
}

const kinds: Readonly<Record<photo.PhotoKind, string>> = {
  square: "square",
  rectangle: "rectangle",
  strip: "strip",
  length: "length",
  triangle: "triangle (its legs)",
  odd: "odd shape (the largest rectangle in it)",
};

// Sizes come rounded down to the ruler's step.
function lengthOf(inches: number): Length {
  return fromNumber(inches, "in") ?? length(0);
}

export function doubtText(doubt: photo.Doubt, { trade }: Voice): string {
  switch (doubt) {
    case "near-floor":
      return `close to the floor's ${trade.colour}`;
    case "cut-off":
      return "cut off by the edge of the photo or a card";
    case "may-be-two":
      return "may be two pieces";
    case "may-be-one":
      return "may be one with the piece beside it";
    case "not-square":
      return "not square";
    case "faint-side":
      return "a side is hard to see";
    case "curled-card":
      return "a card does not lie flat";
    case "one-sheet":
      return "approximate";
  }
}

export const warnings: Readonly<Record<photo.PhotoWarning, string>> = {
  "curled-card":
    "A card does not lie flat, or was not printed as the others. Press it down and take the photo again.",
  "one-sheet": "Only one sheet was found, so all sizes are approximate. Lay the other on the opposite side.",
  "few-cards": "Fewer than three cards were found, so all sizes are approximate. Lay one at each corner.",
};
