import { err, ok, type Result } from "../engine/length/index.ts";
import type { Column } from "./leftovers-columns.ts";
import { columns } from "./leftovers-columns.ts";
import type { Codec, Json } from "./project-codecs.ts";
import { type JsonObject, migrated, projectFormat, projectVersion } from "./project-migrations.ts";
import { newProject } from "./project-new.ts";
import {
  cellCodecs,
  type FactName,
  type Facts,
  factCodecs,
  factNames,
  factsOf,
  idCodec,
  lineCodec,
  mostOf,
  othersCodec,
  projectOf,
  roughCodec,
} from "./project-parts.ts";
import type { ProjectProblem } from "./project-problems.ts";
import { readLeftoverParts, readPart, under } from "./project-read.ts";
import type { Cells, Leftover, Project } from "./project-types.ts";

// ---- Writing

/** A project as JSON, the kept plan's text in `plan.text`. */
export function projectJson(project: Project): JsonObject {
  const facts = writeFacts(factsOf(project));
  return {
    format: projectFormat,
    version: projectVersion,
    ...sectionsOf(facts),
    leftovers: project.leftovers.map(leftoverJson),
    rough: project.rough.map(roughCodec.write),
    ticked: [...project.ticked],
  };
}

export function writeFacts(facts: Facts): ReadonlyMap<FactName, Json> {
  return new Map(factNames.map((name) => [name, writeFact(name, facts)]));
}

function writeFact<F extends FactName>(name: F, facts: Facts): Json {
  const codec: Codec<Facts[F]> = codecOf(name);
  return codec.write(facts[name]);
}

// The table of codecs by name, for one name: the compiler can't see that they go together.
function codecOf<F extends FactName>(name: F): Codec<Facts[F]> {
  const codecs: { readonly [N in FactName]: Codec<Facts[N]> } = factCodecs;
  return codecs[name];
}

/** `settings.unit` → `{ settings: { unit } }`: people read sections more easily than long names. */
export function sectionsOf<T>(facts: ReadonlyMap<string, T>): {
  readonly [name: string]: T | { readonly [field: string]: T };
} {
  const whole = [...facts].filter(([name]) => !name.includes("."));
  const names = new Set(
    [...facts.keys()].flatMap((name) => (name.includes(".") ? [name.replace(/[.].*$/s, "")] : [])),
  );
  const sections = [...names].map((section) => [section, sectionOf(facts, `${section}.`)] as const);
  return { ...Object.fromEntries(whole), ...Object.fromEntries(sections) };
}

function sectionOf<T>(facts: ReadonlyMap<string, T>, start: string): { readonly [field: string]: T } {
  const fields = [...facts].filter(([name]) => name.startsWith(start));
  return Object.fromEntries(fields.map(([name, value]) => [name.slice(start.length), value]));
}

function leftoverJson(leftover: Leftover): Json {
  const cells = columns.flatMap((column) => {
    const cell = writeCell(column, leftover.cells);
    return cell === null ? [] : [[column, cell] as const];
  });
  const { id, line, others, picture } = leftover;
  const row = { id, line, cells: Object.fromEntries(cells), others: othersCodec.write(others) };
  return picture === undefined ? row : { ...row, picture };
}

export function writeCell<C extends Column>(column: C, cells: { readonly [K in C]?: Cells[K] }): Json {
  const cell = cells[column];
  const codec: Codec<Cells[C]> = cellCodecs[column];
  return cell === undefined ? null : codec.write(cell);
}

/** The parts of a row by name, each of which can change by itself. */
export function leftoverParts(leftover: Omit<Leftover, "id">): ReadonlyMap<string, Json> {
  const parts = new Map<string, Json>([
    ["line", lineCodec.write(leftover.line)],
    ["others", othersCodec.write(leftover.others)],
  ]);
  for (const column of columns) {
    const cell = writeCell(column, leftover.cells);
    if (cell !== null) parts.set(`cells.${column}`, cell);
  }
  if (leftover.picture !== undefined) parts.set("picture", leftover.picture);
  return parts;
}

// ---- Reading

const mostProblems = 100;

/** Reads a project's JSON of this or an earlier version: all of it, or every fault with its place. Never throws. */
export function readProjectJson(json: unknown): Result<Project, readonly ProjectProblem[]> {
  const version = versionOf(json);
  if (!version.ok) return err([version.error]);
  const { project, problems } = readNested(migrated(version.value.json, version.value.version));
  if (problems.length === 0) return ok(project);
  return err(
    problems.length <= mostProblems
      ? problems
      : [...problems.slice(0, mostProblems), { path: "", kind: "more-problems" }],
  );
}

type Versioned = { readonly json: JsonObject; readonly version: number };

function versionOf(json: unknown): Result<Versioned, ProjectProblem> {
  if (!isObject(json) || json.format !== projectFormat) return err({ path: "", kind: "not-a-project" });
  const { version } = json;
  if (version === undefined) return err({ path: "version", kind: "missing" });
  if (typeof version !== "number" || !Number.isInteger(version)) {
    return err({ path: "version", kind: "wrong-type", expected: "whole-number" });
  }
  if (version < 1) return err({ path: "version", kind: "out-of-range", value: version });
  if (version > projectVersion) {
    return err({ path: "version", kind: "newer-version", version, known: projectVersion });
  }
  return ok({ json, version });
}

export type ReadProject = { readonly project: Project; readonly problems: readonly ProjectProblem[] };

/** Reads what is there; whatever cannot be used is named, and the usual stands in its place. */
function readNested(json: JsonObject): ReadProject {
  const facts = readFacts((name) => valueAt(json, name), usualFacts);
  const leftovers = readList(json, "leftovers", mostOf.rows, readLeftover);
  const rough = readList(json, "rough", mostOf.rough, (value, path) => readPart(roughCodec, value, path));
  const ticked = readList(json, "ticked", mostOf.ticks, (value, path) => readPart(idCodec, value, path));
  const project = projectOf(facts.facts, {
    leftovers: leftovers.values,
    rough: rough.values,
    ticked: new Set(ticked.values),
  });
  const twice = [...repeated(leftovers.values, "leftovers"), ...repeated(rough.values, "rough")];
  return {
    project,
    problems: [...facts.problems, ...leftovers.problems, ...rough.problems, ...ticked.problems, ...twice],
  };
}

export const usualFacts: Facts = factsOf(newProject({ title: "", createdAt: 0 }));

type ReadFacts = { readonly facts: Facts; readonly problems: readonly ProjectProblem[] };

export function readFacts(value: (name: FactName) => unknown, usual: Facts): ReadFacts {
  const problems: ProjectProblem[] = [];
  let facts = usual;
  for (const name of factNames) {
    const read = readFact(name, value(name));
    if (read.ok) facts = { ...facts, ...read.value };
    else problems.push(...read.error);
  }
  return { facts, problems };
}

/** One fact, to be laid over the others. */
export function readFact<F extends FactName>(
  name: F,
  value: unknown,
): Result<{ readonly [K in F]: Facts[K] }, readonly ProjectProblem[]> {
  const codec: Codec<Facts[F]> = codecOf(name);
  const read = readPart(codec, value, name);
  return read.ok ? ok(fact(name, read.value)) : read;
}

function fact<F extends FactName>(name: F, value: Facts[F]): { readonly [K in F]: Facts[K] } {
  return { [name]: value } as { readonly [K in F]: Facts[K] };
}

function valueAt(json: JsonObject, name: string): unknown {
  return name.split(".").reduce<unknown>((value, key) => {
    return isObject(value) && Object.hasOwn(value, key) ? value[key] : undefined;
  }, json);
}

type ReadList<T> = { readonly values: readonly T[]; readonly problems: readonly ProjectProblem[] };

function readList<T>(
  json: JsonObject,
  name: string,
  most: number,
  read: (value: unknown, path: string) => Result<T, readonly ProjectProblem[]>,
): ReadList<T> {
  const list: unknown = json[name];
  const nothing = { values: [], problems: [] };
  if (list === undefined) return { ...nothing, problems: [{ path: name, kind: "missing" }] };
  if (!Array.isArray(list)) {
    return { ...nothing, problems: [{ path: name, kind: "wrong-type", expected: "list" }] };
  }
  if (list.length > most) return { ...nothing, problems: [{ path: name, kind: "too-many", most }] };
  const all = list.map((value: unknown, index) => read(value, under(name, index)));
  return {
    values: all.flatMap((one) => (one.ok ? [one.value] : [])),
    problems: all.flatMap((one) => (one.ok ? [] : one.error)),
  };
}

function readLeftover(value: unknown, path: string): Result<Leftover, readonly ProjectProblem[]> {
  if (!isObject(value)) return err([{ path, kind: "wrong-type", expected: "object" }]);
  const id = readPart(idCodec, value.id, `${path}.id`);
  if (!id.ok) return id;
  if (!isObject(value.cells)) {
    return err([{ path: `${path}.cells`, kind: "wrong-type", expected: "object" }]);
  }
  const cells = Object.entries(value.cells).map(([column, cell]) => [`cells.${column}`, cell] as const);
  const parts = new Map<string, unknown>([["line", value.line], ["others", value.others], ...cells]);
  if (value.picture !== undefined) parts.set("picture", value.picture);
  const { leftover, problems } = readLeftoverParts(id.value, parts, path);
  return problems.length === 0 ? ok(leftover) : err(problems);
}

function repeated(list: readonly { readonly id: string }[], name: string): readonly ProjectProblem[] {
  const seen = new Set<string>();
  return list.flatMap(({ id }, index): readonly ProjectProblem[] => {
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    return [{ path: under(name, index), kind: "twice", id }];
  });
}

export function isObject(value: unknown): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
