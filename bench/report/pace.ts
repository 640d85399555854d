import { percent } from "../figures.ts";
import type { PaceRow } from "../pace.ts";
import type { Raw } from "../raw.ts";
import { markdown, origin, type Table } from "./table.ts";

export function paceText(raws: readonly Raw<PaceRow>[]): string {
  return raws.map(runText).join("\n\n");
}

function runText(raw: Raw<PaceRow>): string {
  return [
    "## What a move and an improvement cost as heaps grow",
    "One dense heap of each size, ratio 1, strips cut apart; the search alone. An improvement is a move after which more of the region " +
      "is covered than ever before.",
    origin([raw]),
    markdown(costTable(raw.rows)),
    "### Covered of the region, per cent, after so many processor seconds",
    markdown(curveTable(raw)),
  ].join("\n\n");
}

function costTable(rows: readonly PaceRow[]): Table {
  const [first] = rows;
  const each = (row: PaceRow, count: number) => (1000 * row.cpuSeconds) / count;
  return {
    heads: [
      "n",
      "moves",
      "ms a move",
      "improvements",
      "ms an improvement",
      "n, times",
      "an improvement, times",
    ],
    rows: rows.map((row) => {
      const growth = first === undefined ? 1 : each(row, row.improvements) / each(first, first.improvements);
      return [
        String(row.n),
        String(row.moves),
        each(row, row.moves).toFixed(3),
        String(row.improvements),
        each(row, row.improvements).toFixed(1),
        (row.n / (first?.n ?? row.n)).toFixed(1),
        growth.toFixed(1),
      ];
    }),
  };
}

const shares = [0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 1];

function curveTable({ rows, options }: Raw<PaceRow>): Table {
  const seconds = Number(options.seconds);
  return {
    heads: ["n", ...shares.map((share) => `${Number((share * seconds).toFixed(2))} s`)],
    rows: rows.map(({ n, curve }) => [
      String(n),
      ...shares.map((share) => {
        const reached = curve.find(({ cpuSeconds }) => cpuSeconds >= share * seconds * 0.999) ?? curve.at(-1);
        return reached === undefined ? "" : percent(reached.covered);
      }),
    ]),
  };
}
