import { useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { choicesFor, clothsOf, type PieceNode } from "../../../engine/layout/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { drawingTexts, handTexts, planTexts } from "../../../words/index.ts";
import { useProject } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./changePlan.module.css";
import type { OfCellProps } from "./changing.ts";
import { withAnother } from "./stays.ts";
import { fabricOf, Swatch } from "./swatch.tsx";

/** Her other leftovers of the size of this place. What lies unused goes in; else it stays there in the next plan. */
export function Another({ planning: { job }, wish, plan, cell, hand }: OfCellProps) {
  const texts = useTexts(planTexts);
  const drawn = useTexts(drawingTexts);
  const project = useProject();
  const [isOpen, setOpen] = useState(false);
  const choices = useMemo(
    () => (isOpen ? unusedFirst(choicesFor(cell, plan.layout, job), plan) : []),
    [isOpen, cell, job, plan],
  );
  const put = ({ piece, isUnused }: OtherPiece) => {
    if (isUnused) hand.edit({ kind: "put", at: cell.path, piece });
    else replan(piece);
  };
  const replan = (piece: PieceNode) => {
    project.setWishes({ ...wish, stays: withAnother(plan, wish.stays, { cell, piece }), byHand: null });
    hand.pick(null);
  };
  return (
    <details className={styles.list} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{texts.anotherHere}</summary>
      {isOpen && <p className={styles.quiet}>{choices.length === 0 ? texts.noOther : texts.anotherHow}</p>}
      <ul>
        {choices.map((choice) => (
          <li key={choice.piece.piece}>
            <Button className={`${styles.name}`} onPress={() => put(choice)}>
              <Swatch fabric={fabricOf(choice.piece, job)} job={job} />
              {drawn.leaf(choice.piece, plan)}
              {!choice.isUnused && ` (${texts.elsewhere})`}
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}

type OtherPiece = { readonly piece: PieceNode; readonly isUnused: boolean };

function unusedFirst(pieces: readonly PieceNode[], { unused }: PlanDocument): readonly OtherPiece[] {
  const left = new Set(unused.map(({ piece }) => piece));
  return pieces
    .map((piece) => ({ piece, isUnused: left.has(piece.piece) }))
    .sort((one, other) => Number(other.isUnused) - Number(one.isUnused));
}

/** For a plain part: what she would buy, or one of her lengths. */
export function OtherCloth({ planning: { job }, plan, cell: { node, path: at }, hand }: OfCellProps) {
  const texts = useTexts(handTexts);
  const named = useTexts(drawingTexts);
  const others = clothsOf(job).filter((fabric) => node.kind === "cloth" && node.fabric !== fabric);
  if (others.length === 0) return null;
  return (
    <details className={styles.list}>
      <summary>{texts.otherCloth}</summary>
      <ul>
        {others.map((fabric) => (
          <li key={fabric}>
            <Button className={`${styles.name}`} onPress={() => hand.edit({ kind: "cloth", at, fabric })}>
              <Swatch fabric={fabric} job={job} />
              {named.fabric(fabric, { ...plan, fabrics: job.fabrics })}
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
