// What she would say no to: breaks of the ten rules, counted over the real heaps that the composition is tuned on.
// `--starts 4`: four plans of each that begin at chance differently. Shown, not kept. `-- --reporting` for the heaps nobody tunes on; `--only real-r.3-s1` for one; `--say` names each break;
// `--contrast strong` makes the plans, and judges them, for who likes it so.
import { parseArgs } from "node:util";
import { type Style, styles } from "../src/engine/back/index.ts";
import type { Job } from "../src/engine/cloth/index.ts";
import { defaultEffort, makePlan } from "../src/engine/plan/index.ts";
import { heaps, jobOf } from "../test/plans/heaps.ts";
import {
  type Contrast,
  contrasts,
  type Rule,
  type RuleBreak,
  rules,
  rulesBroken,
  wrongContrast,
} from "../test/plans/rules.ts";

const { values } = parseArgs({
  options: {
    reporting: { type: "boolean", default: false },
    only: { type: "string" },
    style: { type: "string" },
    seconds: { type: "string", default: "1" },
    starts: { type: "string", default: "1" },
    say: { type: "boolean", default: false },
    contrast: { type: "string", default: "mixed" },
  },
});
const liked = likedBy(values.contrast);
const asked = heaps.filter((heap) => heap === values.only || (values.only === undefined && isOfSet(heap)));
const shownStyles = styles.filter((style) => values.style === undefined || style === values.style);
const starts = Array.from({ length: Number(values.starts) }, (_, index) => index + 1);
const rows = shownStyles.map((style) => ({
  style,
  broken: asked.flatMap((heap) => starts.map((seed) => brokenIn(heap, style, seed))),
}));
showTable();

function likedBy(text: string): Contrast {
  const contrast = contrasts.find((one) => one === text);
  if (contrast === undefined) throw new Error(`contrast is one of ${contrasts.join(", ")}`);
  return contrast;
}

function isOfSet(heap: string): boolean {
  return (values.reporting ? /-s50[01]$/ : /-s[12]$/).test(heap);
}

function brokenIn(heap: string, style: Style, seed: number): RuleBreak[] {
  const job: Job = { ...jobOf(heap, "weekend"), contrast: liked };
  const plan = makePlan(job, { style, seed, effort: defaultEffort(job, Number(values.seconds)) });
  const others = rulesBroken(plan).filter(({ rule }) => rule !== "contrast");
  const broken = [...others, ...wrongContrast(plan, liked)];
  if (values.say)
    for (const one of broken) say(`${heap} ${style} ${seed} ${one.rule} at ${one.x}, ${one.y}: ${one.said}`);
  return broken;
}

/** For each style and rule: breaks in all, and in how many of the plans. */
function showTable(): void {
  say(`${asked.length * starts.length} plans a style: breaks (plans with any)`);
  say([" ".repeat(14), ...rules.map((rule) => rule.padStart(15))].join(""));
  for (const { style, broken } of rows)
    say([style.padEnd(14), ...rules.map((rule) => count(broken, rule))].join(""));
  const all = rows.flatMap(({ broken }) => broken);
  say(["all".padEnd(14), ...rules.map((rule) => count(all, rule))].join(""));
}

function count(plans: readonly (readonly RuleBreak[])[], rule: Rule): string {
  const counts = plans.map((broken) => broken.filter((one) => one.rule === rule).length);
  const total = counts.reduce((sum, next) => sum + next, 0);
  return `${total} (${counts.filter((one) => one > 0).length})`.padStart(15);
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
