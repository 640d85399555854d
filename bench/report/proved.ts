import { percent } from "../figures.ts";
import type { ProvedExactRow, ProvedRow } from "../proved.ts";
import type { Raw } from "../raw.ts";
import type { SewableRow } from "../sewable.ts";
import { markdown, origin, type Table } from "./table.ts";

/** What each heap is held against. */
type Best = ReadonlyMap<string, number>;

export function provedText(
  raws: readonly Raw<ProvedRow>[],
  sewable: readonly Raw<SewableRow>[],
  exact: readonly Raw<ProvedExactRow>[],
): string {
  const byTime = [...raws].sort((a, b) => orderOf(a) - orderOf(b));
  const sections = [
    ...sewable.map(sewableText),
    ...exact.map(exactText),
    ...byTime.map((raw) => runText(raw, bestFor(raw, sewable))),
  ];
  if (sections.length === 0) return "";
  return ["## Small heaps whose best is proved", opening, ...sections].join("\n\n");
}

const opening =
  "Thirty-five small heaps, nothing trimmed; areas in square eighths of an inch. The proofs in the data allow plain cloth of any width. " +
  "Sewn, no cell is narrower than 1 in, so the best is less for some: what it is then was found by looking at everything, without the " +
  "solver. That search gives the proved figures again where any width is allowed. So the heaps are planned twice: as they are, against " +
  "the best that can be sewn; and enlarged, an inch for every eighth, so that the rule says nothing, against the proofs. The exact " +
  "search is held against the proofs too, plain cloth of any width.";

function orderOf({ options }: Raw): number {
  return Number(options.seconds) + (options.scale === "sewn" ? 0 : 1000);
}

function sewableText(raw: Raw<SewableRow>): string {
  const { rows } = raw;
  const less = rows.filter(({ sewable, optimal }) => sewable < optimal);
  const same = rows.filter(({ anyWidth, optimal }) => anyWidth === optimal).length;
  return [
    "### What can be sewn",
    origin([raw]),
    `The proof's figure came out again for ${same} of ${rows.length}. Less can be sewn in ${less.length}:`,
    markdown({
      heads: ["heap", "proved", "can be sewn", "of it, %"],
      rows: less.map(({ name, optimal, sewable }) => [
        name,
        String(optimal),
        String(sewable),
        percent(sewable / optimal),
      ]),
    }),
  ].join("\n\n");
}

function exactText(raw: Raw<ProvedExactRow>): string {
  const { rows } = raw;
  const reached = rows.filter(({ value, optimal }) => value === optimal).length;
  const above = rows.filter(({ value, optimal }) => value > optimal).length;
  const proved = rows.filter((row) => row.proved).length;
  const invalid = rows.filter(({ problems }) => problems.length > 0).length;
  const short = rows.filter(({ value, optimal }) => value < optimal);
  const slowest = Math.max(...rows.map(({ cpuSeconds }) => cpuSeconds));
  return [
    "### By the exact search",
    origin([raw]),
    `The proof's figure is reached in ${reached} of ${rows.length}; ${above} above it; ${proved} proved again; ${invalid} not valid. ` +
      `At most ${slowest.toFixed(2)} CPU s each.`,
    ...(short.length > 0 ? [markdown(exactGaps(short))] : []),
  ].join("\n\n");
}

function exactGaps(rows: readonly ProvedExactRow[]): Table {
  return {
    heads: ["not reached", "found", "best", "of it, %"],
    rows: rows.map(({ name, value, optimal }) => [name, `${value}`, `${optimal}`, percent(value / optimal)]),
  };
}

function bestFor(raw: Raw<ProvedRow>, sewable: readonly Raw<SewableRow>[]): Best {
  const proved = new Map(raw.rows.map(({ name, optimal }) => [name, optimal]));
  if (raw.options.scale !== "sewn") return proved;
  return new Map([
    ...proved,
    ...sewable.flatMap(({ rows }) => rows.map((row): [string, number] => [row.name, row.sewable])),
  ]);
}

function runText(raw: Raw<ProvedRow>, best: Best): string {
  const { rows, options } = raw;
  const bestOf = ({ name, optimal }: ProvedRow) => best.get(name) ?? optimal;
  const short = rows.filter((row) => row.shown < bestOf(row));
  const above = rows.filter((row) => row.shown > bestOf(row)).length;
  const invalid = rows.filter(({ problems }) => problems.length > 0).length;
  const title = options.scale === "sewn" ? "As they are" : "An inch for every eighth";
  return [
    `### ${title}, at ${options.seconds} s`,
    origin([raw]),
    `The best is reached in ${rows.length - short.length - above} of ${rows.length}; ${above} above it; ${invalid} not valid.`,
    ...(short.length > 0 ? [markdown(gaps(short, best))] : []),
  ].join("\n\n");
}

function gaps(rows: readonly ProvedRow[], best: Best): Table {
  return {
    heads: ["not reached", "found", "best", "of it, %"],
    rows: rows.map(({ name, shown, optimal }) => {
      const most = best.get(name) ?? optimal;
      return [name, String(shown), String(most), percent(shown / most)];
    }),
  };
}
