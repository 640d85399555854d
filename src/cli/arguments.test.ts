import { describe, expect, it } from "vitest";
import { centimetres, inches } from "../engine/length/index.ts";
import type { CommandProblem } from "../words/index.ts";
import { readArguments } from "./arguments.ts";

/** As typed, without quoting. */
const read = (line: string) => readArguments(line.split(" ").filter((word) => word !== ""));

function commandOf(line: string) {
  const result = read(line);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

function problemsOf(line: string): readonly CommandProblem[] {
  const result = read(line);
  return result.ok ? [] : result.error;
}

const heap = "plan heap.csv --top 60x80 --method frame";

describe("what a command line means", () => {
  it("takes what is not said from the common case", () => {
    expect(commandOf(heap)).toEqual({
      kind: "plan",
      leftovers: "heap.csv",
      unit: "in",
      size: { top: { width: inches(60), height: inches(80) }, method: "frame" },
      style: null,
      time: null,
      wishes: [],
      contrast: null,
      floor: null,
      step: null,
      limit: { kind: "seconds", seconds: 5 },
      seed: 1,
      plans: 1,
      skipBadRows: false,
      json: null,
      svg: null,
    });
  });

  it("takes all that may be said", () => {
    const all =
      "plan --back 170.5x220 --unit cm --style cross --time any --floor 0 --step 2mm --effort 400 --seed 0 " +
      "--wish sew-less --plans 3 --wish buy-nothing --wish sew-less --contrast blend --skip-bad-rows --json - --svg back.svg -";
    expect(commandOf(all)).toEqual({
      kind: "plan",
      leftovers: "-",
      unit: "cm",
      size: { back: { width: centimetres(170.5), height: centimetres(220) } },
      style: "cross",
      time: "any",
      wishes: ["sew-less", "buy-nothing"],
      contrast: "blend",
      floor: 0,
      step: centimetres(0.2),
      limit: { kind: "effort", moves: 400 },
      seed: 0,
      plans: 3,
      skipBadRows: true,
      json: "-",
      svg: "back.svg",
    });
  });

  it.each([
    ["", null],
    ["--help", null],
    ["-h", null],
    ["help plan", "plan"],
    ["plan --help", "plan"],
    ["check --top 3 -h", "check"],
  ])("gives help to %j", (line, about) => {
    expect(commandOf(line)).toEqual({ kind: "help", about });
  });

  it("plans each style once with --style all", () => {
    expect(commandOf(`${heap} --style all`)).toMatchObject({ style: "all", plans: 9 });
    expect(commandOf(`${heap} --style all --plans 9`)).toMatchObject({ plans: 9 });
  });

  it("answers in the unit that the top is written in", () => {
    expect(commandOf("size --top 150x200cm --method hand")).toMatchObject({
      unit: "cm",
      top: { width: centimetres(150), height: centimetres(200) },
      extra: null,
    });
    expect(commandOf("size --top 60x80 --method hand --extra 0")).toMatchObject({ unit: "in", extra: 0 });
  });

  it("takes Letter for the cards where no paper is named", () => {
    expect(commandOf("cards --pdf cards.pdf")).toEqual({ kind: "cards", paper: "letter", pdf: "cards.pdf" });
    expect(commandOf("cards --paper A4 --pdf -")).toEqual({ kind: "cards", paper: "a4", pdf: "-" });
  });

  it("takes as many photos as are named, and what a ruler says of the bar", () => {
    expect(commandOf("measure a.jpg b.jpg")).toEqual({
      kind: "measure",
      photos: ["a.jpg", "b.jpg"],
      bar: null,
      json: null,
      csv: null,
      overlay: null,
    });
    expect(commandOf("measure a.jpg --bar 5.875 --json - --csv a.csv")).toMatchObject({
      bar: { measured: inches(47, 8), meant: inches(6) },
      json: "-",
      csv: "a.csv",
    });
    expect(commandOf("measure a.jpg --bar 148mm")).toMatchObject({
      bar: { measured: centimetres(14.8), meant: centimetres(15) },
    });
  });

  it("reads a name that begins with a dash behind --", () => {
    expect(commandOf("check -- -plan.json")).toEqual({ kind: "check", plan: "-plan.json" });
  });
});

describe("what a command line can't mean", () => {
  const cases: readonly [line: string, problems: readonly object[]][] = [
    ["paln heap.csv", [{ kind: "unknown-command", name: "paln" }]],
    [
      `${heap} --colour red`,
      [
        { kind: "unknown-option", option: "--colour" },
        { kind: "one-too-many", name: "red" },
      ],
    ],
    [`${heap} --constructor`, [{ kind: "unknown-option", option: "--constructor" }]],
    [`${heap} -s`, [{ kind: "unknown-option", option: "-s" }]],
    [`${heap} --pdf=a.pdf`, [{ kind: "unknown-option", option: "--pdf" }]],
    [`${heap} --seed 1 --seed 2`, [{ kind: "given-twice", option: "seed" }]],
    [`${heap} --json`, [{ kind: "needs-a-value", option: "json" }]],
    [`${heap} --json --svg a.svg`, [{ kind: "needs-a-value", option: "json" }]],
    [`${heap} --json=`, [{ kind: "needs-a-value", option: "json" }]],
    [`${heap} --skip-bad-rows=yes`, [{ kind: "takes-no-value", option: "skip-bad-rows" }]],
    [`${heap} other.csv`, [{ kind: "one-too-many", name: "other.csv" }]],
    ["plan --back 68x88", [{ kind: "file-missing", wanted: "leftovers" }]],
    ["cards --paper a4", [{ kind: "option-missing", option: "pdf" }]],
    ["cards --paper a5 --pdf a.pdf", [{ kind: "not-a-choice", option: "paper", text: "a5" }]],
    ["cards a.csv --pdf a.pdf", [{ kind: "one-too-many", name: "a.csv" }]],
    ["measure", [{ kind: "file-missing", wanted: "photo" }]],
    ["measure a.jpg --bar 5", [{ kind: "out-of-range", option: "bar" }]],
    ["measure a.jpg --json - --csv -", [{ kind: "two-documents-on-output", options: ["json", "csv"] }]],
    ["measure a.jpg --json a --csv a", [{ kind: "one-file-for-two", file: "a", options: ["json", "csv"] }]],
    ["check", [{ kind: "file-missing", wanted: "plan" }]],
    ["plan heap.csv", [{ kind: "no-size" }]],
    ["plan heap.csv --top 60x80", [{ kind: "option-missing", option: "method" }]],
    ["plan heap.csv --method frame --back 68x88", [{ kind: "method-without-top" }]],
    [`${heap} --back 68x88`, [{ kind: "not-both", options: ["top", "back"] }]],
    [`${heap} --seconds 3 --effort 3`, [{ kind: "not-both", options: ["seconds", "effort"] }]],
    [
      "size",
      [
        { kind: "option-missing", option: "top" },
        { kind: "option-missing", option: "method" },
      ],
    ],
    ["size --top 60 --method frame", [{ kind: "not-a-size", option: "top" }]],
    [`${heap} --style crosses`, [{ kind: "not-a-choice", option: "style", text: "crosses" }]],
    [`${heap} --floor wide`, [{ kind: "not-a-length", option: "floor" }]],
    [`${heap} --floor=-1`, [{ kind: "not-a-length", option: "floor" }]],
    [`${heap} --seconds 0`, [{ kind: "not-a-number", option: "seconds" }]],
    [`${heap} --seconds 1e3`, [{ kind: "not-a-number", option: "seconds" }]],
    [`${heap} --effort 0`, [{ kind: "not-a-number", option: "effort" }]],
    [`${heap} --seed 1.5`, [{ kind: "not-a-number", option: "seed" }]],
    [`${heap} --seed 4294967296`, [{ kind: "not-a-number", option: "seed" }]],
    [`${heap} --plans 10`, [{ kind: "more-plans-than-styles", most: 9 }]],
    [`${heap} --style all --plans 2`, [{ kind: "plans-with-all-styles", styles: 9 }]],
    [`${heap} --json - --svg -`, [{ kind: "two-documents-on-output" }]],
    [`${heap} --plans 2 --svg -`, [{ kind: "pictures-on-output" }]],
    [`${heap} --json a --svg a`, [{ kind: "one-file-for-two", file: "a" }]],
    [`${heap} --json heap.csv`, [{ kind: "would-overwrite-leftovers", file: "heap.csv" }]],
    [
      "plan --top big --method glue --seconds x",
      [
        { kind: "file-missing" },
        { kind: "not-a-size", option: "top" },
        { kind: "not-a-choice", option: "method" },
        { kind: "not-a-number", option: "seconds" },
      ],
    ],
  ];

  it.each(cases)("%s", (line, problems) => {
    expect(problemsOf(line)).toMatchObject(problems);
  });
});
