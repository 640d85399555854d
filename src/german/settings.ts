import type { DraftProblem } from "../engine/cloth/index.ts";
import type { Length, LengthProblem } from "../engine/length/index.ts";
import {
  bytesText,
  type CopiesOutside,
  dayText,
  languageNames,
  type ReadyWithout,
  type SettingsTexts,
  sentence,
  type Voice,
} from "../words/index.ts";
import { draftProblem } from "./draftProblems.ts";
import { lengthProblem } from "./lengthProblems.ts";
import { quoted, unitNames } from "./measures.ts";

export function settings(voice: Voice): SettingsTexts {
  return {
    title: "Einstellungen",
    ...sewingTexts(voice),
    ...screenTexts,
    printing: "Drucken",
    paper: "Papier",
    papers: { letter: "Letter", a4: "A4" },
    paperWhat:
      "Für die Karten, die im Foto neben dem Stoff liegen. Dort lässt sich immer noch ein anderes wählen.",
    ...keepingTexts(voice),
    everything: "Alles in einer Datei",
    everythingWhat:
      "Alle deine Rückseiten mit Resten und Plänen, und das Regal, zum Mitnehmen auf ein anderes Gerät oder zum Aufheben. Frühere Fassungen und gelöschte Rückseiten sind nicht darin. Öffnest du sie, kommt dazu, was hier noch fehlt, und nichts ändert sich, was da ist.",
    saveEverything: "Alles in einer Datei speichern",
    openEverything: "Datei öffnen",
    everythingFile: (at) => `Verso, alles, ${new Date(at).toISOString().slice(0, 10)}`,
    deleteAll: "Alles löschen",
    deleteAllWhat: "Jede Rückseite auf diesem Gerät, frühere Fassungen, das Regal und diese Einstellungen.",
    deleteAllAsk: (backs) =>
      `${backs === 0 ? "Alles" : voice.count(backs, "Rückseite", "Rückseiten")} auf diesem Gerät, frühere Fassungen, Regal und Einstellungen wären endgültig weg. Speichere vorher eine Kopie, wenn du etwas davon noch brauchen könntest.`,
    deleteAllNow: "Jetzt alles löschen",
    keepAll: "Alles behalten",
    notDeleted: "Das ließ sich nicht löschen. Schließ Verso in anderen Tabs, dann versuch es noch einmal.",
  };
}

function sewingTexts(voice: Voice) {
  return {
    thisBack: "Diese Rückseite",
    thisBackWhat: (title: string) =>
      `Nur für ${quoted(title)}. Ein Plan, den du behalten hast, bleibt, wie er ist, bis du neu planst.`,
    newBacks: "Neue Rückseiten",
    newBacksWhat: "Womit eine neue Rückseite beginnt. Die du schon hast, bleiben, wie sie sind.",
    unit: "Einheit",
    units: unitNames,
    ruler: "Kleinster Strich auf deinem Lineal, nach dem du gern schneidest",
    mark: (step: Length) => voice.length(step),
    seam: "Nahtzugabe",
    plainSeam: "Nahtzugabe, wo zwei Bahnen Grundstoff aneinanderstoßen",
    usual: (length: Length) => `Üblich: ${voice.length(length)}`,
    eighths: "Achtel-Inch",
    problem: (problem: LengthProblem) => sentence(lengthProblem(problem)),
    meant: (reading: string) => `Ich meine ${reading}`,
    jobProblem: (problem: DraftProblem) => draftProblem(problem, voice),
  };
}

const screenTexts = {
  onScreen: "Auf dem Bildschirm",
  look: "Hell oder dunkel",
  looks: { device: "Wie das Gerät", light: "Hell", dark: "Dunkel", contrast: "Starker Kontrast" },
  lookWhat: "Stoff behält in allen seine eigenen Farben.",
  language: "Sprache",
  asBrowser: "Wie der Browser",
  languages: languageNames,
};

function keepingTexts(voice: Voice) {
  return {
    kept: "Auf diesem Gerät behalten",
    keptWhat: "Alles, was du machst, bleibt hier in diesem Browser. Nichts davon wird irgendwohin geschickt.",
    persisted: "Der Browser hat versprochen, es zu behalten, bis du es löschst.",
    notPersisted: "Der Browser darf es wegräumen, wenn auf dem Gerät wenig Platz ist.",
    askToPersist: "Den Browser bitten, es zu behalten",
    refused:
      "Diesmal hat der Browser es nicht versprochen. Meist tut er es, wenn Verso installiert ist oder oft benutzt wird. Bis dahin ist eine eigene Datei sicherer.",
    space: (used: number, quota: number) =>
      `Es braucht etwa ${bytesText(used, voice)}; der Browser gibt Platz für ${bytesText(quota, voice)}.`,
    copies: (copies: CopiesOutside) => copiesText(copies, voice),
    keptApart:
      "Auf diesem Gerät haben ein Browser-Tab und die App auf dem Startbildschirm getrennte Rückseiten. Bleib bei einem von beiden, oder nimm eine Rückseite als Datei mit.",
    offline: "Ohne Netz",
    ready: (ready: ReadyWithout) => readyText(ready, voice),
  };
}

function copiesText({ backs, without, lastAt }: CopiesOutside, voice: Voice): string {
  if (backs === 0) return "Hier ist noch keine Rückseite von dir.";
  const last = lastAt === null ? "" : ` Zuletzt wurde am ${dayText(lastAt, voice)} eine Datei gespeichert.`;
  if (without === 0) return `Alle deine Rückseiten sind auch in eigenen Dateien gespeichert.${last}`;
  if (lastAt === null) return "Noch ist nichts in einer eigenen Datei gespeichert.";
  const changed = voice.count(without, "Rückseite hat", "Rückseiten haben");
  return `${changed} sich geändert, seit du sie in einer eigenen Datei gespeichert hast, oder du hast es nie getan.${last}`;
}

function readyText(ready: ReadyWithout, voice: Voice): string {
  switch (ready.kind) {
    case "ready":
      return "Bereit: Verso ist ganz auf diesem Gerät.";
    case "coming":
      return "Noch nicht: Verso wird gerade auf dieses Gerät geholt. Bleib einen Moment online.";
    case "missing":
      return `Noch nicht: ${voice.count(ready.files, "Teil von Verso fehlt und wird", "Teile von Verso fehlen und werden")} geholt. Bleib einen Moment online.`;
    case "never":
      return "Dieser Browser oder dieses Fenster behält keine Apps, darum braucht Verso hier ein Netz.";
  }
}
