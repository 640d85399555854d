import type { Job } from "../cloth/index.ts";
import {
  checkLayout,
  type Edit,
  type LayoutNode,
  type LayoutProblem,
  leavesOf,
  type NoWay,
  waysTo,
} from "../layout/index.ts";
import { err, ok, type Result, smaller } from "../length/index.ts";
import { sourceCloth, withGivers } from "../supplies/index.ts";
import { wholePlan } from "./makePlan.ts";
import { onTheRuler } from "./onTheRuler.ts";
import type { Plan } from "./types.ts";

/** Why a plan can't be changed so. */
export type Refusal =
  | NoWay
  /** There is not enough of a fabric beside what else is cut from it. */
  | { readonly kind: "too-little-cloth"; readonly fabric: string }
  /** It could not be sewn; the checker's word. */
  | { readonly kind: "cannot-be-sewn"; readonly problem: LayoutProblem };

type Changed = Pick<Plan, "layout" | "style" | "seed" | "effort">;

/**
 * The plan with one edit of hers, whole and checked, without a search; or why it can't be. What the edit does not
 * name stays as it is: only what plain cloth is cut from, what is left long and the seams of plain cloth follow.
 * `plan`: one for this very job.
 */
export function changePlan(plan: Changed, edit: Edit, asked: Job): Result<Plan, Refusal> {
  const job = onTheRuler(asked);
  const ways = waysTo(edit, plan.layout, job);
  if ("kind" in ways) return err(ways);
  const tried: (readonly [Refusal, number])[] = [];
  for (const way of ways) {
    const sourced = sourceCloth(way, job);
    const short = clothLacking(way, sourced, job);
    if (short !== null) {
      tried.push([{ kind: "too-little-cloth", fabric: short }, 1]);
      continue;
    }
    const unsewable = problemsIn(sourced, job);
    const [problem] = unsewable;
    if (problem === undefined) return finished(sourced, job, plan);
    tried.push([
      { kind: "cannot-be-sewn", problem },
      unsewable.length + (problem.kind === "piece-too-small" ? 0.5 : 0),
    ]);
  }
  return err(nearest(tried));
}

/** Held against what is there before steps and figures are made of it. */
function problemsIn(layout: LayoutNode, job: Job): readonly LayoutProblem[] {
  const problems = checkLayout({ ...job, layout, buy: [] }).filter(({ kind }) => !ofBuying.includes(kind));
  return [...problems, ...tooWide(layout, job)];
}

function tooWide(layout: LayoutNode, job: Job): readonly LayoutProblem[] {
  const has = job.clothWidth;
  return leavesOf(layout, job).flatMap(({ node, path, cutWidth, cutHeight }): LayoutProblem[] => {
    const needed = smaller(cutWidth, cutHeight);
    if (node.kind !== "cloth" || node.source !== "buy" || needed <= has) return [];
    return [{ kind: "cloth-too-wide", path, fabric: node.fabric, needed, has }];
  });
}

// What to buy is reckoned later, from the layout.
const ofBuying: readonly LayoutProblem["kind"][] = ["cloth-not-bought", "bought-too-little"];

function finished(sourced: LayoutNode, job: Job, plan: Changed): Result<Plan, Refusal> {
  const made = { ...wholePlan(withGivers(sourced, job), job, plan), byHand: true };
  const [problem] = checkLayout(made);
  return problem === undefined ? ok(made) : err({ kind: "cannot-be-sewn", problem });
}

/** The way that least is wrong with says why; that a piece is too small the wrong way round tells nobody anything. */
function nearest(tried: readonly (readonly [Refusal, number])[]): Refusal {
  const [first] = [...tried].sort(([, one], [, other]) => one - other);
  return first?.[0] ?? { kind: "same" };
}

/** Her lengths are shared out anew: what was cut from one must not come from other cloth now. */
function clothLacking(before: LayoutNode, after: LayoutNode, job: Job): string | null {
  const now = leavesOf(after, job);
  for (const [index, { node }] of leavesOf(before, job).entries()) {
    const then = now[index]?.node;
    if (node.kind === "cloth" && then?.kind === "cloth" && then.fabric !== node.fabric) return node.fabric;
    if (node.kind === "unit" && then?.kind === "unit") {
      const lost = node.cloth.find(({ fabric }) => then.cloth.every((one) => one.fabric !== fabric));
      if (lost !== undefined) return lost.fabric;
    }
  }
  return null;
}
