import { shopStep } from "../back/index.ts";
import { type Fabric, isUndyed, type Job } from "../cloth/index.ts";
import { inches, length, roundUpTo } from "../length/index.ts";
import { leading } from "./edges.ts";
import { chromaOf, hueOf } from "./palette.ts";
import { type Part, type Scene, whereOf } from "./scene.ts";
import type { Advice, BeforeWashing } from "./types.ts";

/** Strong reds, and dark cloth of a strong colour, are what most often runs. Figures from common practice. */
const strong = { red: { chroma: 40, below: 60 }, any: { chroma: 25, below: 40 } } as const;

export function mayBleed(fabric: Fabric): boolean {
  const lab = leading(fabric);
  if (lab === null || isUndyed(fabric)) return false;
  const chroma = chromaOf(lab);
  const isRed = ["red", "pink"].includes(hueOf(lab));
  if (isRed && chroma >= strong.red.chroma && lab.l < strong.red.below) return true;
  return chroma >= strong.any.chroma && lab.l < strong.any.below;
}

/** Below a fat quarter leftovers ravel and shrink out of shape when washed. Common practice. */
const fatQuarter = { short: inches(18), long: inches(22) } as const;

/** Cloth that may run and hasn't been washed, as far as one knows. */
export function bleedingAdvice(scene: Scene): readonly Advice[] {
  const runs = new Set(scene.job.fabrics.filter(mayBleed).map(({ id }) => id));
  const concerns = ({ piece, fabric }: Part) => runs.has(fabric) && piece?.washed !== true;
  const there = [...scene.cells.entries()].filter(([, { parts }]) => parts.some(concerns));
  if (there.length === 0) return [];
  const cells = there.map(([at]) => at);
  const steps = there.map(([, cell]) => cell.steps.at(-1) ?? null);
  const parts = there.flatMap(([, cell]) => cell.parts.filter(concerns));
  const where = whereOf(scene, cells, steps, concerns);
  return [{ kind: "bleeding", small: parts.every(isSmall), where }];
}

function isSmall({ piece }: Part): boolean {
  if (piece === null) return false;
  if (piece.kind === "crumbs") return true;
  const { width, height } = piece;
  return Math.min(width, height) < fatQuarter.short || Math.max(width, height) < fatQuarter.long;
}

/** Cloth to buy is new. */
function washedOf({ piece }: Part): boolean | null {
  return piece === null ? false : piece.washed;
}

/** Where washed cloth is sewn to cloth that isn't: at the first wash one of them draws in. Silent where she didn't say. */
export function unwashedAdvice(scene: Scene): readonly Advice[] {
  const meetings = scene.meetings.filter(({ one, other }) => {
    const [a, b] = [scene.cells[one]?.parts ?? [], scene.cells[other]?.parts ?? []];
    return (a.some(isWashed) && b.some(isUnwashed)) || (a.some(isUnwashed) && b.some(isWashed));
  });
  if (meetings.length === 0) return [];
  const all = meetings.flatMap(({ one, other }) => [one, other]);
  const cells = all.filter((at) => scene.cells[at]?.parts.some(isUnwashed) === true);
  const steps = meetings.map(({ step }) => step);
  const bought = new Set(
    cells.flatMap(
      (at) => scene.cells[at]?.parts.flatMap(({ piece, fabric }) => (piece === null ? [fabric] : [])) ?? [],
    ),
  );
  const where = whereOf(scene, cells, steps, isUnwashed);
  return [{ kind: "unwashed", bought: shrinking(scene, bought), where }];
}

function isWashed(part: Part): boolean {
  return washedOf(part) === true;
}

function isUnwashed(part: Part): boolean {
  return washedOf(part) === false;
}

function shrinking({ plan, job }: Scene, fabrics: ReadonlySet<string>): readonly BeforeWashing[] {
  return plan.buy
    .filter(({ use, fabric }) => use === "plain" && fabrics.has(fabric))
    .map(({ fabric, length: needed }) => ({ fabric, length: beforeShrinking(needed, job) }));
}

/** Cotton draws in by up to 5 %: what is needed after, divided by 0.95; as a shop cuts it. */
export function beforeShrinking(needed: number, { unit }: Pick<Job, "unit">) {
  return roundUpTo(length(Math.ceil((needed * 20) / 19)), shopStep(unit));
}
