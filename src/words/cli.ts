/** What the command line says: its help, what keeps a command from being carried out, its answers. */
import type { Advice } from "../engine/advice/index.ts";
import { type Backing, type Style, styles } from "../engine/back/index.ts";
import type { Reason } from "../engine/choice/index.ts";
import { type Method, type Top, wishesAsked } from "../engine/cloth/index.ts";
import type { DisplayUnit, Length, LengthProblem, Size, SizeProblem } from "../engine/length/index.ts";
import type { Figures, Plan, Usable } from "../engine/plan/index.ts";
import type { DrawingWords, ProjectProblem } from "../files/index.ts";
import { pictureWords } from "./english/picture.ts";
import { projectProblem } from "./english/projectProblems.ts";
import type { CliLocale } from "./locales.ts";
import { inBrackets } from "./pseudo.ts";
import type { Words } from "./types.ts";
import { quoted } from "./voice.ts";
import { wordsFor } from "./wordsFor.ts";

/** The commands, in the order of the job. */
export const commandNames = ["size", "plan", "check", "cards", "measure"] as const;
export type CommandName = (typeof commandNames)[number];

/** Why a command can't be carried out as it was written. Options are named without their dashes. */
export type CommandProblem =
  | { readonly kind: "unknown-command"; readonly name: string }
  | { readonly kind: "unknown-option"; readonly option: string; readonly command: CommandName }
  | { readonly kind: "given-twice" | "needs-a-value" | "takes-no-value"; readonly option: string }
  | { readonly kind: "option-missing"; readonly option: string }
  | { readonly kind: "file-missing"; readonly wanted: "leftovers" | "plan" | "photo" }
  | { readonly kind: "one-too-many"; readonly name: string }
  | {
      readonly kind: "not-a-choice";
      readonly option: string;
      readonly text: string;
      readonly choices: readonly string[];
    }
  | { readonly kind: "not-a-length"; readonly option: string; readonly problem: LengthProblem }
  | { readonly kind: "not-a-size"; readonly option: string; readonly problem: SizeProblem }
  | {
      readonly kind: "not-a-number";
      readonly option: string;
      readonly text: string;
      /** `whole`: from `least` to `most`; else more than `least`. */
      readonly least: number;
      readonly most: number;
      readonly whole: boolean;
    }
  | { readonly kind: "not-both"; readonly options: readonly [string, string] }
  | { readonly kind: "no-size" | "method-without-top" }
  | { readonly kind: "more-plans-than-styles"; readonly most: number }
  | { readonly kind: "plans-with-all-styles"; readonly styles: number }
  | { readonly kind: "two-documents-on-output"; readonly options: readonly [string, string] }
  | { readonly kind: "pictures-on-output" }
  | { readonly kind: "not-a-picture"; readonly option: string; readonly file: string }
  | {
      readonly kind: "one-file-for-two";
      readonly file: string;
      readonly options: readonly [string, string];
    }
  | { readonly kind: "would-overwrite-leftovers" | "would-overwrite-photo"; readonly file: string }
  | { readonly kind: "not-a-photo" | "no-cards-found"; readonly file: string }
  | {
      readonly kind: "photo-too-large";
      readonly file: string;
      readonly megapixels: number;
      readonly most: number;
    }
  | { readonly kind: "out-of-range"; readonly option: string; readonly least: Length; readonly most: Length }
  | { readonly kind: "back-too-large"; readonly back: Size; readonly most: Length }
  | FileProblem;

/** Why a file can't be read or written. `code`: what the system calls it. */
export type FileProblem =
  | { readonly kind: "no-such-file" | "is-a-folder" | "too-large-to-read"; readonly file: string }
  | { readonly kind: "no-such-folder"; readonly file: string; readonly folder: string }
  | { readonly kind: "not-readable" | "not-writable"; readonly file: string; readonly code: string };

/** All that the command line says, in one word set and one unit. Lines are parted, the last one has no end. */
export type CliWords = {
  readonly words: Words;
  readonly help: (about: CommandName | null) => string;
  /** One sentence or two: what is so, then what to do. Names are shown as she wrote them. */
  readonly problem: (problem: CommandProblem) => string;
  /** One line: which plan, how good it is, how long it takes. */
  readonly progress: (progress: Progress) => string;
  /** How large the back must be, what of it is cut away, and what it takes in one plain cloth. */
  readonly size: (answer: SizeAnswer) => string;
  /** A plan in plain words: what it is, what it uses and takes, what to buy, how it begins. */
  readonly plan: (plan: Plan, beside: Beside) => string;
  /** What stands on the picture of a plan; `ruler` is the length of the ruler drawn. */
  readonly picture: (plan: Plan, ruler: Length) => DrawingWords;
  /** The reference pages are in a file: what to mind in printing them. */
  readonly cardsWritten: (file: string) => string;
  readonly filesWritten: (files: readonly string[]) => string;
  /** The plan holds: what it comes to, counted again from its layout. */
  readonly sound: (plan: SoundPlan) => string;
  /** A problem with the file it is in, so that it can be found. */
  readonly projectProblem: (problem: ProjectProblem) => string;
  readonly inFile: (file: string, problem: string) => string;
  /** Of several plans in a file, which one. */
  readonly inPlan: (number: number, problem: string) => string;
  /** Notes of one kind beyond the first few. */
  readonly moreNotes: (count: number) => string;
  /** Said once where rows were left out because she asked for it. */
  readonly rowsSkipped: string;
  /** What the cloth to buy is called until she has chosen it. */
  readonly plainCloth: string;
  readonly noPlans: string;
  readonly stepsDoNotFit: string;
  /** Our own failure; the table is not at fault. */
  readonly ownFailure: (detail: string) => string;
};

export function cliWordsFor(locale: CliLocale, unit: DisplayUnit): CliWords {
  const words = wordsFor(locale, unit);
  const texts = english(words);
  if (locale !== "en-XA") return texts;
  const picture = (plan: Plan, ruler: Length) => inBrackets(texts.picture(plan, ruler));
  return { ...inBrackets(texts), picture, words };
}

function english(words: Words): CliWords {
  return {
    words,
    help: (about) => (about === null ? help : helpOf[about]).trimEnd(),
    problem: (problem) => commandProblem(problem, words),
    progress: (progress) => progressText(progress, words),
    size: (answer) => sizeAnswer(answer, words),
    plan: (plan, beside) => planSummary(plan, beside, words),
    picture: (plan, ruler) => pictureWords(plan, ruler, words),
    cardsWritten: (file) =>
      `Written: ${named(file)}\nPrint it at 100 %, not fitted to the page, and measure the lines between end marks.`,
    filesWritten: (files) => files.map((file) => `Written: ${named(file)}`).join("\n"),
    sound: (plan) => planIsSound(plan, words),
    projectProblem,
    inFile: (file, problem) => `${file === "-" ? "standard input" : named(file)}: ${problem}`,
    inPlan: (number, problem) => `plan ${number}: ${problem}`,
    moreNotes: (count) => `and ${count === 1 ? "1 more row" : `${count} more rows`} like this.`,
    rowsSkipped: "The rows named above were left out.",
    plainCloth: "plain cloth",
    noPlans: "This file is a list without a plan in it.",
    stepsDoNotFit:
      "The steps, sewn one after the other, do not give this layout. Plan it again, or sew from the layout alone.",
    ownFailure: (detail) =>
      `Verso stopped because of a mistake of its own: ${detail.slice(0, 300)}\nNothing was written. Please report it with the command you gave.`,
  };
}

/** A file's name on one line, whatever is in it. */
function named(file: string): string {
  return file.replace(/\p{Cc}/gu, "\ufffd");
}

function commandProblem(problem: CommandProblem, words: Words): string {
  switch (problem.kind) {
    case "unknown-command":
      return `${quoted(problem.name)} is not a command. There are ${listed(commandNames)}: see verso --help.`;
    case "unknown-option":
      return `${named(problem.option)} is not an option of verso ${problem.command}. See verso ${problem.command} --help.`;
    case "given-twice":
      return `--${problem.option} is given twice. Keep the one you mean.`;
    case "needs-a-value":
      return `--${problem.option} needs a value behind it.`;
    case "takes-no-value":
      return `--${problem.option} stands alone. Take away what follows it.`;
    case "option-missing":
      return `--${problem.option} is missing. Add it: ${examples[problem.option] ?? `--${problem.option} …`}.`;
    case "file-missing":
      return filesMissing[problem.wanted];
    case "one-too-many":
      return `${quoted(problem.name)} is one name too many. Take it away, or put quotation marks round a name with spaces.`;
    case "not-a-choice":
      return `--${problem.option}: ${quoted(problem.text)} is not one of its words. Write ${either(problem.choices)}.`;
    case "not-a-length":
      return `--${problem.option}: ${words.lengthProblem(problem.problem)}`;
    case "not-a-size":
      return `--${problem.option}: ${words.sizeProblem(problem.problem)}`;
    case "not-a-number":
      return `--${problem.option}: ${quoted(problem.text)} does not fit. Write ${numberWanted(problem, words)}.`;
    case "not-both":
      return `--${problem.options[0]} and --${problem.options[1]} do not go together. Keep the one you mean.`;
    case "no-size":
      return "No size is given. Write --top 60x80 --method frame, or --back 68x88.";
    case "method-without-top":
      return "--method goes with --top. Add the size of the top, or take --method away.";
    case "more-plans-than-styles":
      return `--plans: there are ${problem.most} styles, so ${problem.most} is the most. Name one style for more plans of it.`;
    case "plans-with-all-styles":
      return `--style all gives a plan of each of the ${problem.styles} styles. Take --plans away, or take --style away.`;
    case "two-documents-on-output":
      return `--${problem.options[0]} and --${problem.options[1]} can't both go to standard output. Give one of them a file.`;
    case "pictures-on-output":
      return "--svg: several pictures can't go to standard output. Give a file; they are numbered from it.";
    case "not-a-picture":
      return `--${problem.option} ${problem.file}: give a file that ends in .svg or .png.`;
    case "one-file-for-two":
      return `${named(problem.file)} can't hold both --${problem.options[0]} and --${problem.options[1]}. Give each a file of its own.`;
    case "would-overwrite-leftovers":
      return `${named(problem.file)} is the table of your leftovers. Give another file, so that it stays.`;
    case "would-overwrite-photo":
      return `${named(problem.file)} is one of your photos. Give another file, so that it stays.`;
    case "not-a-photo":
      return `${named(problem.file)}: this is not a whole photo that can be read. Use a JPEG, a HEIC or a PNG, as the camera made it.`;
    case "photo-too-large":
      return `${named(problem.file)}: this photo has ${words.number(Math.ceil(problem.megapixels))} million pixels, and ${problem.most} is the most. Make it smaller.`;
    case "no-cards-found":
      return `${named(problem.file)}: no reference card is in this photo that could be read. Print them with verso cards, lay them flat, and have each whole in the photo.`;
    case "out-of-range":
      return `--${problem.option} may be from ${words.length(problem.least)} to ${words.length(problem.most)}.`;
    case "back-too-large":
      return `The back would be ${words.size(problem.back)}, and ${words.length(problem.most)} is the most. Look at the size and its unit again.`;
    case "no-such-file":
    case "is-a-folder":
    case "too-large-to-read":
    case "no-such-folder":
    case "not-readable":
    case "not-writable":
      return fileProblem(problem);
  }
}

function fileProblem(problem: FileProblem): string {
  switch (problem.kind) {
    case "no-such-file":
      return `${named(problem.file)}: there is no such file. Look at the name and the folder.`;
    case "is-a-folder":
      return `${named(problem.file)}: this is a folder. Name a file in it.`;
    case "too-large-to-read":
      return `${named(problem.file)}: this file is too large to be a table or a plan.`;
    case "no-such-folder":
      return `${named(problem.file)}: there is no folder ${named(problem.folder)}. Make it first, or name another.`;
    case "not-readable":
      return `${named(problem.file)}: this file can't be read (${problem.code}). Look at who may read it.`;
    case "not-writable":
      return `${named(problem.file)}: this file can't be written (${problem.code}). Look at the folder, or name another.`;
  }
}

const filesMissing: Readonly<Record<"leftovers" | "plan" | "photo", string>> = {
  leftovers: "No leftovers are named. Name the table they are in: verso plan leftovers.csv …",
  plan: "No plan is named. Name the file it is in: verso check plan.json",
  photo: "No photo is named. Name the files they are in: verso measure heap.jpg …",
};

const examples: Readonly<Record<string, string>> = {
  top: "--top 60x80",
  method: "--method frame, machine or hand",
  pdf: "--pdf cards.pdf",
};

type NumberWanted = Extract<CommandProblem, { readonly kind: "not-a-number" }>;

function numberWanted({ least, most, whole }: NumberWanted, words: Words): string {
  const range = `${words.number(least)} to ${words.number(most)}`;
  return whole
    ? `a whole number from ${range}`
    : `a number over ${words.number(least)}, up to ${words.number(most)}`;
}

function listed(parts: readonly string[], last = "and"): string {
  const tail = parts.at(-1) ?? "";
  return parts.length < 2 ? tail : `${parts.slice(0, -1).join(", ")} ${last} ${tail}`;
}

function either(parts: readonly string[]): string {
  return listed(parts, "or");
}

/** Where a search is. */
export type Progress = {
  readonly style: Style;
  /** Which plan of how many, from 1. */
  readonly plan: number;
  readonly plans: number;
  /** Share of the pieced part that is leftovers, in the best so far. */
  readonly covered: number;
  readonly moves: number;
  readonly effort: number;
  /** null: it ends with its moves. */
  readonly secondsLeft: number | null;
};

function progressText(progress: Progress, words: Words): string {
  const { style, plan, plans, covered, moves, effort, secondsLeft } = progress;
  const which = plans === 1 ? "" : `plan ${plan} of ${plans}, `;
  const left =
    secondsLeft === null ? `${words.percent(moves / effort)} done` : `about ${Math.ceil(secondsLeft)} s left`;
  return `${which}${words.style(style)}: ${words.percent(covered)} of the pieced part filled, ${left} (Ctrl-C keeps this one)`;
}

export type SizeAnswer = {
  readonly top: Top;
  readonly back: Size;
  /** By how much the ring that is cut away reaches in, each side. */
  readonly cutOff: Size;
  readonly clothWidth: Length;
  readonly backings: readonly Backing[];
  readonly wide: { readonly width: Length; readonly buy: Length } | null;
};

function sizeAnswer(answer: SizeAnswer, words: Words): string {
  const { top, back, cutOff, clothWidth, backings, wide } = answer;
  return [
    `The back: ${words.size(back)}`,
    `  for a top of ${words.size(top)} ${methodPhrases[top.method]}, ${words.length(top.extra)} more on each side`,
    `The cut-off edge: ${words.length(cutOff.width)} on each side`,
    "  It is cut away after quilting. Keep small and precious pieces out of it.",
    "All of one plain cloth:",
    ...backings.map((backing) => `  ${backingText(backing, clothWidth, words)}`),
    wide === null
      ? `  Extra-wide cloth is too narrow for this back in one piece.`
      : `  ${words.length(wide.width)} wide, no seam: buy ${bought(wide.buy, words)}`,
  ].join("\n");
}

const methodPhrases: Readonly<Record<Method, string>> = {
  frame: "on a quilting frame",
  machine: "quilted by machine at home",
  hand: "quilted by hand",
};

function backingText({ seams, widths, each, buy }: Backing, clothWidth: Length, words: Words): string {
  const how = widths === 1 ? "no seam" : `seams ${seams === "vertical" ? "down" : "across"}`;
  const pieces = widths === 1 ? "1 length" : `${widths} lengths`;
  return `${words.length(clothWidth)} wide, ${how}: ${pieces} of ${words.length(each)}, buy ${bought(buy, words)}`;
}

function bought(length: Length, words: Words): string {
  return words.bolt(length);
}

/** How many of the steps the summary shows; the rest stand in the plan's file. */
const firstSteps = 5;

/** What is said of a plan that does not stand in it. */
export type Beside = {
  readonly usable: Usable;
  readonly reasons: readonly Reason[];
  readonly advice: readonly Advice[];
};

function planSummary(plan: Plan, { usable, reasons, advice }: Beside, words: Words): string {
  const { top, back, unused, steps, buy, seed } = plan;
  const size = `The back is ${words.size(back)}`;
  const over =
    top === null
      ? "."
      : `, for a top of ${words.size(top)} with ${words.length(top.extra)} more on each side.`;
  return [
    `${capital(words.style(plan.style))} (seed ${seed})`,
    words.styleIs(plan.style),
    ...(reasons.length === 0 ? [] : [words.reasons(reasons)]),
    "",
    size + over,
    ...figuresWith(usable, plan.figures, words),
    ...(unused.length === 0 ? [] : [words.unused(unused)]),
    "",
    "To buy",
    ...(buy.length === 0 ? ["  Nothing."] : buy.map((row) => `  ${words.buy(row, plan)}`)),
    ...(advice.length === 0 ? [] : ["", "Before you sew"]),
    ...advice.map((one) => `  ${words.advice(one, plan)}`),
    "",
    steps.length > firstSteps
      ? `The first ${firstSteps} of ${words.number(steps.length)} steps`
      : "The steps",
    ...steps
      .slice(0, firstSteps)
      .map((step) => `  ${capital(words.unit(step.id))}: ${words.step(step, plan)}`),
  ].join("\n");
}

/** Right after the share of her leftovers that is used. */
function figuresWith(usable: Usable, figures: Figures, words: Words): readonly string[] {
  return words.figures(figures).toSpliced(1, 0, words.usable(usable));
}

export type SoundPlan = { readonly style: Style; readonly back: Size; readonly figures: Figures };

function planIsSound({ style, back, figures }: SoundPlan, words: Words): string {
  return [
    `This plan is sound: ${words.style(style)}, ${words.size(back)}. Every seam is straight and full length, and every piece is large enough.`,
    ...words.figures(figures),
  ].join("\n");
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

const help = `verso plans a pieced quilt back from what a top left over.

  verso size   --top 60x80 --method frame        how large the back must be
  verso plan   LEFTOVERS.csv --top 60x80 --method frame
                                                 a back from your leftovers
  verso check  PLAN.json                         whether a plan can be sewn
  verso cards  --pdf cards.pdf                   cards to lay beside leftovers
                                                 in a photo
  verso measure PHOTO.jpg --csv leftovers.csv    leftovers from photos

verso COMMAND --help says more. Sizes are widths and heights in inches unless a
unit stands with them: 60x80, 67 1/2 x 87 1/2, 150x200cm.

Exit status: 0 done; 2 the command, a file or a plan can't be used; 1 a mistake
of ours.
`;

const helpOf: Readonly<Record<CommandName, string>> = {
  size: `verso size --top WxH --method frame|machine|hand [--extra LENGTH]

How large the back must be, how much of it is cut away after quilting, and what
it takes in one plain cloth.

  --top WxH       the finished quilt top, width then height: 60x80, 150x200cm
  --method        how it will be quilted: on a frame (4 in more on each side),
                  by machine at home (3 in) or by hand (2 in)
  --extra LENGTH  how much more on each side, if yours asks for another
`,
  plan: `verso plan LEFTOVERS.csv --top WxH --method frame|machine|hand [options]
verso plan LEFTOVERS.csv --back WxH [options]
verso plan PROJECT.verso [options]

A back from your leftovers that can be sewn with straight seams. LEFTOVERS.csv
is a table with the columns kind, width, height and, where you know them, count,
fabric, colour, name, keep, use, direction …; - reads it from standard input.
PROJECT.verso is a project saved from the app: it has its size and heap in it,
and what you say here goes before what it says.
The plan is told in words, unless a file goes to standard output.

Size
  --top WxH         the finished top, with --method
  --method          how it will be quilted: frame, machine or hand
  --back WxH        or the back itself, edge to edge

What it is like
  --style NAME      ${wrapped(styles)}
                    or all for one of each. Without it the best for this heap
  --time            afternoon, weekend (as it is without it) or any
  --floor LENGTH    pieces narrower than this aren't placed one by one
                    (2 1/2 in)
  --plans N         N plans, each in another style; with --style N plans of it.
                    3 to 6 are chosen to differ, each with what speaks for it
  --wish NAME       ${wrapped(wishesAsked)};
                    as often as you have wishes
  --contrast        how fabrics meet: blend, mixed (as it is without it) or
                    strong

Measures
  --unit in|cm      what bare numbers are in, here and in the table (in)
  --step LENGTH     the finest mark of your ruler to cut by (1/8 in, 1 mm)

How long it searches
  --seconds S       seconds of processor time, for all plans together (5)
  --effort N        or a number of solver moves for each plan: the same number
                    and seed give the same plan again
  --seed N          where chance begins (1)

Files
  --json FILE       the plan, for verso check and other programs; a list if
                    there are several. - writes to standard output
  --svg FILE        the picture; several are numbered: back-1.svg …
  --skip-bad-rows   leave out rows that can't be read instead of stopping

Ctrl-C ends the search and keeps the best so far.
`,
  check: `verso check PLAN.json

Goes through a plan piece by piece and seam by seam: whether it tiles the back,
every piece is large enough and none is used twice. - reads standard input.
`,
  cards: `verso cards [--paper letter|a4] --pdf FILE

Pages to print and to lay beside your leftovers when you photograph them: their
markers tell how large things in the photo are. Page 1 is cut into four cards,
for the corners; pages 2 and 3 are whole sheets, for opposite sides. Print at
100 %, and check the lines on them with a ruler.

  --paper       letter (as it is without it) or a4
  --pdf FILE    the pages. - writes to standard output
`,
  measure: `verso measure PHOTO... [--bar LENGTH] [--json FILE] [--csv FILE]
              [--overlay FILE]

Finds the pieces that lie between the printed cards or sheets in photos (JPEG,
HEIC or PNG), and measures them: shape, size, colors. Press first, lay the
pieces half an inch apart on one even color, with each card whole in the photo.
Sizes are rounded down to 1/8 in after taking off 1/32 in. A piece that must be
looked at is marked "please check", with the reason.

  --bar LENGTH  what your ruler says of the lines on the printed page, if not
                6 in (Letter) or 150mm (A4)
  --json FILE   all pieces with outlines and colors, for other programs
  --csv FILE    a table of leftovers, for verso plan. Look through it first
                - as either file writes to standard output
  --overlay FILE
                the photo with the outlines over it, .svg or .png, numbered as
                the pieces are told; of several photos the files are numbered

Without a file for standard output the pieces are told in words.
`,
};

function wrapped(names: readonly string[]): string {
  const half = Math.ceil(names.length / 2);
  return [names.slice(0, half), names.slice(half)].map((row) => row.join(", ")).join(`,\n${" ".repeat(20)}`);
}
