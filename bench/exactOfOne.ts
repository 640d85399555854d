// The child of `exact.ts`: fills one region exactly and tells what that took.
import { writeSync } from "node:fs";
import { type ExactTask, fillExactly } from "../src/engine/layout/index.ts";
import { fillingProblems } from "../test/laws/slicings.ts";
import type { Exact } from "./exact.ts";

const task: ExactTask = JSON.parse(process.argv[2] ?? "");

const bytes = process.memoryUsage.rss();
const before = process.cpuUsage();
const filled = fillExactly(task);
const { user, system } = process.cpuUsage(before);
const { value, bound, proved, steps } = filled;
const told: Exact = {
  ...{ value, bound, proved, steps },
  cpuSeconds: (user + system) / 1e6,
  grownBytes: Math.max(0, process.resourceUsage().maxRSS * 1024 - bytes),
  problems: fillingProblems(task, filled),
};
writeSync(3, JSON.stringify(told));
