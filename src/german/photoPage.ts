import type { Paper } from "../engine/cards/index.ts";
import { type Kind, kinds } from "../engine/cloth/index.ts";
import {
  formatWithUnit,
  inches,
  type LengthProblem,
  millimetres,
  type Size,
} from "../engine/length/index.ts";
import type { Doubt, PhotoRefusal, PhotoWarning, Stage } from "../photo/index.ts";
import { type PhotoTexts, sentence, type Voice } from "../words/index.ts";
import { lengthProblem } from "./lengthProblems.ts";
import { kindName } from "./names.ts";
import { doubtNames, warnings } from "./photo.ts";

export function photoPage(voice: Voice): PhotoTexts {
  return {
    title: "Reste aus Fotos",
    what: "Leg die Stücke zwischen die gedruckten Karten von Verso, mach ein Foto, und jedes wird gemessen. Das Foto bleibt auf diesem Gerät.",
    back: "Zurück zu den Resten",
    toList: "In der Liste ansehen",
    ...beforeTexts(voice),
    ...measuringTexts(voice),
    ...listTexts(voice),
    ...correctionTexts(voice),
    cloth: (number: number) => `Stoff ${number}`,
    clothName: "Wie dieser Stoff heißt",
    ofCloth: "Sein Stoff",
    ownCloth: "ein eigener Stoff",
    add: (count: number) => `${voice.count(count, "Stück", "Stücke")} eintragen`,
    noneTaken: "Hak die Stücke an, die zu den Resten sollen.",
    needsSize: (count: number) =>
      `${voice.count(count, "angehaktes Stück braucht", "angehakte Stücke brauchen")} ein Maß, bevor du sie eintragen kannst.`,
    added: (count: number, rows: number) =>
      `${voice.count(count, "Stück", "Stücke")} in ${voice.count(rows, "Zeile", "Zeilen")} eingetragen. Rückgängig nimmt sie zurück.`,
  };
}

function beforeTexts(voice: Voice) {
  const apart =
    voice.unit === "in" ? voice.length(inches(1, 2)) : formatWithUnit(millimetres(12), { unit: "mm" });
  return {
    before: "Bevor du es machst",
    how: [
      `Bügle zuerst. Leg die Stücke flach und mit ${apart} Abstand auf eine gleichmäßige Farbe, die keines von ihnen hat.`,
      "Leg an jede Ecke flach eine Karte, alle Stücke dazwischen; oder ganze Bogen auf gegenüberliegende Seiten.",
      "Weiches Licht, kein Blitz. Halte die Kamera so waagerecht darüber, wie du kannst, jede Karte ganz im Foto.",
      "Zehn bis zwanzig Stücke auf einmal reichen. Von vielen gleichen leg eins hin, und schreib, wie viele es sind; lange Streifen falte auf die Hälfte.",
    ],
    cannot: "Was ein Foto nicht wissen kann",
    cannotKnow:
      "Eine Falte, eine Ecke, die hochsteht, und zwei Stücke aus einem Stoff, die Kante an Kante liegen, sehen aus wie flacher Stoff. Fadenlauf, rechte Seite und was gewaschen ist, sieht man nicht, und die Farben sind auch die der Lampe und des Telefons. Halte an ein, zwei Stücke ein Lineal, bevor du dich auf die anderen verlässt.",
    paper: "Papier",
    papers: { letter: "Letter", a4: "A4" },
    print: "Karten zum Drucken speichern",
    printing: "Die Karten werden gemacht…",
    printWhat:
      "Druck mit 100 %, nicht an die Seite angepasst. Vier Karten zum Auseinanderschneiden und zwei Bogen, die ganz bleiben.",
    notPrinted: "Die Karten ließen sich nicht machen. Versuch es noch einmal.",
    cardsFile: "Verso Karten",
    bar: (paper: Paper) => `Was dein Lineal zu der Linie von ${barText(paper)} sagt`,
    barWhat:
      "Drucker verkleinern eine Seite ein wenig. Damit stimmen die Maße wieder. Es bleibt für die nächsten Fotos; miss wieder, wenn du neue Karten druckst. Lass es leer, wenn du dem Drucker traust.",
    barFar: "Das ist weit von dem weg, was es sein sollte. Miss von Endstrich zu Endstrich.",
    measureAgain: "Die Fotos noch einmal messen",
    take: "Foto machen",
    choose: "Fotos wählen",
    dropHere: "Lass los, um diese Fotos zu messen",
  };
}

function barText(paper: Paper): string {
  return paper === "a4"
    ? formatWithUnit(millimetres(150), { unit: "mm" })
    : formatWithUnit(inches(6), { unit: "in", name: "Inch" });
}

const stages: { readonly [S in "waiting" | "opening" | Stage | "pictures"]: string } = {
  waiting: "wartet, bis es dran ist",
  opening: "wird geöffnet",
  markers: "die Karten werden gesucht",
  floor: "der Untergrund wird angesehen",
  pieces: "die Stücke werden gemessen",
  pictures: "die Bilder werden ausgeschnitten",
};

function measuringTexts(voice: Voice) {
  return {
    stage: (stage: keyof typeof stages, file: string) => `${file}: ${stages[stage]}`,
    stop: "Anhalten",
    refused: (why: PhotoRefusal, file: string) => `${file}: ${refusalText(why, voice)}`,
    failed: (file: string) => `${file} ließ sich nicht messen. Es wurde nichts geändert.`,
    tryAgain: "Noch einmal versuchen",
    away: "Weglegen",
    awayNamed: (file: string) => `${file} weglegen, und was darin gefunden wurde`,
    photo: (file: string) => `Foto ${file}`,
    found: (count: number, doubted: number) => {
      if (count === 0) return "Zwischen den Karten wurde kein Stück gefunden.";
      const all = `${voice.count(count, "Stück", "Stücke")} gefunden.`;
      return doubted === 0 ? all : `${all} Sieh dir ${voice.number(doubted)} davon noch einmal an.`;
    },
    keepPhoto: "Dieses Foto bei der Rückseite behalten",
    keptPhotos: "Fotos, die du behältst",
    keptPhoto: (number: number) => `Behaltenes Foto ${voice.number(number)}`,
    letGo: "Nicht mehr behalten",
    letGoNamed: (number: number) => `Foto ${voice.number(number)} nicht mehr behalten`,
    keptFull: (most: number) =>
      `Mehr als ${voice.number(most)} Fotos lassen sich nicht bei einer Rückseite behalten.`,
    notKept: "Dieses Foto ist zu groß, um es zu behalten.",
    allIn: "Alle seine Stücke sind bei den Resten.",
    warning: (one: PhotoWarning) => warnings[one],
  };
}

/** Why a photo can't be used here, and what to do. */
export function refusalText(why: PhotoRefusal, voice: Voice): string {
  switch (why.kind) {
    case "not-a-photo":
      return "Das ist kein Foto, das sich hier lesen lässt: JPEG, HEIC oder PNG.";
    case "cut-short":
      return "Das Ende dieses Fotos fehlt. Kopiere es noch einmal.";
    case "too-large":
      return `Dieses Foto hat ${voice.number(Math.round(why.megapixels))} Millionen Pixel. Bis zu ${voice.number(why.most)} Millionen lassen sich messen.`;
    case "no-cards":
      return "In diesem Foto wurde keine Karte gefunden. Jede muss ganz, flach und ohne Spiegelung zu sehen sein.";
  }
}

function listTexts(voice: Voice) {
  const is = (kind: Kind, size: Size | null) =>
    `${kindName(kind, 1, voice)}${size === null ? "" : `, ${voice.size(size)}`}`;
  return {
    piece: (number: number) => `Stück ${voice.number(number)}`,
    onPhoto: (number: number, kind: Kind, size: Size | null) =>
      `Stück ${voice.number(number)}: ${is(kind, size)}`,
    pieces: "Die Stücke",
    takeAll: "Alle anhaken",
    takeNone: "Keins anhaken",
    takeIt: (number: number) => `Stück ${voice.number(number)} nehmen`,
    is,
    times: (count: number) => `× ${voice.number(count)}`,
    check: (doubts: readonly Doubt[]) =>
      `Sieh noch einmal hin: ${doubts.map((doubt) => doubtNames[doubt]).join("; ")}.`,
    change: "Ändern",
    changeNamed: (number: number) => `Stück ${voice.number(number)} ändern`,
    done: "Fertig",
    doneNamed: (number: number) => `Fertig mit Stück ${voice.number(number)}`,
    kind: "Was es ist",
    kinds: kindTexts(voice),
    side: "Seite",
    width: "Breite",
    height: "Höhe",
    legs: "Beim Dreieck sind es die beiden kurzen Seiten am rechten Winkel. Bei einer Sonderform das größte Rechteck darin.",
    count: "Wie viele gleiche",
    folded: "Es liegt auf die Hälfte gefaltet: doppelt so lang",
    leaveOut: "Weglassen",
    fractions: "Brüche",
    lengthProblem: (problem: LengthProblem) => sentence(lengthProblem(problem)),
    meant: (reading: string) => `Es sind ${reading}`,
    countProblem: "Eine ganze Zahl, 1 oder mehr.",
    takeBack: "Die letzte Korrektur zurücknehmen",
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
      `Ecke ${voice.number(number)} von Stück ${voice.number(piece)}`,
    corners:
      "Zieh im Foto eine Ecke, oder beweg sie mit den Pfeiltasten (mit Umschalt weiter). Eine gezogene Ecke geht an die nächste Stoffkante.",
    split: "Es sind zwei Stücke",
    splitHow:
      "Tipp an, wo die Linie dazwischen beginnt, dann, wo sie endet, beides an einer Kante des Stücks.",
    merge: "Es ist eins mit einem anderen",
    mergeHow: "Tipp die Nummer des anderen Stücks an.",
    missed: "Ein Stück fehlt",
    missedHow: "Tipp mitten hinein.",
    floorAgain: "Den Untergrund neu wählen",
    floorHow:
      "Tipp eine Stelle an, wo der Untergrund frei liegt, fern von jedem Stück. Alle Stücke dieses Fotos werden dann neu gesucht.",
    cornersHow: (count: number) =>
      count === 0
        ? "Dort ist es nicht zu erkennen. Tipp seine Ecken an, eine nach der anderen."
        : `Bisher ${voice.count(count, "Ecke", "Ecken")}.`,
    allCorners: "Das sind seine Ecken",
    surface: "Stelle im Foto: Die Pfeiltasten bewegen die Marke, Enter setzt sie",
    working: "Einen Moment…",
    notMade: "Daraus wurde nichts. Versuch es anders.",
    leaveIt: "Lassen, wie es war",
    toLine: (piece: number) => `Stück ${voice.number(piece)} in der Liste`,
  };
}
