import { useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import type { Step } from "../../../engine/sewing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { sewTexts } from "../../../words/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./sew.module.css";
import { doneIn, type Part, type Ticked, waitsFor } from "./sewFacts.ts";

type StepsProps = {
  readonly plan: PlanDocument;
  readonly ticked: Ticked;
  readonly current: Step;
  readonly onGo: (step: Step) => void;
  readonly onTick: (step: Step, isDone: boolean) => void;
};

/** All steps, section by section, to tick off and to turn to. */
export function StepList({ parts, ...props }: StepsProps & { readonly parts: readonly Part[] }) {
  const texts = useTexts(sewTexts);
  const list = useRef<HTMLDetailsElement>(null);
  const { id } = props.current;
  // Where the list has its own way to scroll, the step she is at is in sight.
  useEffect(() => {
    const item = list.current?.querySelector<HTMLElement>(`[data-step="${CSS.escape(id)}"]`);
    if (list.current && item && !isInSight(item, list.current))
      list.current.scrollTop = item.offsetTop - list.current.clientHeight / 3;
  }, [id]);
  const [isOpen] = useState(() => matchMedia("(min-width: 44rem)").matches);
  return (
    // On a phone one thing at a time: there it is opened when it is wanted.
    <details ref={list} className={styles.all} open={isOpen}>
      <summary>{texts.all}</summary>
      {parts.length === 1
        ? parts.map(({ steps }) => <Steps key="all" steps={steps} {...props} />)
        : parts.map((part) => <PartOfSewing key={part.steps[0]?.id} part={part} {...props} />)}
    </details>
  );
}

function isInSight(
  { offsetTop, offsetHeight }: HTMLElement,
  { scrollTop, clientHeight }: HTMLElement,
): boolean {
  return offsetTop >= scrollTop && offsetTop + offsetHeight <= scrollTop + clientHeight;
}

/** The part she is at lies open; the others when she wants to look into them. */
function PartOfSewing({ part, ...props }: StepsProps & { readonly part: Part }) {
  const texts = useTexts(sewTexts);
  const isHere = part.steps.includes(props.current);
  const [wasHere, setWasHere] = useState(isHere);
  const [isOpen, setOpen] = useState(isHere);
  if (isHere !== wasHere) {
    setWasHere(isHere);
    setOpen(isHere);
  }
  return (
    <details
      className={styles.part}
      open={isOpen}
      onToggle={({ currentTarget }) => setOpen(currentTarget.open)}
    >
      <summary>
        <span>{texts.part(part.is)}</span>{" "}
        <span className={styles.quiet}>{texts.partState(doneIn(part, props.ticked), part.steps.length)}</span>
      </summary>
      {isOpen && <Steps steps={part.steps} {...props} />}
    </details>
  );
}

function Steps({ steps, ...props }: StepsProps & { readonly steps: readonly Step[] }) {
  return (
    <ol className={styles.steps}>
      {steps.map((step) => (
        <StepInList key={step.id} step={step} {...props} />
      ))}
    </ol>
  );
}

function StepInList({ step, plan, ticked, current, onGo, onTick }: StepsProps & { readonly step: Step }) {
  const texts = useTexts(sewTexts);
  const isDone = ticked.has(step.id);
  const waits = waitsFor(plan, ticked, step);
  return (
    <li data-step={step.id} aria-current={step === current ? "step" : undefined}>
      <label className={styles.tick}>
        <input
          type="checkbox"
          checked={isDone}
          onChange={({ target }) => onTick(step, target.checked)}
          aria-label={texts.tickOf(step, plan)}
        />
      </label>
      <Button className={`${styles.turnTo}`} onPress={() => onGo(step)}>
        <span>{texts.inList(step, plan)}</span>{" "}
        <span className={styles.measures}>{texts.measures(step)}</span>{" "}
        {isDone && <span className={styles.state}>{texts.isDoneInList}</span>}
        {waits.length > 0 && <span className={styles.state}>{texts.waitsInList(waits)}</span>}
      </Button>
    </li>
  );
}
