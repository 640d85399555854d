import { cardsPdf } from "../booklet/index.ts";
import { type CommandProblem, cardsWords } from "../words/index.ts";
import { type CardsCommand, standardStream } from "./commands.ts";
import { outputProblems, writeOutputs } from "./files.ts";
import { type ExitStatus, refuse, type Terminal } from "./terminal.ts";

/** Writes the reference pages, to be printed at their own size. */
export async function runCards({ paper, pdf }: CardsCommand, terminal: Terminal): Promise<ExitStatus> {
  const unit = paper === "a4" ? "cm" : "in";
  const words = terminal.words(unit);
  const refuseAll = (problems: readonly CommandProblem[]) =>
    refuse(
      terminal,
      problems.map((problem) => words.problem(problem)),
    );
  const problems = outputProblems([pdf], standardStream, terminal.folder);
  if (problems.length > 0) return refuseAll(problems);
  const made = terminal.now();
  const content = await cardsPdf({ paper, words: cardsWords(words.words.locale, unit), made });
  if (pdf === standardStream) {
    terminal.deliver(content);
    return 0;
  }
  const unwritten = writeOutputs([{ file: pdf, content }], terminal.folder);
  if (unwritten.length > 0) return refuseAll(unwritten);
  terminal.say(words.cardsWritten(pdf));
  return 0;
}
