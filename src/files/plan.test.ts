import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { handMadePlan } from "../../test/generators/handMadePlan.ts";
import { plainCloth, randomFrom } from "../../test/generators/layouts.ts";
import { validInput } from "../../test/generators/validLayouts.ts";
import { styles } from "../engine/back/index.ts";
import { checkLayout, figuresOf, type LayoutNode } from "../engine/layout/index.ts";
import { inches, length } from "../engine/length/index.ts";
import { stepsFor } from "../engine/sewing/index.ts";
import {
  documentOf,
  type PlanDocument,
  type PlanProblem,
  readPlan,
  readPlans,
  writePlan,
  writePlans,
} from "./index.ts";

const written = writePlan(handMadePlan());

/** The hand-made plan's file with one value put in its place; `undefined` takes the field away. */
function withValue(path: string, value: unknown, file = written): string {
  const json = JSON.parse(file);
  const keys = path.split(/[.[\]]+/).filter((key) => key !== "");
  const last = keys.pop() ?? "";
  const owner = keys.reduce((found, key) => found[key], json);
  if (value === undefined) delete owner[last];
  else owner[last] = value;
  return JSON.stringify(json);
}

function problemsOf(file: string): readonly PlanProblem[] {
  const read = readPlan(file);
  return read.ok ? [] : read.error;
}

function planIn(file: string): PlanDocument {
  const read = readPlan(file);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

/** A document round a random valid layout. */
function randomDocument(seed: number): PlanDocument {
  const unit = seed % 2 === 0 ? "in" : "cm";
  const input = validInput(seed, unit);
  const pieces = input.pieces.map((piece) => ({ ...piece, name: `“${piece.id}” \n ü` }));
  const random = randomFrom(seed);
  const heap = pieces.map((piece) => ({ ...piece, grain: "unknown", washed: null, cloth: "" }) as const);
  return {
    ...input,
    unit,
    top: seed % 3 === 0 ? null : { width: inches(3), height: inches(40, 8), extra: length(0) },
    style: styles[seed % styles.length] ?? "all-over",
    seed,
    effort: Math.floor(random() * 1e6),
    fabrics: [
      { id: "plain", name: plainCloth.name, colour: "#e4dccb" },
      { id: "print", name: "Kleiner Druck, ¾ rot", colour: "rgb(120 50 68)" },
    ],
    pieces,
    unused: input.unused ?? [],
    steps: stepsFor(input.layout, { seam: input.seam, pieces: heap, top: null }),
    buy: input.buy.map((row) => ({ ...row, use: "plain" })),
    figures: {
      ...figuresOf(input),
      cuts: 3,
      contrast: seed % 5 === 0 ? null : random() * 100,
      minutes: [random() * 60, 90],
    },
  };
}

describe("a plan's file", () => {
  it("gives the plan back", () => {
    expect(planIn(written)).toEqual(documentOf(handMadePlan()));
  });

  it("gives any plan back, in inches or centimetres, to the last 1/320 mm", () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const document = randomDocument(seed);
        const back = planIn(writePlan(document));
        expect(back).toEqual(document);
        expect(writePlan(back)).toBe(writePlan(document));
        expect(checkLayout(back)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it("tells that she changed it by hand, and nothing of it where she did not", () => {
    const changed = { ...documentOf(handMadePlan()), byHand: true };
    expect(planIn(writePlan(changed))).toEqual(changed);
    expect(JSON.parse(written)).not.toHaveProperty("byHand");
    expect(problemsOf(withValue("byHand", "yes"))).toMatchObject([{ path: "byHand" }]);
  });

  it("has the fields of the format, in its unit, unrounded", () => {
    const json = JSON.parse(written);
    expect(Object.keys(json)).toEqual([
      ...["format", "version", "unit", "step", "seam", "plainSeam", "floor", "top", "back", "style", "seed"],
      ...["effort", "fabrics", "pieces", "layout", "unused", "steps", "buy", "figures"],
    ]);
    expect(json).toMatchObject({
      format: "verso-plan",
      version: 1,
      unit: "in",
      step: 0.125,
      seam: 0.25,
      plainSeam: 0.5,
      floor: 2.5,
      top: { width: 34.5, height: 24.5, extra: 3, method: "machine" },
      back: { width: 40.5, height: 30.5 },
    });
    expect(json.pieces[1]).toEqual({
      id: "rectangle-1",
      kind: "rectangle",
      width: 8.625,
      height: 10.625,
      count: 1,
      fabric: "print",
      keep: "trim",
      use: "yes",
      direction: "one-way",
      name: "",
    });
    expect(json.pieces.at(-1)).toMatchObject({ kind: "crumbs", area: 150 });
    expect(json.pieces.at(-1)).not.toHaveProperty("width");
    expect(json.layout.parts[1]).toMatchObject({ kind: "join", direction: "beside", seam: 0.5, width: 40 });
    expect(json.layout.parts[0].parts[0]).toEqual({
      kind: "piece",
      piece: "block-1",
      turned: false,
      width: 10,
      height: 10,
    });
    expect(json.figures.plain).toBe(815);
  });

  it("writes one plan as itself and several as a list, and reads both", () => {
    const two = [documentOf(handMadePlan()), randomDocument(4)];
    expect(writePlans(two.slice(0, 1))).toBe(written);
    expect(readPlans(written)).toEqual({ ok: true, value: two.slice(0, 1) });
    expect(readPlans(writePlans(two))).toEqual({ ok: true, value: two });
    expect(readPlans(`[${written},{}]`)).toMatchObject({ error: [{ path: "[1]", kind: "not-a-plan" }] });
  });
});

describe("what a file may leave out or add", () => {
  it("passes over fields that are not known", () => {
    const extra = withValue("madeBy", { version: "later" }, withValue("layout.parts[0].note", "here"));
    expect(planIn(extra)).toEqual(planIn(written));
  });

  it("takes a join's seam as the default where it is left out", () => {
    const bare = withValue("layout.seam", undefined, withValue("layout.parts[1].seam", undefined));
    expect(planIn(bare)).toEqual(planIn(written));
  });

  it("takes the floor as 2 1/2 in where it is left out", () => {
    expect(planIn(withValue("floor", undefined))).toEqual(planIn(written));
  });

  it("does not mind a byte order mark", () => {
    expect(planIn(`\uFEFF${written}`)).toEqual(planIn(written));
  });

  it("rounds a number that is a hair off to the length it means", () => {
    expect(planIn(withValue("back.width", 40.5000009))).toEqual(planIn(written));
    expect(problemsOf(withValue("back.width", 40.500002))).toEqual([
      { path: "back.width", kind: "not-a-length", value: 40.500002 },
    ]);
  });
});

describe("a file that is no plan", () => {
  it.each([
    ["nothing", "", { path: "", kind: "not-json" }],
    ["a sentence", "A back of 68 by 88", { path: "", kind: "not-json" }],
    ["half a file", written.slice(0, 500), { path: "", kind: "not-json" }],
    ["a list", "[]", { path: "", kind: "not-a-plan" }],
    ["a number", "7", { path: "", kind: "not-a-plan" }],
    ["another file's JSON", '{"format":"else"}', { path: "", kind: "not-a-plan" }],
    ["no format", withValue("format", undefined), { path: "", kind: "not-a-plan" }],
    [
      "a later version",
      withValue("version", 2),
      { path: "version", kind: "newer-version", version: 2, known: 1 },
    ],
    ["no version", withValue("version", undefined), { path: "version", kind: "missing" }],
    ["a version as text", withValue("version", "1"), { path: "version", kind: "not-one-of", choices: [1] }],
    ["another unit", withValue("unit", "ell"), { path: "unit", kind: "not-one-of", choices: ["in", "cm"] }],
    ["a huge file", " ".repeat(20_000_001), { path: "", kind: "file-too-large", most: 20_000_000 }],
  ])("says so for %s", (_, file, problem) => {
    expect(problemsOf(file)).toEqual([problem]);
  });
});

describe("a plan with one value wrong", () => {
  it.each([
    ["step", "1/8", { kind: "wrong-type", expected: "number" }],
    ["seam", undefined, { kind: "missing" }],
    ["plainSeam", 0, { kind: "out-of-range" }],
    ["top", undefined, { kind: "missing" }],
    ["top", [], { kind: "wrong-type", expected: "object" }],
    ["top.method", "glue", { kind: "not-one-of" }],
    ["back.height", -30.5, { kind: "out-of-range" }],
    ["back.height", 1e6, { kind: "out-of-range" }],
    ["back.height", 1e300, { kind: "not-a-length" }],
    ["style", "random", { kind: "not-one-of" }],
    ["seed", 1.5, { kind: "wrong-type", expected: "whole-number" }],
    ["fabrics", {}, { kind: "wrong-type", expected: "list" }],
    ["fabrics[1].name", "x".repeat(1_001), { kind: "text-too-long", most: 1_000 }],
    ["pieces[0].kind", "blob", { kind: "not-one-of" }],
    ["pieces[0].width", null, { kind: "wrong-type", expected: "number" }],
    ["pieces[0].count", 1e9, { kind: "out-of-range" }],
    ["pieces[0].count", 0, { kind: "out-of-range" }],
    ["pieces[0].id", "", { kind: "missing" }],
    ["pieces[9].area", undefined, { kind: "missing" }],
    ["layout", 3, { kind: "wrong-type", expected: "object" }],
    ["layout.kind", "spiral", { kind: "not-one-of" }],
    ["layout.kind", undefined, { kind: "missing" }],
    ["layout.direction", "across", { kind: "not-one-of" }],
    ["layout.parts[0].parts[0].turned", "no", { kind: "wrong-type", expected: "yes-or-no" }],
    ["layout.parts[0].parts[0].width", 0, { kind: "out-of-range" }],
    ["layout.parts[0].parts[3].copy", 0, { kind: "out-of-range" }],
    ["layout.parts[0].parts[5].parts[0].parts[0].rotations", [4], { kind: "not-one-of" }],
    ["layout.parts[0].parts[5].parts[0].parts[1].quarter", 4, { kind: "not-one-of" }],
    ["layout.parts[1].parts[0].source", "shop", { kind: "not-one-of" }],
    ["layout.parts[1].parts[0].source", 5, { kind: "wrong-type", expected: "object" }],
    ["unused[0].count", -1, { kind: "out-of-range" }],
    ["steps[0].press", "flat", { kind: "not-one-of" }],
    ["steps[0].from[0]", { count: 1 }, { kind: "not-one-source" }],
    ["steps[0].from[0].step", "1", { kind: "not-one-source" }],
    ["steps[0].squareUp", 5, { kind: "wrong-type", expected: "object" }],
    ["buy[0].use", "ribbon", { kind: "not-one-of" }],
    ["figures.covered", "most", { kind: "wrong-type", expected: "number" }],
    ["figures.minutes", [1], { kind: "missing" }],
    ["figures.minutes", [1, 2, 3], { kind: "too-many", most: 2 }],
  ])("names it: %s = %j", (path, value, problem) => {
    const [first, ...more] = problemsOf(withValue(path, value));
    expect(first).toMatchObject(problem);
    // The place is the value's own, or one inside it.
    expect(first?.path.startsWith(path === "steps[0].from[0].step" ? "steps[0].from[0]" : path)).toBe(true);
    expect(more).toEqual([]);
  });

  it("names the same name twice", () => {
    expect(problemsOf(withValue("pieces[1].id", "block-1"))).toEqual([
      { path: "pieces[1].id", kind: "twice", id: "block-1" },
    ]);
  });

  it("names all that is wrong, up to a hundred", () => {
    const two = withValue("back.width", "wide", withValue("figures.joins", -1));
    expect(problemsOf(two).map(({ path }) => path)).toEqual(["back.width", "figures.joins"]);
    const many = problemsOf(withValue("unused", new Array(500).fill({})));
    expect(many).toHaveLength(101);
    expect(many.at(-1)).toEqual({ path: "", kind: "more-problems" });
  });

  it("follows no tree deeper than a back can be", () => {
    const [before, after] = withValue("layout", "HERE").split('"HERE"');
    const open = '{"kind":"join","direction":"beside","width":1,"height":1,"parts":[';
    const deep = `${before}${open.repeat(50_000)}${"]}".repeat(50_000)}${after}`;
    expect(problemsOf(deep).map(({ kind }) => kind)).toEqual(["too-deep"]);
  });

  it("reads no more cells than a back can have", () => {
    const cell = JSON.parse(written).layout.parts[1].parts[1];
    expect(problemsOf(withValue("layout.parts", new Array(20_001).fill(cell)))).toEqual([
      { path: "layout.parts", kind: "too-many", most: 20_000 },
    ]);
  });
});

describe("any file at all", () => {
  /** Any place in the file, by walking down as `choices` say. */
  function mutated(choices: readonly number[], value: unknown): string {
    const json = JSON.parse(written);
    let owner = json;
    for (const [at, choice] of choices.entries()) {
      const keys = Object.keys(owner);
      const key = keys[choice % keys.length] ?? "format";
      const next = owner[key];
      if (
        at === choices.length - 1 ||
        typeof next !== "object" ||
        next === null ||
        Object.keys(next).length === 0
      ) {
        owner[key] = value;
        break;
      }
      owner = next;
    }
    return JSON.stringify(json);
  }

  it("is read or refused with its faults named, never thrown at: a value changed anywhere", () => {
    const choices = fc.array(fc.nat(1_000), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(choices, fc.jsonValue(), (path, value) => {
        const read = readPlan(mutated(path, value));
        if (read.ok) expect(() => checkLayout(read.value)).not.toThrow();
        else expect(read.error.every(({ kind }) => kind.length > 0)).toBe(true);
        if (!read.ok) expect(read.error).not.toEqual([]);
      }),
      { numRuns: 1_000 },
    );
  });

  it("is read or refused, never thrown at: its text damaged anywhere", () => {
    fc.assert(
      fc.property(fc.nat(written.length), fc.nat(40), fc.string({ maxLength: 20 }), (at, gone, put) => {
        const read = readPlan(written.slice(0, at) + put + written.slice(at + gone));
        if (!read.ok) expect(read.error.length).toBeGreaterThan(0);
      }),
      { numRuns: 1_000 },
    );
  });

  it("is not misled by names that objects have of their own", () => {
    expect(problemsOf('{"__proto__": {"format": "verso-plan"}}')).toEqual([{ path: "", kind: "not-a-plan" }]);
    const inherited = withValue("buy[0].use", "toString", withValue("style", "constructor"));
    expect(problemsOf(inherited)).toHaveLength(2);
  });
});

it("is a document of the plan's own layout: nothing is flattened or turned in the file", () => {
  const kinds = (node: LayoutNode): string[] =>
    node.kind === "join" ? [node.direction, ...node.parts.flatMap(kinds)] : [node.kind];
  expect(kinds(planIn(written).layout)).toEqual(kinds(handMadePlan().layout));
});
