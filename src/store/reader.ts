import type * as Y from "yjs";
import {
  type FactName,
  type Facts,
  factNames,
  isFactName,
  type Leftover,
  mostOf,
  type Project,
  type ProjectProblem,
  projectOf,
  projectVersion,
  type ReadLeftover,
  type RoughStock,
  readFact,
  readFacts,
  readLeftoverParts,
  readPart,
  roughCodec,
  usualFacts,
} from "../files/index.ts";
import { idsInOrder, partsOf, type Roots, tickKey } from "./roots.ts";

/**
 * Reads a document as a project, at first whole and then only what changed: unchanged rows and sections stay the
 * same objects. Whatever another tab or a file put there, it never throws; what cannot be used is named.
 */
export class ProjectReader {
  readonly #roots: Roots;
  readonly #changed = { facts: new Set<FactName>(), rows: new Set<string>() };
  readonly #factProblems = new Map<FactName, readonly ProjectProblem[]>();
  readonly #rows = new Map<string, ReadLeftover | null>();
  #facts: Facts;
  #leftovers: readonly Leftover[] = [];
  #rough: readonly RoughStock[] = [];
  #ticked: ReadonlySet<string> = new Set();
  #listProblems: readonly ProjectProblem[] = [];
  project: Project;
  problems: readonly ProjectProblem[] = [];

  constructor(roots: Roots) {
    this.#roots = roots;
    const { facts, problems } = readFacts((name) => roots.facts.get(name), usualFacts);
    this.#facts = facts;
    for (const problem of problems) this.#nameFact(problem);
    for (const id of roots.leftovers.keys()) this.#changed.rows.add(id);
    this.project = this.#read();
    roots.facts.observe(({ keysChanged }) => this.#factsChanged(keysChanged));
    roots.leftovers.observeDeep((events) => this.#rowsChanged(events));
  }

  /** Made by a later Verso. */
  get isNewer(): boolean {
    const version = this.#roots.about.get("version");
    return typeof version === "number" && version > projectVersion;
  }

  /** Brings `project` and `problems` to what the document says now. */
  refresh(): void {
    for (const name of this.#changed.facts) this.#readFact(name);
    this.#changed.facts.clear();
    this.project = this.#read(this.project);
  }

  #nameFact(problem: ProjectProblem): void {
    const fact = factNames.find((name) => isWithin(problem.path, name));
    if (fact === undefined) return;
    this.#factProblems.set(fact, [...(this.#factProblems.get(fact) ?? []), problem]);
  }

  #factsChanged(keys: ReadonlySet<unknown>): void {
    for (const key of keys) if (typeof key === "string" && isFactName(key)) this.#changed.facts.add(key);
  }

  #rowsChanged(events: readonly Y.YEvent<Y.AbstractType<unknown>>[]): void {
    for (const { target, path, keys } of events) {
      const ids = target === this.#roots.leftovers ? keys.keys() : path.slice(0, 1);
      for (const id of ids) this.#changed.rows.add(String(id));
    }
  }

  #readFact(name: FactName): void {
    const read = readFact(name, this.#roots.facts.get(name));
    this.#facts = { ...this.#facts, ...(read.ok ? read.value : { [name]: usualFacts[name] }) };
    if (read.ok) this.#factProblems.delete(name);
    else this.#factProblems.set(name, read.error);
  }

  #read(before?: Project): Project {
    const lists: ProjectProblem[] = [];
    this.#readRows();
    this.#leftovers = sameList(this.#leftovers, this.#rowsInOrder(lists));
    this.#rough = sameList(this.#rough, this.#readRough(lists));
    this.#ticked = sameSet(this.#ticked, this.#readTicks());
    this.#listProblems = lists;
    this.problems = [...this.#factProblems.values()].flat().concat(this.#listProblems);
    const { leftovers, rough, ticked } = {
      leftovers: this.#leftovers,
      rough: this.#rough,
      ticked: this.#ticked,
    };
    return projectOf(this.#facts, { leftovers, rough, ticked }, before);
  }

  #readRows(): void {
    for (const id of this.#changed.rows) {
      const parts = partsOf(this.#roots.leftovers.get(id));
      const gone = !this.#roots.leftovers.has(id);
      if (gone) this.#rows.delete(id);
      else this.#rows.set(id, parts === null ? null : readLeftoverParts(id, parts, `leftovers.${id}`));
    }
    this.#changed.rows.clear();
  }

  #rowsInOrder(problems: ProjectProblem[]): readonly Leftover[] {
    const ids = idsInOrder(this.#roots.order, this.#roots.leftovers).slice(0, mostOf.rows);
    return ids.flatMap((id) => {
      const read = this.#rows.get(id) ?? null;
      if (read === null) problems.push({ path: `leftovers.${id}`, kind: "wrong-type", expected: "object" });
      else problems.push(...read.problems);
      return read === null ? [] : [read.leftover];
    });
  }

  #readRough(problems: ProjectProblem[]): readonly RoughStock[] {
    const before = new Map(this.#rough.map((stock) => [stock.id, stock]));
    const ids = idsInOrder(this.#roots.roughOrder, this.#roots.rough).slice(0, mostOf.rough);
    return ids.flatMap((id) => {
      const read = readPart(roughCodec, this.#roots.rough.get(id), `rough.${id}`);
      if (!read.ok) problems.push(...read.error);
      return read.ok ? [sameValue(before.get(id), { ...read.value, id })] : [];
    });
  }

  #readTicks(): ReadonlySet<string> {
    const { plan } = this.#facts;
    if (plan === null) return new Set();
    const start = tickKey(plan.keptAt, "");
    const keys = [...this.#roots.ticked.keys()].filter((key) => key.startsWith(start)).sort();
    return new Set(keys.map((key) => key.slice(start.length)));
  }
}

/** `size.topWidths[1].unit` is in `size.topWidths`. */
function isWithin(path: string, name: string): boolean {
  return path === name || path.startsWith(`${name}.`) || path.startsWith(`${name}[`);
}

function sameList<T>(before: readonly T[], now: readonly T[]): readonly T[] {
  return before.length === now.length && before.every((one, index) => one === now[index]) ? before : now;
}

function sameSet(before: ReadonlySet<string>, now: ReadonlySet<string>): ReadonlySet<string> {
  return before.size === now.size && [...now].every((one) => before.has(one)) ? before : now;
}

function sameValue<T>(before: T | undefined, now: T): T {
  return before !== undefined && JSON.stringify(before) === JSON.stringify(now) ? before : now;
}
