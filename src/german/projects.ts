import {
  momentText,
  type ProjectStage,
  type ProjectsTexts,
  type ShownVersion,
  sentence,
  type Voice,
} from "../words/index.ts";
import { quoted } from "./measures.ts";
import { styleNames } from "./names.ts";
import { projectProblem } from "./projectProblems.ts";

export function projects(voice: Voice): ProjectsTexts {
  return {
    title: "Deine Rückseiten",
    welcome: "Eine Rückseite aus dem, was vom Top übrig ist",
    welcomeWhat:
      "Gib die Maße des Tops an, und trag deine Reste ein. Verso plant eine gepatchte Rückseite, die sich mit geraden Nähten nähen lässt, und sagt dir Schritt für Schritt, wie. Alles bleibt auf diesem Gerät.",
    glimpse: "Das Beispiel, eben auf diesem Gerät geplant. Von hinten gesehen.",
    trySample: "Das Beispiel ausprobieren",
    newBack: "Neue Rückseite",
    openFile: "Datei öffnen",
    dropHere: "Lass los, um die Datei zu öffnen.",
    yours: "Deine",
    sample: "Beispiel",
    sampleWhat:
      "Ausgedacht: was von einer Decke in Gartenfarben übrig sein könnte. Probier daran alles aus, und lösch es, wenn du es nicht mehr brauchst.",
    sampleTitle: "Gartenzimmer",
    sampleName: (name) => sampleNames.get(name) ?? name,
    stage: (stage) => stageText(stage, voice),
    changed: (at, now) => changedText(at, now, voice),
    pictureOf: (title, stage) =>
      `${quoted(title)}: ${stage.kind === "planned" ? `eine Rückseite, geplant als ${quoted(sentence(styleNames[stage.style]))}` : "die Rückseite dazu"}.`,
    more: "Mehr",
    moreOf: (title) => `Mehr zu ${quoted(title)}`,
    duplicate: "Verdoppeln",
    remove: "Löschen",
    saveFile: "Als Datei speichern",
    copyOf: (title) => `${title}, Kopie`,
    removed: (title) => `${quoted(title)} ist gelöscht.`,
    bringBack: "Zurückholen",
    bringBackOf: (title) => `${quoted(title)} zurückholen`,
    removedHeading: "Gelöscht",
    removedWhat: "Dreißig Tage aufgehoben, dann weg.",
    notOpened: (file) => `${quoted(file)} ließ sich nicht öffnen.`,
    nothingChanged: "Hier wurde nichts geändert.",
    problem: projectProblem,
    takenIn: (counts) => takenInText(counts, voice),
    notVerso: "Das ist keine Verso-Datei. Die enden auf .verso.",
    close: "In Ordnung",
    ...versionTexts(voice),
  };
}

const sampleNames = new Map([
  ["apricot", "Aprikose"],
  ["blocks of the top", "Blöcke vom Top"],
  ["clay pot", "Tontopf"],
  ["fig", "Feige"],
  ["foxglove", "Fingerhut"],
  ["ink", "Tinte"],
  ["linen stripe", "Leinenstreifen"],
  ["moss", "Moos"],
  ["oat", "Hafer"],
  ["rainwater", "Regenwasser"],
  ["sage leaf", "Salbeiblatt"],
  ["half a block", "ein halber Block"],
  ["one too many of each", "von jedem einer zu viel"],
  ["trial blocks", "Probeblöcke"],
  ["the last of it", "das Letzte davon"],
  ["binding left over", "von der Einfassung übrig"],
  ["what was bought for the borders", "für die Ränder gekauft"],
]);

type TakenIn = Parameters<ProjectsTexts["takenIn"]>[0];

function takenInText({ added, known, damaged, shelf }: TakenIn, voice: Voice): string {
  const onShelf = shelf === 0 ? "" : ` ${voice.count(shelf, "Zeile kam", "Zeilen kamen")} ins Regal.`;
  const nothing = shelf > 0 ? "Es kam keine neue Rückseite dazu." : "Es kam nichts Neues dazu.";
  const came = added === 0 ? nothing : `${voice.count(added, "Rückseite kam", "Rückseiten kamen")} dazu.`;
  const here = known === 0 ? "" : ` ${voice.count(known, "war", "waren")} schon da.`;
  const spoilt = damaged === 0 ? "" : ` ${voice.count(damaged, "ist", "sind")} in der Datei beschädigt.`;
  return `${came}${here}${onShelf}${spoilt}`;
}

function versionTexts(voice: Voice) {
  const named = ({ name, at }: ShownVersion) => (name === null ? momentText(at, voice) : quoted(name));
  return {
    versions: "Frühere Fassungen",
    versionsWhat:
      "Ab und zu wird von selbst eine aufgehoben, und unter einem Namen, wann immer du willst. Bevor du zurückgehst, wird auch aufgehoben, was gerade da ist.",
    noVersions: "Noch ist keine aufgehoben.",
    versionName: "Name für den jetzigen Stand",
    keepVersion: "Als Fassung aufheben",
    version: (version: ShownVersion) =>
      version.name === null ? `Von selbst aufgehoben, ${momentText(version.at, voice)}` : version.name,
    versionHolds: ({ name, at, leftovers, planned }: ShownVersion) =>
      `${name === null ? "" : `${momentText(at, voice)}, `}${voice.count(leftovers, "Zeile", "Zeilen")} mit Resten, ${planned ? "ein Plan" : "kein Plan"}`,
    goBack: "Dahin zurück",
    goBackTo: (version: ShownVersion) => `Zurück zu: ${named(version)}`,
    wentBack: (version: ShownVersion) => `Alles ist wie damals: ${named(version)}.`,
    notKept: "Das ließ sich nicht aufheben. Speichere jetzt eine Datei.",
  };
}

function stageText(stage: ProjectStage, voice: Voice): string {
  switch (stage.kind) {
    case "empty":
      return "Noch nichts gemessen";
    case "sized":
      return `${voice.size(stage.back)}, noch keine Reste`;
    case "listed":
      return `${voice.count(stage.leftovers, "Zeile", "Zeilen")} mit Resten, ${stage.back === null ? "noch keine Maße" : "noch kein Plan"}`;
    case "planned":
      return `Geplant: ${styleNames[stage.style]}`;
    case "sewing":
      return `${voice.number(stage.done)} von ${voice.count(stage.steps, "Schritt", "Schritten")} genäht`;
    case "sewn":
      return "Genäht";
  }
}

const day = 86_400_000;

function changedText(at: number, now: number, { trade }: Voice): string {
  const isSameDay = (one: number, other: number) =>
    new Date(one).toDateString() === new Date(other).toDateString();
  if (isSameDay(at, now)) return "heute geändert";
  if (isSameDay(at + day, now)) return "gestern geändert";
  const isSameYear = new Date(at).getFullYear() === new Date(now).getFullYear();
  const date = new Intl.DateTimeFormat(trade.language, {
    day: "numeric",
    month: "long",
    ...(isSameYear ? {} : { year: "numeric" }),
  });
  return `am ${date.format(at)} geändert`;
}
