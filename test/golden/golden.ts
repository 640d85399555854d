import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect } from "vitest";

/**
 * Compares `text` with the picture of that name beside this file. Where they differ, what came out is written as
 * `…-changed` to be looked at: if it is better, it takes the picture's place, in a commit that says why.
 */
export function expectGolden(name: `${string}.svg`, text: string): void {
  const golden = pathOf(name);
  const changed = pathOf(name.replace(/\.svg$/, "-changed.svg"));
  const wanted = existsSync(golden) ? readFileSync(golden, "utf8") : "";
  if (wanted === text) rmSync(changed, { force: true });
  else writeFileSync(changed, text);
  expect(wanted === text, `${name} is as it was; what came out is beside it as ${changed}`).toBe(true);
}

function pathOf(name: string): string {
  return fileURLToPath(new URL(name, import.meta.url));
}
