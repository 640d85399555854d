import type { Edit, Shift } from "../../../engine/layout/index.ts";
import type { Plan } from "../../../engine/plan/index.ts";
import { type ChangedPlan, type PlanDocument, readPlan } from "../../../files/index.ts";
import type { Wish } from "./desk.ts";
import { textOf } from "./planText.ts";
import { type Cell, cellAt, cellsOf, stayingIn } from "./stays.ts";

/** So many of the plans that she changed are remembered: undo comes back to them one by one. */
const mostRemembered = 30;
const remembered = new Map<string, PlanDocument | null>();

/** The plan as she changed it; null: she did not, or for another job, or it can't be read any more. */
export function changedPlanIn(byHand: ChangedPlan | null, hash: string): PlanDocument | null {
  if (byHand === null || byHand.job !== hash) return null;
  const known = remembered.get(byHand.plan);
  if (known !== undefined) return known;
  const read = readPlan(byHand.plan);
  return remember(byHand.plan, read.ok ? read.value : null);
}

function remember(text: string, plan: PlanDocument | null): PlanDocument | null {
  remembered.set(text, plan);
  const [oldest] = remembered.keys();
  if (remembered.size > mostRemembered && oldest !== undefined) remembered.delete(oldest);
  return plan;
}

type Changed = {
  readonly before: PlanDocument;
  readonly after: Plan;
  readonly hash: string;
  readonly edit: Edit;
};

/**
 * The wish that a changed plan is what she looks at. What stayed stays, in the places where it was; what she moved
 * herself stays where it lies now.
 */
export function wishAfter(wish: Wish, { before, after, hash, edit }: Changed): Wish {
  const text = textOf(after);
  remember(text, after);
  const nameOf = isShift(edit) ? ({ key }: Cell) => key : placeOf;
  const staying = stayingIn(before, wish.stays);
  const held = new Set(
    cellsOf(before)
      .filter(({ key }) => staying.has(key))
      .map(nameOf),
  );
  const cells = cellsOf(after).flatMap((cell) => (held.has(nameOf(cell)) ? [cell.key] : []));
  const stays = cells.length === 0 ? null : { plan: text, cells };
  return { ...wish, stays, byHand: { plan: text, job: hash } };
}

function placeOf({ x, y, node: { width, height } }: Cell): string {
  return [x, y, width, height].join(" ");
}

/** Whether every cell is the one that it was, at another place or of another size. */
export function isShift(edit: Edit): edit is Shift {
  return edit.kind === "move" || edit.kind === "resize";
}

export function sameCell(after: PlanDocument, cell: Cell | null): Cell | null {
  return cellsOf(after).find(({ key }) => key === cell?.key) ?? null;
}

/** Where the cell of an edit is afterwards: what begins where it began, or else what lies where its middle was. */
export function cellAfter(before: PlanDocument, after: PlanDocument, { at }: Edit): Cell | null {
  const key = at.join(" ");
  const cell = cellsOf(before).find((one) => one.key === key);
  if (cell === undefined) return null;
  const { x, y, node } = cell;
  const begins = cellsOf(after).find((one) => one.x === x && one.y === y);
  // Of two that changed places within a row neither need begin where the other did.
  return begins ?? cellAt(after, after.seam + x + node.width / 2, after.seam + y + node.height / 2);
}
