import type { PhotoMemoryRow } from "../photoMemory.ts";
import type { Raw } from "../raw.ts";
import { markdown, origin } from "./table.ts";

export function photoMemoryText(raws: readonly Raw<PhotoMemoryRow>[]): string {
  return raws.length === 0 ? "" : [opening, ...raws.map(runText)].join("\n\n");
}

const opening = `## Memory for measuring photographs

What the vision library's own memory has grown to once photographs of the rendered set were measured one after another in one process;
it never shrinks. The decoded photo and the picture of the floor lie outside of it.`;

function runText(raw: Raw<PhotoMemoryRow>): string {
  const { rows } = raw;
  const most = Math.max(...rows.map(({ wasmBytes }) => wasmBytes)) / 1e6;
  const largest = Math.max(...rows.map(({ megapixels }) => megapixels));
  const table = {
    heads: ["", "measured", "floor", "aim"],
    rows: [
      ["photographs, millions of pixels each", `${rows.length}, ${largest.toFixed(0)}`, "–", "–"],
      ["WASM memory, MB", most.toFixed(0), "400", "320"],
    ],
  };
  return [origin([raw]), markdown(table)].join("\n\n");
}
