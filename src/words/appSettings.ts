/** What the page says on which she sets how Verso works on this device. */
import type { Paper } from "../engine/cards/index.ts";
import type { DraftProblem } from "../engine/cloth/index.ts";
import type { DisplayUnit, Length, LengthProblem } from "../engine/length/index.ts";
import { draftProblem } from "./english/draftProblems.ts";
import { lengthProblem } from "./english/lengthProblems.ts";
import { type Language, type Locale, languageNames } from "./locales.ts";
import { bytesText, dayText, unitNames } from "./measures.ts";
import { quoted, sentence, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

/** How the app looks. */
export type ShownLook = "device" | "light" | "dark" | "contrast";

/** What stands outside of this browser. */
export type CopiesOutside = {
  /** Her backs, the sample apart. */
  readonly backs: number;
  /** Those that were changed since they were last saved as a file, or never were. */
  readonly without: number;
  /** The last time one was: milliseconds since 1970, UTC. `null`: never. */
  readonly lastAt: number | null;
};

export type ReadyWithout =
  | { readonly kind: "ready" | "coming" | "never" }
  | { readonly kind: "missing"; readonly files: number };

export type SettingsTexts = {
  readonly title: string;

  readonly thisBack: string;
  readonly thisBackWhat: (title: string) => string;
  readonly newBacks: string;
  readonly newBacksWhat: string;
  readonly unit: string;
  readonly units: { readonly [U in DisplayUnit]: string };
  readonly ruler: string;
  readonly mark: (step: Length) => string;
  readonly seam: string;
  readonly plainSeam: string;
  readonly usual: (length: Length) => string;
  readonly eighths: string;
  readonly problem: (problem: LengthProblem) => string;
  readonly meant: (reading: string) => string;
  readonly jobProblem: (problem: DraftProblem) => string;

  readonly onScreen: string;
  readonly look: string;
  readonly looks: { readonly [L in ShownLook]: string };
  readonly lookWhat: string;
  readonly language: string;
  readonly asBrowser: string;
  /** Each in its own words. */
  readonly languages: { readonly [L in Language]: string };

  readonly printing: string;
  readonly paper: string;
  readonly papers: { readonly [P in Paper]: string };
  readonly paperWhat: string;

  readonly kept: string;
  readonly keptWhat: string;
  readonly persisted: string;
  readonly notPersisted: string;
  readonly askToPersist: string;
  readonly refused: string;
  /** In bytes. */
  readonly space: (used: number, quota: number) => string;
  readonly copies: (copies: CopiesOutside) => string;
  readonly keptApart: string;
  readonly offline: string;
  readonly ready: (ready: ReadyWithout) => string;

  readonly everything: string;
  readonly everythingWhat: string;
  readonly saveEverything: string;
  readonly openEverything: string;
  readonly everythingFile: (at: number) => string;

  readonly deleteAll: string;
  readonly deleteAllWhat: string;
  readonly deleteAllAsk: (backs: number) => string;
  readonly deleteAllNow: string;
  readonly keepAll: string;
  readonly notDeleted: string;
};

export function settingsTexts(locale: Locale, unit: DisplayUnit): SettingsTexts {
  return inWordSet(locale, unit, { name: "settings", english });
}

function english(voice: Voice): SettingsTexts {
  return {
    title: "Settings",
    ...sewingTexts(voice),
    ...screenTexts(voice),
    ...printingTexts,
    ...keepingTexts(voice),
    everything: "Everything in one file",
    everythingWhat:
      "All your backs with their leftovers and plans, and the shelf, to carry to another device or to lay by. Earlier versions and deleted backs are not in it. Opening it adds what is not here yet and changes nothing that is.",
    saveEverything: "Save everything in one file",
    openEverything: "Open a file",
    everythingFile: (at) => `Verso, everything, ${new Date(at).toISOString().slice(0, 10)}`,
    deleteAll: "Delete everything",
    deleteAllWhat: "Every back on this device, earlier versions, the shelf and these settings.",
    deleteAllAsk: (backs) =>
      `${backs === 0 ? "Everything" : sentence(voice.count(backs, "back", "backs"))} on this device, earlier versions, the shelf and settings would be gone for good. Save a copy first if anything in it may be wanted.`,
    deleteAllNow: "Delete it all now",
    keepAll: "Keep everything",
    notDeleted: "It could not be deleted. Close Verso in other tabs, then try again.",
  };
}

function sewingTexts(voice: Voice) {
  return {
    thisBack: "This back",
    thisBackWhat: (title: string) =>
      `For ${quoted(title)} alone. A plan you have kept stays as it is until you plan anew.`,
    newBacks: "New backs",
    newBacksWhat: "What a new back begins with. Those you have stay as they are.",
    unit: "Unit",
    units: unitNames(voice),
    ruler: "Smallest mark on your ruler you like to cut by",
    mark: (step: Length) => voice.length(step),
    seam: "Seam allowance",
    plainSeam: "Seam allowance where two lengths of plain cloth meet",
    usual: (length: Length) => `Usual: ${voice.length(length)}`,
    eighths: "Eighths of an inch",
    problem: (problem: LengthProblem) => sentence(lengthProblem(problem)),
    meant: (reading: string) => `I mean ${reading}`,
    jobProblem: (problem: DraftProblem) => draftProblem(problem, voice),
  };
}

function screenTexts({ trade }: Voice) {
  return {
    onScreen: "On the screen",
    look: "Light or dark",
    looks: { device: "As the device", light: "Light", dark: "Dark", contrast: "Strong contrast" },
    lookWhat: `Cloth keeps its own ${trade.colours} in all of them.`,
    language: "Language",
    asBrowser: "As the browser",
    languages: languageNames,
  };
}

const printingTexts = {
  printing: "Printing",
  paper: "Paper",
  papers: { letter: "Letter", a4: "A4" },
  paperWhat: "For the cards that lie beside the cloth in a photo. Another can still be chosen there.",
};

function keepingTexts(voice: Voice) {
  return {
    kept: "Kept on this device",
    keptWhat: "All you make stays here, in this browser. Nothing of it is sent anywhere.",
    persisted: "The browser has promised to keep it until you delete it.",
    notPersisted: "The browser may clear it away when the device is short of room.",
    askToPersist: "Ask the browser to keep it",
    refused:
      "The browser did not promise it this time. It tends to once Verso is installed or often used. Until then a file of your own is safer.",
    space: (used: number, quota: number) =>
      `It takes about ${bytesText(used, voice)}; the browser gives room for ${bytesText(quota, voice)}.`,
    copies: (copies: CopiesOutside) => copiesText(copies, voice),
    keptApart:
      "On this device a browser tab and the app on the home screen keep separate projects. Stay with one of them, or carry a back over as a file.",
    offline: "Without a network",
    ready: (ready: ReadyWithout) => readyText(ready, voice),
  };
}

function copiesText({ backs, without, lastAt }: CopiesOutside, voice: Voice): string {
  if (backs === 0) return "There is no back of yours here yet.";
  const last = lastAt === null ? "" : ` The last file was saved on ${dayText(lastAt, voice)}.`;
  if (without === 0) return `All your backs are saved in files of your own too.${last}`;
  if (lastAt === null) return "Nothing is saved in a file of your own yet.";
  return `${sentence(voice.count(without, "back has", "backs have"))} changed since being saved in a file of your own, or never were.${last}`;
}

function readyText(ready: ReadyWithout, voice: Voice): string {
  switch (ready.kind) {
    case "ready":
      return "Ready: all of Verso is on this device.";
    case "coming":
      return "Not yet: Verso is still being fetched onto this device. Stay online for a moment.";
    case "missing":
      return `Not yet: ${voice.count(ready.files, "part of Verso is", "parts of Verso are")} missing and will be fetched. Stay online for a moment.`;
    case "never":
      return "This browser or this window keeps no apps, so Verso needs a network here.";
  }
}
