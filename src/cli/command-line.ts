import { readArguments } from "./arguments.ts";
import { runCards } from "./cards.ts";
import { runCheck } from "./check.ts";
import { runMeasure } from "./measure.ts";
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
    case "cards":
      return runCards(command, terminal);
    case "measure":
      return runMeasure(command, terminal);
  }
}
