import { fileURLToPath } from "node:url";
import type { ExactTask } from "../src/engine/layout/index.ts";
import { runNode } from "./commandLine.ts";

/** What the exact search made of one task. */
export type Exact = {
  readonly value: number;
  readonly bound: number;
  readonly proved: boolean;
  readonly steps: number;
  /** Of the search alone. */
  readonly cpuSeconds: number;
  readonly grownBytes: number;
  /** What is wrong with its tree; an empty list: nothing is. */
  readonly problems: readonly string[];
};

type Problem = {
  readonly W: number;
  readonly H: number;
  readonly items: readonly {
    readonly w: number;
    readonly h: number;
    readonly copies: number;
    /** Without it, the area counts. */
    readonly profit?: number;
  }[];
};

/** In a fresh process. Whole units, nothing trimmed, plain cloth of any width, no price on seams or cloth. */
export function fillInChild({ W, H, items }: Problem, turns: boolean): Exact {
  const task: ExactTask = {
    ...{ width: W, height: H },
    items: items.map(({ w, h, copies, profit = w * h }) => ({
      ...{ width: w, height: h, copies, turns },
      value: profit,
    })),
  };
  const child = fileURLToPath(new URL("./exactOfOne.ts", import.meta.url));
  const folder = fileURLToPath(new URL("..", import.meta.url));
  const { status, stderr, told } = runNode(["--import", "tsx", child, JSON.stringify(task)], folder);
  if (status !== 0) throw new Error(`the exact search ended with ${status}: ${stderr}`);
  return JSON.parse(told);
}
