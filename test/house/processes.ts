import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { root } from "./planted.ts";

export const verso = join(root, "src", "cli", "verso.mjs");

export type Run = { readonly status: number | null; readonly stdout: string; readonly stderr: string };

export type Started = { readonly process: ChildProcess; readonly end: Promise<Run> };

type Options = {
  readonly cwd: string;
  readonly env?: Readonly<Record<string, string>>;
  /** null: standard input stays open, and nothing comes. */
  readonly input?: string | null;
  /** Leads a group of its own, as a command typed into a terminal does. */
  readonly detached?: boolean;
};

/** A process of its own, as a user starts it: no terminal, and none of the test runner's npm variables. */
export function start(
  program: string,
  args: readonly string[],
  { cwd, env = {}, input = "", detached = false }: Options,
): Started {
  const own = Object.entries(process.env).filter(
    ([name]) => !/^(npm_|INIT_CWD$|NODE_OPTIONS$|LC_|LANG)/i.test(name),
  );
  const child = spawn(program, args, { cwd, env: { ...Object.fromEntries(own), ...env }, detached });
  let [stdout, stderr] = ["", ""];
  child.stdout.on("data", (chunk) => {
    stdout += chunk;
  });
  child.stderr.on("data", (chunk) => {
    stderr += chunk;
  });
  // Who was told not to read may have gone already.
  child.stdin.on("error", () => {});
  if (input !== null) child.stdin.end(input);
  const end = new Promise<Run>((resolve, reject) => {
    child.on("error", reject);
    child.on("close", (status) => resolve({ status, stdout, stderr }));
  });
  return { process: child, end };
}

export const startVerso = (args: readonly string[], options: Options): Started =>
  start(process.execPath, [verso, ...args], options);

export const runVerso = (args: readonly string[], options: Options): Promise<Run> =>
  startVerso(args, options).end;
