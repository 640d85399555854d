/** What the page says on which the kept plan is sewn. */
import type { DisplayUnit } from "../engine/length/index.ts";
import { type Step, type StepPart, takenSize } from "../engine/sewing/index.ts";
import { onePattern, unitName } from "./english/names.ts";
import { cautionText } from "./english/plan.ts";
import {
  fittingText,
  leftLongText,
  measureFirst,
  onPointText,
  partName,
  pinText,
  pressText,
  resultText,
  turnText,
} from "./english/steps.ts";
import type { Locale } from "./locales.ts";
import { isCutToMeasure, seamless } from "./sewnHow.ts";
import type { Caution, Names } from "./types.ts";
import { sentence, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

/** One piece of work: what is made before it is laid, a section (counted from 1), or the sections to one another. */
export type SewingPart =
  | { readonly kind: "units" }
  | { readonly kind: "section"; readonly number: number }
  | { readonly kind: "together" };

export type SewTexts = {
  readonly title: string;
  readonly noPlan: string;
  readonly noPlanWhat: string;
  readonly toPlan: string;
  readonly unreadable: string;
  readonly changedSince: string;

  readonly stepOf: (number: number, steps: number) => string;
  readonly progress: (done: number, steps: number) => string;
  readonly allDone: string;
  readonly allDoneWhat: string;

  /** A part of the sewing, in the list and above its steps. */
  readonly part: (part: SewingPart) => string;
  readonly partState: (done: number, steps: number) => string;
  /** What a step takes that isn't sewn yet. */
  readonly waits: (steps: readonly Step[]) => string;
  readonly isDoneInList: string;
  readonly waitsInList: (steps: readonly Step[]) => string;
  readonly goTo: (step: Step) => string;

  readonly makes: (step: Step, names: Names) => string;
  readonly lay: (step: Step) => string;
  /** "6 ×" where there are several; empty for one. */
  readonly partCount: (part: StepPart) => string;
  readonly partSize: (part: StepPart) => string;
  readonly partWhat: (part: StepPart, names: Names) => string;
  /** Only where plain cloth is cut to what was sewn. */
  readonly measureFirst: (step: Step) => string | null;
  readonly sewing: (step: Step, names: Names) => string;
  readonly press: (step: Step) => string;
  readonly result: (step: Step, names: Names) => string;
  readonly drawingOf: (step: Step, names: Names) => string;
  readonly whereItGoes: string;
  readonly placeOf: (step: Step) => string;
  readonly caution: (caution: Caution) => string;

  readonly done: string;
  readonly doneLast: string;
  readonly notDone: string;
  readonly back: string;
  readonly next: string;
  readonly isDone: string;
  readonly all: string;
  readonly inList: (step: Step, names: Names) => string;
  /** For the box to tick, which stands beside the name. */
  readonly tickOf: (step: Step, names: Names) => string;
  readonly measures: (step: Step) => string;
  readonly jumpToNext: string;
};

export function sewTexts(locale: Locale, unit: DisplayUnit): SewTexts {
  return inWordSet(locale, unit, { name: "sew", english });
}

function english(voice: Voice): SewTexts {
  return {
    title: "Sew",
    noPlan: "No plan is kept yet",
    noPlanWhat: "Keep a plan, and its steps stand here, one after the other.",
    toPlan: "Go to Plan",
    unreadable: "The plan that was kept can't be read any more. Make another one.",
    changedSince:
      "Your leftovers or the size changed since this plan was kept. These steps go with the plan as it was kept.",

    stepOf: (number, steps) => `Step ${voice.number(number)} of ${voice.number(steps)}`,
    progress: (done, steps) =>
      done === 0
        ? `${voice.count(steps, "step", "steps")} to sew.`
        : `${voice.number(done)} of ${voice.count(steps, "step", "steps")} done.`,
    allDone: "The back is sewn.",
    allDoneWhat: "Every step is ticked. Press it once more all over before it is loaded or basted.",

    part: (part) => partText(part, voice),
    partState: (done, steps) => {
      if (done === steps) return "done";
      const all = voice.count(steps, "step", "steps");
      return done === 0 ? all : `${voice.number(done)} of ${all} done`;
    },
    waits: (steps) => waitsText(steps, voice),
    isDoneInList: "done",
    waitsInList: (steps) =>
      steps.length > 2
        ? `after ${voice.number(steps.length)} other units`
        : `after ${unitsText(steps, voice)}`,
    goTo: ({ id }) => `Go to ${unitName(id)}`,

    makes: (step, names) => (isBack(step, names) ? "This makes the back" : `This makes ${unitName(step.id)}`),
    lay: (step) => layText(step),
    partCount: ({ count }) => (count === 1 ? "" : `${voice.number(count)} ×`),
    partSize: (part) => voice.size(takenSize(part)),
    partWhat: (part, names) => partWhat(part, names, voice),
    measureFirst: (step) => (isCutToMeasure(step) ? measureFirst(step) : null),
    sewing: (step, names) => sewingText(step, names, voice),
    press: ({ press }) => pressText(press, voice),
    result: (step, names) => resultText(step, isBack(step, names), voice),
    whereItGoes: "Where it goes, seen from behind",
    placeOf: ({ id }) => `Drawing of the back seen from behind, ${unitName(id)} framed.`,
    drawingOf: (step, names) =>
      `Drawing of the parts of ${isBack(step, names) ? "the back" : unitName(step.id)} as they are laid out.`,
    caution: (caution) => cautionText(caution, voice),

    done: "Done, next step",
    doneLast: "Done",
    notDone: "Not done after all",
    back: "Step before",
    next: "Step after",
    isDone: "Done.",
    all: "All steps",
    inList: (step, names) => inListText(step, names),
    tickOf: (step, names) => `${inListText(step, names)} is done`,
    measures: ({ unfinished }) => voice.size(unfinished),
    jumpToNext: "Next open step",
  };
}

function partText(part: SewingPart, voice: Voice): string {
  switch (part.kind) {
    case "units":
      return "Units and slabs";
    case "section":
      return `Section ${voice.number(part.number)}`;
    case "together":
      return "Sections together";
  }
}

function waitsText(steps: readonly Step[], voice: Voice): string {
  const [are, them] = voice.isOne(steps.length) ? ["is", "it"] : ["are", "them"];
  return `This step takes ${unitsText(steps, voice)}, which ${are} not done yet. Sew ${them} first.`;
}

function unitsText(steps: readonly Step[], voice: Voice): string {
  return voice.list(steps.map(({ id }) => unitName(id)));
}

function isBack(step: Step, { steps = [] }: Names): boolean {
  return steps.at(-1)?.id === step.id;
}

function layText(step: Step): string {
  if (seamless(step)) return "Take";
  switch (step.kind) {
    case "join":
      return step.direction === "beside" ? "Lay out from left to right" : "Lay out from top to bottom";
    case "unit":
      return `Take for ${onePattern(step.pattern ?? "unit")}`;
    case "slab":
      return "Take for a slab";
  }
}

/** Its name and how it lies. The number stands before the size already. */
function partWhat(part: StepPart, names: Names, voice: Voice): string {
  const name = partName({ ...part, count: 1 }, names, voice);
  const lies = "piece" in part ? turnText(part) : "";
  return sentence([`${name}${lies}`, ...leftLongText(part.leftLong ?? {}, voice)].join(", "));
}

function sewingText(step: Step, names: Names, voice: Voice): string {
  if (seamless(step)) return "Nothing is sewn in this step.";
  switch (step.kind) {
    case "join":
      return [
        `Sew them together with ${voice.length(step.seam)} seams.`,
        ...pinText(step),
        ...fittingText(step, names, voice),
      ].join(" ");
    case "unit":
      return [
        ...onPointText(step, voice),
        `Sew them into ${onePattern(step.pattern ?? "unit")} as the drawing shows, with ${voice.length(step.seam)} seams.`,
      ].join(" ");
    case "slab":
      return "Sew them by eye, bit to bit, and press as you go.";
  }
}

function inListText(step: Step, names: Names): string {
  return isBack(step, names) ? "The back" : sentence(unitName(step.id));
}
