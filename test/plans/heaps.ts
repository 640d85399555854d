import { readFileSync } from "node:fs";
import { backFor, extraFor } from "../../src/engine/back/index.ts";
import { checkDraft, type Draft, type Job, type Method, type Time } from "../../src/engine/cloth/index.ts";
import { inches } from "../../src/engine/length/index.ts";
import { readLeftovers } from "../../src/files/index.ts";

type Entry = { readonly name: string; readonly top: readonly [number, number]; readonly method: Method };

const index: readonly Entry[] = JSON.parse(readFileSync(dataFile("index.json"), "utf8"));

/** What one quilt leaves over, twelve times. */
export const heaps: readonly string[] = index.map(({ name }) => name);

/** Those whose plans are held to what a quilter would say no to, and with more effort, in `rules-kept`. */
export const worked = heaps.filter((heap) => /r\.(3|5)-s[12]$/.test(heap));

export function jobOf(heap: string, time: Time): Job {
  const entry = index.find(({ name }) => name === heap);
  if (entry === undefined) throw new Error(`${heap} is not in the index`);
  const { pieces, problems } = readLeftovers(readFileSync(dataFile(`${heap}.csv`)), "in");
  if (problems.length > 0) throw new Error(`${heap}: ${JSON.stringify(problems)}`);
  const extra = extraFor(entry.method, "in");
  const top = { width: inches(entry.top[0]), height: inches(entry.top[1]), method: entry.method, extra };
  const plain = { name: "Unbleached cotton" };
  return jobFrom({ unit: "in", top, back: backFor(top, extra), time, plain, pieces });
}

export function jobFrom(draft: Draft): Job {
  const checked = checkDraft(draft);
  if (!checked.ok) throw new Error(JSON.stringify(checked.error));
  return checked.value.job;
}

function dataFile(name: string): URL {
  return new URL(`../data/heaps/${name}`, import.meta.url);
}
