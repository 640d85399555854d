// What she is offered: how many plans for each real heap, whether one beats another in everything, whether two look
// alike, and whether one is far less work. Shown, not kept. `-- --reporting` for the heaps nobody tunes on; `--only
// real-r.3-s1` for one; `--say` tells each plan; `--wish sew-less` as she might wish.
import { parseArgs } from "node:util";
import {
  apart,
  type Choice,
  dominates,
  hasLight,
  leastApart,
  meritsOf,
  startChoice,
} from "../src/engine/choice/index.ts";
import { type Job, wishes } from "../src/engine/cloth/index.ts";
import { defaultEffort, type Plan } from "../src/engine/plan/index.ts";
import { wordsFor } from "../src/words/index.ts";
import { heaps, jobOf } from "../test/plans/heaps.ts";

const { values } = parseArgs({
  options: {
    reporting: { type: "boolean", default: false },
    only: { type: "string" },
    seconds: { type: "string", default: "1" },
    wish: { type: "string", multiple: true, default: [] },
    say: { type: "boolean", default: false },
  },
});
const words = wordsFor("en-US");
const asked = heaps.filter((heap) => heap === values.only || (values.only === undefined && isOfSet(heap)));
say("heap            plans  beaten  too alike  least apart  far less work  of the fullest");
for (const heap of asked) showChoice(heap);

function isOfSet(heap: string): boolean {
  return (values.reporting ? /-s50[01]$/ : /-s[12]$/).test(heap);
}

function showChoice(heap: string): void {
  const wished = wishes.filter((wish) => values.wish.includes(wish));
  const { chosen, notes } = choiceFor({ ...jobOf(heap, "weekend"), wishes: wished });
  const plans = chosen.map(({ plan }) => plan);
  const merits = plans.map(meritsOf);
  const beaten = merits.filter((one) => merits.some((other) => dominates(other, one))).length;
  const distances = pairs(plans).map(([one, other]) => apart(one.layout, other.layout));
  const alike = distances.filter((distance) => distance < leastApart).length;
  const least = Math.min(1, ...distances).toFixed(2);
  const fullest = merits.toSorted((one, other) => other.used - one.used)[0];
  const ofFullest =
    fullest !== undefined && merits.some((one) => hasLight([one, fullest]) && one.work < fullest.work);
  const facts = [plans.length, beaten, alike, least, yesNo(hasLight(merits)), yesNo(ofFullest)];
  const widths = [5, 8, 11, 13, 15, 16];
  say(heap.padEnd(15) + facts.map((fact, at) => String(fact).padStart(widths[at] ?? 0)).join(""));
  if (!values.say) return;
  for (const { plan, reasons } of chosen) say(`  ${plan.style.padEnd(14)} ${words.reasons(reasons)}`);
  for (const note of notes) say(`  ${words.choiceNote(note)}`);
}

function choiceFor(job: Job): Choice<Plan> {
  const search = startChoice(job, { seed: 1, effort: defaultEffort(job, Number(values.seconds)) });
  while (!search.done) search.step(1000);
  return search.choice();
}

function pairs<T>(all: readonly T[]): readonly (readonly [T, T])[] {
  return all.flatMap((one, at) => all.slice(at + 1).map((other) => [one, other] as const));
}

function yesNo(is: boolean): string {
  return is ? "yes" : "no";
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
