import { isDeepStrictEqual } from "node:util";
import type { Job } from "../../src/engine/cloth/index.ts";
import { checkLayout, figuresOf, leavesOf } from "../../src/engine/layout/index.ts";
import { makePlan, type Plan, type PlanRequest, usableOf } from "../../src/engine/plan/index.ts";
import { flattened, reassemble, seamsIn } from "../../src/engine/sewing/index.ts";
import { cuttingPlan } from "../../src/engine/supplies/index.ts";
import { joinLimit } from "../../src/engine/work/index.ts";
import { documentOf, readPlan, writePlan } from "../../src/files/index.ts";
import { canBeCut } from "../laws/guillotine.ts";

/** The laws that every plan keeps, whatever the heap: a line for each that this one breaks, none for a good plan. */
export function brokenLaws(plan: Plan, job: Job): string[] {
  return [
    ...checkLayout(plan).map((problem) => `checker: ${JSON.stringify(problem)}`),
    ...limits(plan, job),
    ...bound(plan, job),
    ...figures(plan),
    ...file(plan),
    ...sewing(plan),
    ...cloth(plan, job),
  ];
}

/** Makes the plan and holds it to the laws; a throw is a broken law too. */
export function lawsBrokenBy(job: Job, request: PlanRequest): string[] {
  try {
    return brokenLaws(makePlan(job, request), job);
  } catch (error) {
    return [`throws: ${error instanceof Error ? error.message : String(error)}`];
  }
}

function limits({ layout, figures: { covered, joins, trimWaste } }: Plan, job: Job): string[] {
  const most = joinLimit(job.time);
  // By the format crumbs count where they show, and not among what could show: they may be all there is.
  const ofCrumbs = leavesOf(layout, job).some(
    ({ node }) => node.kind === "slab" && node.crumbs !== undefined,
  );
  return [
    ...(joins <= most ? [] : [`time: ${joins} joins, ${most} allowed`]),
    ...(covered >= 0 && (covered <= 1 || ofCrumbs) ? [] : [`covered ${covered} is no share`]),
    ...(trimWaste >= 0 && trimWaste < 1 ? [] : [`trim waste ${trimWaste} is no share`]),
  ];
}

/** No plan shows more of her leftovers than is said that any can. */
function bound({ figures }: Plan, job: Job): string[] {
  const { used, most } = usableOf(figures, job);
  return used <= most ? [] : [`usable: it uses ${used}, and ${most} was said to be the most`];
}

// The two reckon shares in another order, and the engine counts a triangle in whole units of area.
const rounding = 1e-6;

/** The engine's figures and those that the checker reckons from the layout alone. */
function figures(plan: Plan): string[] {
  const { figures } = plan;
  const checked = figuresOf(plan);
  const seams = plan.steps.reduce((total, step) => total + seamsIn(step), 0);
  const shares = (["covered", "trimWaste"] as const).filter(
    (name) => !(Math.abs(figures[name] - checked[name]) <= rounding),
  );
  const counts = (["plain", "plainCells", "joins"] as const).filter(
    (name) => figures[name] !== checked[name],
  );
  // Each diagonal seam is rounded by itself.
  const seamsOff = Math.abs(figures.seamLength - checked.seamLength);
  return [
    ...[...shares, ...counts].map((name) => `${name}: ${figures[name]}, the checker says ${checked[name]}`),
    ...(seamsOff <= seams
      ? []
      : [`seamLength: ${figures.seamLength}, the checker says ${checked.seamLength}`]),
    ...(seams === figures.joins ? [] : [`joins: ${figures.joins}, the steps have ${seams} seams`]),
  ];
}

/** What is read back is what was written, and it can be sewn by what the file says alone. */
function file(plan: Plan): string[] {
  const written = writePlan(plan);
  const read = readPlan(written);
  if (!read.ok) return [`file: ${JSON.stringify(read.error.slice(0, 3))}`];
  return [
    ...(isDeepStrictEqual(read.value, documentOf(plan)) ? [] : ["file: another plan is read back"]),
    ...(writePlan(read.value) === written ? [] : ["file: writing again gives other bytes"]),
    ...checkLayout(read.value).map((problem) => `checker, of the file: ${JSON.stringify(problem)}`),
  ];
}

/** The steps' labels and sizes alone sew up to the layout. */
function sewing(plan: Plan): string[] {
  const steps: Plan["steps"] = JSON.parse(JSON.stringify(plan.steps));
  try {
    return isDeepStrictEqual(reassemble(steps), flattened(plan.layout))
      ? []
      : ["steps: they sew up to another layout"];
  } catch (error) {
    return [`steps: ${error instanceof Error ? error.message : String(error)}`];
  }
}

/** Every cell of cloth lies once on a cloth she has or buys, and a ruler can cut it out. */
function cloth(plan: Plan, job: Job): string[] {
  const plans = cuttingPlan(plan.layout, { ...job, back: plan.back });
  const cells = leavesOf(plan.layout, plan).filter(({ node }) => node.kind === "cloth");
  const laid = plans.reduce((total, one) => total + one.cells.length, 0);
  const bought = plans.filter(({ source }) => source === "buy");
  const unbought = bought.filter(
    ({ fabric, width, height }) =>
      !plan.buy.some((row) => row.fabric === fabric && row.width === width && row.length === height),
  );
  return [
    ...(laid >= cells.length ? [] : [`cloth: ${cells.length} cells, ${laid} laid out`]),
    ...plans
      .filter((one) => !canBeCut(one, one.cells))
      .map(({ fabric }) => `cloth: ${fabric} can't be cut so`),
    ...unbought.map(({ fabric }) => `cloth: what is cut from ${fabric} is not what is bought`),
  ];
}
