// The memory that the vision library has taken once photographs were measured one after another: it never gives any back.
import { createRequire } from "node:module";
import { measurePhoto, type Vision } from "../src/photo/index.ts";
import { reportingSeeds } from "../test/made/photographs.ts";
import { readOptions, say } from "./options.ts";
import { rendered } from "./photoTruth.ts";
import { isMeasured, writeRaw } from "./raw.ts";

export type PhotoMemoryRow = {
  readonly name: string;
  readonly megapixels: number;
  readonly pieces: number;
  /** Of the library's own memory, after this photograph and all before it. */
  readonly wasmBytes: number;
};

// One of each kind of photograph: so many in a row have them all.
const photographs = 11;

const options = readOptions({ seconds: "0" });
if (isMeasured("photo-memory") && options.because === null)
  throw new Error(`this was measured before: say --because "what has changed"`);
const load = createRequire(import.meta.url);
const vision: Vision = await load("@techstark/opencv-js");
const rows: PhotoMemoryRow[] = [];
for (const { name, photo } of rendered(reportingSeeds.slice(0, photographs), null)) {
  const taken = await photo();
  const { pieces } = measurePhoto(taken, vision, { printed: 1 });
  const wasmBytes = memoryOf(vision);
  rows.push({ name, megapixels: (taken.width * taken.height) / 1e6, pieces: pieces.length, wasmBytes });
  say(`${name}: ${pieces.length} pieces, ${(wasmBytes / 1e6).toFixed(0)} MB`);
}
const run = {
  name: "photo-memory",
  bench: "photo-memory",
  command: "npm run bench:photo-memory",
  options: {},
};
writeRaw(run, rows, options.because);

/** Every matrix is a view of all of it. */
function memoryOf({ Mat, CV_8UC1 }: Vision): number {
  const matrix = new Mat(1, 1, CV_8UC1);
  const { byteLength } = matrix.data.buffer;
  matrix.delete();
  return byteLength;
}
