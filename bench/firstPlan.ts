// The child of `first.ts`: reads the heap, then makes one first plan, cold, and tells how long that took.
import { writeSync } from "node:fs";
import { defaultEffort, startPlan } from "../src/engine/plan/index.ts";
import { denseJob } from "./job.ts";

const [back = "", table = ""] = process.argv.slice(2);
const job = denseJob(back, table);

const begin = performance.now();
const cpu = process.cpuUsage();
// The plan is checked before it leaves the engine; that is part of the time.
startPlan(job, { style: "all-over", seed: 1, effort: defaultEffort(job, 2) }).plan();
const milliseconds = performance.now() - begin;
const { user, system } = process.cpuUsage(cpu);
writeSync(3, JSON.stringify({ milliseconds, cpuMilliseconds: (user + system) / 1000 }));
