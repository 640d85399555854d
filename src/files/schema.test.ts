import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { handMadePlan } from "../../test/generators/handMadePlan.ts";
import { styles } from "../engine/back/index.ts";
import { directions, grains, keeps, kinds, methods, uses } from "../engine/cloth/index.ts";
import { checkLayout, figuresOf } from "../engine/layout/index.ts";
import { unitsPerInch } from "../engine/length/index.ts";
import { presses, stepKinds } from "../engine/sewing/index.ts";
import { buyUses } from "../engine/supplies/index.ts";
import { columns, readPlan, writePlan } from "./index.ts";

const folder = new URL("../../docs/schema/", import.meta.url);
const schema = (file: string) => JSON.parse(readFileSync(new URL(file, folder), "utf8"));
const planSchema = schema("verso-plan.schema.json");
const tableSchema = schema("verso-leftovers.schema.json");
const ajv = new Ajv2020({ strict: true, strictRequired: false, strictTypes: false, allErrors: true });
const isPlan = ajv.compile(planSchema);
const isRow = ajv.compile(tableSchema);
const written = writePlan(handMadePlan());
const changed = writePlan({ ...handMadePlan(), byHand: true });

describe("the plan's schema", () => {
  it("holds for a plan as it is written, with every kind of node in it", () => {
    for (const file of [written, changed]) {
      isPlan(JSON.parse(file));
      expect(isPlan.errors ?? []).toEqual([]);
    }
  });

  it("names the same words as the engine", () => {
    const { properties, $defs } = planSchema;
    expect(properties.style.enum).toEqual([...styles]);
    expect($defs.piece.properties.kind.enum).toEqual([...kinds]);
    expect($defs.piece.properties.keep.enum).toEqual([...keeps]);
    expect($defs.piece.properties.use.enum).toEqual([...uses]);
    expect($defs.piece.properties.direction.enum).toEqual([...directions]);
    expect($defs.step.properties.kind.enum).toEqual([...stepKinds]);
    expect($defs.step.properties.press.enum).toEqual([...presses]);
    expect($defs.buy.properties.use.enum).toEqual([...buyUses]);
    expect(properties.top.oneOf[1].properties.method.enum).toEqual([...methods]);
  });

  it("knows every field that is written", () => {
    const { properties } = planSchema;
    expect(Object.keys(properties)).toEqual(Object.keys(JSON.parse(changed)));
  });

  it("refuses what the reader refuses for its shape, and the reader what it refuses", () => {
    const places: string[][] = placesIn(JSON.parse(written));
    const values = fc.constantFrom<unknown>(null, "", -1, {}, [], true, undefined);
    fc.assert(
      fc.property(fc.constantFrom(...places), values, (place, value) => {
        const json = withValue(place, value);
        const read = readPlan(JSON.stringify(json));
        expect(read.ok ? "read" : read.error).toEqual(isPlan(json) ? "read" : expect.any(Array));
      }),
      { numRuns: 1_500 },
    );
  });
});

/** The way to every value in the file. */
function placesIn(json: unknown, place: string[] = []): string[][] {
  if (typeof json !== "object" || json === null) return [place];
  const below = Object.entries(json).flatMap(([key, value]) => placesIn(value, [...place, key]));
  return place.length === 0 ? below : [place, ...below];
}

function withValue(place: readonly string[], value: unknown): unknown {
  const json = JSON.parse(written);
  const owner = place.slice(0, -1).reduce((found, key) => found[key], json);
  const key = place.at(-1) ?? "";
  // A hole in a list would be written as null.
  if (value === undefined && Array.isArray(owner)) owner[Number(key)] = null;
  else if (value === undefined) delete owner[key];
  else owner[key] = value;
  return json;
}

describe("the table's schema", () => {
  it("names the columns of the table and their words", () => {
    const { properties } = tableSchema;
    expect(Object.keys(properties)).toEqual([...columns]);
    expect(properties.kind.enum).toEqual([...kinds]);
    expect(properties.keep.enum).toEqual(["", ...keeps]);
    expect(properties.use.enum).toEqual(["", ...uses]);
    expect(properties.direction.enum).toEqual(["", ...directions]);
    expect(properties.grain.enum).toEqual(["", ...grains]);
  });

  const heaps = new URL("../../test/data/heaps/", import.meta.url);
  it.each(readdirSync(heaps).filter((file) => file.endsWith(".csv")))("holds for %s", (file) => {
    const table = Papa.parse<Record<string, string>>(readFileSync(new URL(file, heaps), "utf8").trim(), {
      header: true,
    });
    expect(table.data.length).toBeGreaterThan(0);
    expect(table.data.filter((row) => !isRow(row))).toEqual([]);
  });

  it.each([
    ["no kind", { width: "2", height: "3" }],
    ["a kind that is none", { kind: "blob", width: "2", height: "3" }],
    ["a strip without a size", { kind: "strip" }],
    ["a size of words", { kind: "strip", width: "narrow", height: "3" }],
    ["crumbs without an amount", { kind: "crumbs" }],
    ["a count of none", { kind: "square", width: "5", count: "0" }],
  ])("refuses %s", (_, row) => {
    expect(isRow(row)).toBe(false);
  });
});

describe("the plan worked by hand in the formats' document", () => {
  const document = readFileSync(new URL("../../docs/formats.md", import.meta.url), "utf8");
  const [, shortened = ""] = /```json\n([\s\S]*?)```/.exec(document) ?? [];
  // What the document leaves out is taken from the hand-made plan.
  const whole = { ...JSON.parse(written), ...JSON.parse(`{${shortened}}`), top: null, steps: [] };
  const read = readPlan(JSON.stringify(whole));
  const plan = read.ok ? read.value : null;

  it("can be read and sewn, and fits its schema", () => {
    isPlan(whole);
    expect(isPlan.errors ?? []).toEqual([]);
    expect(plan && checkLayout(plan)).toEqual([]);
  });

  it("comes to the figures it says", () => {
    const figures = plan && figuresOf(plan);
    expect(figures?.joins).toBe(3);
    expect(figures && figures.seamLength / unitsPerInch).toBe(33.5);
    expect(figures?.covered).toBeCloseTo(128 / 142, 12);
    expect(figures && figures.plain / unitsPerInch ** 2).toBe(64);
    expect(figures?.trimWaste).toBeCloseTo((4.5 * 3) / 142, 12);
  });
});
