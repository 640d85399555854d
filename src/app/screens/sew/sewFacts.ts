import { type Drawing, drawStep, placeOfStep, type Rect } from "../../../engine/drawing/index.ts";
import {
  type Batch,
  type Sewn,
  type Step,
  sectionsWithin,
  sewnByStep,
  smallestFirst,
} from "../../../engine/sewing/index.ts";
import { checkProject, type PlanDocument, type Project } from "../../../files/index.ts";
import type { Caution, SewingPart } from "../../../words/index.ts";
import { drawingOfPlan, drawnPlan } from "../../parts/drawing/drawnPlan.ts";
import { isCurrent, planIn } from "../../parts/keptPlan.ts";
import { pictureOfPieces, rowOfPieces } from "../../parts/rowOfPieces.ts";

export type Sewing =
  | { readonly kind: "no-plan" }
  | { readonly kind: "unreadable" }
  | {
      readonly kind: "ready";
      readonly plan: PlanDocument;
      /** Her leftovers or the size are no longer what the plan was kept for. */
      readonly isOld: boolean;
      /** The picture of the cloth of a piece that has one; none where the list has changed since. */
      readonly pictureOf: ReadonlyMap<string, string>;
    };

export function sewingFor(project: Project): Sewing {
  if (project.plan === null) return { kind: "no-plan" };
  const plan = planIn(project.plan);
  if (plan === null || plan.steps.length === 0) return { kind: "unreadable" };
  const { job, stops } = checkProject(project);
  if (job === null || !isCurrent(project.plan, job))
    return { kind: "ready", plan, isOld: true, pictureOf: new Map() };
  const pictureOf = pictureOfPieces(rowOfPieces(project, job, stops), project);
  return { kind: "ready", plan, isOld: false, pictureOf };
}

export type Ticked = ReadonlySet<string>;

/** Where she is, and how far she has come. */
export type Place = {
  readonly step: Step;
  /** Counted from 1. */
  readonly number: number;
  readonly isDone: boolean;
  readonly done: number;
  readonly before: Step | null;
  readonly after: Step | null;
  /** The first step that is not done; null when all are. */
  readonly open: Step | null;
  /** With this one all are done. */
  readonly isLastOpen: boolean;
  /** Steps it takes that are not done yet, in their order; none once it is done itself. */
  readonly waitsFor: readonly Step[];
};

/** `at`: the step she turned to; without one the first that isn't done, or the last of all. */
export function placeIn(plan: PlanDocument, ticked: Ticked, at: string | null): Place | null {
  const { steps } = plan;
  const undone = steps.filter(({ id }) => !ticked.has(id));
  const open = undone[0] ?? null;
  const step = steps.find(({ id }) => id === at) ?? open ?? steps.at(-1);
  if (step === undefined) return null;
  const index = steps.indexOf(step);
  return {
    step,
    number: index + 1,
    isDone: ticked.has(step.id),
    done: steps.length - undone.length,
    before: steps[index - 1] ?? null,
    after: steps[index + 1] ?? null,
    open,
    isLastOpen: undone.length === 1 && open === step,
    waitsFor: waitsFor(plan, ticked, step),
  };
}

/**
 * Where to turn once `done` has been ticked: its next open step, round from the beginning. null where that is the
 * first open one anyway, so that undoing the tick leads back to it.
 */
export function turnAfter({ steps }: PlanDocument, ticked: Ticked, done: Step): string | null {
  const undone = steps.filter((step) => step !== done && !ticked.has(step.id));
  const next = undone.find((step) => steps.indexOf(step) > steps.indexOf(done)) ?? undone[0] ?? done;
  return next === undone[0] || undone.length === 0 ? null : next.id;
}

/** The next step of a sitting that is open once `done` is ticked; `null`: there is no sitting, or it is over. */
export function nextInBatch(batch: Batch | null, ticked: Ticked, done: Step): string | null {
  return batch?.steps.find((step) => step !== done && !ticked.has(step.id))?.id ?? null;
}

export function waitsFor({ steps }: PlanDocument, ticked: Ticked, step: Step): readonly Step[] {
  if (ticked.has(step.id)) return [];
  const taken = new Set(step.from.flatMap((part) => ("step" in part ? [part.step] : [])));
  return steps.filter(({ id }) => taken.has(id) && !ticked.has(id));
}

/** One piece of work, in the order of sewing. */
export type Part = { readonly is: SewingPart; readonly steps: readonly Step[] };

/** The steps section by section. A plan of one piece of work is one part. */
export function partsOf(plan: PlanDocument): readonly Part[] {
  const partOf = partsByStep(plan);
  const parts: { is: SewingPart; steps: Step[] }[] = [];
  for (const step of plan.steps) {
    const is = partOf(step);
    const last = parts.at(-1);
    if (last !== undefined && isSamePart(last.is, is)) last.steps.push(step);
    else parts.push({ is, steps: [step] });
  }
  return parts;
}

export function doneIn({ steps }: Part, ticked: Ticked): number {
  return steps.filter(({ id }) => ticked.has(id)).length;
}

function partsByStep({ layout, seam }: PlanDocument): (step: Step) => SewingPart {
  const sewn = sewnByStep(layout, { seam });
  const back = [...sewn.values()].at(-1);
  const sections = back === undefined ? [] : sectionsWithin(back);
  const numbers = new Map<Sewn | undefined, number>(
    sections.flatMap((section, index) => smallestFirst(section).map((join) => [join, index + 1] as const)),
  );
  return ({ id, kind }) => {
    const number = numbers.get(sewn.get(id));
    if (kind !== "join") return { kind: "units" };
    return number === undefined ? { kind: "together" } : { kind: "section", number };
  };
}

function isSamePart(one: SewingPart, other: SewingPart): boolean {
  if (one.kind === "section" && other.kind === "section") return one.number === other.number;
  return one.kind === other.kind;
}

/** What is said once, where the tool is picked up: the cutter with the first step, the iron with the first seam. */
export function cautionsAt({ steps }: PlanDocument, step: Step): readonly Caution[] {
  const firstCut = steps[0];
  const firstSeam = steps.find(({ from }) => from.length > 1 || (from[0]?.count ?? 1) > 1);
  return [
    ...(step === firstCut ? (["cutter"] as const) : []),
    ...(step === firstSeam ? (["iron"] as const) : []),
  ];
}

/** What there is to see of a step; nothing where the plan's steps are not those of its layout. */
export type StepPicture = {
  /** Its parts as they are laid out; for a back of one piece of cloth the back. */
  readonly drawing: Drawing;
  /** Nothing finds room beside it. */
  readonly isWide: boolean;
  /** Where in the back it goes; null where it is the back. */
  readonly place: Rect | null;
};

export function pictureOfStep(plan: PlanDocument, step: Step): StepPicture | null {
  if (plan.layout.kind === "piece" || plan.layout.kind === "cloth")
    return pictureOf(drawingOfPlan(plan), null);
  if (!sewsItsStep(plan, step)) return null;
  const drawn = drawnPlan(plan);
  const isBack = step === plan.steps.at(-1);
  return pictureOf(drawStep(drawn, step.id), isBack ? null : placeOfStep(drawn, step.id));
}

function pictureOf(drawing: Drawing, place: Rect | null): StepPicture {
  return { drawing, place, isWide: drawing.size.width > 1.5 * drawing.size.height };
}

// A file from elsewhere may tell steps and layout that do not go together. What it says to cut is still shown.
function sewsItsStep({ layout, seam }: PlanDocument, { id, unfinished }: Step): boolean {
  const cut = sewnByStep(layout, { seam }).get(id)?.cut;
  return cut?.width === unfinished.width && cut.height === unfinished.height;
}
