import * as Y from "yjs";
import {
  type Column,
  type FactName,
  type Facts,
  factNames,
  factsOf,
  type KeptPlan,
  type Leftover,
  leftoverParts,
  longestText,
  mostOf,
  type NewLeftover,
  type Project,
  roughCodec,
  usualFacts,
  wellFormed,
  writeFacts,
} from "../files/index.ts";
import { idsInOrder, partsOf, type Roots, tickKey } from "./roots.ts";
import type { LeftoverChange, NewRoughStock, ProjectEdits } from "./types.ts";

/** Makes one step of undo of `change`. `field`: edits of one field in quick succession are one step. */
export type Transact = (field: string | null, change: () => void) => void;

/** The edits of a project, each in one transaction of its document. */
export function editsOf(
  roots: Roots,
  project: () => Project,
  transact: Transact,
  newId: () => string,
): ProjectEdits {
  const setFacts = (change: Partial<Facts>) => {
    const names = factNames.filter((name) => Object.hasOwn(change, name));
    transact(fieldOf(names, chosenFacts), () => writeSomeFacts(roots, names, { ...usualFacts, ...change }));
  };
  return {
    setTitle: (title) => setFacts({ title: limited(title, longestText.title) }),
    setSettings: (change) => setFacts(inSection("settings", change)),
    setSize: (change) => setFacts(inSection("size", change)),
    setTopPhoto: (topPhoto) => setFacts({ topPhoto }),
    setPhotos: (photos) => setFacts({ photos }),
    setTime: (time) => setFacts({ time }),
    setPlain: (change) => setFacts(inSection("plain", change)),
    setHeap: (change) => setFacts(inSection("heap", change)),
    setWishes: (change) => setFacts(inSection("wishes", change)),
    ...rowEdits(roots, transact, newId),
    ...roughEdits(roots, transact, newId),
    keepPlan: (plan) => transact(null, () => writePlan(roots, plan)),
    tick: (step, done) => transact(null, () => writeTick(roots, project().plan, { step, done })),
  };
}

// What is chosen, not typed: two choices made quickly are still two steps of undo.
const chosenFacts: ReadonlySet<string> = new Set<FactName>(
  factNames.filter((name) => name.startsWith("wishes.") || name.startsWith("heap.")),
)
  .add("time")
  .add("topPhoto")
  .add("photos")
  .add("settings.unit")
  .add("size.from")
  .add("size.method");
const chosenCells: ReadonlySet<string> = new Set<Column>([
  "kind",
  "keep",
  "use",
  "direction",
  "grain",
  "washed",
]);

/** What is typed letter by letter has a name, under which its letters are one step; what is chosen has none. */
function fieldOf(names: readonly string[], chosen: ReadonlySet<string>): string | null {
  return names.every((name) => chosen.has(name)) ? null : names.join(" ");
}

function inSection(section: string, change: object): Partial<Facts> {
  return Object.fromEntries(
    Object.entries(change).map(([name, value]: [string, unknown]) => [`${section}.${name}`, value]),
  );
}

type RowEdits = Pick<ProjectEdits, "addRows" | "changeRow" | "changeRows" | "removeRows" | "moveRow">;

function rowEdits(roots: Roots, transact: Transact, newId: () => string): RowEdits {
  const changeRows = (ids: readonly string[], change: LeftoverChange) => {
    const typed = fieldOf(Object.keys(change.cells ?? change), chosenCells);
    transact(typed === null ? null : `${ids.join(" ")} ${typed}`, () => {
      for (const id of ids) changeRow(roots, id, change);
    });
  };
  return {
    addRows: (rows, before) => {
      const room = Math.max(0, mostOf.rows - roots.leftovers.size);
      const added = rows.slice(0, room).map((row) => ({ ...row, id: newId() }));
      transact(null, () => {
        for (const row of added) writeRow(roots, row);
        placeRows(
          roots.order,
          roots.leftovers,
          added.map(({ id }) => id),
          before ?? null,
        );
      });
      return added.map(({ id }) => id);
    },
    changeRows,
    changeRow: (id, change) => changeRows([id], change),
    removeRows: (ids) => transact(null, () => removeFrom(roots.leftovers, roots.order, ids)),
    moveRow: (id, before) => {
      if (!roots.leftovers.has(id) || id === before) return;
      transact(null, () => placeRows(roots.order, roots.leftovers, [id], before));
    },
  };
}

type RoughEdits = Pick<ProjectEdits, "addRough" | "changeRough" | "removeRough">;

function roughEdits(roots: Roots, transact: Transact, newId: () => string): RoughEdits {
  const write = (id: string, stock: NewRoughStock) => {
    setIfChanged(roots.rough, id, limitedTexts(roughCodec.write({ ...stock, id }), longestText.cell));
  };
  return {
    addRough: (stock) => {
      const id = newId();
      transact(null, () => {
        write(id, stock);
        roots.roughOrder.push([id]);
      });
      return id;
    },
    changeRough: (id, stock) => {
      if (roots.rough.has(id)) transact(`rough ${id}`, () => write(id, stock));
    },
    removeRough: (id) => transact(null, () => removeFrom(roots.rough, roots.roughOrder, [id])),
  };
}

/** Makes a document say what the project says, and changes only what differs. Inside a transaction. */
export function writeWhole(roots: Roots, project: Project): void {
  writeSomeFacts(roots, factNames, factsOf(project));
  const ids = new Set(project.leftovers.map(({ id }) => id));
  removeFrom(
    roots.leftovers,
    roots.order,
    [...roots.leftovers.keys()].filter((id) => !ids.has(id)),
  );
  for (const row of project.leftovers) writeRow(roots, row);
  setOrder(roots.order, [...ids]);
  writeRough(roots, project);
  writeTicks(roots, project);
}

function writeRough(roots: Roots, { rough }: Project): void {
  const ids = new Set(rough.map(({ id }) => id));
  removeFrom(
    roots.rough,
    roots.roughOrder,
    [...roots.rough.keys()].filter((id) => !ids.has(id)),
  );
  for (const stock of rough) setIfChanged(roots.rough, stock.id, roughCodec.write(stock));
  setOrder(roots.roughOrder, [...ids]);
}

function writeTicks(roots: Roots, { plan, ticked }: Project): void {
  const keys = new Set(plan === null ? [] : [...ticked].map((step) => tickKey(plan.keptAt, step)));
  for (const key of [...roots.ticked.keys()]) if (!keys.has(key)) roots.ticked.delete(key);
  for (const key of keys) setIfChanged(roots.ticked, key, true);
}

function writeSomeFacts(roots: Roots, names: readonly FactName[], facts: Facts): void {
  const json = writeFacts(facts);
  for (const name of names) {
    const value = json.get(name) ?? null;
    setIfChanged(roots.facts, name, hasPlan(name) ? value : limitedTexts(value, longestText.cell));
  }
}

/** A plan's text is long, and none of hers to shorten. */
function hasPlan(name: FactName): boolean {
  return name === "plan" || name === "wishes.stays" || name === "wishes.byHand";
}

function writePlan(roots: Roots, plan: KeptPlan | null): void {
  writeSomeFacts(roots, ["plan"], { ...usualFacts, plan });
  const own = plan === null ? null : tickKey(plan.keptAt, "");
  for (const key of [...roots.ticked.keys()]) {
    if (own === null || !key.startsWith(own)) roots.ticked.delete(key);
  }
}

function writeTick(
  roots: Roots,
  plan: KeptPlan | null,
  { step, done }: { step: string; done: boolean },
): void {
  if (plan === null || step === "" || step.length > 100) return;
  const key = tickKey(plan.keptAt, step);
  if (done) setIfChanged(roots.ticked, key, true);
  else if (roots.ticked.has(key)) roots.ticked.delete(key);
}

export function writeRow(roots: Roots, { id, ...row }: Leftover): void {
  const parts = limitedParts(row);
  const there = roots.leftovers.get(id);
  const map = there instanceof Y.Map ? there : new Y.Map<unknown>();
  if (map !== there) roots.leftovers.set(id, map);
  for (const name of [...map.keys()]) if (!parts.has(name)) map.delete(name);
  for (const [name, value] of parts) setIfChanged(map, name, value);
}

/** Only what the change names: another tab may be at another cell of the same row. */
function changeRow(roots: Roots, id: string, change: LeftoverChange): void {
  const row = roots.leftovers.get(id);
  if (!(row instanceof Y.Map) || partsOf(row) === null) return;
  const cells = Object.entries(change.cells ?? {}).filter(([, cell]) => cell !== null);
  const parts = limitedParts({
    line: change.line ?? "",
    others: change.others ?? {},
    cells: Object.fromEntries(cells),
  });
  if (change.line !== undefined) setIfChanged(row, "line", parts.get("line"));
  if (change.others !== undefined) setIfChanged(row, "others", parts.get("others"));
  for (const [column, cell] of Object.entries(change.cells ?? {})) {
    const name = `cells.${column}`;
    if (cell !== null) setIfChanged(row, name, parts.get(name));
    else if (row.has(name)) row.delete(name);
  }
}

function limitedParts(row: NewLeftover): ReadonlyMap<string, unknown> {
  const parts = [...leftoverParts(row)].map(([name, value]) => {
    const most = name === "line" || name === "others" ? longestText.line : longestText.cell;
    return [name, limitedTexts(name === "others" ? fewEntries(value) : value, most)] as const;
  });
  return new Map(parts);
}

function fewEntries(others: unknown): unknown {
  if (!Array.isArray(others)) return others;
  const pairs: readonly unknown[] = others.slice(0, mostOf.others);
  return pairs.map((pair) => {
    if (!Array.isArray(pair)) return pair;
    const [heading, cell]: readonly unknown[] = pair;
    return [limitedTexts(heading, longestText.cell), cell];
  });
}

/** A whole book pasted into one cell is kept as far as a cell goes. */
function limitedTexts(value: unknown, most: number): unknown {
  if (typeof value === "string") return limited(value, most);
  if (Array.isArray(value)) return value.map((one) => limitedTexts(one, most));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, limitedTexts(one, most)]));
}

function limited(text: string, most: number): string {
  return wellFormed(text.slice(0, most));
}

export function setIfChanged(map: Y.Map<unknown>, name: string, value: unknown): void {
  if (map.has(name) && JSON.stringify(map.get(name)) === JSON.stringify(value)) return;
  map.set(name, value);
}

export function removeFrom(listed: Y.Map<unknown>, order: Y.Array<unknown>, ids: readonly string[]): void {
  const gone = new Set<unknown>(ids.filter((id) => listed.has(id)));
  for (const id of gone) listed.delete(String(id));
  takeOut(order, gone);
}

function takeOut(order: Y.Array<unknown>, ids: ReadonlySet<unknown>): void {
  const places = order.toArray().flatMap((id, index) => (ids.has(id) ? [index] : []));
  for (const index of places.reverse()) order.delete(index, 1);
}

/** Puts ids before another one, or at the end; wherever they were before, they are there no more. */
export function placeRows(
  order: Y.Array<unknown>,
  listed: Y.Map<unknown>,
  ids: readonly string[],
  before: string | null,
): void {
  const now = idsInOrder(order, listed);
  const others = now.filter((id) => !ids.includes(id));
  const at = before === null ? -1 : others.indexOf(before);
  const place = at < 0 ? others.length : at;
  const wanted = [...others.slice(0, place), ...ids, ...others.slice(place)];
  if (JSON.stringify(wanted) === JSON.stringify(order.toArray())) return;
  takeOut(order, new Set(ids));
  const index = at < 0 ? order.length : order.toArray().indexOf(before);
  order.insert(index < 0 ? order.length : index, [...ids]);
}

export function setOrder(order: Y.Array<unknown>, ids: readonly string[]): void {
  if (JSON.stringify(order.toArray()) === JSON.stringify(ids)) return;
  order.delete(0, order.length);
  order.push([...ids]);
}
