import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import {
  measuredLength,
  newProject,
  type Project,
  readPlan,
  readTableRows,
  writeProject,
} from "../files/index.ts";
import { cliWordsFor } from "../words/index.ts";
import { runCommandLine } from "./command-line.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "verso-project-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const table = `kind,width,height,count,fabric,colour
square,5,5,6,clay pot,#b5694b
strip,2 1/2,30,4,ink,#33445a
rectangle,10,14,3,moss,#6f7d4f
`;

function throwOf(change: Partial<Project> = {}, text = table): Project {
  const { rows } = readTableRows(new TextEncoder().encode(text), "in");
  const project = newProject({ title: "A throw", createdAt: 0 });
  return {
    ...project,
    size: {
      ...project.size,
      topWidths: [measuredLength("30", "in"), measuredLength("30 1/4", "in"), null],
      topHeights: [measuredLength("40", "in"), null, null],
    },
    leftovers: rows.map((row, index) => ({ ...row, id: `row-${index + 1}` })),
    ...change,
  };
}

async function verso(project: Project, ...args: readonly string[]) {
  writeFileSync(join(folder, "throw.verso"), writeProject(project, 0));
  return run("plan", "throw.verso", "--effort", "20", ...args);
}

async function run(...args: readonly string[]) {
  const [said, complained]: [string[], string[]] = [[], []];
  const status = await runCommandLine(args, {
    folder,
    words: (unit) => cliWordsFor("en-US", unit),
    now: () => new Date(0),
    screen: { write: () => {} },
    stop: { asked: false, listen: () => {} },
    say: (text) => said.push(text),
    deliver: (document) => said.push(String(document)),
    complain: (text) => complained.push(text),
  });
  return { status, said: said.join("\n"), complained: complained.join("\n") };
}

function planned(said: string) {
  const read = readPlan(said);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

describe("verso plan PROJECT.verso", () => {
  it("plans with the size, the method and the heap of the project", async () => {
    const { status, said } = await verso(throwOf(), "--json", "-");
    expect(status).toBe(0);
    const plan = planned(said);
    // The largest of the three measures counts, and a frame asks for 4 in more on each side.
    expect(plan.back).toEqual({ width: 38.25 * 8128, height: 48 * 8128 });
    expect(plan.pieces.map(({ kind, count }) => [kind, count])).toEqual([
      ["square", 6],
      ["strip", 4],
      ["rectangle", 3],
    ]);
  });

  it("lets the command go before the project", async () => {
    const { said } = await verso(throwOf(), "--back", "50x60", "--style", "cross", "--json", "-");
    const plan = planned(said);
    expect(plan.back).toEqual({ width: 50 * 8128, height: 60 * 8128 });
    expect(plan.top).toBe(null);
    const { said: top } = await verso(throwOf(), "--top", "36x36", "--method", "machine", "--json", "-");
    expect(planned(top).back).toEqual({ width: 42 * 8128, height: 42 * 8128 });
  });

  it("speaks in the project's unit", async () => {
    const project = throwOf();
    const { said } = await verso({ ...project, settings: { ...project.settings, unit: "cm" } });
    expect(said).toMatch(/cm/);
  });

  it("says what is missing, and writes nothing", async () => {
    const unmeasured = throwOf({ size: newProject({ title: "", createdAt: 0 }).size });
    const { status, complained } = await verso(unmeasured, "--json", "plan.json");
    expect(status).toBe(2);
    expect(complained).not.toBe("");
    expect(readdirSync(folder)).toEqual(["throw.verso"]);
  });

  it("names what is no project", async () => {
    writeFileSync(join(folder, "broken.verso"), "not a zip");
    const { status, complained } = await run("plan", "broken.verso");
    expect(status).toBe(2);
    expect(complained).toContain("broken.verso:");
  });

  it("does not touch the project's file", async () => {
    await verso(throwOf(), "--svg", "back.svg");
    const bytes = readFileSync(join(folder, "throw.verso"));
    expect(Buffer.compare(bytes, writeProject(throwOf(), 0))).toBe(0);
  });
});
