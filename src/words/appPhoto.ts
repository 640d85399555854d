/** What the page says on which leftovers come in from photos. */
import type { Paper } from "../engine/cards/index.ts";
import { type Kind, kinds } from "../engine/cloth/index.ts";
import {
  type DisplayUnit,
  formatWithUnit,
  inches,
  type LengthProblem,
  millimetres,
  type Size,
} from "../engine/length/index.ts";
import type { Doubt, PhotoRefusal, PhotoWarning, Stage } from "../photo/index.ts";
import { lengthProblem } from "./english/lengthProblems.ts";
import { kindName } from "./english/names.ts";
import type { Locale } from "./locales.ts";
import { doubtText, warnings } from "./photo.ts";
import { sentence, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

export type PhotoTexts = {
  readonly title: string;
  readonly what: string;
  readonly back: string;
  readonly toList: string;

  // Before the photo.
  readonly before: string;
  readonly how: readonly string[];
  readonly cannot: string;
  readonly cannotKnow: string;
  readonly paper: string;
  readonly papers: { readonly [P in Paper]: string };
  readonly print: string;
  readonly printing: string;
  readonly printWhat: string;
  readonly notPrinted: string;
  readonly cardsFile: string;
  readonly bar: (paper: Paper) => string;
  readonly barWhat: string;
  readonly barFar: string;
  readonly measureAgain: string;
  readonly take: string;
  readonly choose: string;
  readonly dropHere: string;

  // While it is measured, and where it can't be.
  readonly stage: (stage: "waiting" | "opening" | Stage | "pictures", file: string) => string;
  readonly stop: string;
  readonly refused: (why: PhotoRefusal, file: string) => string;
  readonly failed: (file: string) => string;
  readonly tryAgain: string;
  readonly away: string;
  readonly awayNamed: (file: string) => string;

  // The photo.
  readonly photo: (file: string) => string;
  readonly found: (count: number, doubted: number) => string;
  readonly allIn: string;
  readonly warning: (warning: PhotoWarning) => string;
  readonly piece: (number: number) => string;
  readonly keepPhoto: string;
  readonly keptPhotos: string;
  readonly keptPhoto: (number: number) => string;
  readonly letGo: string;
  readonly letGoNamed: (number: number) => string;
  readonly keptFull: (most: number) => string;
  readonly notKept: string;
  readonly onPhoto: (number: number, kind: Kind, size: Size | null) => string;

  // The pieces.
  readonly pieces: string;
  readonly takeAll: string;
  readonly takeNone: string;
  readonly takeIt: (number: number) => string;
  readonly is: (kind: Kind, size: Size | null) => string;
  readonly times: (count: number) => string;
  readonly check: (doubts: readonly Doubt[]) => string;
  readonly change: string;
  readonly changeNamed: (number: number) => string;
  readonly done: string;
  readonly doneNamed: (number: number) => string;
  readonly kind: string;
  readonly kinds: { readonly [K in Kind]: string };
  readonly side: string;
  readonly width: string;
  readonly height: string;
  readonly legs: string;
  readonly count: string;
  readonly folded: string;
  readonly leaveOut: string;
  readonly fractions: string;
  readonly lengthProblem: (problem: LengthProblem) => string;
  readonly meant: (reading: string) => string;
  readonly countProblem: string;
  readonly takeBack: string;

  // Corrections on the photo.
  readonly corner: (number: number, piece: number) => string;
  readonly corners: string;
  readonly split: string;
  readonly splitHow: string;
  readonly merge: string;
  readonly mergeHow: string;
  readonly missed: string;
  readonly missedHow: string;
  readonly floorAgain: string;
  readonly floorHow: string;
  readonly cornersHow: (count: number) => string;
  readonly allCorners: string;
  readonly surface: string;
  readonly working: string;
  readonly notMade: string;
  readonly leaveIt: string;
  readonly toLine: (piece: number) => string;

  // Their cloth.
  readonly cloth: (number: number) => string;
  readonly clothName: string;
  readonly ofCloth: string;
  readonly ownCloth: string;

  // Into the heap.
  readonly add: (count: number) => string;
  readonly noneTaken: string;
  readonly needsSize: (count: number) => string;
  readonly added: (count: number, rows: number) => string;
};

export function photoTexts(locale: Locale, unit: DisplayUnit): PhotoTexts {
  return inWordSet(locale, unit, { name: "photo", english });
}

function english(voice: Voice): PhotoTexts {
  return {
    title: "Leftovers from photos",
    what: "Lay the pieces between Verso’s printed cards, take one photo, and each is measured. The photo stays on this device.",
    back: "Back to the leftovers",
    toList: "See them in the list",
    ...beforeTexts(voice),
    ...measuringTexts(voice),
    ...listTexts(voice),
    ...correctionTexts(voice),
    ...clothTexts(),
    add: (count: number) => `Add ${voice.count(count, "piece", "pieces")}`,
    noneTaken: "Tick the pieces that are to go to the leftovers.",
    needsSize: (count: number) =>
      `${voice.count(count, "ticked piece needs", "ticked pieces need")} a size before it can be added.`,
    added: (count: number, rows: number) =>
      `${voice.count(count, "piece", "pieces")} added in ${voice.count(rows, "row", "rows")}. Undo takes them back.`,
  };
}

function beforeTexts(voice: Voice) {
  const apart =
    voice.unit === "in" ? voice.length(inches(1, 2)) : formatWithUnit(millimetres(12), { unit: "mm" });
  return {
    before: "Before you take it",
    how: [
      `Press first. Lay the pieces flat and ${apart} apart, on one even ${voice.trade.colour} that none of them has.`,
      "Lay one card flat at each corner, all the pieces inside; or whole sheets on opposite sides.",
      "Soft light, no flash. Hold the camera as level above them as you can, with every card whole in the photo.",
      "Ten to twenty pieces at a time are enough. Of many alike lay one and type how many there are; fold long strips in half.",
    ],
    cannot: "What a photo can’t know",
    cannotKnow: `A fold, a corner that stands up, and two pieces of one cloth laid side against side all look like flat cloth. Grain, the right side and what was washed can’t be seen, and ${voice.trade.colours} are the lamp’s and the phone’s as well. Hold a ruler to a piece or two before you rely on the rest.`,
    paper: "Paper",
    papers: { letter: "Letter", a4: "A4" },
    print: "Save the cards to print",
    printing: "Making the cards…",
    printWhat:
      "Print at 100 %, not fitted to the page. Four cards to cut apart, and two sheets to leave whole.",
    notPrinted: "The cards could not be made. Try again.",
    cardsFile: "Verso cards",
    bar: (paper: Paper) => `What your ruler says of the ${barText(paper)} line`,
    barWhat:
      "Printers shrink a page a little. With this the sizes are right again. It stays for the next photos; measure again when you print new cards. Leave it blank to trust the printer.",
    barFar: "That is far from what it should be. Measure from end mark to end mark.",
    measureAgain: "Measure the photos again",
    take: "Take a photo",
    choose: "Choose photos",
    dropHere: "Let go to measure these photos",
  };
}

function barText(paper: Paper): string {
  return paper === "a4"
    ? formatWithUnit(millimetres(150), { unit: "mm" })
    : formatWithUnit(inches(6), { unit: "in" });
}

const stages = {
  waiting: "waits its turn",
  opening: "being opened",
  markers: "looking for the cards",
  floor: "looking at the floor",
  pieces: "measuring the pieces",
  pictures: "cutting out the pictures",
} as const;

function measuringTexts(voice: Voice) {
  return {
    stage: (stage: keyof typeof stages, file: string) => `${file}: ${stages[stage]}`,
    stop: "Stop",
    refused: (why: PhotoRefusal, file: string) => `${file}: ${refusalText(why, voice)}`,
    failed: (file: string) => `${file} could not be measured. Nothing was changed.`,
    tryAgain: "Try again",
    away: "Put away",
    awayNamed: (file: string) => `Put away ${file} and what was found in it`,
    photo: (file: string) => `Photo ${file}`,
    found: (count: number, doubted: number) => {
      const all = `${voice.count(count, "piece", "pieces")} found.`;
      if (count === 0) return "No piece was found between the cards.";
      return doubted === 0 ? all : `${all} Look again at ${voice.number(doubted)} of them.`;
    },
    keepPhoto: "Keep this photo with the back",
    keptPhotos: "Photos you keep",
    keptPhoto: (number: number) => `Kept photo ${voice.number(number)}`,
    letGo: "Keep it no longer",
    letGoNamed: (number: number) => `Keep photo ${voice.number(number)} no longer`,
    keptFull: (most: number) => `No more than ${voice.number(most)} photos can be kept with a back.`,
    notKept: "This photo is too large to be kept.",
    allIn: "All its pieces are among the leftovers.",
    warning: (one: PhotoWarning) => warnings[one],
  };
}

/** Why a photo can't be used here, and what to do. */
export function refusalText(why: PhotoRefusal, voice: Voice): string {
  switch (why.kind) {
    case "not-a-photo":
      return "This is no photo that can be read here: JPEG, HEIC or PNG.";
    case "cut-short":
      return "The end of this photo is missing. Copy it once more.";
    case "too-large":
      return `This photo has ${voice.number(Math.round(why.megapixels))} million pixels. Up to ${voice.number(why.most)} million can be measured.`;
    case "no-cards":
      return "No card was found in this photo. Each must be whole, flat and not in a glare.";
  }
}

function listTexts(voice: Voice) {
  const is = (kind: Kind, size: Size | null) =>
    `${sentence(kindName(kind, 1, voice))}${size === null ? "" : `, ${voice.size(size)}`}`;
  return {
    piece: (number: number) => `Piece ${voice.number(number)}`,
    onPhoto: (number: number, kind: Kind, size: Size | null) =>
      `Piece ${voice.number(number)}: ${is(kind, size)}`,
    pieces: "The pieces",
    takeAll: "Tick all",
    takeNone: "Tick none",
    takeIt: (number: number) => `Take piece ${voice.number(number)}`,
    is,
    times: (count: number) => `× ${voice.number(count)}`,
    check: (doubts: readonly Doubt[]) =>
      `Look again: ${doubts.map((doubt) => doubtText(doubt, voice)).join("; ")}.`,
    change: "Change",
    changeNamed: (number: number) => `Change piece ${voice.number(number)}`,
    done: "Done",
    doneNamed: (number: number) => `Done with piece ${voice.number(number)}`,
    kind: "What it is",
    kinds: kindTexts(voice),
    side: "Side",
    width: "Width",
    height: "Height",
    legs: "For a triangle the sizes are its two short sides, those at the right angle. Of an odd shape, the largest rectangle in it.",
    count: "How many alike",
    folded: "It lies folded in half: twice as long",
    leaveOut: "Leave it out",
    fractions: "Fractions",
    lengthProblem: (problem: LengthProblem) => sentence(lengthProblem(problem)),
    meant: (reading: string) => `It is ${reading}`,
    countProblem: "A whole number, 1 or more.",
    takeBack: "Take back the last correction",
  };
}

function kindTexts(voice: Voice): { readonly [K in Kind]: string } {
  // Every word of the list is an entry, as the type says.
  return Object.fromEntries(kinds.map((kind) => [kind, kindName(kind, 1, voice)])) as {
    readonly [K in Kind]: string;
  };
}

function correctionTexts(voice: Voice) {
  return {
    corner: (number: number, piece: number) =>
      `Corner ${voice.number(number)} of piece ${voice.number(piece)}`,
    corners:
      "On the photo, drag a corner, or move it with the arrow keys (with Shift further). A corner that is dragged goes to the edge of the cloth nearby.",
    split: "It is two pieces",
    splitHow: "Tap where the line between them begins, then where it ends, each on an edge of the piece.",
    merge: "It is one with another",
    mergeHow: "Tap the number of the other piece.",
    missed: "A piece was missed",
    missedHow: "Tap inside of it.",
    floorAgain: "Choose the floor again",
    floorHow:
      "Tap a place where the floor lies bare, away from every piece. All pieces of this photo are then looked for anew.",
    cornersHow: (count: number) =>
      count === 0
        ? "It can’t be made out there. Tap its corners, one after another."
        : `${voice.count(count, "corner", "corners")} so far.`,
    allCorners: "These are its corners",
    surface: "Place on the photo: the arrow keys move the mark, Enter sets it",
    working: "One moment…",
    notMade: "Nothing came of that. Try it otherwise.",
    leaveIt: "Leave it as it was",
    toLine: (piece: number) => `Piece ${voice.number(piece)} in the list`,
  };
}

function clothTexts() {
  return {
    cloth: (number: number) => `cloth ${number}`,
    clothName: "What this cloth is called",
    ofCloth: "Its cloth",
    ownCloth: "a cloth of its own",
  };
}
