import { ToggleButton, ToggleButtonGroup } from "react-aria-components";
import { type Use, uses } from "../../../engine/cloth/index.ts";
import { useLeftoversTexts } from "./heapContext.ts";
import styles from "./marks.module.css";

type MarksProps = {
  readonly label: string;
  /** The mark that all of them have; null: they differ. */
  readonly now: Use | null;
  readonly onMark: (use: Use) => void;
};

/** Her marks, one tap each. */
export function Marks({ label, now, onMark }: MarksProps) {
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
      {uses.map((use) => (
        <ToggleButton key={use} id={use} className={`${styles.mark}`}>
          {texts.use[use]}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}
