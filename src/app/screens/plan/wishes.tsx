import { memo } from "react";
import { ToggleButton, ToggleButtonGroup } from "react-aria-components";
import { contrasts, wishes } from "../../../engine/cloth/index.ts";
import { planTexts } from "../../../words/index.ts";
import { useProject, useProjectContent } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./wishes.module.css";

/** What she would like of plans, one tap each, which asks for other plans than the one she changed; several may hold, and one of the ways in which fabrics meet. */
export const Wishes = memo(function Wishes() {
  const texts = useTexts(planTexts);
  const project = useProject();
  const { asked } = useProjectContent().wishes;
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
        onSelectionChange={(keys) => {
          const others = asked.filter((one) => one === "more-contrast");
          project.setWishes({ byHand: null, asked: [...wishes.filter((wish) => keys.has(wish)), ...others] });
        }}
      >
        {wishes.map((wish) => (
          <ToggleButton key={wish} id={wish} className={`${styles.chip}`}>
            {texts.wish[wish]}
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
      <HowFabricsMeet />
    </div>
  );
});

function HowFabricsMeet() {
  const texts = useTexts(planTexts);
  const project = useProject();
  const { asked, contrast } = useProjectContent().wishes;
  const holds = contrast ?? (asked.includes("more-contrast") ? "strong" : "mixed");
  return (
    <>
      <span id="contrast-label" className={styles.label}>
        {texts.contrast}
      </span>
      <ToggleButtonGroup
        aria-labelledby="contrast-label"
        aria-describedby="contrast-is"
        className={`${styles.chips}`}
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[holds]}
        onSelectionChange={(keys) => {
          const chosen = contrasts.find((one) => keys.has(one)) ?? holds;
          project.setWishes({
            byHand: null,
            contrast: chosen,
            asked: asked.filter((one) => one !== "more-contrast"),
          });
        }}
      >
        {contrasts.map((one) => (
          <ToggleButton key={one} id={one} className={`${styles.chip}`}>
            {texts.contrasts[one]}
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
      <span id="contrast-is" className={styles.label}>
        {texts.contrastIs[holds]}
      </span>
    </>
  );
}
