import { areaOf, type Length, length, type Size } from "../length/index.ts";
import { canBeCut, type ToCut } from "./checker-cutting.ts";
import { type CheckedSized, type CheckInput, type Heap, isSized } from "./checker-input.ts";
import { trimAllowed } from "./checker-pieces.ts";
import type { Cell } from "./checker-tree.ts";
import type { LayoutProblem, Side, TreePath } from "./problems.ts";
import type { ClothSource, UnitCloth } from "./types.ts";

/** One rectangle of plain cloth that a cell or a unit wants, in cut size. */
type Want = Size & {
  readonly path: TreePath;
  readonly fabric: string;
  readonly source: ClothSource;
};

type FromLength = Want & { readonly source: Exclude<ClothSource, "buy"> };

/** More of one kind than this is not looked at one by one. */
const mostInUnit = 200;

/** Plain cloth: known fabrics; what comes off her lengths fits them, what is bought fits what is bought. */
export function clothProblems(cells: readonly Cell[], input: CheckInput, heap: Heap): LayoutProblem[] {
  const wants = cells.flatMap(wantsOf);
  const known = new Set(input.fabrics.map(({ id }) => id));
  return [
    ...wants.flatMap((want) => fabricProblems(want, known)),
    ...lengthProblems(wants.filter(isFromLength), heap),
    ...buyProblems(
      wants.filter((want) => want.source === "buy"),
      input,
    ),
  ];
}

function wantsOf({ node, path, taken }: Cell): Want[] {
  if (node.kind === "cloth") return [{ ...taken, path, fabric: node.fabric, source: node.source }];
  return node.kind === "unit" ? node.cloth.flatMap((cloth) => wantsOfUnit(cloth, path)) : [];
}

function wantsOfUnit({ width, height, fabric, source, count }: UnitCloth, path: TreePath): Want[] {
  const want = { width, height, path, fabric, source };
  return Array.from({ length: Math.max(0, Math.min(mostInUnit, Math.floor(count) || 0)) }, () => want);
}

function isFromLength(want: Want): want is FromLength {
  return want.source !== "buy";
}

function fabricProblems({ path, fabric }: Want, known: ReadonlySet<string>): LayoutProblem[] {
  return known.has(fabric) ? [] : [{ kind: "unknown-fabric", path, fabric }];
}

// ---- From her lengths

function lengthProblems(wants: readonly FromLength[], heap: Heap): LayoutProblem[] {
  const copies = grouped(wants, ({ source }) => `${source.copy} of ${source.piece}`);
  return copies.flatMap((group) => {
    const [first] = group;
    const row = heap.get(first.source.piece);
    const problem = sourceProblem(first, row?.kind === "length" && isSized(row) ? row : undefined, heap);
    if (problem) return [problem];
    return row && isSized(row) ? [...ofOneFabric(row, group), ...cutProblems(row, group)] : [];
  });
}

function sourceProblem(
  want: FromLength,
  row: CheckedSized | undefined,
  heap: Heap,
): LayoutProblem | undefined {
  const at = { path: want.path, piece: want.source.piece };
  if (!heap.has(want.source.piece)) return { kind: "unknown-piece", ...at };
  if (row === undefined) return { kind: "cloth-not-from-a-length", ...at };
  if (row.use === "keep-back" || row.use === "give-away") {
    return { kind: "not-to-be-used", ...at, use: row.use };
  }
  return undefined;
}

function ofOneFabric(row: CheckedSized, group: readonly FromLength[]): LayoutProblem[] {
  return group
    .filter(({ fabric }) => fabric !== row.fabric)
    .map(({ path, fabric }) => ({
      kind: "cloth-of-another-fabric",
      path,
      piece: row.id,
      fabric,
      has: row.fabric,
    }));
}

function cutProblems(row: CheckedSized, group: Group<FromLength>): LayoutProblem[] {
  if (row.keep !== "cut") return uncutProblems(row, group);
  const wanted = group.map((want) => toCut(want, row));
  if (canBeCut(wanted, [row])) return [];
  const [{ path, source }] = group;
  return [
    {
      kind: "cannot-be-shown-to-fit",
      path,
      piece: row.id,
      copy: source.copy,
      cells: group.length,
      needed: areaOfAll(group),
      has: areaOf(row.width * row.height),
    },
  ];
}

function toCut({ width, height }: Size, row: CheckedSized): ToCut {
  return { width, height, mayTurn: row.direction !== "one-way" };
}

/** A length she wants left whole, or only trimmed, gives one cell. */
function uncutProblems(row: CheckedSized, group: Group<FromLength>): LayoutProblem[] {
  const [first, second] = group;
  if (second) {
    return [{ kind: "copy-of-uncut-piece", path: second.path, piece: row.id, copy: second.source.copy }];
  }
  const ways = row.direction === "one-way" ? [false] : [false, true];
  const readings = ways.map((turned) => trimsOfLength(row, first, turned));
  return readings.reduce((best, next) => (next.length < best.length ? next : best));
}

function trimsOfLength(row: CheckedSized, want: Want, turned: boolean): LayoutProblem[] {
  const has: Size = turned ? { width: row.height, height: row.width } : row;
  return (["width", "height"] as const).flatMap((side) => trimOfLength(row, want, { side, has: has[side] }));
}

function trimOfLength(
  { id, keep }: CheckedSized,
  want: Want,
  { side, has }: { readonly side: Side; readonly has: Length },
): LayoutProblem[] {
  const needed = want[side];
  const at = { path: want.path, piece: id, side };
  if (needed > has) return [{ kind: "piece-too-small", ...at, needed, has }];
  if (keep === "whole") return needed === has ? [] : [{ kind: "not-whole", ...at, needed, has }];
  const [trimmed, most] = [length(has - needed), trimAllowed(has)];
  return trimmed <= most ? [] : [{ kind: "trimmed-too-much", ...at, trimmed, most }];
}

// ---- Bought

function buyProblems(wants: readonly Want[], { buy }: CheckInput): LayoutProblem[] {
  return grouped(wants, ({ fabric }) => fabric).flatMap((group) => {
    const [{ path, fabric }] = group;
    const rows = buy.filter((row) => row.use === "plain" && row.fabric === fabric);
    if (rows.length === 0) return [{ kind: "cloth-not-bought", path, fabric }];
    return ofFabric(group, rows);
  });
}

type Row = { readonly width: Length; readonly length: Length };

function ofFabric(group: Group<Want>, rows: readonly Row[]): LayoutProblem[] {
  const widest = length(Math.max(...rows.map(({ width }) => width)));
  const wide = group.flatMap((want) => widthProblems(want, widest));
  if (wide.length > 0) return wide;
  const cloths = rows.map((row) => ({ width: row.width, height: row.length }));
  const wanted = group.map(({ width, height }) => ({ width, height, mayTurn: true }));
  if (canBeCut(wanted, cloths)) return [];
  const [{ path, fabric }] = group;
  const [needed, has] = [areaOfAll(group), areaOfAll(cloths)];
  return [{ kind: "bought-too-little", path, fabric, cells: group.length, needed, has }];
}

/** Wider than the bolt is seamed, never one cell. */
function widthProblems({ path, fabric, width, height }: Want, widest: Length): LayoutProblem[] {
  const needed = length(Math.min(width, height));
  return needed <= widest ? [] : [{ kind: "cloth-too-wide", path, fabric, needed, has: widest }];
}

// ---- Both

type Group<T> = readonly [T, ...T[]];

function grouped<T>(items: readonly T[], keyOf: (item: T) => string): Group<T>[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return [...groups.values()];
}

function areaOfAll(sizes: readonly Size[]): ReturnType<typeof areaOf> {
  return areaOf(sizes.reduce((sum, { width, height }) => sum + width * height, 0));
}
