import type { DenseRow } from "../dense.ts";
import { groupedBy, percent } from "../figures.ts";
import { readJson } from "../heaps.ts";
import type { Raw } from "../raw.ts";
import { markdown, meanAndLeast, meanAndMost, origin, type Table } from "./table.ts";

type Aims = {
  readonly covered: readonly CoveredAim[];
  readonly at10: readonly {
    readonly n: number;
    readonly ratio: number;
    readonly plainCells: number;
    readonly trimWaste: number;
  }[];
};
type CoveredAim = {
  readonly n: number;
  readonly ratio: number;
  readonly seconds: number;
  readonly mean: number;
  readonly worst?: number;
};

const aims: Aims = readJson("aims.json");

const sets: Readonly<Record<string, string>> = {
  reporting: "the reporting seeds 500, 501 and 502",
  tuning: "the seeds 1 and 2, which the solver was tuned on",
};

/** The reporting seeds first: they are what counts. */
export function denseText(raws: readonly Raw<DenseRow>[]): string {
  const bySet = groupedBy(raws, ({ options }) => `${options.set} ${options.strips}`);
  const order = (key: string) => `${key.startsWith("reporting") ? 0 : 1}${key.includes("cut") ? 0 : 1}`;
  const sections = [...bySet].sort((a, b) => order(a[0]).localeCompare(order(b[0])));
  return sections.map(([, ofSet]) => setText(ofSet)).join("\n\n");
}

function setText(raws: readonly Raw<DenseRow>[]): string {
  const inOrder = [...raws].sort((a, b) => secondsOf(a) - secondsOf(b));
  const { set, strips } = inOrder[0]?.options ?? {};
  const cut = strips === "cut" ? "strips may be cut apart" : "strips give one cell each";
  return [
    `## Dense heaps: ${sets[String(set)] ?? set}; ${cut}`,
    "Every leftover wanted, anywhere: finished area 0.8, 1 or 1.3 of the region to fill.",
    origin(inOrder),
    `### Covered, per cent: mean / worst${set === "reporting" ? ", and the aim" : ""}`,
    markdown(coveredTable(inOrder, set === "reporting")),
    ...inOrder.flatMap((raw) => [
      `### What else, at ${secondsOf(raw)} s`,
      markdown(restTable(raw, set === "reporting")),
    ]),
  ].join("\n\n");
}

function secondsOf({ options }: Raw): number {
  return Number(options.seconds);
}

function groupsOf(rows: readonly DenseRow[]): [string, DenseRow[]][] {
  return groupedBy(rows, ({ n, ratio }) => `${ratio} ${n}`).sort(
    ([, [a]], [, [b]]) => (a?.ratio ?? 0) - (b?.ratio ?? 0) || (a?.n ?? 0) - (b?.n ?? 0),
  );
}

function coveredTable(raws: readonly Raw<DenseRow>[], withAims: boolean): Table {
  const heads = raws.flatMap((raw) => [`${secondsOf(raw)} s`, ...(withAims ? ["aim"] : [])]);
  const keys = [...new Set(raws.flatMap(({ rows }) => groupsOf(rows).map(([key]) => key)))];
  const rows = keys.map((key) => {
    const [ratio = "", n = ""] = key.split(" ");
    const cells = raws.flatMap((raw) => {
      const group = raw.rows.filter((row) => `${row.ratio} ${row.n}` === key);
      const covered = group.map((row) => 100 * row.covered);
      const aim = withAims ? [aimText(Number(n), Number(ratio), secondsOf(raw))] : [];
      return [meanAndLeast(covered, 1), ...aim];
    });
    return [n, ratio, ...cells];
  });
  return { heads: ["n", "ratio", ...heads], rows };
}

function aimText(n: number, ratio: number, seconds: number): string {
  const aim = aims.covered.find((one) => one.n === n && one.ratio === ratio && one.seconds === seconds);
  if (aim === undefined) return "";
  return aim.worst === undefined ? String(aim.mean) : `${aim.mean} / ${aim.worst}`;
}

function restTable(raw: Raw<DenseRow>, withAims: boolean): Table {
  const heads = ["n", "ratio", "plain cells", "that hold 80 %", "trimmed away, %", "unused"];
  return {
    heads: [...heads, "CPU s", "memory grew by, MB", "not valid", "of"],
    rows: groupsOf(raw.rows).map(([, rows]) => restRow(rows, withAims && secondsOf(raw) === 10)),
  };
}

function restRow(rows: readonly DenseRow[], withAims: boolean): string[] {
  const all = (figure: (row: DenseRow) => number) => rows.map(figure);
  const { n, ratio } = rows[0] ?? { n: 0, ratio: 0 };
  const aim = aims.at10.find((one) => withAims && one.n === n && one.ratio === ratio);
  const withAim = (text: string, most: number | undefined) =>
    most === undefined ? text : `${text} (≤ ${most})`;
  return [
    String(n),
    String(ratio),
    withAim(
      meanAndMost(
        all(({ plainCells }) => plainCells),
        1,
      ),
      aim?.plainCells,
    ),
    meanAndMost(
      all(({ cellsFor80 }) => cellsFor80),
      1,
    ),
    withAim(
      meanAndMost(
        all(({ trimWaste }) => Number(percent(trimWaste, 4))),
        1,
      ),
      aim?.trimWaste,
    ),
    meanAndMost(
      all(({ unused }) => unused),
      1,
    ),
    meanAndMost(
      all(({ cpuSeconds }) => cpuSeconds),
      2,
    ),
    meanAndMost(
      all(({ grownBytes }) => grownBytes / 1e6),
      0,
    ),
    String(rows.filter(({ problems }) => problems.length > 0).length),
    String(rows.length),
  ];
}
