import { colourDifference, type Fabric, fabricValue, isUndyed } from "../../../src/engine/cloth/index.ts";
import type { LayoutNode, Path } from "../../../src/engine/layout/index.ts";
import type { Plan } from "../../../src/engine/plan/index.ts";
import { caterpillars } from "./caterpillar.ts";
import {
  type Axis,
  breakAt,
  type Cell,
  cellsOf,
  endOf,
  isCloth,
  sharedEdge,
  shown,
  startOf,
} from "./cells.ts";
import { brokenDirections } from "./direction.ts";
import { heavyCrossings } from "./heavyCrossing.ts";
import { lonelyBits } from "./lonelyBit.ts";
import { wrongLongSeams } from "./longSeam.ts";
import { nearMisses } from "./nearMiss.ts";
import { slivers } from "./sliver.ts";
import type { RuleBreak } from "./types.ts";

export const contrasts = ["blend", "mixed", "strong"] as const;
export type Contrast = (typeof contrasts)[number];

/** Below it nobody tells two fabrics apart across a table (CIEDE2000; over 5 reads as two colours). */
const alike = 5;
const strongEdges = 0.97;
/** Of the shared edges: so near to what swaps reach is good enough. */
const nearBest = 0.02;
/** How far a third's mean value may be from the whole's (L*). Common practice has no figure; ours. */
const balance = 12;
const spreadFrom = 6;
/** Cells in each third, below which there is no balance to judge. */
const fewest = 4;

/**
 * 10. Like fabrics never touch unless the heap forces it: no exchange of two cells of
 * one size, or of two in one row, that breaks no other rule would help. Strong: a
 * difference in value of 10 or in colour of 20 along 97 % of the shared edges, or within 2 points of what such
 * exchanges reach. A fabric of six cells or more does not lie in one third of the pieced part, and no third is lighter
 * or darker than the whole by more than 12, where an exchange would mend it.
 */
export function wrongContrast(plan: Plan, wish: Contrast = "mixed"): RuleBreak[] {
  const scene = sceneOf(plan, wish);
  return [
    ...likeFabrics(scene),
    ...(wish === "strong" ? weakEdges(scene) : []),
    ...crowdedFabrics(scene),
    ...lopsided(scene),
  ];
}

type Edge = { readonly one: number; readonly other: number; readonly long: number };

/** Cells by number, so that fabrics can change places. */
type Scene = {
  readonly plan: Plan;
  readonly cells: readonly Cell[];
  readonly fabrics: readonly (Fabric | null)[];
  readonly edges: readonly Edge[];
  readonly edgesOf: readonly (readonly Edge[])[];
  /** For each cell those of the same size and make that it may change places with. */
  readonly twins: readonly (readonly number[])[];
  readonly wish: Contrast;
};

function sceneOf(plan: Plan, wish: Contrast): Scene {
  const cells = cellsOf(plan);
  const edges = edgesBetween(cells);
  return {
    plan,
    cells,
    fabrics: cells.map(({ fabric }) => fabric),
    edges,
    edgesOf: cells.map((_, at) => edges.filter(({ one, other }) => one === at || other === at)),
    twins: cells.map((cell) => cells.flatMap((other, at) => (mayChange(cell, other) ? [at] : []))),
    wish,
  };
}

/** Edges between leftovers, and between leftovers and cloth: plain cloth beside plain cloth is meant so. */
function edgesBetween(cells: readonly Cell[]): Edge[] {
  return cells.flatMap((cell, one) =>
    cells.flatMap((next, other) => {
      const long = sharedEdge(cell, next, "x") + sharedEdge(cell, next, "y");
      return long > 0 && !(isCloth(cell) && isCloth(next)) ? [{ one, other, long }] : [];
    }),
  );
}

function mayChange(one: Cell, other: Cell): boolean {
  return (
    one !== other &&
    one.node.kind === "piece" &&
    other.node.kind === "piece" &&
    one.node.width === other.node.width &&
    one.node.height === other.node.height &&
    one.node.copy === undefined &&
    other.node.copy === undefined &&
    (one.piece?.kind === "half-square-triangle") === (other.piece?.kind === "half-square-triangle") &&
    one.piece?.direction === "none" &&
    other.piece?.direction === "none"
  );
}

function likeFabrics(scene: Scene): RuleBreak[] {
  return scene.edges.flatMap(({ one, other, long }) => {
    const cell = scene.cells[other];
    if (cell === undefined || !areLike(scene.fabrics[one], scene.fabrics[other], scene.wish)) return [];
    if (!swapHelps(scene, one) && !swapHelps(scene, other) && !orderHelps(scene, [one, other])) return [];
    const name = scene.fabrics[other]?.name ?? "";
    return [breakAt("contrast", cell, `${name} touches its like along ${shown(long)} in, and need not`)];
  });
}

function areLike(one: Fabric | null | undefined, other: Fabric | null | undefined, wish: Contrast): boolean {
  if (!one || !other) return false;
  if (one.id === other.id) return true;
  const difference = differenceOf(one, other);
  return wish !== "blend" && difference !== null && difference < alike;
}

function differenceOf(one: Fabric, other: Fabric): number | null {
  const [a, b] = [one.colours[0], other.colours[0]];
  if (a === undefined || b === undefined || isUndyed(one) || isUndyed(other)) return null;
  return colourDifference(a.lab, b.lab);
}

/** Is there a cell to change places with, so that less of like fabrics touches and no other rule is broken? */
function swapHelps(scene: Scene, at: number): boolean {
  const helping = (scene.twins[at] ?? []).filter((twin) => moreTouches(scene, at, twin) < 0);
  return helping.some((twin) => othersBroken(exchanged(scene, at, twin)) <= othersBroken(scene.plan));
}

function exchanged({ plan, cells }: Scene, at: number, twin: number): Plan {
  const [one, other] = [cells[at], cells[twin]];
  if (one === undefined || other === undefined) return plan;
  const layout = replaced(replaced(plan.layout, one.path, other.node), other.path, one.node);
  return { ...plan, layout };
}

/** Would the exchange make like touch like where it need not? Then it is none that helps. */
function partsLess(scene: Scene, at: number, twin: number): boolean {
  return moreTouches(scene, at, twin) > 0;
}

/** By how much more of like fabrics touches after the exchange. */
function moreTouches(scene: Scene, at: number, twin: number): number {
  const edges = [...(scene.edgesOf[at] ?? []), ...(scene.edgesOf[twin] ?? [])];
  const likeLength = (fabrics: Scene["fabrics"]) =>
    sumOf(
      edges.map(({ one, other, long }) => (areLike(fabrics[one], fabrics[other], scene.wish) ? long : 0)),
    );
  return likeLength(swapped(scene.fabrics, at, twin)) - likeLength(scene.fabrics);
}

/** Could either change places with another leftover in its row, so that less touches and no other rule is broken? */
function orderHelps(scene: Scene, touching: readonly number[]): boolean {
  const before = likeLengthOf(scene.plan, scene.wish);
  const broken = othersBroken(scene.plan);
  return touching.some((at) =>
    reorderings(scene.plan, scene.cells[at]?.path ?? []).some((layout) => {
      const plan = { ...scene.plan, layout };
      return likeLengthOf(plan, scene.wish) < before && othersBroken(plan) <= broken;
    }),
  );
}

/** What an order can spoil; which part is left long is settled after it. */
function othersBroken(plan: Plan): number {
  const others = [
    ...[lonelyBits, caterpillars, slivers, nearMisses, heavyCrossings],
    ...[brokenDirections, wrongLongSeams],
  ];
  return sumOf(others.map((check) => check(plan).length));
}

function likeLengthOf(plan: Plan, wish: Contrast): number {
  const cells = cellsOf(plan);
  return sumOf(
    edgesBetween(cells).map(({ one, other, long }) =>
      areLike(cells[one]?.fabric, cells[other]?.fabric, wish) ? long : 0,
    ),
  );
}

/** The layouts in which the leftover at `path` has changed places with another one of its row. */
function reorderings(plan: Plan, path: Path): LayoutNode[] {
  const own = path.at(-1);
  if (own === undefined) return [];
  const row = path.slice(0, -1).reduce((node, index) => partOf(node, index), plan.layout);
  if (row.kind !== "join" || row.parts[own]?.kind !== "piece") return [];
  return row.parts.flatMap((part, index) => {
    const mine = row.parts[own];
    if (part.kind !== "piece" || index === own || mine === undefined) return [];
    const parts = row.parts.with(own, part).with(index, mine);
    return [replaced(plan.layout, path.slice(0, -1), { ...row, parts })];
  });
}

function partOf(node: LayoutNode, index: number): LayoutNode {
  return node.kind === "join" ? (node.parts[index] ?? node) : node;
}

function replaced(node: LayoutNode, path: Path, by: LayoutNode): LayoutNode {
  const [index, ...rest] = path;
  if (index === undefined || node.kind !== "join") return by;
  return { ...node, parts: node.parts.with(index, replaced(partOf(node, index), rest, by)) };
}

function swapped(fabrics: Scene["fabrics"], one: number, other: number): Scene["fabrics"] {
  return fabrics.with(one, fabrics[other] ?? null).with(other, fabrics[one] ?? null);
}

// ---- Strong

function weakEdges(scene: Scene): RuleBreak[] {
  const share = strongShare(scene, scene.fabrics);
  const [cell] = scene.cells;
  if (share >= strongEdges || cell === undefined || share >= bestShare(scene) - nearBest) return [];
  return [breakAt("contrast", cell, `strong contrast along ${(100 * share).toFixed(1)} % of the edges`)];
}

function strongShare({ edges }: Scene, fabrics: Scene["fabrics"]): number {
  const judged = edges.flatMap(({ one, other, long }) => {
    const [a, b] = [fabrics[one], fabrics[other]];
    const difference = a && b ? differenceOf(a, b) : null;
    if (!a || !b || difference === null) return [];
    return [{ long, strong: Math.abs(fabricValue(a) - fabricValue(b)) >= 10 || difference >= 20 }];
  });
  const whole = sumOf(judged.map(({ long }) => long));
  return whole === 0 ? 1 : sumOf(judged.map(({ long, strong }) => (strong ? long : 0))) / whole;
}

/** By exchanges that each help, until none does. */
function bestShare(scene: Scene): number {
  let fabrics = scene.fabrics;
  let best = strongShare(scene, fabrics);
  for (let better = true; better; ) {
    better = false;
    for (const [at, twins] of scene.twins.entries()) {
      for (const twin of twins) {
        const next = swapped(fabrics, at, twin);
        const share = strongShare(scene, next);
        if (share > best) [fabrics, best, better] = [next, share, true];
      }
    }
  }
  return best;
}

// ---- Spread and balance

function crowdedFabrics(scene: Scene): RuleBreak[] {
  const thirds = thirdsOf(scene);
  const ids = new Set([...thirds.keys()].map((at) => scene.fabrics[at]?.id));
  return [...ids].flatMap((id) => {
    const cells = [...thirds.keys()].filter((at) => scene.fabrics[at]?.id === id);
    const places = new Set(cells.map((at) => thirds.get(at)));
    const [first] = cells;
    const cell = scene.cells[first ?? -1];
    if (id === undefined || cells.length < spreadFrom || places.size > 1 || cell === undefined) return [];
    const mendable = cells.some((at) =>
      (scene.twins[at] ?? []).some(
        (twin) =>
          thirds.get(twin) !== thirds.get(at) &&
          scene.fabrics[twin]?.id !== id &&
          !partsLess(scene, at, twin),
      ),
    );
    return mendable ? [breakAt("contrast", cell, `${cells.length} of ${id} in one third`)] : [];
  });
}

/** In which third of the pieced part, along its longer side, each leftover lies by its middle. */
function thirdsOf({ cells }: Scene): Map<number, number> {
  const pieced = cells.flatMap((cell, at) => (isCloth(cell) ? [] : [{ cell, at }]));
  const from = (axis: Axis) => Math.min(...pieced.map(({ cell }) => startOf(cell, axis)));
  const to = (axis: Axis) => Math.max(...pieced.map(({ cell }) => endOf(cell, axis)));
  const axis = to("x") - from("x") >= to("y") - from("y") ? "x" : "y";
  const [start, whole] = [from(axis), to(axis) - from(axis)];
  return new Map(
    pieced.map(({ cell, at }) => {
      const middle = (startOf(cell, axis) + endOf(cell, axis)) / 2;
      return [at, Math.min(2, Math.floor((3 * (middle - start)) / whole))];
    }),
  );
}

function lopsided(scene: Scene): RuleBreak[] {
  const thirds = thirdsOf(scene);
  const off = offsOf(scene, thirds);
  if (off === null) return [];
  return off.flatMap((by, third) => {
    const at = [...thirds].find(([, place]) => place === third)?.[0] ?? -1;
    const cell = scene.cells[at];
    if (Math.abs(by) <= balance || cell === undefined || !canBeBalanced(scene, thirds, third)) return [];
    const said = `third ${third + 1} is ${Math.abs(by).toFixed(0)} ${by > 0 ? "lighter" : "darker"} than the whole`;
    return [breakAt("contrast", cell, said)];
  });
}

/** How much lighter each third is than the whole; null: too few cells to speak of a balance. */
function offsOf(scene: Scene, thirds: ReadonlyMap<number, number>): number[] | null {
  const whole = meanValue(scene, [...thirds.keys()]);
  const each = [0, 1, 2].map((third) => [...thirds].flatMap(([at, place]) => (place === third ? [at] : [])));
  const means = each.map((within) => meanValue(scene, within));
  if (whole === null || each.some((within) => within.length < fewest)) return null;
  return means.map((mean) => (mean ?? whole) - whole);
}

/** Does some exchange with another third bring this one nearer, by more than a touch? */
function canBeBalanced(scene: Scene, thirds: ReadonlyMap<number, number>, third: number): boolean {
  const before = Math.abs(offsOf(scene, thirds)?.[third] ?? 0);
  return [...thirds].some(([at, place]) => {
    if (place !== third) return false;
    return (scene.twins[at] ?? []).some((twin) => {
      if (thirds.get(twin) === third || partsLess(scene, at, twin)) return false;
      const offs = offsOf({ ...scene, fabrics: swapped(scene.fabrics, at, twin) }, thirds);
      return Math.abs(offs?.[third] ?? 0) < before - 1;
    });
  });
}

function meanValue({ cells, fabrics }: Scene, ats: readonly number[]): number | null {
  const valued = ats.flatMap((at) => {
    const [fabric, cell] = [fabrics[at], cells[at]];
    if (!fabric || cell === undefined || fabric.colours.length === 0) return [];
    return [{ value: fabricValue(fabric), area: cell.node.width * cell.node.height }];
  });
  const area = sumOf(valued.map((one) => one.area));
  return area === 0 ? null : sumOf(valued.map((one) => one.value * one.area)) / area;
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, next) => sum + next, 0);
}
