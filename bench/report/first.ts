import { groupedBy, median } from "../figures.ts";
import type { FirstRow } from "../first.ts";
import type { Raw } from "../raw.ts";
import { markdown, meanAndMost, origin, type Table } from "./table.ts";

export function firstText(raws: readonly Raw<FirstRow>[]): string {
  return [...raws]
    .sort((a, b) => String(a.options.set).localeCompare(String(b.options.set)))
    .map(setText)
    .join("\n\n");
}

function setText(raw: Raw<FirstRow>): string {
  return [
    `## The first valid plan: ${raw.options.set} seeds`,
    "Cold: a fresh process has read the heap and has planned nothing yet. From there to the first whole plan, checked. Of each heap the " +
      `median of ${raw.options.tries} processes; strips may be cut apart. Milliseconds pass faster than processor milliseconds where the ` +
      "machine has other work. Warm: the same first plan in a process that has made four before.",
    origin([raw]),
    markdown(table(raw.rows)),
  ].join("\n\n");
}

function table(rows: readonly FirstRow[]): Table {
  const groups = groupedBy(rows, ({ n, ratio }) => `${n} ${ratio}`);
  return {
    heads: ["n", "ratio", "ms", "ms of processor time", "the same, warm", "heaps"],
    rows: groups.map(([key, group]) => {
      const [n = "", ratio = ""] = key.split(" ");
      const wall = group.map(({ tries }) => median(tries.map(({ milliseconds }) => milliseconds)));
      const cpu = group.map(({ tries }) => median(tries.map(({ cpuMilliseconds }) => cpuMilliseconds)));
      const warm = group.map(({ tries }) => median(tries.map(({ warmMilliseconds }) => warmMilliseconds)));
      return [
        n,
        ratio,
        meanAndMost(wall, 0),
        meanAndMost(cpu, 0),
        meanAndMost(warm, 0),
        String(group.length),
      ];
    }),
  };
}
