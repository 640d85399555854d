import { useState } from "react";
import { Button } from "react-aria-components";
import { type Batch, batchFor, type Step, shortestBatch } from "../../../engine/sewing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { sittingTexts } from "../../../words/index.ts";
import { useTexts } from "../../parts/texts.ts";
import type { Ticked } from "./sewFacts.ts";
import styles from "./sitting.module.css";

type SittingProps = {
  readonly plan: PlanDocument;
  readonly ticked: Ticked;
  readonly batch: Batch | null;
  readonly onBatch: (batch: Batch | null) => void;
  readonly onGo: (step: Step) => void;
};

/** Some of the steps, for the time she has; or the question how much that is. */
export function Sitting(props: SittingProps) {
  return props.batch === null ? <HowLong {...props} /> : <Now {...props} batch={props.batch} />;
}

const lengths = [20, 45, 90, 150] as const;

function HowLong({ plan, ticked, onBatch, onGo }: SittingProps) {
  const texts = useTexts(sittingTexts);
  const [tooShort, setTooShort] = useState<Batch | null>(null);
  const begin = (minutes: number) => {
    const batch = batchFor(plan.steps, ticked, minutes);
    setTooShort(batch === null ? shortestBatch(plan.steps, ticked) : null);
    const [first] = batch?.steps ?? [];
    if (batch === null || first === undefined) return;
    onBatch(batch);
    onGo(first);
  };
  return (
    <details className={`${styles.sitting} notPrinted`}>
      <summary>{texts.heading}</summary>
      <p className={styles.quiet}>{texts.what}</p>
      <div className={styles.ways}>
        {lengths.map((minutes) => (
          <Button
            key={minutes}
            className="button"
            aria-label={texts.iHave(minutes)}
            onPress={() => begin(minutes)}
          >
            {texts.minutes(minutes)}
          </Button>
        ))}
      </div>
      <p aria-live="polite">{tooShort === null ? "" : texts.tooShort(tooShort.minutes)}</p>
    </details>
  );
}

function Now({ ticked, batch, onBatch, onGo }: SittingProps & { readonly batch: Batch }) {
  const texts = useTexts(sittingTexts);
  const isOver = batch.steps.every(({ id }) => ticked.has(id));
  return (
    <section className={`${styles.sitting} notPrinted`} aria-label={texts.heading}>
      <p className={styles.is}>{texts.is(batch.steps.length, batch.minutes)}</p>
      <ol className={styles.steps}>
        {batch.steps.map((step) => (
          <li key={step.id}>
            <Button className={`${styles.step}`} data-done={ticked.has(step.id)} onPress={() => onGo(step)}>
              {texts.step(step)}
              {ticked.has(step.id) && <span className="onlyRead"> {texts.isDone}</span>}
            </Button>
          </li>
        ))}
      </ol>
      <p aria-live="polite" className={styles.over}>
        {isOver ? texts.all : ""}
      </p>
      <Button className="button" onPress={() => onBatch(null)}>
        {texts.end}
      </Button>
    </section>
  );
}
