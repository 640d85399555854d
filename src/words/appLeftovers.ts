/** What the page says on which she tells what is left over. */
import {
  type Direction,
  type DraftProblem,
  directions,
  type Fabric,
  type Grain,
  grains,
  type Keep,
  type Kind,
  keeps,
  kinds,
  type PileName,
  type Use,
  uses,
} from "../engine/cloth/index.ts";
import type { Area, DisplayUnit, Length, LengthProblem } from "../engine/length/index.ts";
import type { Column, LineProblem, LineReading, RowFault, TableProblem } from "../files/index.ts";
import { draftProblem, pieceProblem } from "./english/draftProblems.ts";
import { lengthProblem } from "./english/lengthProblems.ts";
import {
  captionText,
  lineProblemText,
  pieceText,
  type SpokenPiece,
  type TakenForGranted,
  takenText,
} from "./english/lines.ts";
import { directionNames, grainNames, keepNames, kindName, useNames } from "./english/names.ts";
import { rowProblem, tableProblem } from "./english/tableProblems.ts";
import type { Locale } from "./locales.ts";
import { quoted, sentence, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

/** How she looks at the heap where there is room for one thing. */
export const heapViews = ["all", "piles", "list", "fabrics", "about"] as const;
export type HeapView = (typeof heapViews)[number];

/** What takes cloth before the back does. */
export type Reserved = {
  readonly what: "binding" | "label";
  /** What it takes in all; null: the top's size isn't known yet. */
  readonly needed: { readonly width: Length; readonly length: Length } | null;
  /** Cloth that is put aside for it, by fabric. */
  readonly from: readonly {
    readonly count: number;
    readonly width: Length;
    readonly height: Length;
    readonly fabric: string;
  }[];
  /** How much is missing; null: nothing is. */
  readonly short: Length | null;
};

export type LeftoversTexts = {
  readonly title: string;
  readonly summary: (heap: { readonly count: number; readonly rows: number; readonly area: Area }) => string;
  readonly nothingYet: string;
  readonly stop: (problem: DraftProblem) => string;

  // One line.
  readonly line: string;
  readonly lineHow: string;
  readonly examples: readonly string[];
  readonly add: string;
  /** What was understood of a line, or a row in words. */
  readonly understood: (piece: SpokenPiece) => string;
  readonly understoodRough: (rough: NonNullable<LineReading["rough"]>, fabric: string) => string;
  readonly taken: (taken: TakenForGranted) => string;
  readonly likeness: string;
  readonly added: (what: string) => string;
  readonly lineProblem: (problem: LineProblem) => string;
  readonly meant: (reading: string) => string;
  readonly ruler: (length: Length) => string;

  // Many at once.
  readonly many: string;
  readonly openTable: string;
  readonly fromPhoto: string;
  readonly saveTable: string;
  /** Where the device has a share sheet. */
  readonly shareTable: string;
  readonly saveTableWhat: string;
  readonly tableName: (title: string) => string;
  readonly dropHere: string;
  readonly entered: (rows: number, waiting: number) => string;
  readonly notEntered: (problem: TableProblem) => string;

  // To be mended.
  readonly waiting: (count: number) => string;
  readonly waitingWhat: string;
  readonly waitingLine: (number: number) => string;
  readonly asWritten: (text: string) => string;
  readonly fault: (fault: RowFault) => string;
  readonly rowProblem: (problem: DraftProblem) => string;
  readonly takeIt: string;
  readonly leaveOut: string;
  readonly leaveOutOf: (number: number) => string;
  readonly column: { readonly [C in Column]: string };

  // Ways to look at it.
  readonly views: { readonly [V in HeapView]: string };
  readonly view: string;
  readonly pile: { readonly [P in PileName]: string };
  readonly pileIs: (count: number, area: Area) => string;
  readonly allOfThese: string;
  readonly markPile: (pile: PileName) => string;
  readonly use: { readonly [U in Use]: string };
  readonly rowCaption: (piece: SpokenPiece) => string;
  /** Both as she wrote them. */
  readonly roughCaption: (total: string, width: string) => string;
  readonly more: (count: number) => string;
  readonly chosen: string;

  readonly list: string;
  readonly listHow: string;
  readonly chooseRow: (number: number) => string;
  readonly chooseAll: string;
  readonly blank: string;
  readonly choices: {
    readonly kind: { readonly [K in Kind]: string };
    readonly keep: { readonly [K in Keep]: string };
    readonly use: { readonly [U in Use]: string };
    readonly direction: { readonly [D in Direction]: string };
    readonly grain: { readonly [G in Grain]: string };
    readonly washed: { readonly yes: string; readonly no: string };
  };
  readonly usual: string;
  readonly allAbout: string;
  readonly allAboutRow: (number: number) => string;
  readonly done: string;
  readonly cancel: string;

  readonly nChosen: (count: number) => string;
  readonly markChosen: string;
  readonly remove: string;
  readonly removed: (count: number) => string;
  readonly chooseNone: string;

  readonly fabrics: string;
  readonly fabric: (fabric: Fabric) => string;
  readonly fabricIs: (area: Area, share: number) => string;
  readonly colourOf: (fabric: string) => string;
  readonly colourNotKnown: string;
  readonly values: string;
  readonly valuesWhat: string;
  readonly light: string;
  readonly dark: string;
  readonly valuesOf: (fabrics: readonly string[]) => string;

  // About the heap.
  readonly about: string;
  readonly cutting: string;
  readonly clean: string;
  readonly rough: string;
  readonly roughWhat: (edge: Length) => string;
  readonly reserve: string;
  readonly reserveBinding: string;
  readonly reserveLabel: string;
  readonly reserved: (reserved: Reserved) => string;

  readonly stock: string;
  readonly stockWhat: string;
  readonly stockStrips: string;
  readonly stockTotal: string;
  readonly stockWidth: string;
  readonly stockBag: string;
  readonly stockWeight: string;
  readonly stockFabric: string;
  readonly stockStripsIs: (total: string, width: string, fabric: string) => string;
  readonly stockBagIs: (weight: string, fabric: string) => string;
  readonly stockBagArea: (area: Area) => string;
  readonly addStrips: string;
  readonly addBag: string;
  readonly weightProblem: (problem: LengthProblem) => string;
  readonly lengthProblem: (problem: LengthProblem) => string;
  readonly removeStock: (what: string) => string;

  readonly goOn: string;
};

export function leftoversTexts(locale: Locale, unit: DisplayUnit): LeftoversTexts {
  return inWordSet(locale, unit, { name: "leftovers", english });
}

function english(voice: Voice): LeftoversTexts {
  return {
    title: "Leftovers",
    summary: ({ count, rows, area }) =>
      `${voice.count(count, "piece", "pieces")} in ${voice.count(rows, "row", "rows")}, about ${voice.area(area)} as cut.`,
    nothingYet: "Nothing lies here yet.",
    stop: (problem) => draftProblem(problem, voice),
    ...lineTexts(voice),
    ...manyTexts(voice),
    ...mendTexts(voice),
    ...viewTexts(voice),
    ...listTexts(voice),
    ...fabricTexts(voice),
    ...aboutTexts(voice),
    ...stockTexts(voice),
    goOn: "Go on to the plan",
  };
}

function lineTexts(voice: Voice) {
  const inInches = voice.unit === "in";
  return {
    line: "One leftover, as you would note it",
    lineHow: inInches
      ? "How many, what it is, its size as cut, the fabric. Enter adds it."
      : "How many, what it is, its size as cut in centimetres, the fabric. Enter adds it.",
    examples: inInches
      ? ["4 strips 2 1/2 x 31 teal dots", "12 blocks 6 1/2", "fat quarter moss", "crumbs 6 oz"]
      : ["4 strips 6.5 x 80 teal dots", "12 blocks 16.5", "fat quarter moss", "crumbs 170 g"],
    add: "Add",
    understood: (piece: SpokenPiece) => `${sentence(pieceText(piece, voice))}.`,
    understoodRough: (rough: NonNullable<LineReading["rough"]>, fabric: string) =>
      `About ${voice.length(rough.total)} of strips ${voice.length(rough.width)} wide${fabric === "" ? "" : `, ${fabric}`}.`,
    taken: (taken: TakenForGranted) => takenText(taken, voice),
    likeness: `Drawn in the ${voice.trade.colour} its name speaks of. You can choose another.`,
    added: (what: string) => `Added. ${what}`,
    lineProblem: (problem: LineProblem) => lineProblemText(problem, voice),
    meant: (reading: string) => `It is ${reading}`,
    ruler: (length: Length) => voice.length(length),
  };
}

function manyTexts(voice: Voice) {
  return {
    many: "Many at once: paste lines or a table here, or drop a file on this page.",
    openTable: "Open a table",
    fromPhoto: "From a photo",
    saveTable: "Save as a table",
    shareTable: "Share as a table",
    saveTableWhat: "A file (CSV) that a spreadsheet opens. Rows that wait are not in it.",
    tableName: (title: string) => `${title}, leftovers`,
    dropHere: "Let go to enter this table",
    entered: (rows: number, waiting: number) => {
      const all = rows === 0 ? "" : `${voice.count(rows, "row", "rows")} entered.`;
      const rest = waiting === 0 ? "" : `${voice.count(waiting, "row waits", "rows wait")} to be mended.`;
      return [all, rest].filter((text) => text !== "").join(" ") || "There was nothing to enter.";
    },
    notEntered: (problem: TableProblem) => tableProblem(problem, voice),
  };
}

function mendTexts(voice: Voice) {
  return {
    waiting: (count: number) => `${voice.count(count, "row waits", "rows wait")} to be mended`,
    waitingWhat: "Everything else is entered. These stay out of the plan until they can be read.",
    waitingLine: (number: number) => `Row ${number}`,
    asWritten: (text: string) => `${quoted(text)}, as written`,
    fault: (fault: RowFault) => sentence(rowProblem(fault, voice)),
    rowProblem: (problem: DraftProblem) =>
      problem.row === null ? draftProblem(problem, voice) : sentence(pieceProblem(problem, voice)),
    takeIt: "Take it so",
    leaveOut: "Leave it out",
    leaveOutOf: (number: number) => `Leave out row ${number}`,
    column: {
      kind: "What",
      width: "Width",
      height: "Height",
      count: "Count",
      fabric: "Fabric",
      colour: sentence(voice.trade.colour),
      name: "Note",
      keep: "May it be cut",
      use: "Mark",
      direction: "Print",
      grain: "Grain",
      washed: "Washed",
      cloth: "Kind of cloth",
      area: "Area",
      weight: "Weight",
    },
  };
}

function viewTexts(voice: Voice) {
  return {
    view: "How to look at it",
    views: { all: "All", piles: "Piles", list: "List", fabrics: "Fabrics", about: "More" },
    pile: {
      strips: "Strips",
      blocks: "Blocks and part blocks",
      triangles: "Triangles",
      small: "Small pieces",
      large: "Large pieces",
    },
    pileIs: (count: number, area: Area) => `${voice.count(count, "piece", "pieces")}, ${voice.area(area)}`,
    allOfThese: "All of these:",
    markPile: (pile: PileName) => `Mark all of this pile: ${pileNames[pile]}`,
    use: marks,
    rowCaption: (piece: SpokenPiece) => captionText(piece, voice),
    roughCaption: (total: string, width: string) => `about ${total} of ${width}`,
    more: (count: number) => `and ${voice.number(count)} more`,
    chosen: "chosen",
  };
}

/** Short, since all of them stand in a row. */
const marks: { readonly [U in Use]: string } = { ...useNames, "if-needed": "if needed", edge: "edge only" };

const pileNames: { readonly [P in PileName]: string } = {
  strips: "strips",
  blocks: "blocks and part blocks",
  triangles: "triangles",
  small: "small pieces",
  large: "large pieces",
};

function listTexts(voice: Voice) {
  return {
    list: "Every row",
    listHow: "Arrow keys move, Enter changes, Escape leaves it as it was.",
    chooseRow: (number: number) => `Choose row ${number}`,
    chooseAll: "Choose all",
    blank: "none",
    choices: {
      kind: choicesOf(kinds, (kind) => kindName(kind, 1, voice)),
      keep: choicesOf(keeps, (keep) => keepNames[keep]),
      use: choicesOf(uses, (use) => marks[use]),
      direction: choicesOf(directions, (direction) => directionNames[direction]),
      grain: choicesOf(grains, (grain) => grainNames[grain]),
      washed: { yes: "yes", no: "no" },
    },
    usual: "as usual",
    allAbout: "More",
    allAboutRow: (number: number) => `All about row ${number}`,
    done: "Done",
    cancel: "Leave it as it was",
    nChosen: (count: number) => `${voice.count(count, "row", "rows")} chosen`,
    markChosen: "Mark what is chosen",
    remove: "Remove",
    removed: (count: number) =>
      voice.isOne(count)
        ? "1 row removed. Undo brings it back."
        : `${voice.number(count)} rows removed. Undo brings them back.`,
    chooseNone: "Choose none",
  };
}

function choicesOf<T extends string>(
  list: readonly T[],
  name: (word: T) => string,
): { readonly [W in T]: string } {
  // Every word of the list is an entry, as the type says.
  return Object.fromEntries(list.map((word) => [word, name(word)])) as { readonly [W in T]: string };
}

function fabricTexts(voice: Voice) {
  const { colour } = voice.trade;
  const noName = "cloth without a name";
  return {
    fabrics: "How much of each fabric",
    fabric: ({ name }: Fabric) => (name === "" ? noName : name),
    fabricIs: (area: Area, share: number) => `${voice.area(area)}, ${voice.percent(share)}`,
    colourOf: (fabric: string) => `${sentence(colour)} of ${fabric}`,
    colourNotKnown: `no ${colour} yet`,
    values: "From light to dark",
    valuesWhat: `Above in ${voice.trade.colour}, below as a ${voice.trade.grey} photograph would show it.`,
    light: "light",
    dark: "dark",
    valuesOf: (fabrics: readonly string[]) => `From light to dark: ${voice.list(fabrics)}`,
  };
}

function aboutTexts(voice: Voice) {
  return {
    about: "About this heap",
    cutting: "How it was cut",
    clean: "With ruler and cutter",
    rough: "By scissors, or torn",
    roughWhat: (edge: Length) => `${sentence(voice.length(edge))} comes off every edge before it is sewn.`,
    reserve: "Put aside first",
    reserveBinding: "Enough for the binding",
    reserveLabel: "A piece for the label",
    reserved: (reserved: Reserved) => reservedText(reserved, voice),
  };
}

function reservedText({ what, needed, from, short }: Reserved, voice: Voice): string {
  if (what === "binding" && needed === null)
    return "Give the size of the top first. Then the binding can be worked out.";
  const cloth = from.map(({ count, width, height, fabric }) => {
    const size = `${voice.number(count)} of ${voice.size({ width, height })}`;
    return fabric === "" ? size : `${size}, ${fabric}`;
  });
  const put = cloth.length === 0 ? "" : `Put aside: ${cloth.join("; ")}.`;
  if (what === "label") return put === "" ? "No piece is large enough for a label." : put;
  const goal =
    needed === null
      ? ""
      : `It takes ${voice.length(needed.length)} of strips ${voice.length(needed.width)} wide.`;
  const missing =
    short === null
      ? ""
      : `${sentence(voice.length(short))} is missing, so nothing is put aside. Buy the binding, or choose a cloth for it later.`;
  return [goal, put, missing].filter((text) => text !== "").join(" ");
}

function stockTexts(voice: Voice) {
  const inInches = voice.unit === "in";
  return {
    stock: "Stock without a list",
    stockWhat: inInches
      ? "If you would rather not count: about how much of strips, or the weight of a bag."
      : "If you would rather not count: about how many metres of strips, or the weight of a bag.",
    stockStrips: "Strips of one width",
    stockTotal: inInches ? "About how much, such as 9 yd" : "About how much, such as 8 m",
    stockWidth: inInches ? "How wide, such as 2 1/2" : "How wide, such as 6.5",
    stockBag: "A bag of small bits",
    stockWeight: inInches ? "Its weight, such as 12 oz" : "Its weight, such as 350 g",
    stockFabric: "Fabric, if it is one",
    stockStripsIs: (total: string, width: string, fabric: string) =>
      `About ${total} of strips ${width} wide${fabric === "" ? "" : `, ${fabric}`}`,
    stockBagIs: (weight: string, fabric: string) =>
      `A bag of small bits, ${weight}${fabric === "" ? "" : `, ${fabric}`}`,
    stockBagArea: (area: Area) => `About ${voice.area(area)} of cloth, a tenth more or less.`,
    addStrips: "Add these strips",
    addBag: "Add this bag",
    weightProblem: (problem: LengthProblem) => sentence(lengthProblem(problem, "weight")),
    lengthProblem: (problem: LengthProblem) => sentence(lengthProblem(problem)),
    removeStock: (what: string) => `Remove: ${what}`,
  };
}
