import { setImmediate as nextTurn } from "node:timers/promises";
import type { Style } from "../engine/back/index.ts";
import { type Choice, startChoice, usualWanted } from "../engine/choice/index.ts";
import type { Job } from "../engine/cloth/index.ts";
import { defaultEffort, type Plan, type PlanSearch, rankStyles, startPlan } from "../engine/plan/index.ts";
import type { Progress } from "../words/index.ts";
import type { PlanCommand } from "./commands.ts";

/** Whether she has seen enough: the best so far is then what she gets. */
export type Stop = { readonly asked: boolean };

type Request = { readonly style: Style; readonly seed: number };

/** One plan of each style in turn; with one style named, plans of it that begin at chance differently. */
export function requestsFor(job: Job, command: Pick<PlanCommand, "style" | "seed" | "plans">): Request[] {
  const { style, seed, plans } = command;
  if (style !== null && style !== "all")
    return Array.from({ length: plans }, (_, index) => ({ style, seed: (seed + index) % 2 ** 32 }));
  return rankStyles(job)
    .slice(0, plans)
    .map((ranked) => ({ style: ranked, seed }));
}

/**
 * Searches for each plan in turn. Seconds are shared out among the plans. Asked to stop, it gives what it has: the
 * plan it is at, and no further ones. At least one plan comes of it.
 */
export async function searchPlans(
  job: Job,
  command: Pick<PlanCommand, "style" | "seed" | "plans" | "limit">,
  stop: Stop,
  show: (progress: Progress) => void,
): Promise<Plan[]> {
  const requests = requestsFor(job, command);
  const end = command.limit.kind === "seconds" ? cpuSeconds() + command.limit.seconds : null;
  const found: Plan[] = [];
  for (const [index, request] of requests.entries()) {
    if (stop.asked && found.length > 0) break;
    const { limit } = command;
    const effort = limit.kind === "effort" ? limit.moves : Number.MAX_SAFE_INTEGER;
    const begin = cpuSeconds();
    const search = startPlan(job, { ...request, effort });
    const until = end === null ? null : finishBegins(job, { begin, end, plans: requests.length - index });
    await runSearch(search, until, stop, (secondsLeft) =>
      show({
        style: request.style,
        plan: index + 1,
        plans: requests.length,
        covered: search.covered,
        moves: search.moves,
        effort: search.effort,
        secondsLeft,
      }),
    );
    found.push(search.plan());
  }
  return found;
}

/** Without a style named, three to six plans are chosen from all styles, so that they differ. */
export function isChosen({ style, plans }: Pick<PlanCommand, "style" | "plans">): boolean {
  return style === null && plans >= usualWanted.least && plans <= usualWanted.most;
}

/**
 * The choice of as many plans as she asked for. Asked to stop, or at the end of her seconds, from what there is then.
 */
export async function searchChoice(
  job: Job,
  command: Pick<PlanCommand, "seed" | "plans" | "limit">,
  stop: Stop,
  show: (progress: Progress) => void,
): Promise<Choice<Plan>> {
  const { seed, plans, limit } = command;
  const until = limit.kind === "seconds" ? cpuSeconds() + limit.seconds * (1 - finishShare) : null;
  const effort = limit.kind === "effort" ? limit.moves : paceOf(job, limit.seconds);
  const search = startChoice(job, { seed, effort, wanted: { least: plans, most: plans } });
  await runSearch(search, until, stop, (secondsLeft) => {
    const { style, covered, moves } = search;
    show({ style, covered, moves, effort: search.effort, plan: 1, plans: 1, secondsLeft });
  });
  return search.choice();
}

/** Moves for each plan of a choice that this machine does in so many seconds, from a short trial. */
function paceOf(job: Job, seconds: number): number {
  const start = cpuSeconds();
  const trial = startPlan(job, { style: "all-over", seed: 1, effort: defaultEffort(job, seconds) });
  while (!trial.done && cpuSeconds() - start < seconds * trialShare) trial.step(20);
  trial.plan();
  const used = Math.max(1e-3, cpuSeconds() - start);
  return rounded((trial.moves / used) * ((seconds - used) / looksInChoice));
}

// First looks at some thirty plans take as long as three long ones, and a few that are looked at longer fall out again.
const looksInChoice = 11;

// Of her seconds, this share goes to finding out how fast the machine is, and this much is kept for the finish.
const trialShare = 0.15;
const finishShare = 0.06;

/** To two digits, as somebody would type it to get the plan again. */
function rounded(moves: number): number {
  const digits = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, moves))) - 1);
  return Math.max(1, Math.floor(moves / digits) * digits);
}

type Sitting = { readonly begin: number; readonly end: number; readonly plans: number };

/** When this one of the plans that are still to come has to be laid out, checked and told, so that all are in time. */
function finishBegins({ top }: Job, { begin, end, plans }: Sitting): number {
  const share = (end - begin) / plans;
  const started = cpuSeconds() - begin;
  const finish = started * finishPerStart + Math.min(mostPolish, share / 10) + (top === null ? 0 : lastLook);
  return Math.max(cpuSeconds(), begin + share - Math.min(share / 2, finish));
}

// Measured on the heaps of bench/ in fresh processes: what comes after the search takes about twice what came before
// it, on a slow machine as on a quick one, and what it arranges once more up to this long; for a top it is looked over.
const finishPerStart = 2.2;
const mostPolish = 0.2;
const lastLook = 0.8;

// Between turns a key press or a signal gets through; a turn is long enough that this costs nothing.
const turnSeconds = 0.02;

async function runSearch(
  search: Pick<PlanSearch, "step" | "done">,
  until: number | null,
  stop: Stop,
  show: (secondsLeft: number | null) => void,
): Promise<void> {
  let moves = 1;
  await nextTurn();
  while (!search.done && !stop.asked) {
    const start = cpuSeconds();
    if (until !== null && start >= until) return;
    search.step(moves);
    const used = cpuSeconds() - start;
    if (used < turnSeconds / 2) moves *= 2;
    else if (used > turnSeconds * 2) moves = Math.max(1, moves >> 1);
    show(until === null ? null : Math.max(0, until - cpuSeconds()));
    await nextTurn();
  }
}

/** Processor time this process has used, all its threads together. */
function cpuSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}
