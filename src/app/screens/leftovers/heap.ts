import {
  checkDraft,
  type Draft,
  type DraftProblem,
  type Fabric,
  fabricValue,
  heapArea,
  isUndyed,
  type Job,
  type Piece,
  type PileName,
  pileNames,
  pileOf,
  type Use,
} from "../../../engine/cloth/index.ts";
import { type Area, areaOf, inches } from "../../../engine/length/index.ts";
import {
  draftOfProject,
  type Leftover,
  newProject,
  type Project,
  pieceOf,
  type RoughStock,
} from "../../../files/index.ts";

/** A row that can be worked with, and the cloth it is of. */
export type Sorted = {
  /** The row's id, or the rough stock's. */
  readonly id: string;
  readonly piece: Piece;
  readonly fabric: Fabric;
  /** null: a row of the list. */
  readonly rough: RoughStock | null;
};

export type Pile = {
  readonly name: PileName;
  readonly rows: readonly Sorted[];
  readonly count: number;
  readonly area: Area;
  /** The mark that all of its rows have; null: they differ. */
  readonly use: Use | null;
};

/** How much there is of one fabric. */
export type FabricShare = {
  readonly fabric: Fabric;
  /** Whether its colour is hers; else it is only drawn. */
  readonly isKnown: boolean;
  readonly rows: readonly string[];
  readonly rough: readonly string[];
  readonly area: Area;
  /** Of all cloth in the heap, 0 to 1. */
  readonly share: number;
  /** Beside the fabric there is most of, 0 to 1. */
  readonly ofMost: number;
};

/** A row that waits, and what `checkDraft` has against it; a row that can't even be read has nothing here. */
export type Waiting = { readonly leftover: Leftover; readonly problems: readonly DraftProblem[] };

/** The heap as it lies on the table: her own cloth, whatever is planned with it. */
export type Heap = {
  readonly project: Project;
  readonly rows: readonly Sorted[];
  /** What a row is drawn in, by its id; null: no colour is known. */
  readonly colours: ReadonlyMap<string, string | null>;
  readonly waiting: readonly Waiting[];
  /** Those there is something in. */
  readonly piles: readonly Pile[];
  /** Most first. */
  readonly fabrics: readonly FabricShare[];
  /** From light to dark. */
  readonly values: readonly FabricShare[];
  readonly count: number;
  readonly area: Area;
  /** What keeps the whole heap from being sorted, such as more pieces than any quilt leaves over. */
  readonly stop: DraftProblem | null;
};

/** Sorts a heap again and again. What is as it was before stays the same object, and is not drawn anew. */
export function heapSorter(): (project: Project) => Heap {
  let rows: readonly Sorted[] = [];
  return (project) => {
    const heap = heapOf(project, rows);
    rows = heap.rows;
    return heap;
  };
}

/** What lies on the table, also where the back's size isn't known yet and whatever is marked to stay out. */
export function heapOf(project: Project, before: readonly Sorted[] = []): Heap {
  const draft = draftOfHeap(project);
  const { checked, bad } = withoutBadRows(draft);
  const rows = checked.ok ? asBefore(sortedRows(project, draft, checked.value.job, bad), before) : [];
  const fabrics = fabricShares(rows);
  return {
    project,
    rows,
    colours: new Map(rows.map(({ id, fabric }) => [id, isUndyed(fabric) ? null : fabric.colour])),
    waiting: waitingRows(project, bad),
    piles: pileNames.map((name) => pileWith(name, rows)).filter(({ rows: inside }) => inside.length > 0),
    fabrics,
    values: [...fabrics].sort((one, other) => fabricValue(other.fabric) - fabricValue(one.fabric)),
    count: countOf(rows),
    area: areaOfAll(rows),
    stop: stopOf(checked, draft),
  };
}

// Nothing yet to plan with is no problem on the page where it is entered.
function stopOf(checked: Checked, draft: Draft): DraftProblem | null {
  if (checked.ok || draft.pieces.length === 0) return null;
  return (
    checked.error.find(({ severity, kind }) => severity === "stop" && kind !== "nothing-to-plan") ?? null
  );
}

// Any back will do: what is asked here is asked of the rows alone.
const anySide = inches(100);

function draftOfHeap(project: Project): Draft {
  const { settings, size, plain } = newProject({ title: "", createdAt: 0, unit: project.settings.unit });
  const heap = { ...project.heap, cutting: "clean", reserveBinding: false, reserveLabel: false } as const;
  const { pieces } = draftOfProject({ ...project, heap });
  const rest = draftOfProject({ ...project, settings, size, plain, leftovers: [], rough: [] });
  return { ...rest, back: { width: anySide, height: anySide }, pieces };
}

type Checked = ReturnType<typeof checkDraft>;
type BadRows = ReadonlyMap<number, readonly DraftProblem[]>;

/** The rows that can be worked with, and what is against the others. Marks are no concern here. */
function withoutBadRows(draft: Draft): { readonly checked: Checked; readonly bad: BadRows } {
  const unmarked = { ...draft, pieces: draft.pieces.map((piece) => ({ ...piece, use: "yes" as const })) };
  const checked = checkDraft(unmarked);
  const bad = checked.ok ? new Map<number, readonly DraftProblem[]>() : problemsByRow(checked.error);
  if (bad.size === 0) return { checked, bad };
  const rest = unmarked.pieces.filter(({ row }) => !bad.has(row));
  return { checked: checkDraft({ ...unmarked, pieces: rest }), bad };
}

function problemsByRow(problems: readonly DraftProblem[]): BadRows {
  const rows = new Map<number, readonly DraftProblem[]>();
  for (const problem of problems) {
    if (problem.severity === "stop" && problem.row !== null) {
      rows.set(problem.row, [...(rows.get(problem.row) ?? []), problem]);
    }
  }
  return rows;
}

function sortedRows(project: Project, draft: Draft, job: Job, bad: BadRows): readonly Sorted[] {
  const given = draft.pieces.filter(({ row }) => !bad.has(row));
  const byId = new Map(job.fabrics.map((fabric) => [fabric.id, fabric]));
  return job.pieces.flatMap((piece, index) => {
    const { row = 0, use = "yes" } = given[index] ?? {};
    const fabric = byId.get(piece.fabric);
    const source = sourceOf(project, row);
    return fabric === undefined || source === null ? [] : [{ ...source, piece: { ...piece, use }, fabric }];
  });
}

function asBefore(rows: readonly Sorted[], before: readonly Sorted[]): readonly Sorted[] {
  const fabrics = new Map(before.map(({ fabric }) => [fabric.id, fabric]));
  const byId = new Map(before.map((row) => [row.id, row]));
  return rows.map((row) => {
    const fabric = sameValue(fabrics.get(row.fabric.id), row.fabric);
    const was = byId.get(row.id);
    const isSame = was !== undefined && was.fabric === fabric && was.rough === row.rough;
    return isSame && sameValue(was.piece, row.piece) === was.piece ? was : { ...row, fabric };
  });
}

function sameValue<T>(before: T | undefined, now: T): T {
  return before !== undefined && JSON.stringify(before) === JSON.stringify(now) ? before : now;
}

/** Rows are numbered from 1, rough stock goes on counting behind them. */
function sourceOf({ leftovers, rough }: Project, row: number): Pick<Sorted, "id" | "rough"> | null {
  const leftover = leftovers[row - 1];
  if (leftover !== undefined) return { id: leftover.id, rough: null };
  const stock = rough[row - leftovers.length - 1];
  return stock === undefined ? null : { id: stock.id, rough: stock };
}

function waitingRows({ leftovers }: Project, bad: BadRows): readonly Waiting[] {
  return leftovers.flatMap((leftover, index) => {
    const problems = bad.get(index + 1) ?? [];
    return problems.length > 0 || pieceOf(leftover, index + 1) === null ? [{ leftover, problems }] : [];
  });
}

function pileWith(name: PileName, all: readonly Sorted[]): Pile {
  const rows = all.filter(({ piece }) => pileOf(piece) === name);
  return { name, rows, count: countOf(rows), area: areaOfAll(rows), use: commonUse(rows) };
}

export function commonUse(rows: readonly Sorted[]): Use | null {
  const [first, ...others] = new Set(rows.map(({ piece }) => piece.use));
  return first !== undefined && others.length === 0 ? first : null;
}

function countOf(rows: readonly Sorted[]): number {
  return rows.reduce((count, { piece }) => count + piece.count, 0);
}

function areaOfAll(rows: readonly Sorted[]): Area {
  return areaOf(rows.reduce((area, { piece }) => area + heapArea(piece), 0));
}

function fabricShares(rows: readonly Sorted[]): readonly FabricShare[] {
  const byFabric = new Map<Fabric, Sorted[]>();
  for (const row of rows) {
    const own = byFabric.get(row.fabric) ?? [];
    own.push(row);
    byFabric.set(row.fabric, own);
  }
  const areas = [...byFabric.values()].map(areaOfAll);
  const [all, most] = [areaOfAll(rows), Math.max(1, ...areas)];
  return [...byFabric]
    .map(([fabric, own]) => shareOf(fabric, own, { all, most }))
    .sort((one, other) => other.area - one.area);
}

function shareOf(
  fabric: Fabric,
  rows: readonly Sorted[],
  { all, most }: { readonly all: number; readonly most: number },
): FabricShare {
  const area = areaOfAll(rows);
  return {
    fabric,
    isKnown: !isUndyed(fabric),
    rows: rows.flatMap(({ id, rough }) => (rough === null ? [id] : [])),
    rough: rows.flatMap(({ id, rough }) => (rough === null ? [] : [id])),
    area,
    share: area / Math.max(1, all),
    ofMost: area / most,
  };
}
