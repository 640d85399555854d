import { readFileSync } from "node:fs";
import { backFor, extraFor } from "../src/engine/back/index.ts";
import { checkDraft, type Draft, type Job } from "../src/engine/cloth/index.ts";
import { drawPlan } from "../src/engine/drawing/index.ts";
import { parseSizePair, type Result, type Size } from "../src/engine/length/index.ts";
import { makePlan, type Plan } from "../src/engine/plan/index.ts";
import { readLeftovers, svgOfDrawing } from "../src/files/index.ts";
import { cliWordsFor } from "../src/words/index.ts";
import type { GalleryQuilt } from "./quilts.ts";

/** The job as the command line would read it from the quilt's table. */
export function jobOf({ name, unit, size, time }: GalleryQuilt): Job {
  const { pieces, problems } = readLeftovers(
    readFileSync(new URL(`heaps/${name}.csv`, import.meta.url)),
    unit,
  );
  if (problems.length > 0) throw new Error(`${name}: ${JSON.stringify(problems)}`);
  const plain = { name: cliWordsFor("en-US", unit).plainCloth };
  const { job } = must(checkDraft({ unit, ...sizesOf(size, unit), time, plain, pieces }), name);
  return job;
}

/** The same everywhere: the seed and the effort are the gallery's own. */
export function planOf(quilt: GalleryQuilt): Plan {
  return makePlan(jobOf(quilt), { style: quilt.style, seed: 1, effort: quilt.effort });
}

/** The picture that the command line writes with `--svg`. */
export function pictureOf(plan: Plan): string {
  const drawing = drawPlan(plan);
  const words = cliWordsFor("en-US", plan.unit).picture(plan, drawing.ruler.length);
  return svgOfDrawing(drawing, { words });
}

function sizesOf(size: GalleryQuilt["size"], unit: GalleryQuilt["unit"]): Pick<Draft, "top" | "back"> {
  if ("back" in size) return { back: sizeOf(size.back, unit) };
  const top = sizeOf(size.top, unit);
  const extra = extraFor(size.method, unit);
  return { top: { ...top, method: size.method, extra }, back: backFor(top, extra) };
}

function sizeOf(text: string, unit: GalleryQuilt["unit"]): Size {
  return must(parseSizePair(text, unit), text);
}

function must<T>(result: Result<T, unknown>, what: string): T {
  if (!result.ok) throw new Error(`${what}: ${JSON.stringify(result.error)}`);
  return result.value;
}
