import { Button } from "react-aria-components";
import type { Use } from "../../../engine/cloth/index.ts";
import { shelfTexts } from "../../../words/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./chosenBar.module.css";
import { commonUse } from "./heap.ts";
import { useHeap, useLeftoversTexts } from "./heapContext.ts";
import { Marks } from "./marks.tsx";

type ChosenBarProps = {
  readonly chosen: ReadonlySet<string>;
  readonly onMark: (use: Use) => void;
  readonly onRemove: () => void;
  readonly onShelve: () => void;
  readonly onNone: () => void;
};

/** What can be done with the rows that are chosen; stays in sight while there are any. */
export function ChosenBar({ chosen, onMark, onRemove, onShelve, onNone }: ChosenBarProps) {
  const texts = useLeftoversTexts();
  const shelf = useTexts(shelfTexts);
  const { rows } = useHeap();
  const now = commonUse(rows.filter(({ id }) => chosen.has(id)));
  return (
    <section className={styles.bar} aria-label={texts.markChosen}>
      <p className={styles.count}>{texts.nChosen(chosen.size)}</p>
      <div className={styles.ways}>
        <Button className="button" onPress={onRemove}>
          {texts.remove}
        </Button>
        <Button className="button" onPress={onShelve}>
          {shelf.toShelf}
        </Button>
        <Button className="button plain" onPress={onNone}>
          {texts.chooseNone}
        </Button>
      </div>
      <Marks label={texts.markChosen} now={now} onMark={onMark} />
    </section>
  );
}
