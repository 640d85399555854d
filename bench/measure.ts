import { checkLayout, figuresOf, type LayoutNode } from "../src/engine/layout/index.ts";
import { areaToNumber, toNumber } from "../src/engine/length/index.ts";
import { type PlanDocument, readPlan } from "../src/files/index.ts";
import { type Outcome, runPlan, type Told } from "./commandLine.ts";

/** What came of one run of the command line. Shares are 0 to 1, lengths inches. */
export type Measured = Told & {
  readonly style: string;
  readonly effort: number;
  readonly covered: number;
  readonly plainCells: number;
  /** The fewest cells that hold four fifths of the plain cloth. */
  readonly cellsFor80: number;
  readonly trimWaste: number;
  readonly pieces: number;
  readonly unused: number;
  readonly joins: number;
  readonly cuts: number;
  readonly minutes: readonly [number, number];
  readonly buy: readonly { readonly use: string; readonly width: number; readonly length: number }[];
  /** Finished area of the cells of leftovers, in square steps of the ruler. */
  readonly shownSteps: number;
  /** What the checker has against it; an empty list: it can be sewn. */
  readonly problems: readonly string[];
};

export function measure(table: string, options: readonly string[]): Measured {
  return measured(runPlan(table, options));
}

export function measured({ status, plan: text, complaints, told }: Outcome): Measured {
  if (status !== 0 || told === null) throw new Error(`the command line ended with ${status}: ${complaints}`);
  const read = readPlan(text);
  if (!read.ok) throw new Error(`the plan can't be read: ${JSON.stringify(read.error.slice(0, 3))}`);
  const plan = read.value;
  return { ...told, ...figuresFrom(plan), problems: problemsOf(plan) };
}

function figuresFrom(plan: PlanDocument): Omit<Measured, keyof Told | "problems"> {
  const { figures } = plan;
  const { covered, plainCells, trimWaste, joins, cuts, minutes } = figures;
  const cells = leavesIn(plan.layout);
  const cloth = cells.filter(({ kind }) => kind === "cloth").map(areaIn);
  const shown = cells.filter(({ kind }) => kind !== "cloth").map(areaIn);
  return {
    ...{ style: plan.style, effort: plan.effort, covered, plainCells, trimWaste, joins, cuts, minutes },
    cellsFor80: fewestFor(cloth, 0.8),
    pieces: total(plan.pieces.filter(isSingle).map(({ count }) => count)),
    unused: unusedIn(plan),
    buy: plan.buy.map(({ use, width, length }) => ({
      use,
      width: toNumber(width, "in"),
      length: toNumber(length, "in"),
    })),
    shownSteps: total(shown) / plan.step ** 2,
  };
}

/** The checker's word, and the figures counted once more by it. */
function problemsOf(plan: PlanDocument): string[] {
  const problems: string[] = checkLayout(plan).map(({ kind }) => kind);
  const again = figuresOf(plan);
  const { figures } = plan;
  const areaDiffers = Math.abs(areaToNumber(again.plain, "in") - areaToNumber(figures.plain, "in")) > 1e-6;
  const shareDiffers = Math.abs(again.covered - figures.covered) > 1e-9;
  const wasteDiffers = Math.abs(again.trimWaste - figures.trimWaste) > 1e-9;
  if (areaDiffers || shareDiffers || wasteDiffers || again.plainCells !== figures.plainCells)
    problems.push("figures-differ");
  return problems;
}

function unusedIn({ pieces, unused }: PlanDocument): number {
  const single = new Set(pieces.filter(isSingle).map(({ id }) => id));
  return total(unused.filter(({ piece }) => single.has(piece)).map(({ count }) => count));
}

function isSingle({ kind }: { readonly kind: string }): boolean {
  return kind !== "length" && kind !== "crumbs";
}

function leavesIn(node: LayoutNode): Exclude<LayoutNode, { kind: "join" }>[] {
  return node.kind === "join" ? node.parts.flatMap(leavesIn) : [node];
}

function areaIn({ width, height }: LayoutNode): number {
  return width * height;
}

function fewestFor(areas: readonly number[], share: number): number {
  const wanted = total(areas) * share;
  let held = 0;
  let cells = 0;
  for (const area of [...areas].sort((a, b) => b - a)) {
    if (held >= wanted) break;
    held += area;
    cells += 1;
  }
  return cells;
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((sum, next) => sum + next, 0);
}
