import { readFileSync } from "node:fs";
import fc from "fast-check";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { handMadePlan } from "../../test/generators/handMadePlan.ts";
import { projects } from "../../test/generators/projects.ts";
import { inches } from "../engine/length/index.ts";
import { crc32, crc32Text } from "./crc32.ts";
import {
  type KeptPlan,
  leftoverOf,
  measuredLength,
  migrated,
  newProject,
  type Project,
  type ProjectProblem,
  readProject,
  readProjectFile,
  writePlan,
  writeProject,
} from "./index.ts";

const runs = Number(process.env.VERSO_RUNS ?? 1);
const writtenAt = Date.UTC(2031, 4, 1);
const plan: KeptPlan = {
  text: writePlan(handMadePlan()),
  job: "abc",
  style: "squares",
  seed: 3,
  effort: 9,
  keptAt: 7,
};

function sample(): Project {
  const square = leftoverOf({ kind: "square", width: inches(5), height: inches(5), count: 40 }, "in");
  return {
    ...newProject({ title: "Küchentisch", createdAt: writtenAt }),
    leftovers: [
      { ...square, id: "a", others: { __proto__x: "1", "where from": "blue box" } },
      { id: "b", line: "4 stirps", cells: { width: { text: "2-Jan", unit: "in", value: null } }, others: {} },
    ],
    plan,
    ticked: new Set(["step-1"]),
  };
}

/** The entries of a file, to look at or to spoil. */
function entriesOf(file: Uint8Array): Record<string, string> {
  return Object.fromEntries(Object.entries(unzipSync(file)).map(([name, bytes]) => [name, strFromU8(bytes)]));
}

/** A file of these entries, with a manifest that fits them unless one is given. */
function fileOf({ "manifest.json": manifest, ...files }: Record<string, string>, fits = true): Uint8Array {
  const entries = Object.entries(files).map(([name, text]) => ({
    name,
    bytes: strToU8(text).length,
    crc32: crc32Text(strToU8(text)),
  }));
  const own = JSON.stringify({ format: "verso-project", version: 1, entries });
  return zipSync({
    ...(fits || manifest !== undefined ? { "manifest.json": strToU8(fits ? own : (manifest ?? "")) } : {}),
    ...Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])),
  });
}

function withProject(change: (json: Record<string, unknown>) => void): Uint8Array {
  const files = entriesOf(writeProject(sample(), writtenAt));
  const json: Record<string, unknown> = JSON.parse(files["project.json"] ?? "");
  change(json);
  return fileOf({ ...files, "project.json": JSON.stringify(json) });
}

function problemsOf(file: Uint8Array): readonly ProjectProblem[] {
  const read = readProject(file);
  return read.ok ? [] : read.error;
}

describe("a project's file", () => {
  test("gives back what was written, whatever she typed", () => {
    fc.assert(
      fc.property(projects, fc.nat(4_000_000_000_000), (project, at) => {
        const kept = { ...project, plan: project.plan && { ...project.plan, text: plan.text } };
        expect(readProject(writeProject(kept, at))).toEqual({ ok: true, value: kept });
      }),
      { numRuns: 300 * runs },
    );
  });

  test("can be read without the app: two documents and a list with their checksums", () => {
    const files = entriesOf(writeProject(sample(), writtenAt));
    expect(Object.keys(files)).toEqual(["manifest.json", "project.json", "plan.json"]);
    expect(files["plan.json"]).toBe(plan.text);
    expect(JSON.parse(files["manifest.json"] ?? "")).toMatchObject({
      format: "verso-project",
      version: 1,
      entries: [{ name: "project.json" }, { name: "plan.json", crc32: crc32Text(strToU8(plan.text)) }],
    });
    expect(JSON.parse(files["project.json"] ?? "")).toMatchObject({
      title: "Küchentisch",
      createdAt: "2031-05-01T00:00:00.000Z",
      plan: { file: "plan.json", style: "squares" },
      leftovers: [{ cells: { width: { text: "5", unit: "in", value: 5 } } }, { line: "4 stirps" }],
    });
  });

  test("the same project gives the same bytes", () => {
    expect(writeProject(sample(), writtenAt)).toEqual(writeProject(sample(), writtenAt));
  });

  test("one of the first version is still read", () => {
    const file = readFileSync(new URL("../../test/data/projects/first-version.verso", import.meta.url));
    expect(readProject(file)).toMatchObject({
      ok: true,
      value: {
        title: "Küchentisch",
        createdAt: writtenAt,
        size: {
          topWidths: [{ value: inches(60) }, { text: "60 1/4", value: inches(241, 4) }, null],
          topHeights: [{ text: "203,5 cm", unit: "cm", value: 651_200 }, null, null],
          asksExtra: { value: inches(4) },
        },
        heap: { cutting: "rough", reserveBinding: true },
        leftovers: [
          {
            id: "a",
            cells: { count: { value: 40 }, washed: { value: true } },
            others: { "where from": "blue box" },
          },
          { id: "b", line: "4 stirps", cells: { width: { text: "2-Jan", value: null } } },
          { id: "c", cells: { kind: { value: "crumbs" }, weight: { value: 85 } } },
        ],
        rough: [{ kind: "strips", total: { value: inches(324) } }],
        plan: { style: "squares", seed: 3, keptAt: 7 },
        ticked: new Set(["step-1"]),
      },
    });
  });
});

describe("a file that is not one, or not whole", () => {
  const good = writeProject(sample(), writtenAt);
  const files = entriesOf(good);
  const without = (name: string) =>
    Object.fromEntries(Object.entries(files).filter(([entry]) => entry !== name));

  test.each<[string, Uint8Array, Partial<ProjectProblem>]>([
    ["nothing", new Uint8Array(), { kind: "not-a-zip" }],
    ["a text", strToU8("kind,width\nstrip,2"), { kind: "not-a-zip" }],
    ["cut off", good.slice(0, good.length - 40), { kind: "not-a-zip" }],
    ["another zip", zipSync({ "a.txt": strToU8("a") }), { kind: "not-a-project" }],
    ["no manifest", fileOf(without("manifest.json"), false), { kind: "not-a-project" }],
    [
      "a manifest of something else",
      fileOf({ ...files, "manifest.json": "{}" }, false),
      { kind: "not-a-project" },
    ],
    ["a manifest that is no JSON", fileOf({ ...files, "manifest.json": "{" }, false), { kind: "not-json" }],
    [
      "a list that is none",
      fileOf({ ...files, "manifest.json": `{"format":"verso-project","version":1,"entries":{}}` }, false),
      { kind: "wrong-type", path: "entries" },
    ],
    [
      "a later Verso's",
      fileOf({ ...files, "manifest.json": `{"format":"verso-project","version":7,"entries":[]}` }, false),
      { kind: "newer-version", version: 7, known: 1 },
    ],
    [
      "an entry that was changed by hand",
      fileOf({ ...files, "project.json": files["project.json"]?.replace("40", "41") ?? "" }, false),
      { kind: "entry-damaged", entry: "project.json" },
    ],
    [
      "without its project",
      fileOf(without("project.json"), false),
      { kind: "entry-missing", entry: "project.json" },
    ],
    ["without its plan", fileOf(without("plan.json"), false), { kind: "entry-missing", entry: "plan.json" }],
    [
      "with something else in it",
      fileOf({ ...files, "../x.sh": "rm" }),
      { kind: "entry-unknown", entry: "../x.sh" },
    ],
    ["a plan that is none", fileOf({ ...files, "plan.json": "{}" }), { kind: "plan" }],
    ["a project that is no JSON", fileOf({ ...files, "project.json": "{" }), { kind: "not-json" }],
    ["a project that is a list", fileOf({ ...files, "project.json": "[]" }), { kind: "not-a-project" }],
  ])("%s", (_, file, problem) => {
    expect(problemsOf(file)).toContainEqual(expect.objectContaining(problem));
  });

  test("one that unpacks to gigabytes is refused before it is unpacked", () => {
    const bomb = zipSync({ "manifest.json": new Uint8Array(60_000_000) }, { level: 9 });
    expect(bomb.length).toBeLessThan(200_000);
    expect(problemsOf(bomb)).toContainEqual({
      path: "",
      kind: "entry-too-large",
      entry: "manifest.json",
      most: 1_000_000,
    });
  });

  test("one that says it is small and is not gets no more room than it said", () => {
    const bomb = zipSync({ "manifest.json": new Uint8Array(60_000_000) }, { level: 9 });
    const view = new DataView(bomb.buffer);
    for (let at = 0; at < bomb.length - 4; at++) {
      // Both headers, local and central: the size that the entry unpacks to.
      if (view.getUint32(at, true) === 0x04034b50) view.setUint32(at + 22, 10, true);
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 10, true);
    }
    expect(problemsOf(bomb).length).toBeGreaterThan(0);
  });

  test("a file too large to be one is not even opened", () => {
    expect(problemsOf(new Uint8Array(50_000_001))).toEqual([
      { path: "", kind: "file-too-large", most: 50_000_000 },
    ]);
  });
});

describe("a project with something wrong in it", () => {
  const row = { id: "x", line: "", cells: {}, others: [] };

  test.each<[string, (json: Record<string, unknown>) => void, ProjectProblem]>([
    ["no title", (json) => delete json.title, { path: "title", kind: "missing" }],
    [
      "a number as title",
      (json) => (json.title = 5),
      { path: "title", kind: "wrong-type", expected: "text" },
    ],
    [
      "an endless title",
      (json) => (json.title = "x".repeat(201)),
      { path: "title", kind: "text-too-long", most: 200 },
    ],
    [
      "an unknown method",
      (json) => Object.assign(json.size ?? {}, { method: "glue" }),
      { path: "size.method", kind: "not-one-of", choices: ["frame", "machine", "hand"] },
    ],
    [
      "a size between the marks",
      (json) => Object.assign(json.size ?? {}, { extra: { text: "", unit: "in", value: 1 / 3 } }),
      { path: "size.extra", kind: "not-a-length", value: 1 / 3 },
    ],
    [
      "a version of words",
      (json) => (json.version = "1"),
      { path: "version", kind: "wrong-type", expected: "whole-number" },
    ],
    [
      "a later version",
      (json) => (json.version = 2),
      { path: "version", kind: "newer-version", version: 2, known: 1 },
    ],
    ["no rows", (json) => delete json.leftovers, { path: "leftovers", kind: "missing" }],
    [
      "a row that is a text",
      (json) => (json.leftovers = ["x"]),
      { path: "leftovers[0]", kind: "wrong-type", expected: "object" },
    ],
    [
      "two rows of one id",
      (json) => (json.leftovers = [row, row]),
      { path: "leftovers[1]", kind: "twice", id: "x" },
    ],
    [
      "a cell of no kind",
      (json) => (json.leftovers = [{ ...row, cells: { kind: { text: "wool", value: "wool" } } }]),
      {
        path: "leftovers[0].cells.kind.value",
        kind: "not-one-of",
        choices: [
          "strip",
          "square",
          "rectangle",
          "block",
          "part-block",
          "triangle",
          "half-square-triangle",
          "length",
          "crumbs",
          "odd",
        ],
      },
    ],
    [
      "a tick that is a number",
      (json) => (json.ticked = [5]),
      { path: "ticked[0]", kind: "wrong-type", expected: "text" },
    ],
    [
      "more rows than any heap",
      (json) => (json.leftovers = Array.from({ length: 20_001 }, (_, index) => ({ ...row, id: `${index}` }))),
      { path: "leftovers", kind: "too-many", most: 20_000 },
    ],
    [
      "a day that never was",
      (json) => (json.createdAt = "2031-13-45"),
      { path: "createdAt", kind: "wrong-type", expected: "number" },
    ],
  ])("%s is named with its place", (_, spoil, problem) => {
    expect(problemsOf(withProject(spoil))).toEqual([problem]);
  });

  test("a list of faults ends somewhere", () => {
    const problems = problemsOf(
      withProject((json) => (json.leftovers = Array.from({ length: 500 }, () => 5))),
    );
    expect(problems).toHaveLength(101);
    expect(problems.at(-1)).toEqual({ path: "", kind: "more-problems" });
  });
});

describe("spoilt at random", () => {
  const good = writeProject(sample(), writtenAt);

  test("a thousand files with changed bytes: read as they were, or every fault is named", () => {
    const slip = fc.record({
      kind: fc.constantFrom("change", "cut", "insert", "double"),
      at: fc.nat(good.length - 1),
      byte: fc.nat(255),
      length: fc.nat(60),
    });
    fc.assert(
      fc.property(fc.array(slip, { minLength: 1, maxLength: 4 }), (slips) => {
        const file = slips.reduce((bytes, { kind, at, byte, length }) => {
          const rest = bytes.slice(at + (kind === "cut" ? length : kind === "change" ? 1 : 0));
          const middle = { change: [byte], cut: [], insert: [byte], double: bytes.slice(at, at + length) }[
            kind
          ];
          return Uint8Array.from([...bytes.slice(0, at), ...middle, ...rest]);
        }, good);
        const read = readProject(file);
        if (read.ok) expect(read.value).toEqual(sample());
        else expect(read.error.length).toBeGreaterThan(0);
      }),
      { numRuns: 1_000 * runs },
    );
  });

  test("a thousand projects with one value changed and a checksum that fits: read, or named with its place", () => {
    const files = entriesOf(good);
    const places = placesIn(JSON.parse(files["project.json"] ?? ""));
    const values = fc.constantFrom<unknown>(null, "", "x", -1, 1e300, 0.1, {}, [], true, { text: 5 });
    fc.assert(
      fc.property(fc.constantFrom(...places), values, (place, value) => {
        const json: unknown = JSON.parse(files["project.json"] ?? "");
        put(json, place, value);
        const read = readProject(fileOf({ ...files, "project.json": JSON.stringify(json) }));
        if (read.ok) return;
        for (const problem of read.error) expect(problem.kind).toMatch(/^[a-z-]+$/);
      }),
      { numRuns: 1_000 * runs },
    );
  });
});

function placesIn(value: unknown, place: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== "object" || value === null) return [place];
  const inside = Object.entries(value).flatMap(([key, part]) => placesIn(part, [...place, key]));
  return place.length === 0 ? inside : [place, ...inside];
}

function put(json: unknown, place: readonly string[], value: unknown): void {
  const [key = "", ...rest] = place;
  const at = json as Record<string, unknown>;
  if (rest.length === 0) at[key] = value;
  else put(at[key], rest, value);
}

describe("a project of an earlier version", () => {
  test("goes through every step on the way, in order", () => {
    const steps = [
      { from: 2, migrate: (json: object) => ({ ...json, trail: ["two"] }) },
      { from: 1, migrate: (json: object) => ({ ...json, title: "new" }) },
    ];
    expect(migrated({ version: 1, title: "old" }, 1, 3, steps)).toEqual({
      version: 3,
      title: "new",
      trail: ["two"],
    });
    expect(migrated({ version: 3 }, 3, 3, steps)).toEqual({ version: 3 });
    expect(() => migrated({ version: 1 }, 1, 4, steps)).toThrow("every earlier version can be read");
  });
});

test("the checksum is the one of zip: 123456789 gives cbf43926, in one go or in two", () => {
  // Check value of CRC-32/ISO-HDLC in the catalogue of parametrised CRC algorithms.
  expect(crc32Text(strToU8("123456789"))).toBe("cbf43926");
  expect(crc32(strToU8("6789"), crc32(strToU8("12345")))).toBe(0xcbf43926);
});

test("a measure keeps what she typed and the unit of that day", () => {
  expect(measuredLength("2 1/2", "in")).toEqual({ text: "2 1/2", unit: "in", value: inches(5, 2) });
  expect(measuredLength("0", "cm")).toEqual({ text: "0", unit: "cm", value: 0 });
  expect(measuredLength("2-Jan", "in")).toEqual({ text: "2-Jan", unit: "in", value: null });
  expect(measuredLength("  ", "in")).toBeNull();
});

describe("pictures", () => {
  const id = (digit: string) => digit.repeat(64);
  const jpeg = new Uint8Array([0xff, 0xd8, 1, 2, 3]);
  const png = new Uint8Array([0x89, 0x50, 4, 5, 6]);
  const [first, second] = sample().leftovers;
  if (first === undefined || second === undefined) throw new Error("the sample has rows");
  const project = {
    ...sample(),
    leftovers: [
      { ...first, picture: id("a") },
      { ...second, picture: id("b") },
    ],
  };
  const pictures = new Map([
    [id("a"), jpeg],
    [id("b"), png],
    [id("c"), new Uint8Array([9])],
  ]);

  test("lie beside the project, those that a row has, and are given back", () => {
    const file = writeProject(project, writtenAt, pictures);
    expect(Object.keys(entriesOf(file))).toEqual(
      expect.arrayContaining([`pictures/${id("a")}.jpg`, `pictures/${id("b")}.png`]),
    );
    expect(readProjectFile(file)).toEqual({
      ok: true,
      value: {
        project,
        pictures: new Map([
          [id("a"), jpeg],
          [id("b"), png],
        ]),
      },
    });
  });

  test("of the top goes along too, and a file without one has none", () => {
    const topPhoto = { picture: id("c"), colours: [{ colour: "#102030", share: 0.7 }] };
    const read = readProjectFile(writeProject({ ...project, topPhoto }, writtenAt, pictures));
    expect(read).toMatchObject({ ok: true, value: { project: { topPhoto } } });
    expect(read.ok && [...read.value.pictures.keys()].toSorted()).toEqual([id("a"), id("b"), id("c")]);
    const first = readFileSync(new URL("../../test/data/projects/first-version.verso", import.meta.url));
    expect(readProject(first)).toMatchObject({ ok: true, value: { topPhoto: null, photos: [] } });
  });

  test("may be missing, but neither spoilt nor too large", () => {
    expect(readProject(writeProject(project, writtenAt))).toEqual({ ok: true, value: project });
    const entries = unzipSync(writeProject(project, writtenAt, pictures));
    const spoilt = zipSync({
      ...entries,
      [`pictures/${id("a")}.jpg`]: new Uint8Array([0xff, 0xd8, 1, 2, 4]),
    });
    expect(readProject(spoilt)).toMatchObject({ ok: false, error: [{ kind: "entry-damaged" }] });
    const large = zipSync({ ...entries, [`pictures/${id("a")}.jpg`]: new Uint8Array(1_000_001) });
    expect(readProject(large)).toMatchObject({ ok: false, error: [{ kind: "entry-too-large" }] });
    const other = zipSync({ ...entries, "pictures/holiday.jpg": jpeg });
    expect(readProject(other)).toMatchObject({ ok: false, error: [{ kind: "entry-unknown" }] });
  });
});
