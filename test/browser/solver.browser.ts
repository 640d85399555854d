import { readFileSync } from "node:fs";
import { join } from "node:path";
import { makePlan } from "../../src/engine/plan/index.ts";
import { testAlone } from "./alone.ts";
import { jobOf } from "./solver/job.ts";
import { expect } from "./verso.ts";

const test = testAlone("solver");
test.use({ searches: true });

test("a plan made beside the page is the plan that is made here", async ({ page }) => {
  await page.goto("./");
  const { plan, whole, better, shares } = await page.evaluate(() => window.tries.whole());
  expect(whole).toBe(true);
  expect(better).toBeGreaterThanOrEqual(2);
  expect(shares).toEqual([...shares].sort((one, other) => one - other));
  expect(shares.at(-1)).toBe(1);
  const table = readFileSync(join(import.meta.dirname, "../../samples/garden-room.csv"), "utf8");
  const here = makePlan(jobOf(table), { style: "insert-across", seed: 1, effort: 3000 });
  expect(plan).toEqual(JSON.parse(JSON.stringify(here)));
});

test("a search that is stopped gives the best so far, and nothing comes after it", async ({ page }) => {
  await page.goto("./");
  const { whole, hasPlan, order, afterwards, ticks } = await page.evaluate(() => window.tries.stopped());
  expect({ whole, hasPlan, afterwards }).toEqual({ whole: false, hasPlan: true, afterwards: 0 });
  expect(order[0]).toBe("better");
  expect(order.slice(order.indexOf("stop"))).toEqual(["stop", "over"]);
  // The page went on meanwhile.
  expect(ticks).toBeGreaterThan(3);
});

test("searches in line are stopped before their turn, and the next one runs", async ({ page }) => {
  await page.goto("./");
  const { outcomes, never, next } = await page.evaluate(() => window.tries.stoppedEarly());
  expect(outcomes).toEqual(outcomes.map(() => false));
  expect(never).toEqual({ whole: false, plan: null });
  expect(next).toBe(true);
});

test("a solver that fails says so, and the next search runs", async ({ page }) => {
  await page.goto("./");
  const { said, next } = await page.evaluate(() => window.tries.failing());
  expect(said).toMatch(/TypeError/);
  expect(next).toBe(true);
});
