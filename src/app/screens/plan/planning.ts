import type { Style } from "../../../engine/back/index.ts";
import type { DraftProblem, Job } from "../../../engine/cloth/index.ts";
import { type Drawing, drawPlainBack } from "../../../engine/drawing/index.ts";
import { rankStyles } from "../../../engine/plan/index.ts";
import {
  checkProject,
  hashOfJob,
  type KeptPlan,
  type PlanDocument,
  type Project,
} from "../../../files/index.ts";
import type { MendingPage } from "../../../words/index.ts";
import { outlineOf } from "../../parts/drawing/plainBack.ts";
import { isCurrent, planIn } from "../../parts/keptPlan.ts";
import { pictureOfPieces, rowOfPieces } from "../../parts/rowOfPieces.ts";
import { changedPlanIn } from "./byHand.ts";
import { keyOf, type Wish } from "./desk.ts";
import { nothingOffered, type Offered } from "./offered.ts";
import { textOf } from "./planText.ts";
import { stayingIn } from "./stays.ts";

/** What is needed before there can be a plan, by the page where it is mended. */
export type Missing = { readonly page: MendingPage; readonly problems: readonly DraftProblem[] };

/** Rows of her leftovers, and how many of them wait to be mended. */
export type Rows = { readonly all: number; readonly waiting: number };

export type Planning =
  | { readonly kind: "not-ready"; readonly missing: readonly Missing[]; readonly rows: Rows }
  | {
      readonly kind: "ready";
      readonly job: Job;
      /** Tells whether a job is still the same. */
      readonly hash: string;
      /** Tells whether her wishes are still the same too. */
      readonly key: string;
      /** The one that suits her leftovers best first. */
      readonly styles: readonly Style[];
      /** The back with nothing on it yet. */
      readonly empty: Drawing | null;
      readonly notes: readonly DraftProblem[];
      /** Rows of her leftovers that can't be used as they stand. */
      readonly waiting: number;
      /** The row of her list that a piece of the job is. */
      readonly rowOf: ReadonlyMap<string, string>;
      /** The picture of the cloth of a piece that has one. */
      readonly pictureOf: ReadonlyMap<string, string>;
    };

export function planningFor(project: Project): Planning {
  const { job, stops, notes, waiting } = checkProject(project);
  const rows = { all: project.leftovers.length + project.rough.length, waiting: waiting.length };
  if (job === null) return { kind: "not-ready", missing: missingIn(stops), rows };
  const hash = hashOfJob(job);
  const rowOf = rowOfPieces(project, job, stops);
  return {
    kind: "ready",
    job,
    hash,
    key: [hash, job.contrast, ...job.wishes].join(" "),
    styles: rankStyles(job),
    empty: outlineOf(drawPlainBack({ ...job, fabric: null })),
    notes,
    waiting: waiting.length,
    rowOf,
    pictureOf: pictureOfPieces(rowOf, project),
  };
}

function missingIn(stops: readonly DraftProblem[]): readonly Missing[] {
  const ofJob = stops.filter(({ row }) => row === null);
  return (["size", "leftovers"] as const).flatMap((page) => {
    const problems = ofJob.filter((problem) => pageFor(problem) === page);
    return problems.length === 0 ? [] : [{ page, problems: withoutEchoes(problems) }];
  });
}

function pageFor({ row, field }: DraftProblem): MendingPage {
  return row === null && field !== "pieces" ? "size" : "leftovers";
}

/** A back of no size has both its sides missing, and that is one thing to mend. */
function withoutEchoes(problems: readonly DraftProblem[]): readonly DraftProblem[] {
  return problems.filter(
    ({ kind }, index) => kind !== "back-zero" || problems.findIndex((other) => other.kind === kind) === index,
  );
}

/** How many styles are drawn before it is known which differ, and before she asks for the others. */
const shownAtFirst = 3;

export type Shown = {
  /** The one that is drawn large. */
  readonly chosen: Wish;
  /** Drawn small, the best for her leftovers first. */
  readonly best: readonly Wish[];
  readonly others: readonly Wish[];
  /** What lies there without a search: the plan as she changed it, or the one she keeps for this job and the chosen wish. */
  readonly laid: PlanDocument | null;
  /** She keeps a plan, but for leftovers or a size that changed since. */
  readonly keptIsOld: boolean;
  /** She changed a plan by hand, for leftovers or a size that changed since. */
  readonly changesAreOld: boolean;
};

/** What she sees: her own choice, or the plan she keeps, or else the best of what is offered. */
export function shownFor(
  { wishes, plan: kept }: Project,
  { job, hash, styles }: Planning & { kind: "ready" },
  offered: Offered = nothingOffered,
): Shown {
  const current = kept !== null && isCurrent(kept, job);
  const offers = wishesIn(offered, styles);
  const [suits = "insert-across"] = styles;
  // What is drawn already stays drawn where it is among those that are offered, or its style does.
  const usual =
    offers.find((wish) => keyOf(wish) === keyOf(plainly(suits))) ??
    offers.find(({ style }) => style === suits) ??
    offers[0] ??
    plainly(suits);
  const known: Wish = current ? { ...plainly(kept.style), seed: kept.seed } : usual;
  const { style, seed, amount, stays } = wishes;
  const changed = changedPlanIn(wishes.byHand, hash);
  const byHand = changed === null ? null : wishes.byHand;
  const chosen: Wish = style === null ? known : { style, seed, amount, stays, byHand };
  const inPlace = (wish: Wish): Wish => (wish.style === chosen.style ? chosen : wish);
  const rest = styles.filter((one) => offers.every((offer) => offer.style !== one)).map(plainly);
  return {
    chosen,
    best: offers.map(inPlace),
    others: rest.map(inPlace),
    laid: changed ?? (current ? keptFor(chosen, kept) : null),
    keptIsOld: kept !== null && !current,
    changesAreOld: wishes.byHand !== null && wishes.byHand.job !== hash,
  };
}

/** The plan she keeps, where it is one for this wish: all that is to stay lies in it. */
function keptFor({ style, seed, stays }: Wish, kept: KeptPlan): PlanDocument | null {
  if (kept.style !== style || kept.seed !== seed) return null;
  const plan = planIn(kept);
  if (plan === null || stays === null) return plan;
  return stayingIn(plan, stays).size === new Set(stays.cells).size ? plan : null;
}

function plainly(style: Style): Wish {
  return { style, seed: 1, amount: "usual", stays: null, byHand: null };
}

function wishesIn(offered: Offered, styles: readonly Style[]): readonly Wish[] {
  return offered.kind === "made" && offered.offers.length > 0
    ? offered.offers.map(({ style, amount }) => ({ ...plainly(style), amount }))
    : styles.slice(0, shownAtFirst).map(plainly);
}

/** Whether a plan is the very one she keeps. */
export function isTheKept(plan: PlanDocument, kept: KeptPlan | null): boolean {
  return kept !== null && (planIn(kept) === plan || textOf(plan) === kept.text);
}

/** What is kept of a plan for the job of this hash, from now on. */
export function keptFrom(plan: PlanDocument, hash: string): KeptPlan {
  const { style, seed, effort } = plan;
  return { text: textOf(plan), job: hash, style, seed, effort, keptAt: Date.now() };
}

/** What she looks at when she goes back to the plan she keeps. */
export function wishOfKept({ style, seed }: KeptPlan): Wish {
  return { ...plainly(style), seed };
}
