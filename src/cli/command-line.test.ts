import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import sharp from "sharp";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { render } from "../../test/made/render.ts";
import { plain as paint, rectangle, type Scene } from "../../test/made/scene.ts";
import { readPlan } from "../files/index.ts";
import { cliWordsFor } from "../words/index.ts";
import { runCommandLine } from "./command-line.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "verso-cli-"));
  writeFileSync(join(folder, "heap.csv"), heap);
  mkdirSync(join(folder, "pictures"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const heap = `kind,width,height,count,fabric,colour
square,5,5,6,clay pot,#b5694b
strip,2 1/2,30,4,ink,#33445a
block,9 1/2,9 1/2,2,blocks of the top,#8d9b86
rectangle,10,14,1,moss,#6f7d4f
`;

const frame = ["--top", "30x40", "--method", "frame", "--effort", "40"];

/** Runs a command line in `folder`, as the command line itself does, and keeps what it said. */
async function verso(...args: readonly string[]) {
  const [said, complained]: [string[], string[]] = [[], []];
  const status = await runCommandLine(args, {
    folder,
    words: (unit) => cliWordsFor("en-US", unit),
    now: () => new Date(0),
    screen: { write: (text: string) => complained.push(text) },
    stop: { asked: false, listen: () => {} },
    say: (text) => said.push(`${text}\n`),
    deliver: (document) => said.push(String(document)),
    complain: (text) => complained.push(text),
  });
  return { status, said: plain(said.join("")), complained: complained.map(plain) };
}

const plain = (text: string) => text.replace(/[\u202f\u00a0]/g, " ");
const written = () => readdirSync(folder, { recursive: true }).sort();
const untouched = ["heap.csv", "pictures"];

describe("verso size", () => {
  // Backs: Happy Stitches LLC, "Backing and borders" (40 x 60); American Quilter's Society, "Quilt Back Math" (65 x
  // 75 with 3 in). Lengths: the widths rule by hand.
  it.each([
    ["40x60", "frame", [], ["48 × 68 in", "2 lengths of 68 in", "2 lengths of 48 in, buy 2¾ yd"]],
    [
      "65x75",
      "machine",
      [],
      ["71 × 81 in", "2 lengths of 71 in, buy 4 yd", "108 in wide, no seam: buy 2 yd"],
    ],
    ["60x75", "hand", [], ["64 × 79 in", "The cut-off edge: 2 in"]],
    ["60x75", "hand", ["--extra", "3 1/2"], ["67 × 82 in", "The cut-off edge: 3½ in"]],
    ["150x200cm", "frame", [], ["170 × 220 cm"]],
    ["112x120", "frame", [], ["too narrow for this back in one piece"]],
  ])("of a top of %s on %s", async (top, method, more, texts) => {
    const { status, said, complained } = await verso("size", "--top", top, "--method", method, ...more);
    for (const text of texts) expect(said).toContain(text);
    expect({ status, complained }).toEqual({ status: 0, complained: [] });
  });

  it.each([
    [
      "a back that no one could lift",
      ["--top", "399x80", "--method", "frame"],
      "407 × 88 in, and 400 in is the most",
    ],
    [
      "more extra than top",
      ["--top", "60x80", "--method", "frame", "--extra", "30"],
      "--extra may be from 0 in to 24 in",
    ],
    [
      "a top without a height",
      ["--top", "60", "--method", "frame"],
      "--top: “60” does not read as a width and a height",
    ],
  ])("refuses %s", async (_, args, text) => {
    const { status, said, complained } = await verso("size", ...args);
    expect(complained).toEqual([expect.stringContaining(text)]);
    expect({ status, said }).toEqual({ status: 2, said: "" });
  });
});

describe("verso plan", () => {
  it("tells the plan in words where no file is named", async () => {
    const { status, said, complained } = await verso("plan", "heap.csv", ...frame);
    expect(said).toContain("The back is 38 × 48 in, for a top of 30 × 40 in");
    expect(said).toMatch(/To buy\n {2}\S/);
    expect(said).toMatch(/steps\n {2}Unit 1: Sew/);
    expect({ status, complained }).toEqual({ status: 0, complained: [] });
    expect(written()).toEqual(untouched);
  });

  it("says before the steps what to mind in sewing, and nothing where nothing is known to be the matter", async () => {
    const { said } = await verso("plan", "heap.csv", ...frame);
    expect(said).toMatch(/Before you sew\n {2}\S.*Where: .*strip 1 \(ink\).*The (first|steps)/s);
    writeFileSync(join(folder, "grey.csv"), "kind,width,height,count\nsquare,5,5,12\n");
    expect((await verso("plan", "grey.csv", ...frame)).said).not.toContain("Before you sew");
  });

  it("writes a plan that reads back, and its picture", async () => {
    const { status, said } = await verso(
      "plan",
      "heap.csv",
      ...frame,
      "--json",
      "plan.json",
      "--svg",
      "pictures/back.svg",
    );
    expect(status).toBe(0);
    expect(said).toContain("Written: plan.json\nWritten: pictures/back.svg");
    expect(written()).toEqual([...untouched, "pictures/back.svg", "plan.json"]);
    expect(readPlan(readFileSync(join(folder, "plan.json"), "utf8")).ok).toBe(true);
    expect(readFileSync(join(folder, "pictures/back.svg"), "utf8")).toMatch(/^<svg [\s\S]*<\/svg>\n$/);
  });

  it("delivers the document alone to standard output", async () => {
    const { said, complained } = await verso("plan", "heap.csv", ...frame, "--json", "-");
    expect(readPlan(said).ok).toBe(true);
    expect(complained).toEqual([]);
  });

  it("numbers the pictures of several plans and makes a list of the plans", async () => {
    const { said } = await verso(
      "plan",
      "heap.csv",
      ...frame,
      "--plans",
      "3",
      "--svg",
      "pictures/back.svg",
      "--json",
      "-",
    );
    const plans: { style: string }[] = JSON.parse(said);
    expect(new Set(plans.map(({ style }) => style)).size).toBe(3);
    expect(written()).toEqual([...untouched, ...[1, 2, 3].map((number) => `pictures/back-${number}.svg`)]);
  });

  it("plans one style several times, each with a seed of its own", async () => {
    const { said } = await verso(
      "plan",
      "heap.csv",
      ...frame,
      "--plans",
      "2",
      "--style",
      "all-over",
      "--json",
      "-",
    );
    const plans: { style: string; seed: number; layout: unknown }[] = JSON.parse(said);
    expect(plans.map(({ style, seed }) => [style, seed])).toEqual([
      ["all-over", 1],
      ["all-over", 2],
    ]);
    expect(plans[0]?.layout).not.toEqual(plans[1]?.layout);
  });

  it("replaces an older file and leaves nothing beside it", async () => {
    writeFileSync(join(folder, "plan.json"), "older");
    await verso("plan", "heap.csv", ...frame, "--json", "plan.json");
    expect(readFileSync(join(folder, "plan.json"), "utf8")).toContain("verso-plan");
    expect(written()).toEqual([...untouched, "plan.json"]);
  });

  it("stops with what it has, and plans no further ones", async () => {
    const asked = { asked: true, listen: () => {} };
    const said: string[] = [];
    const status = await runCommandLine(["plan", "heap.csv", ...frame, "--style", "all", "--json", "-"], {
      folder,
      words: (unit) => cliWordsFor("en-US", unit),
      now: () => new Date(0),
      screen: { write: () => true },
      stop: asked,
      say: () => {},
      deliver: (document) => said.push(String(document)),
      complain: () => {},
    });
    expect(status).toBe(0);
    expect(JSON.parse(said.join(""))).toHaveLength(1);
  });
});

describe("what keeps verso plan from planning", () => {
  const bad = `kind,width,height,count,fabric,colour
square,5,5,6,clay pot,#b5694b
strip,2-Jan,30,1,ink,#33445a
strip,2 1/2,30,0,ink,#33445a
square,5,5,1,moss,not a colour
`;

  it("names every bad row with its file, and writes nothing", async () => {
    writeFileSync(join(folder, "bad.csv"), bad);
    const { status, said, complained } = await verso("plan", "bad.csv", ...frame, "--json", "plan.json");
    expect(complained).toEqual([
      expect.stringMatching(/^bad\.csv: Row 3, width: .*1\/2/),
      expect.stringMatching(/^bad\.csv: Row 4, count: /),
      expect.stringMatching(/^bad\.csv: Row 5, color: /),
    ]);
    expect({ status, said, files: written() }).toEqual({
      status: 2,
      said: "",
      files: ["bad.csv", ...untouched],
    });
  });

  it("leaves bad rows out when told to, and says so", async () => {
    writeFileSync(join(folder, "bad.csv"), bad);
    const { status, said, complained } = await verso(
      "plan",
      "bad.csv",
      ...frame,
      "--json",
      "-",
      "--skip-bad-rows",
    );
    expect(complained).toHaveLength(4);
    expect(complained[3]).toBe("bad.csv: The rows named above were left out.");
    expect(status).toBe(0);
    expect(JSON.parse(said).pieces).toHaveLength(1);
  });

  it.each([
    ["no such file", ["none.csv", ...frame], "none.csv: there is no such file"],
    ["a folder for a file", ["pictures", ...frame], "pictures: this is a folder"],
    ["an empty file", ["empty.csv", ...frame], "empty.csv: This table is empty"],
    ["a folder to write to", ["heap.csv", ...frame, "--json", "pictures"], "pictures: this is a folder"],
    [
      "no folder to write into",
      ["heap.csv", ...frame, "--svg", "none/a.svg"],
      "none/a.svg: there is no folder",
    ],
    [
      "writing over the leftovers",
      ["heap.csv", ...frame, "--json", "./heap.csv"],
      "is the table of your leftovers",
    ],
    ["a back over 400 in", ["heap.csv", "--back", "401x80", "--effort", "1"], "401"],
    ["nothing that may be used", ["kept.csv", ...frame], "kept.csv: "],
  ])("%s", async (_, args, text) => {
    writeFileSync(join(folder, "empty.csv"), "");
    writeFileSync(join(folder, "kept.csv"), "kind,width,height,use,colour\nsquare,5,5,keep-back,red\n");
    const before = written();
    const { status, said, complained } = await verso("plan", ...args);
    expect(complained).toEqual([expect.stringContaining(text)]);
    expect({ status, said, files: written() }).toEqual({ status: 2, said: "", files: before });
  });
});

describe("verso check", () => {
  it("finds a plan sound, and a list of plans", async () => {
    await verso("plan", "heap.csv", ...frame, "--json", "plan.json");
    await verso("plan", "heap.csv", ...frame, "--plans", "2", "--json", "plans.json");
    const one = await verso("check", "plan.json");
    expect(one.said).toMatch(/^This plan is sound: .*38 × 48 in/);
    expect({ status: one.status, complained: one.complained }).toEqual({ status: 0, complained: [] });
    const two = await verso("check", "plans.json");
    expect(two.said.match(/sound/g)).toHaveLength(2);
  });

  it("names what is wrong with a plan", async () => {
    const { said } = await verso("plan", "heap.csv", ...frame, "--json", "-");
    const plan = JSON.parse(said);
    plan.back.width += 1;
    writeFileSync(join(folder, "plan.json"), JSON.stringify(plan));
    const { status, complained, said: nothing } = await verso("check", "plan.json");
    expect(complained.join("\n")).toMatch(/^plan\.json: /);
    expect({ status, nothing }).toEqual({ status: 2, nothing: "" });
  });

  it.each(["", "[]", "7", "{}", "[[]]", '{"format":"verso-plan","version":1}', "not json"])(
    "refuses %j",
    async (text) => {
      writeFileSync(join(folder, "plan.json"), text);
      const { status, said, complained } = await verso("check", "plan.json");
      expect(complained[0]).toMatch(/^plan\.json: /);
      expect({ status, said }).toEqual({ status: 2, said: "" });
    },
  );
});

describe("verso cards", () => {
  it.each([
    ["letter", []],
    ["a4", ["--paper", "a4"]],
  ])("writes the pages on %s, and says how to print them", async (_, paper) => {
    const { status, said, complained } = await verso("cards", ...paper, "--pdf", "cards.pdf");
    expect(said).toMatch(/^Written: cards\.pdf\nPrint it at 100 %.*\n$/);
    expect({ status, complained, files: written() }).toEqual({
      status: 0,
      complained: [],
      files: ["cards.pdf", ...untouched],
    });
    expect(readFileSync(join(folder, "cards.pdf"), "latin1")).toMatch(/^%PDF-1\.7[\s\S]*%%EOF\s*$/);
  });

  it("refuses a place that can't be written before it draws", async () => {
    const { status, said, complained } = await verso("cards", "--pdf", "none/cards.pdf");
    expect(complained).toEqual([expect.stringContaining("none/cards.pdf: there is no folder")]);
    expect({ status, said, files: written() }).toEqual({ status: 2, said: "", files: untouched });
  });
});

describe("verso measure", () => {
  const scene: Scene = {
    width: 640,
    height: 480,
    focal: 500,
    k1: 0,
    tilt: 8,
    towards: 20,
    far: 22,
    looksAt: [0, 0],
    floor: paint(0.3, 0.25, 0.2),
    cards: [
      { first: 0, at: [-8.5, -5.5], degrees: 0 },
      { first: 1, at: [8.5, -5.5], degrees: 30 },
      { first: 2, at: [8.5, 5.5], degrees: 90 },
    ],
    pieces: [{ outline: rectangle([2, -1], [4.5, 6], 15), paint: paint(0.05, 0.08, 0.2) }],
    fall: 0.1,
    cast: [1, 1, 0.9],
    noise: 1,
    seed: 4,
  };

  // Of a brightness apart from the floor's, as JPEG keeps color more coarsely than light.
  const photograph = async (name: string, photographed: Scene) => {
    const { width, height, rgba } = render(photographed);
    const image = sharp(rgba, { raw: { width, height, channels: 4 } });
    await image.jpeg({ quality: 92 }).toFile(join(folder, name));
  };

  it("tells the pieces of a photo, and writes them as a table that can be planned with", async () => {
    await photograph("a.jpg", scene);
    const { status, said, complained } = await verso(
      "measure",
      "a.jpg",
      "--json",
      "a.json",
      "--csv",
      "a.csv",
      "--overlay",
      "a.svg",
    );
    expect(readFileSync(join(folder, "a.svg"), "utf8")).toMatch(/^<svg [\s\S]*<polygon [\s\S]*>1<\/text>/);
    expect(said).toContain("a.jpg: 1 piece\n  1. rectangle, 4⅜ × 5⅞ in\n");
    expect(said).toContain("Written: a.json\nWritten: a.csv\nWritten: a.svg");
    expect({ status, complained }).toEqual({ status: 0, complained: [] });
    const { pieces, photos } = JSON.parse(readFileSync(join(folder, "a.json"), "utf8"));
    expect(photos).toMatchObject([{ file: "a.jpg", cards: [0, 1, 2] }]);
    expect(pieces).toMatchObject([{ photo: 0, kind: "rectangle", width: 4.375, height: 5.875, check: [] }]);
    expect(readFileSync(join(folder, "a.csv"), "utf8")).toMatch(
      /^kind,.*please check\nrectangle,4 3\/8,5 7\/8,/,
    );
  });

  it("promises no more than a coarse photo shows, where cloth and floor differ in color alone", async () => {
    await photograph("a.jpg", {
      ...scene,
      pieces: [{ outline: rectangle([2, -1], [4.5, 6], 15), paint: paint(0.1, 0.2, 0.5) }],
    });
    const { said } = await verso("measure", "a.jpg", "--json", "-");
    const shrunk = await verso("measure", "a.jpg", "--bar", "5 7/8", "--json", "-");
    const [piece] = JSON.parse(said).pieces;
    const [smaller] = JSON.parse(shrunk.said).pieces;
    // What her ruler says of the printed page goes for all of it.
    expect(smaller.measured.width / piece.measured.width).toBeCloseTo(5.875 / 6, 3);
    expect(piece.width).toBeLessThanOrEqual(4.5);
    expect(piece.height).toBeLessThanOrEqual(6);
  });

  it("names every photo that can't be used, and writes nothing", async () => {
    writeFileSync(join(folder, "torn.jpg"), Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16]));
    const many = await verso("measure", "torn.jpg", "heap.csv", "none.jpg", "--csv", "a.csv");
    expect(many.complained.map((line) => line.split(":")[0])).toEqual(["torn.jpg", "heap.csv", "none.jpg"]);
    await photograph("bare.jpg", { ...scene, width: 200, height: 150, focal: 160, cards: [] });
    const bare = await verso("measure", "bare.jpg", "--csv", "a.csv");
    expect(bare.complained).toEqual([expect.stringMatching(/^bare\.jpg: no reference card/)]);
    const over = await verso("measure", "bare.jpg", "--csv", "bare.jpg");
    expect(over.complained).toEqual([expect.stringContaining("is one of your photos")]);
    expect([many, bare, over].map(({ status, said }) => [status, said])).toEqual(
      [2, 2, 2].map((status) => [status, ""]),
    );
    expect(written()).not.toContain("a.csv");
  });
});
