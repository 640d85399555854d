import {
  type Direction,
  type DraftProblem,
  directions,
  type Fabric,
  grains,
  type Keep,
  keeps,
  kinds,
  type PileName,
  type Use,
  uses,
} from "../engine/cloth/index.ts";
import type { Area, Length, LengthProblem } from "../engine/length/index.ts";
import type { LineProblem, LineReading, RowFault, TableProblem } from "../files/index.ts";
import {
  type LeftoversTexts,
  type Reserved,
  type SpokenPiece,
  sentence,
  type TakenForGranted,
  type Voice,
} from "../words/index.ts";
import { draftProblem, pieceProblem } from "./draftProblems.ts";
import { lengthProblem } from "./lengthProblems.ts";
import { captionText, lineProblemText, pieceText, takenText } from "./lines.ts";
import { quoted } from "./measures.ts";
import { columnNames, directionNames, grainNames, keepNames, kindName, useNames } from "./names.ts";
import { rowProblem, tableProblem } from "./tableProblems.ts";

export function leftovers(voice: Voice): LeftoversTexts {
  return {
    title: "Reste",
    summary: ({ count, rows, area }) =>
      `${voice.count(count, "Stück", "Stücke")} in ${voice.count(rows, "Zeile", "Zeilen")}, zugeschnitten etwa ${voice.area(area)}.`,
    nothingYet: "Hier liegt noch nichts.",
    stop: (problem) => draftProblem(problem, voice),
    ...lineTexts(voice),
    ...manyTexts(voice),
    ...mendTexts(voice),
    ...viewTexts(voice),
    ...listTexts(voice),
    ...fabricTexts(voice),
    ...aboutTexts(voice),
    ...stockTexts(voice),
    goOn: "Weiter zum Plan",
  };
}

function lineTexts(voice: Voice) {
  const inInches = voice.unit === "in";
  return {
    line: "Ein Rest, wie du ihn notieren würdest",
    lineHow: inInches
      ? "Wie viele, was es ist, das zugeschnittene Maß, der Stoff. Enter trägt es ein."
      : "Wie viele, was es ist, das zugeschnittene Maß in Zentimetern, der Stoff. Enter trägt es ein.",
    examples: inInches
      ? ["4 Streifen 2 1/2 x 31 petrol", "12 Blöcke 6 1/2", "Fat Quarter moos", "Schnipsel 170 g"]
      : ["4 Streifen 6,5 x 80 petrol", "12 Blöcke 16,5", "Fat Quarter moos", "Schnipsel 170 g"],
    add: "Eintragen",
    understood: (piece: SpokenPiece) => `${sentence(pieceText(piece, voice))}.`,
    understoodRough: (rough: NonNullable<LineReading["rough"]>, fabric: string) =>
      `Etwa ${voice.length(rough.total)} Streifen, ${voice.length(rough.width)} breit${fabric === "" ? "" : `, ${fabric}`}.`,
    taken: (taken: TakenForGranted) => takenText(taken, voice),
    likeness: "In der Farbe gezeichnet, von der sein Name spricht. Du kannst eine andere wählen.",
    added: (what: string) => `Eingetragen. ${what}`,
    lineProblem: (problem: LineProblem) => lineProblemText(problem, voice),
    meant: (reading: string) => `Es sind ${reading}`,
    ruler: (length: Length) => voice.length(length),
  };
}

function manyTexts(voice: Voice) {
  return {
    many: "Viele auf einmal: Füge hier Zeilen oder eine Tabelle ein, oder zieh eine Datei auf diese Seite.",
    openTable: "Tabelle öffnen",
    fromPhoto: "Aus einem Foto",
    saveTable: "Als Tabelle speichern",
    shareTable: "Als Tabelle teilen",
    saveTableWhat:
      "Eine Datei (CSV), die eine Tabellenkalkulation öffnet. Zeilen, die noch warten, sind nicht darin.",
    tableName: (title: string) => `${title}, Reste`,
    dropHere: "Lass los, um diese Tabelle einzutragen",
    entered: (rows: number, waiting: number) => {
      const all = rows === 0 ? "" : `${voice.count(rows, "Zeile", "Zeilen")} eingetragen.`;
      const rest = waiting === 0 ? "" : `${waitingText(waiting, voice)}.`;
      return [all, rest].filter((text) => text !== "").join(" ") || "Es gab nichts einzutragen.";
    },
    notEntered: (problem: TableProblem) => tableProblem(problem, voice),
  };
}

function waitingText(count: number, voice: Voice): string {
  return `${voice.count(count, "Zeile wartet", "Zeilen warten")} darauf, berichtigt zu werden`;
}

function mendTexts(voice: Voice) {
  return {
    waiting: (count: number) => waitingText(count, voice),
    waitingWhat: "Alles andere ist eingetragen. Diese bleiben aus dem Plan, bis sie sich lesen lassen.",
    waitingLine: (number: number) => `Zeile ${number}`,
    asWritten: (text: string) => `${quoted(text)}, wie geschrieben`,
    fault: (fault: RowFault) => sentence(rowProblem(fault, voice)),
    rowProblem: (problem: DraftProblem) =>
      problem.row === null ? draftProblem(problem, voice) : sentence(pieceProblem(problem, voice)),
    takeIt: "So nehmen",
    leaveOut: "Weglassen",
    leaveOutOf: (number: number) => `Zeile ${number} weglassen`,
    column: columnNames,
  };
}

function viewTexts(voice: Voice) {
  return {
    view: "Wie du es ansiehst",
    views: { all: "Alles", piles: "Stapel", list: "Liste", fabrics: "Stoffe", about: "Mehr" },
    pile: pileNames,
    pileIs: (count: number, area: Area) => `${voice.count(count, "Stück", "Stücke")}, ${voice.area(area)}`,
    allOfThese: "Alle davon:",
    markPile: (pile: PileName) => `Diesen ganzen Stapel markieren: ${pileNames[pile]}`,
    use: marks,
    rowCaption: (piece: SpokenPiece) => captionText(piece, voice),
    roughCaption: (total: string, width: string) => `etwa ${total}, ${width} breit`,
    more: (count: number) => `und ${voice.number(count)} mehr`,
    chosen: "gewählt",
  };
}

/** Short, since all of them stand in a row. */
const marks: { readonly [U in Use]: string } = {
  ...useNames,
  first: "zuerst",
  "if-needed": "bei Bedarf",
};

const pileNames: { readonly [P in PileName]: string } = {
  strips: "Streifen",
  blocks: "Blöcke und Teilblöcke",
  triangles: "Dreiecke",
  small: "Kleine Stücke",
  large: "Große Stücke",
};

function listTexts(voice: Voice) {
  return {
    list: "Jede Zeile",
    listHow: "Pfeiltasten bewegen, Enter ändert, Escape lässt es, wie es war.",
    chooseRow: (number: number) => `Zeile ${number} wählen`,
    chooseAll: "Alle wählen",
    blank: "keine Angabe",
    choices: {
      kind: choicesOf(kinds, (kind) => kindName(kind, 1, voice)),
      keep: choicesOf<Keep>(keeps, (keep) => keepNames[keep]),
      use: choicesOf<Use>(uses, (use) => marks[use]),
      direction: choicesOf<Direction>(directions, (direction) => directionNames[direction]),
      grain: choicesOf(grains, (grain) => grainNames[grain]),
      washed: { yes: "ja", no: "nein" },
    },
    usual: "wie üblich",
    allAbout: "Mehr",
    allAboutRow: (number: number) => `Alles zu Zeile ${number}`,
    done: "Fertig",
    cancel: "Lassen, wie es war",
    nChosen: (count: number) => `${voice.count(count, "Zeile", "Zeilen")} gewählt`,
    markChosen: "Gewähltes markieren",
    remove: "Entfernen",
    removed: (count: number) =>
      voice.isOne(count)
        ? "1 Zeile entfernt. Rückgängig holt sie zurück."
        : `${voice.number(count)} Zeilen entfernt. Rückgängig holt sie zurück.`,
    chooseNone: "Keine wählen",
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
  return {
    fabrics: "Wie viel von jedem Stoff",
    fabric: ({ name }: Fabric) => (name === "" ? "Stoff ohne Namen" : name),
    fabricIs: (area: Area, share: number) => `${voice.area(area)}, ${voice.percent(share)}`,
    colourOf: (fabric: string) => `Farbe von ${fabric}`,
    colourNotKnown: "noch keine Farbe",
    values: "Von hell bis dunkel",
    valuesWhat: "Oben in Farbe, unten, wie ein Schwarzweißfoto es zeigen würde.",
    light: "hell",
    dark: "dunkel",
    valuesOf: (fabrics: readonly string[]) => `Von hell bis dunkel: ${voice.list(fabrics)}`,
  };
}

function aboutTexts(voice: Voice) {
  return {
    about: "Zu diesem Haufen",
    cutting: "Wie zugeschnitten wurde",
    clean: "Mit Lineal und Rollschneider",
    rough: "Mit der Schere oder gerissen",
    roughWhat: (edge: Length) => `Von jeder Kante kommen vor dem Nähen ${voice.length(edge)} weg.`,
    reserve: "Vorher zurücklegen",
    reserveBinding: "Genug für die Einfassung",
    reserveLabel: "Ein Stück für das Label",
    reserved: (reserved: Reserved) => reservedText(reserved, voice),
  };
}

function reservedText({ what, needed, from, short }: Reserved, voice: Voice): string {
  if (what === "binding" && needed === null)
    return "Gib zuerst die Maße des Tops an. Dann lässt sich die Einfassung ausrechnen.";
  const cloth = from.map(({ count, width, height, fabric }) => {
    const size = `${voice.number(count)} zu ${voice.size({ width, height })}`;
    return fabric === "" ? size : `${size}, ${fabric}`;
  });
  const put = cloth.length === 0 ? "" : `Zurückgelegt: ${cloth.join("; ")}.`;
  if (what === "label") return put === "" ? "Kein Stück ist groß genug für ein Label." : put;
  const goal =
    needed === null
      ? ""
      : `Sie braucht ${voice.length(needed.length)} Streifen, ${voice.length(needed.width)} breit.`;
  const missing =
    short === null
      ? ""
      : `${sentence(voice.length(short))} fehlen, darum wird nichts zurückgelegt. Kauf die Einfassung, oder wähl später einen Stoff dafür.`;
  return [goal, put, missing].filter((text) => text !== "").join(" ");
}

function stockTexts(voice: Voice) {
  const inInches = voice.unit === "in";
  return {
    stock: "Vorrat ohne Liste",
    stockWhat: "Wenn du lieber nicht zählst: etwa wie viele Meter Streifen, oder das Gewicht einer Tüte.",
    stockStrips: "Streifen von einer Breite",
    stockTotal: "Etwa wie viel, zum Beispiel 8 m",
    stockWidth: inInches ? "Wie breit, zum Beispiel 2 1/2" : "Wie breit, zum Beispiel 6,5",
    stockBag: "Eine Tüte Schnipsel",
    stockWeight: "Ihr Gewicht, zum Beispiel 350 g",
    stockFabric: "Stoff, wenn es einer ist",
    stockStripsIs: (total: string, width: string, fabric: string) =>
      `Etwa ${total} Streifen, ${width} breit${fabric === "" ? "" : `, ${fabric}`}`,
    stockBagIs: (weight: string, fabric: string) =>
      `Eine Tüte Schnipsel, ${weight}${fabric === "" ? "" : `, ${fabric}`}`,
    stockBagArea: (area: Area) => `Etwa ${voice.area(area)} Stoff, ein Zehntel mehr oder weniger.`,
    addStrips: "Diese Streifen eintragen",
    addBag: "Diese Tüte eintragen",
    weightProblem: (problem: LengthProblem) => sentence(lengthProblem(problem, "weight")),
    lengthProblem: (problem: LengthProblem) => sentence(lengthProblem(problem)),
    removeStock: (what: string) => `Entfernen: ${what}`,
  };
}
