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
  writePlan,
} from "../../../files/index.ts";
import type { MendingPage } from "../../../words/index.ts";
import { outlineOf } from "../../parts/drawing/plainBack.ts";
import { isCurrent, planIn } from "../../parts/keptPlan.ts";
import { keyOf, type Wish } from "./desk.ts";

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
      /** The one that suits her leftovers best first. */
      readonly styles: readonly Style[];
      /** The back with nothing on it yet. */
      readonly empty: Drawing | null;
      readonly notes: readonly DraftProblem[];
      /** Rows of her leftovers that can't be used as they stand. */
      readonly waiting: number;
    };

export function planningFor(project: Project): Planning {
  const { job, stops, notes, waiting } = checkProject(project);
  const rows = { all: project.leftovers.length + project.rough.length, waiting: waiting.length };
  if (job === null) return { kind: "not-ready", missing: missingIn(stops), rows };
  return {
    kind: "ready",
    job,
    hash: hashOfJob(job),
    styles: rankStyles(job),
    empty: outlineOf(drawPlainBack({ ...job, fabric: null })),
    notes,
    waiting: waiting.length,
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

/** How many styles are drawn before she asks for the others. */
const shownAtFirst = 3;

export type Shown = {
  /** The one that is drawn large. */
  readonly chosen: Wish;
  /** Drawn small, the best for her leftovers first. */
  readonly best: readonly Wish[];
  readonly others: readonly Wish[];
  /** What she keeps for this very job and the chosen wish. */
  readonly kept: PlanDocument | null;
  /** She keeps a plan, but for leftovers or a size that changed since. */
  readonly keptIsOld: boolean;
};

/** What she sees: her own choice, or the plan she keeps, or else what suits her leftovers best. */
export function shownFor(
  { wishes, plan: kept }: Project,
  { job, styles }: Planning & { kind: "ready" },
): Shown {
  const current = kept !== null && isCurrent(kept, job);
  const usual: Wish = { style: styles[0] ?? "insert-across", seed: 1 };
  const known: Wish = current ? { style: kept.style, seed: kept.seed } : usual;
  const chosen: Wish = wishes.style === null ? known : { style: wishes.style, seed: wishes.seed };
  const all = styles.map((style): Wish => (style === chosen.style ? chosen : { style, seed: 1 }));
  return {
    chosen,
    best: all.slice(0, shownAtFirst),
    others: all.slice(shownAtFirst),
    kept: current && keyOf(known) === keyOf(chosen) ? planIn(kept) : null,
    keptIsOld: kept !== null && !current,
  };
}

/** Whether a plan is the very one she keeps. */
export function isTheKept(plan: PlanDocument, kept: KeptPlan | null): boolean {
  return kept !== null && (planIn(kept) === plan || textOf(plan) === kept.text);
}

const texts = new WeakMap<PlanDocument, string>();

export function textOf(plan: PlanDocument): string {
  const text = texts.get(plan) ?? writePlan(plan);
  texts.set(plan, text);
  return text;
}
