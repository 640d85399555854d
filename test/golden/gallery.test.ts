import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { type Drawn, pageOf } from "../../gallery/page.ts";
import { jobOf, pictureOf, planOf } from "../../gallery/plan.ts";
import { galleryQuilts } from "../../gallery/quilts.ts";
import { styles } from "../../src/engine/back/index.ts";
import { checkLayout } from "../../src/engine/layout/index.ts";
import { joinLimit } from "../../src/engine/work/index.ts";
import { expectGolden } from "./golden.ts";

const gallery = (file: string) => fileURLToPath(new URL(`../../gallery/${file}`, import.meta.url));
const drawn: Drawn[] = [];

it.each(galleryQuilts)("$name: the plan can be sewn, in her time, and looks as it did", (quilt) => {
  const plan = planOf(quilt);
  drawn.push({ quilt, plan });
  expect(checkLayout(plan)).toEqual([]);
  expect(plan.figures.joins).toBeLessThanOrEqual(joinLimit(jobOf(quilt).time));
  expectGolden(`../../gallery/pictures/${quilt.name}.svg`, pictureOf(plan));
});

it("says on its page what the plans say", () => {
  expect(readFileSync(gallery("README.md"), "utf8")).toBe(pageOf(drawn));
});

it("has a photograph of every picture as it is now, small enough for a page, and no other files", () => {
  const hashes: Record<string, string> = JSON.parse(readFileSync(gallery("pictures/drawn.json"), "utf8"));
  const names = galleryQuilts.map(({ name }) => name);
  expect(Object.keys(hashes)).toEqual(names);
  for (const name of names) {
    const svg = readFileSync(gallery(`pictures/${name}.svg`));
    expect(hashes[name], name).toBe(createHash("sha256").update(svg).digest("hex"));
    expect(existsSync(gallery(`pictures/${name}.png`)), name).toBe(true);
    expect(statSync(gallery(`pictures/${name}.png`)).size, name).toBeLessThan(60_000);
  }
  const kept = readdirSync(gallery("pictures")).filter((file) => !file.endsWith("-changed.svg"));
  const expected = ["drawn.json", ...names.flatMap((name) => [`${name}.svg`, `${name}.png`])];
  expect(kept.toSorted()).toEqual(expected.toSorted());
  expect(readdirSync(gallery("heaps")).toSorted()).toEqual(names.map((name) => `${name}.csv`).toSorted());
});

it("shows every style twice, and each measure of time, quilting and ruler", () => {
  for (const style of styles)
    expect(galleryQuilts.filter((quilt) => quilt.style === style).length, style).toBeGreaterThanOrEqual(2);
  expect(new Set(galleryQuilts.map(({ unit }) => unit)).size).toBe(2);
  expect(new Set(galleryQuilts.map(({ size }) => ("top" in size ? size.method : "none"))).size).toBe(4);
});
