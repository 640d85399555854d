import { memo } from "react";
import { Button } from "react-aria-components";
import type { PlanDocument } from "../../../files/index.ts";
import { planTexts } from "../../../words/index.ts";
import { hrefOf, useProject, useProjectContent } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./plan.module.css";
import { isTheKept, keptFrom } from "./planning.ts";

type KeepBarProps = {
  readonly plan: PlanDocument | null;
  readonly hash: string;
  readonly keptIsOld: boolean;
};

/** The next thing to do: keep this plan, or sew the one that is kept. */
export const KeepBar = memo(function KeepBar({ plan, hash, keptIsOld }: KeepBarProps) {
  const texts = useTexts(planTexts);
  const project = useProject();
  const { plan: kept, ticked } = useProjectContent();
  if (plan === null) return null;
  if (isTheKept(plan, kept)) {
    return (
      <div className={styles.keep}>
        <p role="status">{texts.isKept}</p>
        <a className="button next" href={hrefOf({ screen: "sew", project: project.id })}>
          {texts.sew}
        </a>
      </div>
    );
  }
  const keep = () => project.keepPlan(keptFrom(plan, hash));
  return (
    <div className={styles.keep}>
      {keptIsOld && <p className={styles.note}>{texts.changedSinceKept}</p>}
      {ticked.size > 0 && <p className={styles.note}>{texts.keepingClears(ticked.size)}</p>}
      <Button className="button next" onPress={keep}>
        {texts.keep}
      </Button>
    </div>
  );
});
