// The child of `first.ts`: reads the heap, then makes a first plan, cold, and once more when the engine has run before.
import { writeSync } from "node:fs";
import { defaultEffort, startPlan } from "../src/engine/plan/index.ts";
import { denseJob } from "./job.ts";

const [back = "", table = ""] = process.argv.slice(2);
const job = denseJob(back, table);

const cold = timed();
for (let before = 0; before < 4; before++) firstPlan();
writeSync(3, JSON.stringify({ ...cold, warmMilliseconds: timed().cpuMilliseconds }));

function timed(): { milliseconds: number; cpuMilliseconds: number } {
  const begin = performance.now();
  const cpu = process.cpuUsage();
  firstPlan();
  const milliseconds = performance.now() - begin;
  const { user, system } = process.cpuUsage(cpu);
  return { milliseconds, cpuMilliseconds: (user + system) / 1000 };
}

// The plan is checked before it leaves the engine; that is part of the time.
function firstPlan(): void {
  startPlan(job, { style: "all-over", seed: 1, effort: defaultEffort(job, 2) }).plan();
}
