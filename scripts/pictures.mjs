// Draws the pictures in docs/pictures: the sample heap and a real one in every style. Same effort and seed, same pictures.
import { spawnSync } from "node:child_process";
import { mkdirSync, readdirSync, rmSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const styles = [
  "insert-across",
  "insert-down",
  "cross",
  "chunks",
  "strippy",
  "block-line",
  "centred",
  "squares",
  "all-over",
];
const heaps = [
  { name: "sample", table: "samples/garden-room.csv", top: "60x80", method: "frame" },
  { name: "real", table: "test/data/heaps/real-r.3-s2.csv", top: "48x60", method: "machine" },
];

function draw({ table, top, method }, style, file) {
  const words = ["plan", table, "--top", top, "--method", method, "--effort", "6000", "--svg", file];
  const asked = style === null ? words : [...words, "--style", style];
  const { status } = spawnSync("npm", ["run", "-s", "verso", "--", ...asked], {
    cwd: root,
    stdio: "inherit",
  });
  if (status !== 0) process.exit(1);
}

mkdirSync(`${root}/docs/pictures`, { recursive: true });
// Others, made by hand or by another script, stay.
for (const name of readdirSync(`${root}/docs/pictures`))
  if (/^(sample|real)-.*\.svg$/.test(name)) rmSync(`${root}/docs/pictures/${name}`);
draw(heaps[0], null, "docs/pictures/sample-back.svg");
for (const heap of heaps)
  for (const style of styles) draw(heap, style, `docs/pictures/${heap.name}-${style}.svg`);
