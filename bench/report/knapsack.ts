import { percent } from "../figures.ts";
import type { KnapsackRow } from "../knapsack.ts";
import type { Raw } from "../raw.ts";
import { markdown, origin, type Table } from "./table.ts";

export function knapsackText(raws: readonly Raw<KnapsackRow>[]): string {
  if (raws.length === 0) return "";
  const inOrder = [...raws].sort((a, b) => orderOf(a) - orderOf(b));
  return ["## Published problems of guillotine cutting", opening, ...inOrder.map(runText)].join("\n\n");
}

const opening =
  "Thirty published problems whose optima are proved, by the exact search: value is the published profit, whole units, nothing " +
  "trimmed, plain cloth of any width, no price on seams or cloth. Each in a fresh process; CPU s is the search alone. Proved: what was " +
  "found is also what nothing can beat. A gap is what is missing to the optimum, in per cent of it.";

function orderOf({ options }: Raw): number {
  return options.turning === "true" ? 1 : 0;
}

function runText(raw: Raw<KnapsackRow>): string {
  const { rows, options } = raw;
  const turned = options.turning === "true";
  const count = (test: (row: KnapsackRow) => boolean) => rows.filter(test).length;
  const reached = count(({ value, optimal }) => value === optimal);
  const above = count(({ value, optimal }) => optimal !== null && value > optimal);
  const proved = count((row) => row.proved);
  const invalid = count(({ problems }) => problems.length > 0);
  const slowest = Math.max(...rows.map(({ cpuSeconds }) => cpuSeconds));
  const grown = Math.max(...rows.map(({ grownBytes }) => grownBytes)) / 1e6;
  const known = count(({ optimal }) => optimal !== null);
  return [
    turned ? "### Items may be turned" : "### As published",
    origin([raw]),
    `The known optimum is reached in ${reached} of ${known}; ${above} above it; ${proved} of ${rows.length} proved; ${invalid} not valid. ` +
      `At most ${slowest.toFixed(2)} CPU s and ${grown.toFixed(0)} MB of memory more.`,
    ...(turned
      ? [
          "These optima are our own computation, with a search of another make; none: it did not come to its end.",
        ]
      : []),
    markdown(table(rows)),
    ...(turned ? [] : [sourcesText(rows)]),
  ].join("\n\n");
}

function table(rows: readonly KnapsackRow[]): Table {
  return {
    heads: ["problem", "found", "optimum", "gap, %", "proved", "CPU s", "source"],
    rows: rows.map(({ name, value, optimal, proved, cpuSeconds, source }) => [
      name,
      String(value),
      optimal === null ? "none" : String(optimal),
      optimal === null ? "" : percent((optimal - value) / optimal, 2),
      proved ? "yes" : "no",
      cpuSeconds.toFixed(2),
      shortSource(source),
    ]),
  };
}

/** Authors and year: "Wang (1983)". */
function shortSource(source: string): string {
  return source.replace(/(\(\d{4}\)).*/, "$1");
}

function sourcesText(rows: readonly KnapsackRow[]): string {
  return [...new Set(rows.map(({ source }) => source))].map((source) => `- ${source}`).join("\n");
}
