import type { Style } from "../../../engine/back/index.ts";
import type { DraftProblem, Job } from "../../../engine/cloth/index.ts";
import { type Drawing, drawPlainBack } from "../../../engine/drawing/index.ts";
import { rankStyles } from "../../../engine/plan/index.ts";
import {
  checkProject,
  draftOfProject,
  hashOfJob,
  type KeptPlan,
  type PlanDocument,
  type Project,
} from "../../../files/index.ts";
import type { MendingPage } from "../../../words/index.ts";
import { outlineOf } from "../../parts/drawing/plainBack.ts";
import { isCurrent, planIn } from "../../parts/keptPlan.ts";
import { keyOf, type Wish } from "./desk.ts";
import { nothingOffered, type Offered } from "./offered.ts";
import { textOf } from "./planText.ts";

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
    };

export function planningFor(project: Project): Planning {
  const { job, stops, notes, waiting } = checkProject(project);
  const rows = { all: project.leftovers.length + project.rough.length, waiting: waiting.length };
  if (job === null) return { kind: "not-ready", missing: missingIn(stops), rows };
  const hash = hashOfJob(job);
  return {
    kind: "ready",
    job,
    hash,
    key: [hash, ...job.wishes].join(" "),
    styles: rankStyles(job),
    empty: outlineOf(drawPlainBack({ ...job, fabric: null })),
    notes,
    waiting: waiting.length,
    rowOf: rowsOf(project, job, stops),
  };
}

/** Pieces stand in the job as rows do in the draft, those that wait left out. Rough stock has no row of its own. */
function rowsOf(project: Project, job: Job, stops: readonly DraftProblem[]): ReadonlyMap<string, string> {
  const bad = new Set(stops.map(({ row }) => row));
  const good = draftOfProject(project).pieces.filter(({ row }) => !bad.has(row));
  return new Map(
    job.pieces.flatMap(({ id }, index) => {
      const leftover = project.leftovers[(good[index]?.row ?? 0) - 1];
      return leftover === undefined ? [] : [[id, leftover.id] as const];
    }),
  );
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
  /** What she keeps for this very job and the chosen wish. */
  readonly kept: PlanDocument | null;
  /** She keeps a plan, but for leftovers or a size that changed since. */
  readonly keptIsOld: boolean;
};

/** What she sees: her own choice, or the plan she keeps, or else the best of what is offered. */
export function shownFor(
  { wishes, plan: kept }: Project,
  { job, styles }: Planning & { kind: "ready" },
  offered: Offered = nothingOffered,
): Shown {
  const current = kept !== null && isCurrent(kept, job);
  const offers = wishesIn(offered, styles);
  const [suits = "insert-across"] = styles;
  // What is drawn already stays drawn where it is among those that are offered.
  const usual = offers.find((wish) => keyOf(wish) === keyOf(plainly(suits))) ?? offers[0] ?? plainly(suits);
  const known: Wish = current ? { ...plainly(kept.style), seed: kept.seed } : usual;
  const { style, seed, amount, stays } = wishes;
  const chosen: Wish = style === null ? known : { style, seed, amount, stays };
  const inPlace = (wish: Wish): Wish => (wish.style === chosen.style ? chosen : wish);
  const rest = styles.filter((one) => offers.every((offer) => offer.style !== one)).map(plainly);
  return {
    chosen,
    best: offers.map(inPlace),
    others: rest.map(inPlace),
    kept: current && kept.style === chosen.style && kept.seed === chosen.seed ? planIn(kept) : null,
    keptIsOld: kept !== null && !current,
  };
}

function plainly(style: Style): Wish {
  return { style, seed: 1, amount: "usual", stays: null };
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
