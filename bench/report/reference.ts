import { percent } from "../figures.ts";
import { readJson } from "../heaps.ts";
import type { Raw } from "../raw.ts";
import type { ReferenceRow } from "../reference.ts";
import { markdown, origin, type Table } from "./table.ts";

type Reference = {
  readonly solver: string;
  readonly covered: readonly {
    readonly n: number;
    readonly ratio: number;
    readonly at2: number;
    readonly at10: number;
    readonly best60: number;
  }[];
};

const reference: Reference = readJson("reference-figures.json");

export function referenceText(raws: readonly Raw<ReferenceRow>[]): string {
  if (raws.length === 0) return "";
  const inOrder = [...raws].sort((a, b) => orderOf(a) - orderOf(b));
  return [
    "## Beside a general guillotine solver",
    `The same finished sizes in the same regions, covered in per cent. Beside Verso: ${reference.solver}, at 2 s, at 10 s, and the best ` +
      "of four methods at 60 s. Verso at 2 s is held against its 2 s, Verso at 10 s against its 60 s: `+` where Verso covers more, `=` " +
      "where both cover all, `−` where it covers less. Verso with strips whole may trim them, as every piece, but takes one cell from each.",
    origin(inOrder),
    markdown(table(inOrder)),
    verdicts(inOrder),
  ].join("\n\n");
}

function orderOf({ options }: Raw): number {
  return (options.strips === "whole" ? 0 : 1000) + Number(options.seconds);
}

function table(raws: readonly Raw<ReferenceRow>[]): Table {
  const heads = raws.map(({ options }) => `strips ${options.strips}, ${options.seconds} s`);
  return {
    heads: ["n", "ratio", "reference, 2 s", "10 s", "best at 60 s", ...heads, "not valid"],
    rows: reference.covered.map((entry) => {
      const { n, ratio, at2, at10, best60 } = entry;
      const found = raws.map((raw) => rowOf(raw, entry));
      const cells = found.map((row, at) => (row ? cellOf(row, entry, raws[at]) : ""));
      const invalid = found.filter((row) => row && row.problems.length > 0).length;
      return [...[n, ratio, at2, at10, best60].map(String), ...cells, String(invalid)];
    }),
  };
}

type Entry = Reference["covered"][number];

function rowOf(raw: Raw<ReferenceRow>, { n, ratio }: Entry): ReferenceRow | undefined {
  return raw.rows.find((row) => row.n === n && row.ratio === ratio);
}

function cellOf({ covered }: ReferenceRow, entry: Entry, raw: Raw | undefined): string {
  const against = againstOf(entry, raw);
  return `${percent(covered)} ${against === null ? "" : signOf(100 * covered, against)}`.trim();
}

/** What this budget is held against. */
function againstOf({ at2, best60 }: Entry, raw: Raw | undefined): number | null {
  if (raw?.options.seconds === 2) return at2;
  return raw?.options.seconds === 10 ? best60 : null;
}

function signOf(covered: number, against: number): string {
  // Both are shares of what could be covered at most; a rounding of the last digit is no difference.
  if (covered >= 100 - 1e-9 && against === 100) return "=";
  return covered > against ? "+" : "−";
}

function verdicts(raws: readonly Raw<ReferenceRow>[]): string {
  const lines = raws.flatMap((raw) => {
    const signs = reference.covered.flatMap((entry) => {
      const row = rowOf(raw, entry);
      const against = againstOf(entry, raw);
      return row === undefined || against === null ? [] : [signOf(100 * row.covered, against)];
    });
    if (signs.length === 0) return [];
    const count = (sign: string) => signs.filter((one) => one === sign).length;
    const { strips, seconds } = raw.options;
    return [
      `- strips ${strips}, ${seconds} s: more in ${count("+")}, all in both in ${count("=")}, less in ${count("−")}`,
    ];
  });
  return lines.join("\n");
}
