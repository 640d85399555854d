import type { ChoiceNote, Reason } from "../engine/choice/index.ts";
import type { DraftProblem } from "../engine/cloth/index.ts";
import type { Figures, Usable } from "../engine/plan/index.ts";
import type { BuyRow } from "../engine/supplies/index.ts";
import { boltText, type Names, type PlanTexts, sentence, type Voice } from "../words/index.ts";
import { choiceNoteText, reasonsText } from "./choice.ts";
import { draftProblem } from "./draftProblems.ts";
import { shortTimeText, timeText } from "./measures.ts";
import { styleNames, styleSentence } from "./names.ts";
import { buyText, figureLines, usableText } from "./plan.ts";

export function planPage(voice: Voice): PlanTexts {
  return {
    title: "Plan",
    bestStyles: "Diese passen am besten zu deinen Resten",
    allStyles: "Alle Arten; die am besten zu deinen Resten passen, zuerst",
    otherStyles: "Andere Arten",
    style: (style) => sentence(styleNames[style]),
    styleIs: styleSentence,
    hours: ({ minutes }) => shortTimeText(minutes, voice),
    toBuy: (rows) => toBuyText(rows, voice),
    drawing: "Ein leerer Platz: Diese Art wird gerade gezeichnet.",
    ...choiceTexts(voice),
    ...changeTexts(voice),
    ...searchTexts(voice),
    ...keepTexts(voice),
    ...listTexts(voice),
    notReady: "Für einen Plan fehlt noch etwas",
    stops: (problem, listed) => stopText(problem, listed, voice),
    mendOn: { size: "Zu den Maßen", leftovers: "Zu den Resten" },
  };
}

function searchTexts(voice: Voice) {
  return {
    searching: "Ein besserer wird gesucht…",
    searchingShare: (covered: number) =>
      `Ein besserer wird gesucht. Bisher sind ${voice.percent(covered)} des gepatchten Teils gefüllt.`,
    found: "Das ist der beste, der gefunden wurde.",
    stopped: "Angehalten. Das ist der beste bisher.",
    failed: "Die Suche ist abgebrochen.",
    tryAgain: "Noch einmal versuchen",
    stop: "Hier anhalten",
    searchOn: "Länger suchen",
    another: "Einen anderen dieser Art",
  };
}

function keepTexts(voice: Voice) {
  return {
    keep: "Diesen Plan behalten",
    isKept: "Diesen Plan behältst du.",
    sew: "Weiter zum Nähen",
    keepingClears: (ticks: number) =>
      `Du hast ${voice.count(ticks, "Schritt", "Schritte")} des Plans abgehakt, den du behältst. Behältst du stattdessen diesen, beginnt es von vorn. Rückgängig bringt alles zurück.`,
    changedSinceKept:
      "Seit du einen Plan behalten hast, haben sich Reste oder Maße geändert. Er bleibt, wie er war, bis du einen anderen behältst.",
  };
}

function choiceTexts(voice: Voice) {
  return {
    wishes: "Was hättest du gern?",
    wish: {
      "sew-less": "Weniger nähen",
      "use-small": "Kleine aufbrauchen",
      "buy-nothing": "Nichts kaufen",
    },
    contrast: "Wie sollen sich Stoffe begegnen?",
    contrasts: { blend: "Sanft", mixed: "Gemischt", strong: "Stark" },
    contrastIs: {
      blend: "Jeder Stoff geht in den nächsten über. Von weitem wirken die Stücke wie eins.",
      mixed: "Wie sie kommen, aber kein Stoff neben seinesgleichen, wo es sich vermeiden lässt.",
      strong: "Hell neben dunkel, wo immer die Stücke es zulassen, damit man jedes sieht.",
    },
    choosing: "Pläne werden gesucht, die sich unterscheiden…",
    reasons: (reasons: readonly Reason[]) => reasonsText(reasons, voice),
    choiceNote: (note: ChoiceNote) => choiceNoteText(note, voice),
  };
}

function changeTexts(voice: Voice) {
  return {
    change: "Diesen Plan ändern",
    changeHow:
      "Tipp ein Stück in der Zeichnung an, oder wähl es in der Liste. Ist es eingerahmt, kannst du es auch auf ein anderes ziehen.",
    pieces: "Stücke dieses Plans",
    stays: "Das bleibt",
    mustBeIn: "Muss hinein",
    leaveOut: "Weglassen",
    keepWhole: "Ganz lassen",
    anotherHere: "Ein anderes Stück hierher",
    anotherHow:
      "Eines, das unbenutzt ist, kommt gleich hinein. Eines, das woanders liegt, bleibt dann hier, und ringsum wird neu geplant.",
    noOther: "Keiner deiner anderen Reste hat die Größe dieses Platzes.",
    elsewhere: "liegt in diesem Plan woanders",
    staying: (count: number) =>
      `${voice.count(count, "Stück bleibt", "Stücke bleiben")} an ${count === 1 ? "seinem Platz" : "ihrem Platz"}.`,
    couldNotStay: (count: number) =>
      count === 1
        ? "1 Stück konnte nicht bleiben: Es ist nicht mehr da oder passt nicht."
        : `${voice.number(count)} Stücke konnten nicht bleiben: Sie sind nicht mehr da oder passen nicht.`,
    again: "Um das herum, was bleibt, neu planen",
    letAllGo: "Alle loslassen",
    done: "Fertig",
  };
}

function listTexts(voice: Voice) {
  return {
    inShort: "In Kürze",
    time: ({ minutes }: Figures) => `${sentence(timeText(minutes, voice))}, mit Zuschneiden und Bügeln.`,
    figures: (figures: Figures, usable: Usable) =>
      figureLines(figures, voice).toSpliced(1, 0, usableText(usable, voice)),
    buy: "Zu kaufen",
    buyRow: (row: BuyRow, names: Names) => buyText(row, names, voice),
    nothingToBuy: "Nichts.",
    left: "Was übrig bleibt",
    nothingLeft: "Alle Reste sind verwendet.",
    notes: "Gut zu wissen",
    note: (problem: DraftProblem) => draftProblem(problem, voice),
    uncoloured: (fabrics: readonly string[]) =>
      `Noch ohne Farbe: ${voice.list(fabrics)}. Dort kann ein Plan Gleiches nicht von Gleichem trennen, bis jeder eine hat: unter Reste, Stoffe.`,
    waiting: (rows: number) =>
      `${voice.count(rows, "Zeile deiner Reste wartet", "Zeilen deiner Reste warten")} darauf, berichtigt zu werden, und ${rows === 1 ? "ist" : "sind"} nicht in diesem Plan.`,
  };
}

type Rows = Parameters<PlanTexts["stops"]>[1];

/** What has not been said yet is no mistake. */
function stopText(problem: DraftProblem, { all, waiting }: Rows, voice: Voice): string {
  if (problem.kind === "back-zero")
    return "Wie groß die Rückseite wird, ist noch nicht bekannt. Miss das Top, oder gib die Größe der Rückseite an.";
  if (problem.kind !== "nothing-to-plan") return draftProblem(problem, voice);
  if (all === 0) return "Noch sind keine Reste eingetragen. Trag ein, was vom Top übrig ist.";
  return waiting === all
    ? "Alle Zeilen deiner Reste warten darauf, berichtigt zu werden. Berichtige eine, dann kann geplant werden."
    : draftProblem(problem, voice);
}

function toBuyText(rows: readonly BuyRow[], voice: Voice): string {
  if (rows.length === 0) return "nichts zu kaufen";
  return `${voice.list(rows.map(({ length }) => boltText(length, voice)))} kaufen`;
}
