import { type Style, styles } from "../engine/back/index.ts";
import { barLengths, papers } from "../engine/cards/index.ts";
import { contrasts, methods, times, wishesAsked } from "../engine/cloth/index.ts";
import {
  add,
  type DisplayUnit,
  displayUnits,
  err,
  inches,
  length,
  millimetres,
  ok,
  type Result,
  roundDownTo,
  subtract,
} from "../engine/length/index.ts";
import { type CommandName, type CommandProblem, commandNames } from "../words/index.ts";
import {
  type CardsCommand,
  type Command,
  isProject,
  type Limit,
  type MeasureCommand,
  type PlanCommand,
  type SizeCommand,
  standardStream,
} from "./commands.ts";
import { Given } from "./given.ts";

// As many as a file of plans may hold.
const mostPlans = 50;
const mostSeconds = 86_400;
const mostMoves = 1e9;
const largestSeed = 2 ** 32 - 1;

/** Understands the whole command line, or names everything in it that can't be understood. */
export function readArguments(args: readonly string[]): Result<Command, readonly CommandProblem[]> {
  const [name, ...rest] = args;
  if (name === undefined || name === "--help" || name === "-h" || name === "help")
    return ok(helpAbout(rest[0]));
  const command = commandNames.find((known) => known === name);
  if (command === undefined) return err([{ kind: "unknown-command", name }]);
  const given = new Given(command, rest);
  if (given.wantsHelp) return ok({ kind: "help", about: command });
  const made = makeCommand(command, given);
  return made === null || given.problems.length > 0 ? err(given.problems) : ok(made);
}

function helpAbout(name: string | undefined): Command {
  return { kind: "help", about: commandNames.find((known) => known === name) ?? null };
}

function makeCommand(command: CommandName, given: Given): Command | null {
  switch (command) {
    case "size":
      return sizeCommand(given);
    case "plan":
      return planCommand(given);
    case "check": {
      const plan = given.file();
      return plan === null ? null : { kind: "check", plan };
    }
    case "cards":
      return cardsCommand(given);
    case "measure":
      return measureCommand(given);
  }
}

function cardsCommand(given: Given): CardsCommand | null {
  const paper = given.choice("paper", papers) ?? "letter";
  const pdf = given.text("pdf");
  given.require("pdf");
  return pdf === null ? null : { kind: "cards", paper, pdf };
}

function measureCommand(given: Given): MeasureCommand | null {
  const photos = given.files();
  const [json, csv] = [given.text("json"), given.text("csv")];
  const overlay = given.text("overlay");
  if (overlay !== null && !/.\.(svg|png)$/i.test(overlay))
    given.problems.push({ kind: "not-a-picture", option: "overlay", file: overlay });
  const bar = barMeasured(given);
  if (json === standardStream && csv === standardStream)
    given.problems.push({ kind: "two-documents-on-output", options: ["json", "csv"] });
  if (json !== null && json !== standardStream && json === csv)
    given.problems.push({ kind: "one-file-for-two", file: json, options: ["json", "csv"] });
  return photos.length === 0 ? null : { kind: "measure", photos, bar, json, csv, overlay };
}

/** In inches it is the bar of a Letter page, in centimetres that of an A4 one. Printers are off by a few hundredths. */
function barMeasured(given: Given): MeasureCommand["bar"] {
  const unit = unitWritten(given.text("bar") ?? "");
  const measured = given.length("bar", unit);
  if (measured === null) return null;
  const meant = barLengths[unit === "in" ? "letter" : "a4"];
  const most = roundDownTo(length(Math.floor(meant / 16)), unit === "in" ? inches(1, 8) : millimetres(1));
  const range = { least: subtract(meant, most), most: add(meant, most) };
  if (measured < range.least || measured > range.most)
    given.problems.push({ kind: "out-of-range", option: "bar", ...range });
  return { measured, meant };
}

function sizeCommand(given: Given): SizeCommand | null {
  const text = given.text("top") ?? "";
  const unit = unitWritten(text);
  const top = given.size("top", unit);
  const method = given.choice("method", methods);
  const extra = given.length("extra", unit);
  given.require("top", "method");
  return top === null || method === null ? null : { kind: "size", unit, top, method, extra };
}

// A bare number is inches here; what is written in centimetres is answered in centimetres.
function unitWritten(text: string): DisplayUnit {
  return /\d\s*(mm|cm|m)\b/i.test(text) ? "cm" : "in";
}

function planCommand(given: Given): PlanCommand | null {
  const leftovers = given.file();
  const unit = given.choice("unit", displayUnits) ?? "in";
  const ownSize = leftovers !== null && isProject(leftovers);
  const size = planSize(given, unit, ownSize);
  const style = given.choice("style", [...styles, "all" as const]);
  const command = {
    kind: "plan",
    unit,
    style,
    time: given.choice("time", times),
    wishes: given.choices("wish", wishesAsked),
    contrast: given.choice("contrast", contrasts),
    floor: given.length("floor", unit),
    step: given.length("step", unit),
    limit: planLimit(given),
    seed: given.whole("seed", 0, largestSeed) ?? 1,
    plans: planCount(given, style),
    skipBadRows: given.flag("skip-bad-rows"),
    json: given.text("json"),
    svg: given.text("svg"),
  } as const;
  given.problems.push(...outputProblems(command, leftovers));
  return leftovers === null || (size === null && !ownSize) ? null : { ...command, leftovers, size };
}

function planSize(given: Given, unit: DisplayUnit, ownSize: boolean): PlanCommand["size"] {
  const top = given.size("top", unit);
  const back = given.size("back", unit);
  const method = given.choice("method", methods);
  if (given.has("top") && given.has("back"))
    given.problems.push({ kind: "not-both", options: ["top", "back"] });
  if (!given.has("top") && given.has("method")) given.problems.push({ kind: "method-without-top" });
  if (!given.has("top") && !given.has("back") && !ownSize) given.problems.push({ kind: "no-size" });
  if (given.has("top")) given.require("method");
  if (back !== null) return { back };
  return top === null || method === null ? null : { top, method };
}

function planLimit(given: Given): Limit {
  if (given.has("seconds") && given.has("effort"))
    given.problems.push({ kind: "not-both", options: ["seconds", "effort"] });
  const moves = given.whole("effort", 1, mostMoves);
  const seconds = given.number("seconds", 0, mostSeconds);
  return moves === null ? { kind: "seconds", seconds: seconds ?? 5 } : { kind: "effort", moves };
}

function planCount(given: Given, style: Style | "all" | null): number {
  const plans = given.whole("plans", 1, mostPlans);
  // Without a style each plan takes another one, and there are only so many.
  const most = style === null || style === "all" ? styles.length : mostPlans;
  if (plans !== null && plans > most) given.problems.push({ kind: "more-plans-than-styles", most });
  if (style !== "all") return plans ?? 1;
  if (plans !== null && plans < most) given.problems.push({ kind: "plans-with-all-styles", styles: most });
  return styles.length;
}

type Outputs = Pick<PlanCommand, "json" | "svg" | "plans">;

function outputProblems({ json, svg, plans }: Outputs, leftovers: string | null): CommandProblem[] {
  const problems: CommandProblem[] = [];
  if (json === standardStream && svg === standardStream)
    problems.push({ kind: "two-documents-on-output", options: ["json", "svg"] });
  if (svg === standardStream && plans > 1) problems.push({ kind: "pictures-on-output" });
  if (json !== null && json !== standardStream && json === svg)
    problems.push({ kind: "one-file-for-two", file: json, options: ["json", "svg"] });
  for (const file of [json, svg])
    if (file !== null && file !== standardStream && file === leftovers)
      problems.push({ kind: "would-overwrite-leftovers", file });
  return problems;
}
