import * as v from "valibot";
import { err, ok, type Result } from "../engine/length/index.ts";
import type { Column } from "./leftovers-columns.ts";
import { columns } from "./leftovers-columns.ts";
import { type Codec, notALength } from "./project-codecs.ts";
import { cellCodecs, lineCodec, othersCodec, pictureCodec } from "./project-parts.ts";
import { type ProjectProblem, type ProjectValueType, projectValueTypes } from "./project-problems.ts";
import type { Cells, Leftover } from "./project-types.ts";

/** Reads one part that may hold anything; every fault is named with its place. Never throws. */
export function readPart<T>(
  codec: Codec<T>,
  value: unknown,
  path: string,
): Result<T, readonly ProjectProblem[]> {
  const read = v.safeParse(codec.schema, value);
  if (read.success) return ok(read.output);
  return err(read.issues.map((issue) => problemOf(issue, path)));
}

export type ReadLeftover = {
  readonly leftover: Leftover;
  readonly problems: readonly ProjectProblem[];
};

/** One row; a cell that cannot be used is left out and named. */
export function readLeftoverParts(
  id: string,
  parts: ReadonlyMap<string, unknown>,
  path: string,
): ReadLeftover {
  const problems: ProjectProblem[] = [];
  const part = <T>(codec: Codec<T>, name: string): T | null => {
    const read = readPart(codec, parts.get(name), `${path}.${name}`);
    if (!read.ok) problems.push(...read.error);
    return read.ok ? read.value : null;
  };
  const line = part(lineCodec, "line") ?? "";
  const others = part(othersCodec, "others") ?? {};
  let cells: Leftover["cells"] = {};
  for (const column of columns) {
    if (parts.has(`cells.${column}`)) cells = withCell(cells, column, part);
  }
  const picture = parts.has("picture") ? part(pictureCodec, "picture") : null;
  const leftover = { id, line, cells, others };
  return { leftover: picture === null ? leftover : { ...leftover, picture }, problems };
}

function withCell<C extends Column>(
  cells: Leftover["cells"],
  column: C,
  part: <T>(codec: Codec<T>, name: string) => T | null,
): Leftover["cells"] {
  const cell = part<Cells[C]>(cellCodecs[column], `cells.${column}`);
  return cell === null ? cells : { ...cells, [column]: cell };
}

type Issue = v.BaseIssue<unknown>;

function problemOf(issue: Issue, base: string): ProjectProblem {
  return { path: placeOf(issue, base), ...faultOf(issue) };
}

function placeOf(issue: Issue, base: string): string {
  return (issue.path ?? []).reduce((path, { key }) => under(path, key), base);
}

export function under(path: string, key: unknown): string {
  if (typeof key === "number") return `${path}[${key}]`;
  return path === "" ? String(key) : `${path}.${String(key)}`;
}

type Fault = ProjectProblem extends infer P ? (P extends ProjectProblem ? Omit<P, "path"> : never) : never;

function faultOf(issue: Issue): Fault {
  if (issue.input === undefined) return { kind: "missing" };
  if (issue.message === notALength) return { kind: "not-a-length", value: Number(issue.input) };
  if (issue.kind === "schema") return faultOfType(issue);
  if (issue.type === "max_length") {
    const most = Number(issue.requirement);
    return { kind: typeof issue.input === "string" ? "text-too-long" : "too-many", most };
  }
  return { kind: "out-of-range", value: Number(issue.input) };
}

const typeNames: Readonly<Record<string, ProjectValueType>> = {
  string: "text",
  number: "number",
  boolean: "yes-or-no",
  object: "object",
  strict_tuple: "list",
  array: "list",
};

function faultOfType(issue: Issue): Fault {
  if (issue.type === "picklist" || issue.type === "variant" || issue.type === "literal") {
    return { kind: "not-one-of", choices: choicesIn(issue.expected) };
  }
  const expected = projectValueTypes.find((type) => type === typeNames[issue.type]);
  return { kind: "wrong-type", expected: expected ?? "object" };
}

/** From the library's `("frame" | "machine")`. */
function choicesIn(expected: string | null): readonly string[] {
  return [...(expected ?? "").matchAll(/"([^"]*)"/g)].map(([, word]) => word ?? "");
}
