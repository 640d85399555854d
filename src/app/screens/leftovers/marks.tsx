import { memo } from "react";
import { ToggleButton, ToggleButtonGroup } from "react-aria-components";
import { type Use, uses } from "../../../engine/cloth/index.ts";
import { useLeftoversTexts } from "./heapContext.ts";
import styles from "./marks.module.css";

type MarksProps = {
  /** What stands in front of the words; the label says it to a screen reader. */
  readonly lead?: string;
  readonly label: string;
  /** The mark that all of them have; null: they differ. */
  readonly now: Use | null;
  readonly onMark: (use: Use) => void;
};

/** Her marks, one tap each. */
export const Marks = memo(function Marks({ lead, label, now, onMark }: MarksProps) {
  const texts = useLeftoversTexts();
  const mark = (use: Use) => onMark(use);
  return (
    <ToggleButtonGroup
      aria-label={label}
      className={`${styles.marks}`}
      selectionMode="single"
      selectedKeys={now === null ? [] : [now]}
      disallowEmptySelection={now !== null}
      onSelectionChange={(keys) => uses.filter((use) => keys.has(use)).forEach(mark)}
    >
      {lead !== undefined && (
        <span className={styles.lead} aria-hidden="true">
          {lead}
        </span>
      )}
      {uses.map((use) => (
        <ToggleButton key={use} id={use} className={`${styles.mark}`}>
          {texts.use[use]}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
});
