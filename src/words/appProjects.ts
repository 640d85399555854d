/** What the start page says: her backs, a sample, files. */
import type { Style } from "../engine/back/index.ts";
import type { Size } from "../engine/length/index.ts";
import type { ProjectProblem } from "../files/index.ts";
import { styleName } from "./english/names.ts";
import { projectProblem } from "./english/projectProblems.ts";
import type { Locale } from "./locales.ts";
import { momentText } from "./measures.ts";
import { quoted, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

/** How far a back has come. */
export type ProjectStage =
  | { readonly kind: "empty" }
  | { readonly kind: "sized"; readonly back: Size }
  | { readonly kind: "listed"; readonly leftovers: number; readonly back: Size | null }
  | { readonly kind: "planned"; readonly style: Style }
  | { readonly kind: "sewing"; readonly done: number; readonly steps: number }
  | { readonly kind: "sewn" };

export type ProjectsTexts = {
  readonly title: string;
  readonly welcome: string;
  readonly welcomeWhat: string;
  /** Under a drawing of a back for the sample. */
  readonly glimpse: string;
  readonly trySample: string;
  readonly newBack: string;
  readonly openFile: string;
  readonly dropHere: string;
  readonly yours: string;
  readonly sample: string;
  readonly sampleWhat: string;
  readonly sampleTitle: string;
  /** A name in the sample’s table, which is written in English. */
  readonly sampleName: (name: string) => string;
  readonly stage: (stage: ProjectStage) => string;
  /** Milliseconds since 1970, UTC, and now. */
  readonly changed: (at: number, now: number) => string;
  readonly pictureOf: (title: string, stage: ProjectStage) => string;
  readonly more: string;
  readonly moreOf: (title: string) => string;
  readonly duplicate: string;
  readonly remove: string;
  readonly saveFile: string;
  readonly copyOf: (title: string) => string;
  readonly removed: (title: string) => string;
  readonly bringBack: string;
  readonly bringBackOf: (title: string) => string;
  readonly removedHeading: string;
  readonly removedWhat: string;
  readonly notOpened: (file: string) => string;
  readonly nothingChanged: string;
  readonly problem: (problem: ProjectProblem) => string;
  /** What came of a file with many backs in it. */
  readonly takenIn: (counts: {
    readonly added: number;
    readonly known: number;
    readonly damaged: number;
    /** Rows that came onto the shelf. */
    readonly shelf: number;
  }) => string;
  readonly notVerso: string;
  readonly close: string;
  readonly versions: string;
  readonly versionsWhat: string;
  readonly noVersions: string;
  readonly versionName: string;
  readonly keepVersion: string;
  /** A version's own name, or when it was kept by itself. */
  readonly version: (version: ShownVersion) => string;
  readonly versionHolds: (version: ShownVersion) => string;
  readonly goBack: string;
  readonly goBackTo: (version: ShownVersion) => string;
  readonly wentBack: (version: ShownVersion) => string;
  readonly notKept: string;
};

/** What a list of versions shows of one. */
export type ShownVersion = {
  readonly name: string | null;
  /** Milliseconds since 1970, UTC. */
  readonly at: number;
  readonly leftovers: number;
  readonly planned: boolean;
};

export function projectsTexts(locale: Locale): ProjectsTexts {
  return inWordSet(locale, "in", { name: "projects", english });
}

function english(voice: Voice): ProjectsTexts {
  return {
    title: "Your backs",
    welcome: "A back from what the top left over",
    welcomeWhat:
      "Give the size of the top and list your leftovers. Verso plans a pieced back that can be sewn with straight seams, and says step by step how. Everything stays on this device.",
    glimpse: "The sample, planned just now on this device. Seen from behind.",
    trySample: "Try the sample",
    newBack: "New back",
    openFile: "Open a file",
    dropHere: "Let go to open the file.",
    yours: "Yours",
    sample: "Sample",
    sampleWhat: `Invented: what might be left of a throw in garden ${voice.trade.colours}. Try things on it, and delete it when you no longer want it.`,
    sampleTitle: "Garden room",
    sampleName: (name) => name,
    stage: (stage) => stageText(stage, voice),
    changed: (at, now) => changedText(at, now, voice),
    pictureOf: (title, stage) =>
      `${quoted(title)}: ${stage.kind === "planned" ? `a back planned as ${styleName(stage.style, voice)}` : "its back"}.`,
    more: "More",
    moreOf: (title) => `More for ${quoted(title)}`,
    duplicate: "Duplicate",
    remove: "Delete",
    saveFile: "Save as a file",
    copyOf: (title) => `${title}, copy`,
    removed: (title) => `${quoted(title)} is deleted.`,
    bringBack: "Bring it back",
    bringBackOf: (title) => `Bring ${quoted(title)} back`,
    removedHeading: "Deleted",
    removedWhat: "Kept for thirty days, then gone.",
    notOpened: (file) => `${quoted(file)} could not be opened.`,
    nothingChanged: "Nothing here was changed.",
    problem: projectProblem,
    takenIn: (counts) => takenInText(counts, voice),
    notVerso: "It is not a Verso file. Those end in .verso.",
    close: "All right",
    ...versionTexts(voice),
  };
}

type TakenIn = Parameters<ProjectsTexts["takenIn"]>[0];

function takenInText({ added, known, damaged, shelf }: TakenIn, voice: Voice): string {
  const onShelf = shelf === 0 ? "" : ` ${voice.count(shelf, "row", "rows")} came onto the shelf.`;
  const came =
    added === 0
      ? shelf > 0
        ? "No new back came in."
        : "Nothing new came in."
      : `${voice.count(added, "back", "backs")} came in.`;
  const here = known === 0 ? "" : ` ${voice.count(known, "was", "were")} here already.`;
  const spoilt = damaged === 0 ? "" : ` ${voice.count(damaged, "is", "are")} damaged in the file.`;
  return `${came}${here}${onShelf}${spoilt}`;
}

function versionTexts(voice: Voice) {
  const named = ({ name, at }: ShownVersion) => (name === null ? momentText(at, voice) : quoted(name));
  return {
    versions: "Earlier versions",
    versionsWhat:
      "One is kept by itself every now and then, and whenever you like under a name. What is there now is kept too before you go back.",
    noVersions: "None is kept yet.",
    versionName: "Name for how it is now",
    keepVersion: "Keep it as a version",
    version: (version: ShownVersion) =>
      version.name === null ? `Kept by itself, ${momentText(version.at, voice)}` : version.name,
    versionHolds: ({ name, at, leftovers, planned }: ShownVersion) =>
      `${name === null ? "" : `${momentText(at, voice)}, `}${voice.count(leftovers, "row", "rows")} of leftovers, ${planned ? "a plan" : "no plan"}`,
    goBack: "Go back to it",
    goBackTo: (version: ShownVersion) => `Go back to ${named(version)}`,
    wentBack: (version: ShownVersion) => `It is as it was: ${named(version)}.`,
    notKept: "It could not be kept. Save a file now.",
  };
}

function stageText(stage: ProjectStage, voice: Voice): string {
  switch (stage.kind) {
    case "empty":
      return "Nothing is measured yet";
    case "sized":
      return `${voice.size(stage.back)}, no leftovers yet`;
    case "listed":
      return `${voice.count(stage.leftovers, "row", "rows")} of leftovers, ${stage.back === null ? "no size yet" : "no plan yet"}`;
    case "planned":
      return `Planned: ${styleName(stage.style, voice)}`;
    case "sewing":
      return `${voice.number(stage.done)} of ${voice.count(stage.steps, "step", "steps")} sewn`;
    case "sewn":
      return "Sewn";
  }
}

const day = 86_400_000;

function changedText(at: number, now: number, { trade }: Voice): string {
  const isSameDay = (one: number, other: number) =>
    new Date(one).toDateString() === new Date(other).toDateString();
  if (isSameDay(at, now)) return "changed today";
  if (isSameDay(at + day, now)) return "changed yesterday";
  const isSameYear = new Date(at).getFullYear() === new Date(now).getFullYear();
  const date = new Intl.DateTimeFormat(trade.language, {
    day: "numeric",
    month: "long",
    ...(isSameYear ? {} : { year: "numeric" }),
  });
  return `changed on ${date.format(at)}`;
}
