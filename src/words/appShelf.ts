/** What is said about the shelf: leftovers of earlier quilts, and what of this one goes there. */
import type { Fabric } from "../engine/cloth/index.ts";
import type { DisplayUnit } from "../engine/length/index.ts";
import { pieceText, type SpokenPiece } from "./english/lines.ts";
import type { Locale } from "./locales.ts";
import { quoted, sentence, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

/** What is worth knowing of a heap as a whole. */
export type HeapRemark =
  | { readonly kind: "much-of-one"; readonly fabric: Fabric; readonly share: number }
  | { readonly kind: "one-value"; readonly value: "light" | "medium" | "dark" };

export type ShelfTexts = {
  readonly shelf: (rows: number) => string;
  readonly shelfWhat: string;
  readonly row: (piece: SpokenPiece) => string;
  readonly join: (rows: number) => string;
  readonly joined: (rows: number) => string;
  readonly takeOff: string;
  readonly takenOff: (rows: number) => string;
  readonly layBack: string;
  readonly toShelf: string;
  readonly movedToShelf: (rows: number) => string;

  readonly staysOver: string;
  readonly staysOverWhat: string;
  readonly putOnShelf: string;
  readonly liesOnShelf: string;

  readonly remark: (remark: HeapRemark) => string;
  readonly blackAndWhite: string;
};

export function shelfTexts(locale: Locale, unit: DisplayUnit): ShelfTexts {
  return inWordSet(locale, unit, { name: "shelf", english });
}

function english(voice: Voice): ShelfTexts {
  const rowsText = (rows: number) => voice.count(rows, "row", "rows");
  return {
    shelf: (rows) => `From the shelf, ${rowsText(rows)}`,
    shelfWhat:
      "Left over from earlier quilts. Tick what joins this heap: it comes off the shelf, and Undo lays it back.",
    row: (piece) => sentence(pieceText(piece, voice)),
    join: (rows) => (rows === 0 ? "Tick what joins this heap" : `Add ${rowsText(rows)} to this heap`),
    joined: (rows) =>
      `${sentence(rowsText(rows))} joined this heap. Undo lays what joined back on the shelf.`,
    takeOff: "Take off the shelf for good",
    takenOff: (rows) => `${sentence(rowsText(rows))} taken off the shelf.`,
    layBack: "Lay it back",
    toShelf: "To the shelf",
    movedToShelf: (rows) => `${sentence(rowsText(rows))} moved to the shelf. Undo brings back what moved.`,

    staysOver: "What stays over",
    staysOverWhat:
      "Pieces this plan did not take. Offcuts and lengths you cut into are not among them: measure those, and list them with the next quilt.",
    putOnShelf: "Put it all on the shelf",
    liesOnShelf: "It lies on the shelf, ready to join another heap.",

    remark: (remark) => remarkText(remark, voice),
    blackAndWhite: "Black and white",
  };
}

function remarkText(remark: HeapRemark, voice: Voice): string {
  switch (remark.kind) {
    case "much-of-one": {
      const name = remark.fabric.name === "" ? "one fabric" : quoted(remark.fabric.name);
      return `${voice.percent(remark.share)} of this heap is ${name}, and there is little of any other. Scattered, the others look lost: keep them together in one row or one middle.`;
    }
    case "one-value":
      return `Nearly all of it is ${valueNames[remark.value]}, so pieces will hardly show beside one another. ${cure[remark.value]}`;
  }
}

const valueNames = { light: "light", medium: "of middle value", dark: "dark" };
const cure = {
  light: "A dark fabric among them, or a dark plain cloth, makes them show.",
  medium: "A light or a dark fabric among them makes them show.",
  dark: "A light fabric among them, or a light plain cloth, makes them show.",
};
