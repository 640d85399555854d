import { checkDraft, type Job } from "../src/engine/cloth/index.ts";
import { inches, parseSizePair } from "../src/engine/length/index.ts";
import { readLeftovers } from "../src/files/index.ts";

/** The job of a dense heap, as the command line makes it of `--back` and the bench's other options. */
export function denseJob(backText: string, table: string): Job {
  const { pieces, problems } = readLeftovers(new TextEncoder().encode(table), "in");
  const back = parseSizePair(backText, "in");
  if (problems.length > 0 || !back.ok) throw new Error("the heap can't be read");
  const settings = { unit: "in", time: "any", floor: inches(3, 2), plain: { name: "Plain" } } as const;
  const checked = checkDraft({ ...settings, back: back.value, pieces });
  if (!checked.ok) throw new Error("the heap can't be planned");
  return checked.value.job;
}
