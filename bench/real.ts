// What a user gets of a real heap: every heap in every style.
import { styles } from "../src/engine/back/index.ts";
import { percent } from "./figures.ts";
import { type RealHeap, realHeaps, realTable } from "./heaps.ts";
import { type Measured, measure } from "./measure.ts";
import { isAsked, readOptions, say } from "./options.ts";
import { writeRaw } from "./raw.ts";

export type RealRow = Pick<RealHeap, "name" | "lengths"> & { readonly asked: string } & Measured;

const options = readOptions({ seconds: "2" });
for (const seconds of options.seconds) runAll(seconds);

function runAll(seconds: number): void {
  const heaps = realHeaps().filter(({ name }) => isAsked(name, options));
  const rows = heaps.flatMap((heap) => styles.map((style) => runStyle(heap, style, seconds)));
  const command = `npm run bench:real -- --seconds ${seconds}`;
  const run = { name: `real-${seconds}s`, bench: "real", command, options: { seconds } };
  if (options.only === null) writeRaw(run, rows, options.because);
}

function runStyle({ name, lengths, top, method }: RealHeap, style: string, seconds: number): RealRow {
  const size = ["--top", top.join("x"), "--method", method];
  const rest = ["--style", style, "--seed", "1", "--seconds", String(seconds)];
  const found = measure(realTable(name), [...size, ...rest]);
  const { covered, joins, minutes, problems } = found;
  const hours = minutes.map((minute) => (minute / 60).toFixed(1)).join("–");
  const facts = `${percent(covered).padStart(5)} % covered  ${String(joins).padStart(3)} joins  ${hours} h`;
  say(`${name.padEnd(15)} ${style.padEnd(13)} ${facts}${problems.length > 0 ? "  NOT VALID" : ""}`);
  return { name, lengths, asked: style, ...found };
}
