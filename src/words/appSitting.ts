/** What is said of a sitting: some of the steps, for the time she has. */
import type { DisplayUnit } from "../engine/length/index.ts";
import type { Step } from "../engine/sewing/index.ts";
import { unitName } from "./english/names.ts";
import type { Locale } from "./locales.ts";
import { timeText } from "./measures.ts";
import type { Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

export type SittingTexts = {
  readonly heading: string;
  readonly what: string;
  readonly minutes: (minutes: number) => string;
  readonly iHave: (minutes: number) => string;
  /** Nothing that ends tidy fits; the least that does. */
  readonly tooShort: (minutes: readonly [number, number]) => string;
  readonly is: (steps: number, minutes: readonly [number, number]) => string;
  readonly step: (step: Step) => string;
  readonly isDone: string;
  readonly all: string;
  readonly end: string;
};

export function sittingTexts(locale: Locale, unit: DisplayUnit): SittingTexts {
  return inWordSet(locale, unit, { name: "sitting", english });
}

function english(voice: Voice): SittingTexts {
  return {
    heading: "How long have you got?",
    what: "Steps that fit, and leave no row half sewn when you get up.",
    minutes: (minutes) => voice.count(minutes, "minute", "minutes"),
    iHave: (minutes) => `I have ${voice.count(minutes, "minute", "minutes")}`,
    tooShort: (minutes) =>
      `That is too short for anything that ends tidy. The next piece of work takes ${timeText(minutes, voice)}.`,
    is: (steps, minutes) => `${voice.count(steps, "step", "steps")} for now, ${timeText(minutes, voice)}`,
    step: ({ id }) => unitName(id),
    isDone: "done",
    all: "That is all for now. No row is left half sewn.",
    end: "Back to all steps",
  };
}
