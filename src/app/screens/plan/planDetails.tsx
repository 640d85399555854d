import { memo, type ReactNode } from "react";
import { isUndyed } from "../../../engine/cloth/index.ts";
import { usableOf } from "../../../engine/plan/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { drawingTexts, planTexts, type SpokenPiece, shelfTexts } from "../../../words/index.ts";
import { hrefOf, useProject } from "../../frame/index.ts";
import { LayoutList } from "../../parts/drawing/layoutList.tsx";
import { useTexts } from "../../parts/texts.ts";
import { AdviceList, type Marks } from "./advice.tsx";
import styles from "./plan.module.css";
import type { Planning } from "./planning.ts";

type PlanDetailsProps = {
  readonly plan: PlanDocument;
  readonly planning: Planning & { readonly kind: "ready" };
  readonly marks: Marks;
};

/** What the plan takes, what to buy, what stays over, and what is worth knowing before one begins. */
export const PlanDetails = memo(function PlanDetails({ plan, planning, marks }: PlanDetailsProps) {
  const texts = useTexts(planTexts);
  const drawn = useTexts(drawingTexts);
  const shelf = useTexts(shelfTexts);
  const usable = usableOf(plan.figures, planning.job);
  return (
    <div className={styles.details}>
      <Lines heading={texts.inShort} lines={texts.figures(plan.figures, usable)} />
      <AdviceList plan={plan} marks={marks} />
      <Lines
        heading={texts.buy}
        lines={plan.buy.length === 0 ? [texts.nothingToBuy] : plan.buy.map((row) => texts.buyRow(row, plan))}
      />
      <Lines
        heading={texts.left}
        lines={plan.unused.length === 0 ? [texts.nothingLeft] : spokenLeft(plan).map(shelf.row)}
      />
      <Notes planning={planning} />
      <LayoutList layout={plan.layout} names={plan} texts={drawn} />
    </div>
  );
});

/** What the plan leaves over, as it may be said. */
function spokenLeft({ unused, pieces, fabrics }: PlanDocument): SpokenPiece[] {
  const fabricOf = (id: string | null) => fabrics.find((fabric) => fabric.id === id)?.name ?? "";
  return unused.flatMap(({ piece: id, count }) => {
    const piece = pieces.find((one) => one.id === id);
    return piece === undefined
      ? []
      : [{ ...piece, count, fabric: fabricOf(piece.fabric), use: "yes" as const }];
  });
}

function Notes({ planning: { notes, waiting, job } }: Pick<PlanDetailsProps, "planning">) {
  const texts = useTexts(planTexts);
  const { id } = useProject();
  if (notes.length === 0 && waiting === 0) return null;
  // Said once for all of them, by the names she gave: the row of a list says little.
  const uncoloured = job.fabrics.flatMap((fabric) =>
    isUndyed(fabric) && fabric.name !== "" ? [fabric.name] : [],
  );
  const others = notes.filter(({ kind }) => kind !== "no-colour" || uncoloured.length === 0);
  const lines = [
    ...(uncoloured.length === 0 ? [] : [texts.uncoloured(uncoloured)]),
    ...others.map(texts.note),
  ];
  return (
    <Lines heading={texts.notes} lines={lines}>
      {waiting > 0 && (
        <p className={styles.note}>
          {texts.waiting(waiting)}{" "}
          <a href={hrefOf({ screen: "leftovers", project: id })}>{texts.mendOn.leftovers}</a>
        </p>
      )}
    </Lines>
  );
}

type LinesProps = {
  readonly heading: string;
  readonly lines: readonly string[];
  readonly children?: ReactNode;
};

function Lines({ heading, lines, children }: LinesProps) {
  return (
    <section>
      <h3>{heading}</h3>
      {children}
      <ul className={styles.lines}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
