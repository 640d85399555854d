import { compose, type Style } from "../back/index.ts";
import type { Job } from "../cloth/index.ts";
import {
  checkLayout,
  fillRegions,
  type Ground,
  groundFrom,
  heldStays,
  type LayoutNode,
  leavesOf,
  type RegionSearch,
  type Stays,
  withoutGivers,
} from "../layout/index.ts";
import { assert } from "../length/index.ts";
import { stepsFor } from "../sewing/index.ts";
import { buyRows, withClothAndGivers } from "../supplies/index.ts";
import { figuresFor } from "./figures.ts";
import { onTheRuler } from "./onTheRuler.ts";
import type { Plan } from "./types.ts";
import { unusedOf } from "./used.ts";

export type PlanRequest = {
  readonly style: Style;
  /** Another seed, another plan of the same style. */
  readonly seed: number;
  /** Most solver moves. The plan depends on job, style, seed and the moves made alone. */
  readonly effort: number;
  /** Cells of an earlier plan of this style that stay as they are; those that no longer can are let go. */
  readonly stays?: Stays;
};

/** A plan in the making. It can be stopped at any time: `plan()` is always whole and checked. */
export type PlanSearch = {
  step(moves: number): void;
  readonly done: boolean;
  readonly moves: number;
  readonly effort: number;
  /** Share of the pieced parts that leftovers cover in the best plan so far, 0 to 1. */
  readonly covered: number;
  plan(): Plan;
};

export function makePlan(job: Job, request: PlanRequest): Plan {
  const search = startPlan(job, request);
  while (!search.done) search.step(request.effort);
  return search.plan();
}

export function startPlan(asked: Job, request: PlanRequest): PlanSearch {
  const job = onTheRuler(asked);
  const search = fillRegions(groundFor(job, request), job, request);
  return {
    step: (moves) => search.step(moves),
    get done() {
      return search.done;
    },
    get moves() {
      return search.moves;
    },
    effort: request.effort,
    get covered() {
      return search.covered;
    },
    plan: () => planOf(search, job, request),
  };
}

function groundFor(job: Job, { style, seed, stays }: PlanRequest): Ground {
  const held = stays === undefined ? null : heldStays(stays, job);
  return held === null || held.paths.length === 0
    ? compose(job, style, seed - 1)
    : groundFrom(held, job, style);
}

function planOf(search: RegionSearch, job: Job, { style, seed }: PlanRequest): Plan {
  const layout = inItsColours(search, job);
  const plan = wholePlan(layout, job, { style, seed, effort: search.moves });
  const problems = checkLayout(plan);
  assert(
    problems.length === 0,
    `a plan that leaves the engine can be sewn: ${JSON.stringify(problems.slice(0, 3))}`,
  );
  return plan;
}

/** Bought cloth is of another fabric than hers: where both lie in a plan, fabrics meet otherwise than it was laid for. */
function inItsColours(search: RegionSearch, job: Job): LayoutNode {
  const laid = search.layout();
  const sourced = withClothAndGivers(laid, job);
  if (areEqual(clothsIn(sourced, job), clothsIn(laid, job))) return sourced;
  const bare = search.recoloured(withoutGivers(sourced));
  const again = withClothAndGivers(bare, job);
  return areEqual(clothsIn(again, job), clothsIn(bare, job)) ? again : sourced;
}

/** The fabrics of its plain cells, in order. */
function clothsIn(layout: LayoutNode, job: Job): readonly string[] {
  return leavesOf(layout, job).flatMap(({ node }) => (node.kind === "cloth" ? [node.fabric] : []));
}

function areEqual(some: readonly string[], others: readonly string[]): boolean {
  return some.length === others.length && some.every((one, at) => one === others[at]);
}

/**
 * All that follows from a layout whose cloth has its sources and in which parts are left long: steps, what to buy and
 * what stays over. It is not checked yet. The job's back lies on the ruler's step.
 */
export function wholePlan(layout: LayoutNode, job: Job, made: Pick<Plan, "style" | "seed" | "effort">): Plan {
  const steps = stepsFor(layout, job);
  return {
    unit: job.unit,
    step: job.step,
    seam: job.seam,
    plainSeam: job.plainSeam,
    floor: job.floor,
    top: job.top,
    back: job.back,
    style: made.style,
    seed: made.seed,
    effort: made.effort,
    fabrics: fabricsShown(layout, job),
    pieces: job.pieces,
    layout,
    unused: unusedOf(job.pieces, leavesOf(layout, job)),
    steps,
    buy: buyRows(layout, job),
    figures: figuresFor(layout, steps, job),
  };
}

/** The heap's fabrics, and the cloth to buy where some is bought. */
function fabricsShown(layout: LayoutNode, job: Job): Plan["fabrics"] {
  const bought = leavesOf(layout, job).some(({ node }) => node.kind === "cloth" && node.fabric === job.plain);
  return job.fabrics.filter((fabric) => bought || fabric.id !== job.plain);
}
