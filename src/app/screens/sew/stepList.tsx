import { useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import type { Step } from "../../../engine/sewing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { sewTexts } from "../../../words/index.ts";
import { useProject } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./sew.module.css";

type StepListProps = {
  readonly plan: PlanDocument;
  readonly ticked: ReadonlySet<string>;
  readonly current: Step;
  readonly onChoose: (step: Step) => void;
};

/** All steps, to tick off and to turn to. */
export function StepList({ plan, ticked, current, onChoose }: StepListProps) {
  const texts = useTexts(sewTexts);
  const project = useProject();
  const list = useRef<HTMLDetailsElement>(null);
  // Where the list has its own way to scroll, the step she is at is in sight.
  useEffect(() => {
    const item = list.current?.querySelector<HTMLElement>(`[data-step="${CSS.escape(current.id)}"]`);
    if (list.current && item) list.current.scrollTop = item.offsetTop - list.current.clientHeight / 3;
  }, [current.id]);
  const [isOpen] = useState(() => matchMedia("(min-width: 44rem)").matches);
  return (
    // On a phone one thing at a time: there it is opened when it is wanted.
    <details ref={list} className={styles.all} open={isOpen}>
      <summary>{texts.all}</summary>
      <ol className={styles.steps}>
        {plan.steps.map((step) => (
          <li key={step.id} data-step={step.id} aria-current={step === current ? "step" : undefined}>
            <label className={styles.tick}>
              <input
                type="checkbox"
                checked={ticked.has(step.id)}
                onChange={({ target }) => project.tick(step.id, target.checked)}
                aria-label={texts.tickOf(step, plan)}
              />
            </label>
            <Button className={`${styles.turnTo}`} onPress={() => onChoose(step)}>
              <span>{texts.inList(step, ticked.has(step.id), plan)}</span>
              <span className={styles.quiet}>{texts.measures(step)}</span>
            </Button>
          </li>
        ))}
      </ol>
    </details>
  );
}
