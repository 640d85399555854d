import { isDeepStrictEqual } from "node:util";
import { checkLayout, figuresOf } from "../engine/layout/index.ts";
import { flattened, reassemble } from "../engine/sewing/index.ts";
import { type PlanDocument, readPlans } from "../files/index.ts";
import type { CheckCommand } from "./commands.ts";
import { readInput } from "./files.ts";
import { type ExitStatus, refuse, type Terminal } from "./terminal.ts";

/** Whether the plans in a file can be sewn, and if not, why. */
export async function runCheck({ plan: file }: CheckCommand, terminal: Terminal): Promise<ExitStatus> {
  const words = terminal.words("in");
  const input = await readInput(file, terminal.folder);
  if (!input.ok) return refuse(terminal, [words.problem(input.error)]);
  const read = readPlans(new TextDecoder().decode(input.value));
  const unread = read.ok ? [] : read.error.map(words.words.planProblem);
  const plans = read.ok ? read.value : [];
  const problems = plans.flatMap((plan, index) =>
    problemsOf(plan, terminal).map((problem) =>
      plans.length === 1 ? problem : words.inPlan(index + 1, problem),
    ),
  );
  const lines = [...unread, ...problems, ...(read.ok && plans.length === 0 ? [words.noPlans] : [])];
  if (lines.length > 0)
    return refuse(
      terminal,
      lines.map((line) => words.inFile(file, line)),
    );
  terminal.say(plans.map((plan) => soundText(plan, terminal)).join("\n\n"));
  return 0;
}

function problemsOf(plan: PlanDocument, terminal: Terminal): string[] {
  const words = terminal.words(plan.unit);
  const ofLayout = checkLayout(plan).map((problem) => words.words.layoutProblem(problem, plan.layout));
  return [...ofLayout, ...(stepsGiveLayout(plan) ? [] : [words.stepsDoNotFit])];
}

/** With the figures counted again from the layout, where they follow from it alone. */
function soundText(plan: PlanDocument, terminal: Terminal): string {
  const figures = { ...plan.figures, ...figuresOf(plan) };
  return terminal.words(plan.unit).sound({ ...plan, figures });
}

/** The steps are sewn up on paper; what comes of it must be the layout. */
function stepsGiveLayout({ steps, layout }: PlanDocument): boolean {
  try {
    return isDeepStrictEqual(reassemble(steps), flattened(layout));
  } catch {
    // Steps that can't be sewn up at all. The file may be anyone's, so this is no mistake of ours.
    return false;
  }
}
