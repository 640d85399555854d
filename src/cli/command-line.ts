import { readArguments } from "./arguments.ts";
import { runCheck } from "./check.ts";
import { runPlan } from "./plan.ts";
import { runSize } from "./size.ts";
import { type ExitStatus, refuse, type Terminal } from "./terminal.ts";

/** Carries out one command line; all it has to say goes through the terminal. */
export async function runCommandLine(args: readonly string[], terminal: Terminal): Promise<ExitStatus> {
  const read = readArguments(args);
  if (!read.ok) {
    const words = terminal.words("in");
    return refuse(
      terminal,
      read.error.map((problem) => words.problem(problem)),
    );
  }
  const command = read.value;
  switch (command.kind) {
    case "help":
      terminal.say(terminal.words("in").help(command.about));
      return 0;
    case "size":
      return runSize(command, terminal);
    case "plan":
      return runPlan(command, terminal);
    case "check":
      return runCheck(command, terminal);
    // What writes PDF and what reads photos is large, and the other commands start without it.
    case "cards":
      return (await import("./cards.ts")).runCards(command, terminal);
    case "measure":
      return (await import("./measure.ts")).runMeasure(command, terminal);
  }
}
