import { useMemo, useState } from "react";
import type { Job } from "../../../engine/cloth/index.ts";
import { type Edit, partnersOf, type Shiftable, shiftableAt } from "../../../engine/layout/index.ts";
import { times } from "../../../engine/length/index.ts";
import { changePlan } from "../../../engine/plan/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import type { ProjectHandle } from "../../../store/index.ts";
import { type HandTexts, handTexts } from "../../../words/index.ts";
import { useProject } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import { cellAfter, isShift, sameCell, wishAfter } from "./byHand.ts";
import type { Desk, Wish } from "./desk.ts";
import type { Planning } from "./planning.ts";
import { type Cell, cellsOf } from "./stays.ts";

/** What she has in hand: a cell of the plan, and what she does with it. */
export type Hand = {
  readonly cell: Cell | null;
  /** While she looks for the one it changes places with: those that fit. */
  readonly partners: readonly Cell[] | null;
  /** What can change its place or size in its row: the cell, or a part of the plan that it lies in. */
  readonly parts: readonly Shiftable[];
  /** Of those the one that she moves or resizes; null: none yet. */
  readonly part: Shiftable | null;
  readonly takePart: (part: Shiftable | null) => void;
  /** What came of her last edit; empty: nothing. */
  readonly said: string;
  /** Takes a cell up, or makes it the other one of a swap; null: puts it down. */
  readonly pick: (cell: Cell | null) => void;
  readonly seekPartner: (isSought: boolean) => void;
  /**
   * The cell was dragged onto that one, or the part that she moves by so much: they change places, or it lies there, to
   * the ruler's step.
   */
  readonly drop: (over: Cell | null, by: Readonly<Record<Shiftable["along"], number>>) => void;
  /** At once, as one step of undo; or it is said why not. */
  readonly edit: (edit: Edit) => void;
};

type Held = {
  readonly plan: PlanDocument;
  readonly cell: Cell | null;
  readonly isSwapping: boolean;
  /** Which part she moves, by its place and side. */
  readonly part: string | null;
  readonly said: string;
};

type Surroundings = {
  readonly wish: Wish;
  readonly plan: PlanDocument | null;
  readonly desk: Desk;
  readonly planning: Planning & { readonly kind: "ready" };
};

export function useHand({ wish, plan, desk, planning: { job, hash } }: Surroundings): Hand {
  const texts = useTexts(handTexts);
  const project = useProject();
  const [last, setHeld] = useState<Held | null>(null);
  // Another plan has other cells.
  const held = last !== null && last.plan === plan ? last : null;
  const cell = held?.cell ?? null;
  const isSwapping = held?.isSwapping ?? false;
  const partners = useMemo(() => {
    if (plan === null || cell === null || !isSwapping) return null;
    const fitting = new Set(partnersOf(cell, plan.layout, job).map(({ path }) => path.join(" ")));
    return cellsOf(plan).filter(({ key }) => fitting.has(key));
  }, [plan, cell, isSwapping, job]);

  const parts = useMemo(
    () => (plan === null || cell === null ? [] : shiftableAt(plan.layout, cell.path, job)),
    [plan, cell, job],
  );
  const partKey = held?.part ?? null;
  const said = held?.said ?? "";
  // The same hand is the same object, so that the plan is not drawn anew for it while others are searched for.
  return useMemo(() => {
    const part = parts.find((one) => keyOfPart(one) === partKey) ?? null;
    const inHand = { cell, isSwapping, part: partKey };
    const holding = { wish, plan, desk, job, hash, project, texts, inHand, part, setHeld };
    return { cell, partners, parts, part, said, ...waysOf(holding) };
  }, [cell, isSwapping, partners, parts, partKey, said, wish, plan, desk, job, hash, project, texts]);
}

type Holding = Pick<Surroundings, "wish" | "plan" | "desk"> & {
  readonly job: Job;
  readonly hash: string;
  readonly project: ProjectHandle;
  readonly texts: HandTexts;
  readonly inHand: Omit<Held, "plan" | "said">;
  readonly part: Shiftable | null;
  readonly setHeld: (held: Held) => void;
};

/** What can be done with what is in hand. */
function waysOf(holding: Holding): Pick<Hand, "takePart" | "pick" | "seekPartner" | "drop" | "edit"> {
  const { wish, plan, desk, job, hash, project, texts, inHand, part, setHeld } = holding;
  const { cell, isSwapping } = inHand;

  const edit = (change: Edit) => {
    if (plan === null) return;
    const changed = changePlan(plan, change, job);
    if (!changed.ok) {
      setHeld({ ...inHand, plan, said: texts.whyNot(changed.error, plan) });
      return;
    }
    const after = changed.value;
    const next = wishAfter(wish, { before: plan, after, hash, edit: change });
    // Undo comes back to the very plan that was here, and nothing is searched for.
    desk.put(wish, plan);
    desk.put(next, after);
    project.setWishes(next);
    const cellNow = isShift(change) ? sameCell(after, cell) : cellAfter(plan, after, change);
    setHeld({
      ...inHand,
      plan: after,
      cell: cellNow,
      isSwapping: false,
      said: texts.made(change, after),
    });
  };

  const pick = (picked: Cell | null) => {
    if (plan === null) return;
    if (isSwapping && cell !== null && picked !== null && picked.key !== cell.key) {
      edit({ kind: "swap", at: cell.path, with: picked.path });
      return;
    }
    // Speaking of a piece, she wants the plan to stand still.
    if (picked !== null) desk.stop(wish, plan);
    setHeld({ plan, cell: picked, isSwapping: false, part: null, said: "" });
  };

  const seekPartner = (isSought: boolean) => {
    if (plan !== null) setHeld({ ...inHand, plan, isSwapping: isSought, said: "" });
  };

  const takePart = (taken: Shiftable | null) => {
    const key = taken === null ? null : keyOfPart(taken);
    if (plan !== null) setHeld({ ...inHand, plan, part: key, said: "" });
  };

  const drop: Hand["drop"] = (over, by) => {
    if (cell === null) return;
    if (part !== null) {
      const steps = Math.round(by[part.along] / job.step);
      if (steps !== 0) edit({ kind: "move", at: part.path, along: part.along, by: times(job.step, steps) });
    } else if (over === null || over.key === cell.key) seekPartner(false);
    else edit({ kind: "swap", at: cell.path, with: over.path });
  };

  return { takePart, pick, seekPartner, drop, edit };
}

/** A part of a plan by its place in the tree, and the side along which it moves. */
export function keyOfPart({ path, along }: Shiftable): string {
  return `${along} ${path.join(" ")}`;
}
