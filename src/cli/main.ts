import { realpathSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type CliLocale, cliLocales, cliWordsFor } from "../words/index.ts";
import { runCommandLine } from "./command-line.ts";
import { codeOf } from "./files.ts";
import type { Terminal } from "./terminal.ts";

// The one file that touches the process: from here on the world is an argument.

const stop = {
  asked: false,
  listen: () => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, onSignal);
  },
};
let askedAt = Number.POSITIVE_INFINITY;

/** The first ends the search. Whoever presses Ctrl-C again wants out at once. */
function onSignal(): void {
  // Under npm one press arrives twice: from the terminal, and passed on by npm.
  if (performance.now() > askedAt + 1000) process.exit(130);
  if (!stop.asked) askedAt = performance.now();
  stop.asked = true;
}

const locale = localeOf(process.env.LC_ALL || process.env.LC_MESSAGES || process.env.LANG || "");

const terminal: Terminal = {
  folder: folderOfUser(),
  words: (unit) => cliWordsFor(locale, unit),
  now: () => new Date(),
  screen: process.stderr,
  stop,
  say: (text) => process.stdout.write(`${plainSpaces(text)}\n`),
  deliver: (document) => process.stdout.write(document),
  complain: (text) => process.stderr.write(`${plainSpaces(text)}\n`),
};

process.stdout.on("error", (error) => {
  // Whoever reads may close early, as `head` does, and has then got all that was wanted.
  if (codeOf(error) === "EPIPE") process.exit(0);
  const problem = { kind: "not-writable", file: "standard output", code: codeOf(error) } as const;
  terminal.complain(terminal.words("in").problem(problem));
  process.exit(2);
});

try {
  process.exitCode = await runCommandLine(process.argv.slice(2), terminal);
} catch (error) {
  const detail = error instanceof Error ? error.message : String(error);
  terminal.complain(terminal.words("in").ownFailure(detail));
  process.exitCode = 1;
}

/** Under `npm run` npm has gone to Verso's own folder and says where the user stands. */
function folderOfUser(): string {
  const here = process.cwd();
  const { INIT_CWD, npm_lifecycle_event } = process.env;
  const isOurScript =
    npm_lifecycle_event === "verso" &&
    here === realpathSync(fileURLToPath(new URL("../..", import.meta.url)));
  return isOurScript && INIT_CWD ? INIT_CWD : here;
}

function localeOf(setting: string): CliLocale {
  const wanted = setting.split(".")[0]?.replace("_", "-").toLowerCase();
  return cliLocales.find((known) => known.toLowerCase() === wanted) ?? "en-US";
}

/** Thin and unbroken spaces are for paper and screens; many terminals have no sign for them. */
function plainSpaces(text: string): string {
  return text.replace(/[\u202f\u00a0\u2009]/g, " ");
}
