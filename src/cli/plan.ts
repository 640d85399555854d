import { adviceFor } from "../engine/advice/index.ts";
import type { ChoiceNote, Reason } from "../engine/choice/index.ts";
import type { Job } from "../engine/cloth/index.ts";
import { drawPlan } from "../engine/drawing/index.ts";
import { type Plan, usableOf } from "../engine/plan/index.ts";
import { svgOfDrawing, writePlan } from "../files/index.ts";
import type { CliWords, Progress } from "../words/index.ts";
import { type PlanCommand, standardStream } from "./commands.ts";
import { numberedFiles, type Output, outputProblems, readInput, writeOutputs } from "./files.ts";
import { readJob } from "./job.ts";
import { ProgressLine } from "./progress.ts";
import { isChosen, type Stop, searchChoice, searchPlans } from "./search.ts";
import { type ExitStatus, refuse, type Terminal } from "./terminal.ts";

/** Plans a back from a table of leftovers, and writes it where she wants it. */
export async function runPlan(command: PlanCommand, terminal: Terminal): Promise<ExitStatus> {
  const words = terminal.words(command.unit);
  const { folder, stop } = terminal;
  const problems = outputProblems(outputFiles(command, command.plans), command.leftovers, folder);
  if (problems.length > 0)
    return refuse(
      terminal,
      problems.map((problem) => words.problem(problem)),
    );
  const input = await readInput(command.leftovers, folder);
  if (!input.ok) return refuse(terminal, [words.problem(input.error)]);
  const read = readJob(input.value, command, words);
  if (!read.ok) return refuse(terminal, read.error);

  stop.listen();
  const line = new ProgressLine(terminal.screen);
  const show = (progress: Progress) => line.show(words.progress(progress));
  const { found, notes } = await plansFor(read.value.job, command, { stop, show });
  line.clear();
  for (const note of read.value.notes) terminal.complain(note);
  for (const note of notes) terminal.complain(words.words.choiceNote(note));
  return deliver(found, read.value.job, { command, terminal });
}

type Watch = { readonly stop: Stop; readonly show: (progress: Progress) => void };
type Found = { readonly plan: Plan; readonly reasons: readonly Reason[] };
type AllFound = { readonly found: readonly Found[]; readonly notes: readonly ChoiceNote[] };

async function plansFor(job: Job, command: PlanCommand, { stop, show }: Watch): Promise<AllFound> {
  if (!isChosen(command)) {
    const plans = await searchPlans(job, command, stop, show);
    return { found: plans.map((plan) => ({ plan, reasons: [] })), notes: [] };
  }
  const { chosen, others, notes } = await searchChoice(job, command, stop, show);
  const more = stop.asked
    ? []
    : ofOtherStyles(
        chosen.map(({ plan }) => plan),
        others,
      );
  const found = [...chosen, ...more.map((plan) => ({ plan, reasons: [] }))].slice(0, command.plans);
  const last = ({ plan: { style } }: Found) => Number(style === "all-over");
  return { found: found.toSorted((one, other) => last(one) - last(other)), notes };
}

/** She asked for so many: what comes next best of the styles that are not there yet. */
function ofOtherStyles(chosen: readonly Plan[], others: readonly Plan[]): readonly Plan[] {
  const seen = new Set(chosen.map(({ style }) => style));
  return others.filter(({ style }) => !seen.has(style) && seen.add(style));
}

type Asked = { readonly command: PlanCommand; readonly terminal: Terminal };

function deliver(found: readonly Found[], job: Job, { command, terminal }: Asked): ExitStatus {
  const plans = found.map(({ plan }) => plan);
  // A project has a unit of its own.
  const words = terminal.words(plans[0]?.unit ?? command.unit);
  const outputs = outputsOf(plans, command, words);
  const toFiles = outputs.filter(({ file }) => file !== standardStream);
  const problems = writeOutputs(toFiles, terminal.folder);
  if (problems.length > 0)
    return refuse(
      terminal,
      problems.map((problem) => words.problem(problem)),
    );
  const document = outputs.find(({ file }) => file === standardStream);
  if (document !== undefined) {
    terminal.deliver(document.content);
    return 0;
  }
  const told = found.map(({ plan, reasons }) =>
    words.plan(plan, { usable: usableOf(plan.figures, job), reasons, advice: adviceFor(plan, job) }),
  );
  terminal.say(told.join("\n\n\n"));
  if (toFiles.length > 0) terminal.say(`\n${words.filesWritten(toFiles.map(({ file }) => file))}`);
  return 0;
}

/** Where the documents go if `count` plans come of it. */
function outputFiles({ json, svg, plans }: PlanCommand, count: number): string[] {
  const pictures = svg === null ? [] : numberedFiles(svg, plans).slice(0, count);
  return [...(json === null ? [] : [json]), ...pictures];
}

function outputsOf(plans: readonly Plan[], command: PlanCommand, words: CliWords): Output[] {
  const { json, svg } = command;
  const texts = [
    ...(json === null ? [] : [jsonOf(plans, command)]),
    ...(svg === null ? [] : plans.map((plan) => svgOf(plan, words))),
  ];
  return outputFiles(command, plans.length).map((file, index) => ({ file, content: texts[index] ?? "" }));
}

// A list where she asked for several, even if the search was stopped at the first.
function jsonOf(plans: readonly Plan[], command: PlanCommand): string {
  const documents = plans.map((plan) => writePlan(plan).trimEnd());
  return command.plans === 1 ? `${documents.join("")}\n` : `[\n${documents.join(",\n")}\n]\n`;
}

function svgOf(plan: Plan, words: CliWords): string {
  const drawing = drawPlan(plan);
  return svgOfDrawing(drawing, { words: words.picture(plan, drawing.ruler.length) });
}
