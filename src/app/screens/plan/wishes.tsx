import { ToggleButton, ToggleButtonGroup } from "react-aria-components";
import { wishes } from "../../../engine/cloth/index.ts";
import { planTexts } from "../../../words/index.ts";
import { useProject, useProjectState } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./wishes.module.css";

/** What she would like of plans, one tap each; several may hold. */
export function Wishes() {
  const texts = useTexts(planTexts);
  const project = useProject();
  const { asked } = useProjectState().project.wishes;
  return (
    <div className={styles.wishes}>
      <span id="wishes-label" className={styles.label}>
        {texts.wishes}
      </span>
      <ToggleButtonGroup
        aria-labelledby="wishes-label"
        className={`${styles.chips}`}
        selectionMode="multiple"
        selectedKeys={[...asked]}
        onSelectionChange={(keys) => project.setWishes({ asked: wishes.filter((wish) => keys.has(wish)) })}
      >
        {wishes.map((wish) => (
          <ToggleButton key={wish} id={wish} className={`${styles.chip}`}>
            {texts.wish[wish]}
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
    </div>
  );
}
