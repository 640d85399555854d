// The child of `pace.ts`: searches move by move and tells what became better when.
import { writeSync } from "node:fs";
import { defaultEffort, type PlanSearch, startPlan } from "../src/engine/plan/index.ts";
import { denseJob } from "./job.ts";
import type { Pace } from "./pace.ts";

const [back = "", table = "", secondsText = ""] = process.argv.slice(2);
const job = denseJob(back, table);
const seconds = Number(secondsText);

const trial = searched(defaultEffort(job, seconds), seconds / 10);
const effort = Math.round((trial.moves / trial.cpuSeconds) * seconds);
writeSync(3, JSON.stringify(searched(effort, Number.POSITIVE_INFINITY)));

function searched(effort: number, most: number): Pace {
  const search = startPlan(job, { style: "all-over", seed: 1, effort });
  const curve: { cpuSeconds: number; covered: number }[] = [];
  let [spent, improvements, best] = [0, 0, search.covered];
  while (!search.done && spent < most) {
    spent += timeOfMove(search);
    if (search.covered > best) {
      best = search.covered;
      improvements += 1;
    }
    const due = (seconds / 20) * (curve.length + 1);
    if (spent >= due || search.done) curve.push({ cpuSeconds: spent, covered: best });
  }
  return { effort, moves: search.moves, cpuSeconds: spent, improvements, curve };
}

function timeOfMove(search: PlanSearch): number {
  const before = process.cpuUsage();
  search.step(1);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}
