import type { LeafNode, Quarter } from "../layout/index.ts";
import { outlineIn, shareInside } from "./outline.ts";
import { type Part, type Scene, whereOf } from "./scene.ts";
import type { Advice, AdviceKind } from "./types.ts";

/** How far a directed leftover is turned from upright, in quarter turns. */
type Lie = { readonly at: number; readonly id: string; readonly quarter: Quarter };

/** One-way prints that do not stand upright: a triangle or a unit can't be laid otherwise. */
export function uprightAdvice(scene: Scene): readonly Advice[] {
  const fallen = liesOf(scene, "one-way").filter(({ quarter }) => quarter !== 0);
  return adviceOn("not-upright", fallen, scene);
}

/** Where stripes run both ways, those of the way that is taken less often. */
export function stripesAdvice(scene: Scene): readonly Advice[] {
  const lies = liesOf(scene, "stripe");
  const across = lies.filter(({ quarter }) => quarter % 2 === 1);
  const upright = lies.filter(({ quarter }) => quarter % 2 === 0);
  if (across.length === 0 || upright.length === 0) return [];
  return adviceOn("stripes-sideways", across.length <= upright.length ? across : upright, scene);
}

/** Less than this cut off from a cell isn't missed. */
const missed = 0.1;

/** One-way prints through which the top's outline runs; what she gave up for the edge is not missed. */
export function cutOffAdvice(scene: Scene): readonly Advice[] {
  const outline = outlineIn(scene.job);
  const cut = liesOf(scene, "one-way").filter(({ at, id }) => {
    const place = scene.cells[at]?.place;
    const use = scene.job.pieces.find((piece) => piece.id === id)?.use;
    if (place === undefined || use === "edge") return false;
    const inside = shareInside(place, outline);
    return inside > 0 && inside <= 1 - missed;
  });
  return adviceOn("print-cut-off", cut, scene);
}

type DirectionKind = Extract<AdviceKind, "not-upright" | "stripes-sideways" | "print-cut-off">;

function adviceOn(kind: DirectionKind, lies: readonly Lie[], scene: Scene): readonly Advice[] {
  if (lies.length === 0) return [];
  const ids = new Set(lies.map(({ id }) => id));
  const steps = lies.map(({ at }) => scene.cells[at]?.steps.at(-1) ?? null);
  const concerns = ({ piece }: Part) => piece !== null && ids.has(piece.id);
  const where = whereOf(
    scene,
    lies.map(({ at }) => at),
    steps,
    concerns,
  );
  return [{ kind, where }];
}

function liesOf({ cells, job }: Scene, direction: "one-way" | "stripe"): readonly Lie[] {
  const directed = new Set(job.pieces.filter((piece) => piece.direction === direction).map(({ id }) => id));
  return cells.flatMap(({ leaf }, at) =>
    turnsIn(leaf.node)
      .filter(({ id }) => directed.has(id))
      .map((turn) => ({ at, ...turn })),
  );
}

/** A turned piece has changed its sides: a quarter turn. Slabs are laid by eye, and cloth is cut as it is needed. */
function turnsIn(node: LeafNode): readonly { readonly id: string; readonly quarter: Quarter }[] {
  if (node.kind === "piece") return [{ id: node.piece, quarter: node.quarter ?? (node.turned ? 1 : 0) }];
  if (node.kind !== "unit") return [];
  const ids = node.pieces.flatMap(({ piece, count }) => Array.from({ length: count }, () => piece));
  return ids.flatMap((id, index) => {
    const quarter = node.rotations?.[index];
    return quarter === undefined ? [] : [{ id, quarter }];
  });
}
