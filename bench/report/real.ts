import { groupedBy, percent } from "../figures.ts";
import type { Raw } from "../raw.ts";
import type { RealRow } from "../real.ts";
import { markdown, meanAndLeast, meanAndMost, origin, type Table } from "./table.ts";

export function realText(raws: readonly Raw<RealRow>[]): string {
  return [...raws]
    .sort((a, b) => Number(a.options.seconds) - Number(b.options.seconds))
    .map(runText)
    .join("\n\n");
}

function runText(raw: Raw<RealRow>): string {
  const byHeap = groupedBy(raw.rows, ({ name }) => name);
  return [
    `## What twelve quilts leave over, in every style, at ${raw.options.seconds} s`,
    "The usual settings: a weekend, no pieces narrower than 2 1/2 in. To buy: yards of plain cloth, 42 in wide after selvages.",
    origin([raw]),
    "### By style: mean / worst",
    markdown(styleTable(raw.rows)),
    "### By heap",
    "In each cell: covered, joins, hours, yards to buy.",
    markdown(heapTable(byHeap)),
  ].join("\n\n");
}

function styleTable(rows: readonly RealRow[]): Table {
  return {
    heads: ["style", "covered, %", "joins", "hours at most", "yards to buy", "CPU s", "not valid", "of"],
    rows: groupedBy(rows, ({ asked }) => asked).map(([style, group]) => [
      style,
      meanAndLeast(
        group.map(({ covered }) => 100 * covered),
        1,
      ),
      meanAndMost(
        group.map(({ joins }) => joins),
        0,
      ),
      meanAndMost(
        group.map(({ minutes }) => minutes[1] / 60),
        1,
      ),
      meanAndMost(group.map(yards), 2),
      meanAndMost(
        group.map(({ cpuSeconds }) => cpuSeconds),
        2,
      ),
      String(group.filter(({ problems }) => problems.length > 0).length),
      String(group.length),
    ]),
  };
}

function heapTable(byHeap: readonly (readonly [string, readonly RealRow[]])[]): Table {
  const styles = byHeap[0]?.[1].map(({ asked }) => asked) ?? [];
  return {
    heads: ["heap", ...styles],
    rows: byHeap.map(([name, rows]) => [name, ...rows.map(cellOf)]),
  };
}

function cellOf(row: RealRow): string {
  const [low, high] = row.minutes.map((minutes) => (minutes / 60).toFixed(1));
  const facts = `${percent(row.covered, 0)} %, ${row.joins}, ${low}–${high} h, ${yards(row).toFixed(2)} yd`;
  return row.problems.length > 0 ? `${facts}, not valid` : facts;
}

function yards({ buy }: RealRow): number {
  const plain = buy.filter(({ use }) => use === "plain");
  return plain.reduce((sum, { length }) => sum + length / 36, 0);
}
