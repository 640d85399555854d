/** What is said of pieces that were measured in a photo. */
import { fromNumber, type Length, length } from "../engine/length/index.ts";
import type * as photo from "../photo/index.ts";
import type { PhotoWords, Voice } from "../words/index.ts";

export function photoFound(voice: Voice): PhotoWords {
  return {
    found: (file, measured) => foundText(file, measured, voice),
    warning: (warning) => warnings[warning],
    doubt: (doubt) => doubtNames[doubt],
    table: {
      fabric: (number) => `Stoff ${number}`,
      checkHeading: "bitte prüfen",
      check: (piece) => piece.check.map((doubt) => doubtNames[doubt]).join("; "),
    },
  };
}

function foundText(file: string, { pieces }: photo.MeasuredPhoto, voice: Voice): string {
  const count = voice.count(pieces.length, "Stück", "Stücke");
  const name = file.replace(/\p{Cc}/gu, "\ufffd");
  return [`${name}: ${count}`, ...pieces.map((piece, at) => `  ${at + 1}. ${pieceText(piece, voice)}`)].join(
    "\n",
  );
}

function pieceText(piece: photo.MeasuredPiece, voice: Voice): string {
  const size = voice.size({ width: lengthOf(piece.width), height: lengthOf(piece.height) });
  const doubted = piece.check.map((doubt) => doubtNames[doubt]);
  const check = doubted.length === 0 ? "" : `; bitte prüfen: ${doubted.join(", ")}`;
  return `${kinds[piece.kind]}, ${size}${check}`;
}

const kinds: Readonly<Record<photo.PhotoKind, string>> = {
  square: "Quadrat",
  rectangle: "Rechteck",
  strip: "Streifen",
  length: "Stoffbahn",
  triangle: "Dreieck (seine kurzen Seiten)",
  odd: "Sonderform (das größte Rechteck darin)",
};

// Sizes come rounded down to the ruler's step.
function lengthOf(inches: number): Length {
  return fromNumber(inches, "in") ?? length(0);
}

export const doubtNames: Readonly<Record<photo.Doubt, string>> = {
  "near-floor": "der Farbe des Untergrunds ähnlich",
  "cut-off": "vom Rand des Fotos oder einer Karte abgeschnitten",
  "may-be-two": "vielleicht zwei Stücke",
  "may-be-one": "vielleicht eins mit dem Stück daneben",
  "not-square": "nicht rechtwinklig",
  "faint-side": "eine Seite ist schlecht zu sehen",
  "curled-card": "eine Karte liegt nicht flach",
  "one-sheet": "ungefähr",
};

export const warnings: Readonly<Record<photo.PhotoWarning, string>> = {
  "curled-card":
    "Eine Karte liegt nicht flach oder wurde anders gedruckt als die übrigen. Drück sie an, und mach das Foto noch einmal.",
  "one-sheet":
    "Nur ein Bogen wurde gefunden, darum sind alle Maße ungefähr. Leg den anderen auf die gegenüberliegende Seite.",
  "few-cards":
    "Weniger als drei Karten wurden gefunden, darum sind alle Maße ungefähr. Leg an jede Ecke eine.",
};
