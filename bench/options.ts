import { parseArgs } from "node:util";
import type { Strips } from "./heaps.ts";

const tuning = [1, 2];
const reporting = [500, 501, 502];

export type Options = {
  readonly seeds: readonly number[];
  /** `tuning`, `reporting`, or the seeds themselves. */
  readonly set: string;
  readonly seconds: readonly number[];
  readonly strips: readonly Strips[];
  /** A part of the heaps: shown, not kept. */
  readonly only: string | null;
  /** The exact search alone, where it is one of several. */
  readonly exact: boolean;
  /** Why the reporting seeds are run once more. */
  readonly because: string | null;
};

export function readOptions(usual: { readonly seconds: string; readonly strips?: string }): Options {
  const { values } = parseArgs({
    options: {
      seeds: { type: "string" },
      reporting: { type: "boolean", default: false },
      seconds: { type: "string", default: usual.seconds },
      strips: { type: "string", default: usual.strips ?? "cut" },
      only: { type: "string" },
      exact: { type: "boolean", default: false },
      because: { type: "string" },
    },
  });
  const seeds = values.reporting ? reporting : numbers(values.seeds ?? tuning.join());
  const { strips, only = null, exact, because = null } = values;
  const seconds = numbers(values.seconds);
  return { seeds, set: setOf(seeds), seconds, strips: stripsIn(strips), only, exact, because };
}

function setOf(seeds: readonly number[]): string {
  const written = seeds.join();
  if (written === tuning.join()) return "tuning";
  return written === reporting.join() ? "reporting" : `seeds-${seeds.join("-")}`;
}

function numbers(text: string): number[] {
  const read = text.split(",").map(Number);
  if (read.some((number) => !(number >= 0))) throw new Error(`"${text}": numbers with commas between them`);
  return read;
}

function stripsIn(text: string): Strips[] {
  if (text === "both") return ["whole", "cut"];
  if (text === "cut" || text === "whole") return [text];
  throw new Error(`--strips ${text}: cut, whole or both`);
}

/** Is this heap asked for? `--only n300` or `--only n300_r1_`. */
export function isAsked(name: string, { only }: Pick<Options, "only">): boolean {
  return only === null || `${name}_`.startsWith(`${only.replace(/_$/, "")}_`) || name === only;
}

/** Reporting seeds are run once; again only with a reason, which the results then give. */
export function mayWrite(options: Options, measuredBefore: boolean): boolean {
  if (options.only !== null || options.set.startsWith("seeds-")) return false;
  if (options.set === "reporting" && measuredBefore && options.because === null)
    throw new Error(`the reporting seeds were run before: say --because "what has changed"`);
  return true;
}

export function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
