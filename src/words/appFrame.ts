/** What the frame of the app says: its bar, its ways, what keeps it from being steady. */
import { tablesOf } from "./fetched.ts";
import type { Locale } from "./locales.ts";
import { inBrackets } from "./pseudo.ts";

/** Why edits aren't kept on this device. */
export type NotSavedWhy = "full" | "no-storage" | "newer-tab" | "failed";

export type FrameWords = {
  /** The app's own name is the same in every language. */
  readonly app: string;
  /** The way to the start; begins with the name, which is what one sees. */
  readonly home: string;
  readonly projects: string;
  readonly size: string;
  readonly leftovers: string;
  readonly plan: string;
  readonly sew: string;
  readonly photo: string;
  readonly settings: string;
  readonly titleOfNew: string;
  /** What a page is called in the browser's tab: page, project, app. */
  readonly pageTitle: (page: string, project: string | null) => string;
  readonly skip: string;
  readonly stepsOfTheJob: string;
  readonly undo: string;
  readonly redo: string;

  // Saving, where it isn't steady.
  readonly notSaved: string;
  readonly notSavedWhy: (why: NotSavedWhy) => string;
  readonly saveFileNow: string;
  readonly tryAgain: string;
  readonly loadAnew: string;
  readonly readOnly: string;
  readonly gone: string;
  readonly someMissing: string;

  // A later Verso is there.
  readonly updateReady: string;
  readonly updateNow: string;
  readonly updateLater: string;

  // What keeps her work for good.
  readonly copyOutside: string;
  /** On one system a browser tab and the installed app don't see each other's projects. */
  readonly keptApart: string;
  readonly understood: string;

  // When something went wrong.
  readonly wentWrong: string;
  readonly wentWrongWhat: string;
  readonly pageNotHere: string;
  readonly pageNotHereWhat: string;
  readonly noSuchProject: string;
  readonly noSuchProjectWhat: string;
  /** Storage does not answer, so nobody knows whether there is such a project. */
  readonly notReadable: string;
  readonly notReadableWhat: (why: NotSavedWhy) => string;
  readonly opening: string;
  readonly toProjects: string;
};

const english: FrameWords = {
  app: "Verso",
  home: "Verso, your projects",
  projects: "Projects",
  size: "Size",
  leftovers: "Leftovers",
  plan: "Plan",
  sew: "Sew",
  photo: "From photos",
  settings: "Settings",
  titleOfNew: "New back",
  pageTitle: (page, project) => [page, ...(project === null ? [] : [project]), "Verso"].join(" · "),
  skip: "Skip to the page",
  stepsOfTheJob: "Steps of the job",
  undo: "Undo",
  redo: "Redo",

  notSaved: "NOT SAVED",
  notSavedWhy,
  saveFileNow: "Save a file now",
  tryAgain: "Try again",
  loadAnew: "Load this page again",
  readOnly: "This project was made by a later Verso. You can look at it and save it as a file.",
  gone: "This project was removed in another tab. You can still save it as a file.",
  someMissing:
    "Part of this project could not be read. Everything else is here. Look through it before you cut.",

  updateReady: "A newer Verso is ready.",
  updateNow: "Use it now",
  updateLater: "Later",

  copyOutside:
    "Much has changed here since this back was last saved outside of this browser. A file of your own is safer.",
  keptApart:
    "On this device a browser tab and the app on the home screen keep separate projects. Stay with one of them, or carry a back over as a file.",
  understood: "All right",

  wentWrong: "This page stopped working.",
  wentWrongWhat: "What you entered before is kept. Save a file to be sure, then open the page again.",
  pageNotHere: "This page could not be fetched.",
  pageNotHereWhat:
    "You may be offline, or Verso was renewed meanwhile. Load it again when you are back online.",
  noSuchProject: "There is no such project on this device.",
  noSuchProjectWhat: "It may have been removed, or it is kept in another browser.",
  notReadable: "This project can't be read just now.",
  notReadableWhat,
  opening: "Opening…",
  toProjects: "Go to your projects",
};

function notSavedWhy(why: NotSavedWhy): string {
  switch (why) {
    case "full":
      return "This device has no room left. What you kept before is safe. Save a file, then make room.";
    case "no-storage":
      return "This browser keeps nothing here, as in a private window. Save a file before you leave.";
    case "newer-tab":
      return "A newer Verso is open in another tab. Save a file, then load this page again.";
    case "failed":
      return "The last changes could not be kept on this device. Save a file to be sure.";
  }
}

function notReadableWhat(why: NotSavedWhy): string {
  switch (why) {
    case "no-storage":
      return "This browser keeps nothing here, as in a private window. Open Verso in the window you used before.";
    case "newer-tab":
      return "A newer Verso is open in another tab. Close that tab or this one, then try again.";
    case "full":
    case "failed":
      return "The browser does not give out what it keeps. Nothing of yours was changed. Wait a moment, then try again.";
  }
}

export function frameWords(locale: Locale): FrameWords {
  // `Tables` holds that a language's frame is of this type.
  if (locale === "de") return tablesOf(locale).frame as FrameWords;
  return locale === "en-XA" ? inBrackets(english) : english;
}
