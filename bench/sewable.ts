// What is the most of each small heap that can be sewn? Found by looking at everything, without the solver; and once
// with plain cloth of any width, as the proofs in the data have it: the same must come out.
import { provedHeaps } from "./heaps.ts";
import { mostSewable } from "./mostSewable.ts";
import { isAsked, readOptions, say } from "./options.ts";
import { writeRaw } from "./raw.ts";

export type SewableRow = {
  readonly name: string;
  /** As the data have it. Square eighths of an inch, as all of these. */
  readonly optimal: number;
  readonly anyWidth: number;
  /** With no cell narrower than 1 in. */
  readonly sewable: number;
};

const options = readOptions({ seconds: "0" });
const rows = provedHeaps()
  .filter(({ name }) => isAsked(name, options))
  .map(({ name, W, H, items, optimal }): SewableRow => {
    const heap = { width: W, height: H, items };
    const anyWidth = mostSewable({ ...heap, smallest: 1 });
    const sewable = mostSewable({ ...heap, smallest: 8 });
    say(`${name.padEnd(18)} proved ${optimal}, found ${anyWidth}, sewable ${sewable}`);
    return { name, optimal, anyWidth, sewable };
  });
const run = { name: "sewable", bench: "sewable", command: "npm run bench:sewable", options: {} };
if (options.only === null) writeRaw(run, rows, null);
