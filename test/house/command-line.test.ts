import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { root } from "./planted.ts";
import { runVerso, start, startVerso } from "./processes.ts";

// What only a process of its own shows. What a command answers is tested in src/cli.

let cwd = "";
beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), "verso-process-"));
  writeFileSync(join(cwd, "heap.csv"), heap);
});
afterEach(() => rmSync(cwd, { recursive: true, force: true }));

const heap = `kind,width,height,count,fabric,colour
square,5,5,6,clay pot,#b5694b
strip,2 1/2,30,4,ink,#33445a
rectangle,10,14,1,moss,#6f7d4f
`;
const back = ["--back", "38x48"];
const soon = [...back, "--effort", "20"];
const untilStopped = [...back, "--effort", "1000000000"];

// The search looks at its processor time with each turn: a dot says that the first one is over.
const dot =
  "data:text/javascript,const c=process.cpuUsage;process.cpuUsage=()=>{process.cpuUsage=c;process.stderr.write('.');return c()}";
const dotAtFirstTurn = { NODE_OPTIONS: `--import="${dot}"` };

describe("the command line as a process", () => {
  it("says what it does, and ends well", async () => {
    const { status, stdout, stderr } = await runVerso(["--help"], { cwd });
    expect(stdout).toContain("verso plan");
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  });

  it("ends with 2 and a line for each problem, without a stack", async () => {
    const { status, stdout, stderr } = await runVerso(["plan", "--seed", "x", "--step", "wide"], { cwd });
    expect(stderr.trimEnd().split("\n")).toHaveLength(4);
    expect(stderr).not.toMatch(/\bat .*:\d+:\d+|Error/);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
  });

  it("ends with 1 and a calm line where the mistake is ours, and writes nothing", async () => {
    const broken = "data:text/javascript,process.cpuUsage=()=>{throw new Error('no clock')}";
    const env = { NODE_OPTIONS: `--import="${broken}"` };
    const { status, stdout, stderr } = await runVerso(["plan", "heap.csv", ...back, "--json", "plan.json"], {
      cwd,
      env,
    });
    expect(stderr).toMatch(/^Verso stopped because of a mistake of its own: no clock\nNothing was written\./);
    expect(stderr.trimEnd().split("\n")).toHaveLength(2);
    expect({ status, stdout, files: readdirSync(cwd) }).toEqual({
      status: 1,
      stdout: "",
      files: ["heap.csv"],
    });
  });

  it("reads standard input, and gives standard output the document alone", async () => {
    const planned = await runVerso(["plan", "-", ...soon, "--json", "-"], { cwd, input: heap });
    expect({ status: planned.status, stderr: planned.stderr }).toEqual({ status: 0, stderr: "" });
    expect(JSON.parse(planned.stdout)).toMatchObject({ format: "verso-plan" });
    const checked = await runVerso(["check", "-"], { cwd, input: planned.stdout });
    expect(checked).toMatchObject({
      status: 0,
      stderr: "",
      stdout: expect.stringContaining("This plan is sound"),
    });
  });

  it("does not mind a reader who has seen enough", async () => {
    const { process, end } = startVerso(["plan", "heap.csv", ...soon, "--json", "-"], { cwd });
    process.stdout?.destroy();
    expect(await end).toMatchObject({ status: 0, stderr: "" });
  });

  it.each(["SIGINT", "SIGTERM"] as const)("keeps the best so far on %s", async (signal) => {
    const args = ["plan", "heap.csv", ...untilStopped, "--json", "plan.json"];
    const { process, end } = startVerso(args, { cwd, env: dotAtFirstTurn });
    process.stderr?.once("data", () => process.kill(signal));
    expect(await end).toMatchObject({ status: 0, stderr: "." });
    const checked = await runVerso(["check", "plan.json"], { cwd });
    expect(checked).toMatchObject({ status: 0, stdout: expect.stringContaining("This plan is sound") });
  });

  // In a terminal the signal goes to npm, its shell and Verso alike, and npm passes it on once more.
  it("keeps the best so far under npm run as well, and npm ends well", async () => {
    const npm = [
      "run",
      "-s",
      "--prefix",
      root,
      "verso",
      "--",
      "plan",
      "heap.csv",
      ...untilStopped,
      "--json",
      "plan.json",
    ];
    const { process: first, end } = start("npm", npm, { cwd, env: dotAtFirstTurn, detached: true });
    first.stderr?.once("data", () => process.kill(-(first.pid ?? 0), "SIGINT"));
    expect(await end).toMatchObject({ status: 0, stderr: "." });
    expect(readdirSync(cwd).sort()).toEqual(["heap.csv", "plan.json"]);
  });

  it("ends at once on SIGINT while it still waits for the table", async () => {
    const { process, end } = startVerso(["plan", "-", ...soon, "--json", "plan.json"], { cwd, input: null });
    setTimeout(() => process.kill("SIGINT"), 1000);
    expect(await end).toMatchObject({ status: null, stdout: "", stderr: "" });
    expect(readdirSync(cwd)).toEqual(["heap.csv"]);
  });

  it("takes files from the folder the user stands in, under npm run as well", async () => {
    const npm = [
      "run",
      "-s",
      "--prefix",
      root,
      "verso",
      "--",
      "plan",
      "heap.csv",
      ...soon,
      "--json",
      "plan.json",
    ];
    expect(await start("npm", npm, { cwd }).end).toMatchObject({ status: 0, stderr: "" });
    expect(readdirSync(cwd).sort()).toEqual(["heap.csv", "plan.json"]);
  });

  it("does not take the folder from another program's npm run", async () => {
    const env = { INIT_CWD: root, npm_lifecycle_event: "verso" };
    expect(await runVerso(["plan", "heap.csv", ...soon, "--json", "plan.json"], { cwd, env })).toMatchObject({
      status: 0,
    });
    expect(readdirSync(cwd).sort()).toEqual(["heap.csv", "plan.json"]);
  });

  it("speaks the user's English", async () => {
    const args = ["plan", "heap.csv", ...back, "--effort", "1"];
    writeFileSync(join(cwd, "heap.csv"), heap.replace("#33445a", "inkish"));
    expect((await runVerso(args, { cwd, env: { LANG: "en_GB.UTF-8" } })).stderr).toContain("Row 3, colour:");
    expect((await runVerso(args, { cwd, env: { LANG: "C" } })).stderr).toContain("Row 3, color:");
  });
});
