import type { Before, Raw } from "../raw.ts";

export type Table = { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };

/** A table as Markdown has it; the first column to the left, numbers to the right. */
export function markdown({ heads, rows }: Table): string {
  const widths = heads.map((head, at) =>
    Math.max(3, ...[head, ...rows.map((row) => row[at] ?? "")].map(wide)),
  );
  const line = (cells: readonly string[]) =>
    `| ${widths.map((width, at) => pad(cells[at] ?? "", width, at === 0)).join(" | ")} |`;
  const rule = widths.map((width, at) => (at === 0 ? "-".repeat(width) : `${"-".repeat(width - 1)}:`));
  return [line(heads), `| ${rule.join(" | ")} |`, ...rows.map(line)].join("\n");
}

function wide(text: string): number {
  return [...text].length;
}

function pad(text: string, width: number, left: boolean): string {
  const blanks = " ".repeat(width - wide(text));
  return left ? text + blanks : blanks + text;
}

/** How to measure it again, and when, on what and from which sources it was measured. */
export function origin(raws: readonly Raw[]): string {
  const commands = raws.map(({ command }) => command).join("\n");
  const facts = [...new Set(raws.map(measuredOn))];
  const again = raws.flatMap(({ before, options }) => before.map((run) => againLine(run, options)));
  return [`\`\`\`\n${commands}\n\`\`\``, ...facts, ...again].join("\n\n");
}

function measuredOn({ date, commit, changed, machine }: Raw): string {
  const { model, cores, node, system, pinned } = machine;
  const sources = commit === null ? "sources without a commit" : `sources of ${commit}`;
  const held = pinned ? "held on one core" : "not held on one core";
  return [
    `Measured ${date.slice(0, 10)}, ${sources}${changed ? ", changed since" : ""}.`,
    `${model}, ${cores} ${cores === 1 ? "core" : "cores"}, ${held}; Node ${node.replace(/^v/, "")}, ${system}.`,
  ].join(" ");
}

function againLine({ date, commit, because }: Before, options: Raw["options"]): string {
  const which = Object.values(options).join(", ");
  return `Run before${which === "" ? "" : ` (${which})`} on ${date.slice(0, 10)}, sources of ${commit ?? "no commit"}; run again because ${because?.replace(/\.$/, "")}.`;
}

/** Mean and the worst of them, such as `97.2 / 95.0`. */
export function meanAndWorst(numbers: readonly number[], worst: number, digits: number): string {
  const mean = numbers.reduce((sum, next) => sum + next, 0) / numbers.length;
  return `${mean.toFixed(digits)} / ${worst.toFixed(digits)}`;
}

export function meanAndLeast(numbers: readonly number[], digits: number): string {
  return meanAndWorst(numbers, Math.min(...numbers), digits);
}

export function meanAndMost(numbers: readonly number[], digits: number): string {
  return meanAndWorst(numbers, Math.max(...numbers), digits);
}
