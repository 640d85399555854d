import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { type Run, runVerso } from "./processes.ts";

const heap = `kind,width,height,count,fabric,colour
square,5,5,8,clay pot,#b5694b
strip,2 1/2,40,3,ink,#33445a
rectangle,10,14,2,moss,#6f7d4f
half-square-triangle,3 1/2,3 1/2,4,fig,#5a4a5f
`;

// Each process steps the search in turns of its own length, as its processor time has it: the plan must not care.
it("makes the same plan of the same job, seed and effort in 40 fresh processes", async () => {
  const cwd = mkdtempSync(join(tmpdir(), "verso-same-"));
  writeFileSync(join(cwd, "heap.csv"), heap);
  const args = ["plan", "heap.csv", "--back", "40x50", "--effort", "60", "--seed", "7", "--json", "-"];
  const runs: Run[] = [];
  const inTurn = async () => {
    for (let count = 0; count < 20; count++) runs.push(await runVerso(args, { cwd }));
  };
  await Promise.all([inTurn(), inTurn()]);
  rmSync(cwd, { recursive: true, force: true });
  expect(runs).toHaveLength(40);
  expect(new Set(runs.map(({ status, stderr }) => `${status} ${stderr}`))).toEqual(new Set(["0 "]));
  expect(new Set(runs.map(({ stdout }) => stdout)).size).toBe(1);
  expect(JSON.parse(runs[0]?.stdout ?? "")).toMatchObject({ format: "verso-plan", seed: 7, effort: 60 });
}, 240_000);
