import { backFor, extraFor } from "../engine/back/index.ts";
import {
  type CheckedDraft,
  checkDraft,
  type Draft,
  type DraftProblem,
  type Job,
} from "../engine/cloth/index.ts";
import { err, length, ok, type Result } from "../engine/length/index.ts";
import { draftOfProject, readLeftovers, readProject, type TableProblem } from "../files/index.ts";
import type { CliWords } from "../words/index.ts";
import { isProject, type PlanCommand } from "./commands.ts";

/** A line for her, and the row of the table it is about, if any. */
type Line = { readonly row: number | null; readonly text: string };

export type JobRead = {
  readonly job: Job;
  /** What she should know, although it keeps nothing from being planned. */
  readonly notes: readonly string[];
};

/** The job in a table or a project and a command, or a line for each thing that keeps it from being one. */
export function readJob(
  bytes: Uint8Array,
  command: PlanCommand,
  words: CliWords,
): Result<JobRead, readonly string[]> {
  return isProject(command.leftovers)
    ? readProjectJob(bytes, command, words)
    : readTableJob(bytes, command, words);
}

/** What the command says goes before what the project says. */
function readProjectJob(
  bytes: Uint8Array,
  command: PlanCommand,
  words: CliWords,
): Result<JobRead, readonly string[]> {
  const { leftovers: file } = command;
  const read = readProject(bytes);
  if (!read.ok) return err(read.error.map((problem) => words.inFile(file, words.projectProblem(problem))));
  const draft = overridden(draftOfProject(read.value), command);
  const { checked, stops } = check(draft, command.skipBadRows);
  const lines = textsInOrder(stops.map((problem) => draftLine(problem, file, words)));
  if (checked === null || (lines.length > 0 && !command.skipBadRows)) return err(lines);
  const skipped = lines.length > 0 ? [...lines, words.inFile(file, words.rowsSkipped)] : [];
  return ok({ job: checked.job, notes: [...skipped, ...noteLines(checked.notes, file, words)] });
}

/** A size of the command's own goes before all that the project says of its size. */
function overridden(draft: Draft, command: PlanCommand): Draft {
  const { back, top, ...settings } = settingsOf(command, draft.unit);
  if (command.size === null) return { ...draft, ...settings };
  const { top: _projects, ...sizeless } = draft;
  return { ...sizeless, ...settings, back, ...(top === undefined ? {} : { top }) };
}

function readTableJob(
  bytes: Uint8Array,
  command: PlanCommand,
  words: CliWords,
): Result<JobRead, readonly string[]> {
  const table = readLeftovers(bytes, command.unit);
  const { leftovers: file } = command;
  const unread = table.problems.map((problem) => tableLine(problem, file, words));
  const { checked, stops } = check(
    { ...settingsOf(command, command.unit), plain: { name: words.plainCloth }, pieces: table.pieces },
    command.skipBadRows,
  );
  const stopLines = stops
    // Where rows could not be read, it is they that are missing.
    .filter(({ kind }) => kind !== "nothing-to-plan" || unread.length === 0 || command.skipBadRows)
    .map((problem) => draftLine(problem, file, words));
  const lines = textsInOrder([...unread, ...stopLines]);
  const canSkip = command.skipBadRows && unread.every(({ row }) => row !== null);
  if (checked === null || (lines.length > 0 && !canSkip)) return err(lines);
  const skipped = lines.length > 0 ? [...lines, words.inFile(file, words.rowsSkipped)] : [];
  return ok({ job: checked.job, notes: [...skipped, ...noteLines(checked.notes, file, words)] });
}

/** What the command alone says of the job. */
function settingsOf(
  { size, time, wishes, contrast, floor, step }: PlanCommand,
  unit: Draft["unit"],
): Omit<Draft, "plain" | "pieces"> {
  return {
    unit,
    ...sizesOf(size, unit),
    ...(time === null ? {} : { time }),
    ...(wishes.length === 0 ? {} : { wishes }),
    ...(contrast === null ? {} : { contrast }),
    ...(floor === null ? {} : { floor }),
    ...(step === null ? {} : { step }),
  };
}

const noSize = { width: length(0), height: length(0) };

function sizesOf(size: PlanCommand["size"], unit: PlanCommand["unit"]): Pick<Draft, "top" | "back"> {
  if (size === null) return { back: noSize };
  if ("back" in size) return { back: size.back };
  const extra = extraFor(size.method, unit);
  return { top: { ...size.top, method: size.method, extra }, back: backFor(size.top, extra) };
}

type Checked = { readonly checked: CheckedDraft | null; readonly stops: readonly DraftProblem[] };

/**
 * Checks the draft; where bad rows may be left out, once more without them: what was wrong with them is in `stops` all
 * the same, and `checked` is null where something else is wrong.
 */
function check(draft: Draft, mayLeaveOut: boolean): Checked {
  const first = checkDraft(draft);
  if (first.ok) return { checked: first.value, stops: [] };
  const stops = first.error.filter(({ severity }) => severity === "stop");
  const ofRows = stops.filter(({ row }) => row !== null);
  if (!mayLeaveOut || ofRows.length === 0) return { checked: null, stops };
  const rows = new Set(ofRows.map(({ row }) => row));
  const again = check({ ...draft, pieces: draft.pieces.filter(({ row }) => !rows.has(row)) }, mayLeaveOut);
  return { checked: again.checked, stops: [...ofRows, ...again.stops] };
}

function tableLine(problem: TableProblem, file: string, words: CliWords): Line {
  return {
    row: "row" in problem ? problem.row : null,
    text: words.inFile(file, words.words.tableProblem(problem)),
  };
}

function draftLine(problem: DraftProblem, file: string, words: CliWords): Line {
  const text = words.words.draftProblem(problem);
  // What is wrong with the size she gave is not in the table.
  const isInFile = problem.row !== null || problem.field === "pieces";
  return { row: problem.row, text: isInFile ? words.inFile(file, text) : text };
}

/** Row by row, as she goes through her table; what is about no row comes last. */
function textsInOrder(lines: readonly Line[]): string[] {
  const order = ({ row }: Line) => row ?? Number.MAX_SAFE_INTEGER;
  return [...lines].sort((a, b) => order(a) - order(b)).map(({ text }) => text);
}

// A heap without colours would say so sixty times.
const mostOfAKind = 3;

function noteLines(notes: readonly DraftProblem[], file: string, words: CliWords): string[] {
  const byKind = new Map<string, Line[]>();
  for (const note of notes) {
    byKind.set(note.kind, [...(byKind.get(note.kind) ?? []), draftLine(note, file, words)]);
  }
  return [...byKind.values()].flatMap((lines) => {
    const shown = textsInOrder(lines.slice(0, mostOfAKind));
    const more = lines.length - shown.length;
    return more === 0 ? shown : [...shown, words.inFile(file, words.moreNotes(more))];
  });
}
