import { useMemo, useRef, useState } from "react";
import { Button } from "react-aria-components";
import type { Batch, Step } from "../../../engine/sewing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { sewTexts } from "../../../words/index.ts";
import { hrefOf, Notice, useProject, useProjectContent } from "../../frame/index.ts";
import { useAwake } from "../../parts/awake.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./sew.module.css";
import { nextInBatch, type Place, partsOf, placeIn, type Sewing, sewingFor, turnAfter } from "./sewFacts.ts";
import { Sitting } from "./sitting.tsx";
import { StaysOver } from "./staysOver.tsx";
import { StepList } from "./stepList.tsx";
import { StepPage } from "./stepPage.tsx";
import { TakeItWithYou } from "./takeAway.tsx";

/** The steps of the kept plan, one at a time, to be read from the machine. */
export default function Sew() {
  const texts = useTexts(sewTexts);
  const { id } = useProject();
  const project = useProjectContent();
  const sewing = useMemo(() => sewingFor(project), [project]);
  if (sewing.kind === "ready") return <Ready {...sewing} />;
  return (
    <Notice title={texts.noPlan} text={sewing.kind === "unreadable" ? texts.unreadable : texts.noPlanWhat}>
      <a className="button next" href={hrefOf({ screen: "plan", project: id })}>
        {texts.toPlan}
      </a>
    </Notice>
  );
}

type ReadyProps = Omit<Sewing & { readonly kind: "ready" }, "kind">;

function Ready({ plan, isOld, pictureOf }: ReadyProps) {
  const project = useProject();
  const { ticked } = useProjectContent();
  const [at, setAt] = useState<string | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const parts = useMemo(() => partsOf(plan), [plan]);
  const [batch, setBatch] = useBatch(plan);
  useAwake();
  const place = placeIn(plan, ticked, at);
  if (place === null) return null;
  const { step } = place;
  const turnTo = (id: string | null) => {
    setAt(id);
    // The next step is read from its beginning, by eye and by ear.
    heading.current?.focus({ preventScroll: true });
    scrollTo(0, 0);
  };
  const done = () => {
    project.tick(step.id, true);
    turnTo(nextInBatch(batch, ticked, step) ?? turnAfter(plan, ticked, step));
  };
  // Ticking in the list doesn't turn the page.
  const tick = (ticking: Step, isDone: boolean) => {
    setAt(step.id);
    project.tick(ticking.id, isDone);
  };
  return (
    <div className={styles.page}>
      <Head plan={plan} place={place} isOld={isOld} heading={heading} />
      <StepPage
        plan={plan}
        place={place}
        pictureOf={pictureOf}
        onGo={({ id }) => turnTo(id)}
        onNotDone={() => tick(step, false)}
      />
      <Turning place={place} onGo={({ id }) => turnTo(id)} onDone={done} />
      <Sitting plan={plan} ticked={ticked} batch={batch} onBatch={setBatch} onGo={({ id }) => turnTo(id)} />
      <StepList
        plan={plan}
        parts={parts}
        ticked={ticked}
        current={step}
        onGo={({ id }) => turnTo(id)}
        onTick={tick}
      />
      <TakeItWithYou plan={plan} />
      <StaysOver plan={plan} isOpen={place.open === null} />
    </div>
  );
}

// Coming back from another page she is still in the same sitting. Of one plan at a time.
let last: { readonly plan: PlanDocument; readonly batch: Batch } | null = null;

function useBatch(plan: PlanDocument): readonly [Batch | null, (batch: Batch | null) => void] {
  const [batch, setBatch] = useState(last?.plan === plan ? last.batch : null);
  const choose = (chosen: Batch | null) => {
    last = chosen === null ? null : { plan, batch: chosen };
    setBatch(chosen);
  };
  return [batch, choose];
}

type HeadProps = Omit<ReadyProps, "pictureOf"> & {
  readonly place: Place;
  readonly heading: React.RefObject<HTMLHeadingElement | null>;
};

function Head({ plan, place, isOld, heading }: HeadProps) {
  const texts = useTexts(sewTexts);
  const steps = plan.steps.length;
  return (
    <header className={styles.head}>
      <h1 ref={heading} tabIndex={-1}>
        {texts.stepOf(place.number, steps)}
      </h1>
      <p role="status">{place.open === null ? texts.allDone : texts.progress(place.done, steps)}</p>
      <div className={styles.come} style={{ "--share": place.done / steps }} aria-hidden="true" />
      {place.open === null && <p className={styles.quiet}>{texts.allDoneWhat}</p>}
      {isOld && <p className={styles.note}>{texts.changedSince}</p>}
    </header>
  );
}

type TurningProps = {
  readonly place: Place;
  readonly onGo: (step: Step) => void;
  readonly onDone: () => void;
};

/** In thumb's reach: done and on to the next, or one step back. */
function Turning({ place, onGo, onDone }: TurningProps) {
  const texts = useTexts(sewTexts);
  const { before, after, open, isDone } = place;
  return (
    <div className={`${styles.turning} notPrinted`}>
      <Button className="button" isDisabled={before === null} onPress={() => before && onGo(before)}>
        {texts.back}
      </Button>
      {isDone && open !== null && (
        <Button className="button next" onPress={() => onGo(open)}>
          {texts.jumpToNext}
        </Button>
      )}
      {isDone && open === null && (
        <Button className="button" isDisabled={after === null} onPress={() => after && onGo(after)}>
          {texts.next}
        </Button>
      )}
      {!isDone && (
        <Button className="button next" onPress={onDone}>
          {place.isLastOpen ? texts.doneLast : texts.done}
        </Button>
      )}
    </div>
  );
}
