import type { DeterminismRow } from "../determinism.ts";
import type { Raw } from "../raw.ts";
import { origin } from "./table.ts";

export function determinismText(raws: readonly Raw<DeterminismRow>[]): string {
  return raws.map(runText).join("\n\n");
}

function runText(raw: Raw<DeterminismRow>): string {
  const different = new Set(raw.rows.map(({ sha256 }) => sha256)).size;
  const { heap, effort, seed } = raw.options;
  return [
    "## Same job, seed and effort: the same plan",
    origin([raw]),
    `Heap ${heap}, effort ${effort}, seed ${seed}: ${raw.rows.length} fresh processes, ` +
      `${different === 1 ? "one plan, to the byte" : `${different} different plans`}.`,
  ].join("\n\n");
}
