import { useMemo } from "react";
import { Button } from "react-aria-components";
import type { NewLeftover, PlanDocument } from "../../../files/index.ts";
import { shelveRemainders } from "../../../store/index.ts";
import { shelfTexts } from "../../../words/index.ts";
import { useProject, useProjectContent } from "../../frame/index.ts";
import { useShelf } from "../../parts/shelf.ts";
import { useTexts } from "../../parts/texts.ts";
import { remaindersOf } from "./remainders.ts";
import styles from "./sew.module.css";

/** What the plan did not take, and its way to the shelf. Of the sample nothing goes there: it is nobody's cloth. */
export function StaysOver({ plan, isOpen }: { readonly plan: PlanDocument; readonly isOpen: boolean }) {
  const texts = useTexts(shelfTexts);
  const project = useProjectContent();
  const rows = useMemo(() => remaindersOf(plan, project), [plan, project]);
  if (rows.length === 0) return null;
  return (
    <details className={styles.over} open={isOpen}>
      <summary>{texts.staysOver}</summary>
      <p className={styles.quiet}>{texts.staysOverWhat}</p>
      <ul className={styles.overRows}>
        {rows.map((row, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two rows may be alike in everything
          <li key={index}>{texts.row(spoken(row))}</li>
        ))}
      </ul>
      {!project.sample && <ToShelf rows={rows} />}
    </details>
  );
}

function ToShelf({ rows }: { readonly rows: readonly NewLeftover[] }) {
  const texts = useTexts(shelfTexts);
  const shelf = useShelf();
  const handle = useProject();
  const { heap, plan } = useProjectContent();
  const isThere = plan !== null && heap.shelved === plan.keptAt;
  return (
    <div aria-live="polite">
      {isThere && <p>{texts.liesOnShelf}</p>}
      {!isThere && shelf !== null && (
        <Button className="button" onPress={() => shelveRemainders(shelf, handle, rows)}>
          {texts.putOnShelf}
        </Button>
      )}
    </div>
  );
}

function spoken({ cells }: NewLeftover) {
  const { kind, count, width, height, area, fabric } = cells;
  return {
    ...(kind?.value ? { kind: kind.value } : {}),
    ...(count?.value ? { count: count.value } : {}),
    ...(width?.value ? { width: width.value } : {}),
    ...(height?.value ? { height: height.value } : {}),
    ...(area?.value ? { area: area.value } : {}),
    ...(fabric?.value ? { fabric: fabric.value } : {}),
  };
}
