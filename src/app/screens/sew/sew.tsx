import { useMemo, useRef, useState } from "react";
import { Button } from "react-aria-components";
import type { Step } from "../../../engine/sewing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { sewTexts } from "../../../words/index.ts";
import { hrefOf, Notice, useProject, useProjectState } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./sew.module.css";
import { type Place, partsOf, placeIn, sewingFor, turnAfter } from "./sewFacts.ts";
import { StepList } from "./stepList.tsx";
import { StepPage } from "./stepPage.tsx";

/** The steps of the kept plan, one at a time, to be read from the machine. */
export default function Sew() {
  const texts = useTexts(sewTexts);
  const { id } = useProject();
  const { project } = useProjectState();
  const sewing = useMemo(() => sewingFor(project), [project]);
  if (sewing.kind === "ready") return <Ready plan={sewing.plan} isOld={sewing.isOld} />;
  return (
    <Notice title={texts.noPlan} text={sewing.kind === "unreadable" ? texts.unreadable : texts.noPlanWhat}>
      <a className="button next" href={hrefOf({ screen: "plan", project: id })}>
        {texts.toPlan}
      </a>
    </Notice>
  );
}

type ReadyProps = { readonly plan: PlanDocument; readonly isOld: boolean };

function Ready({ plan, isOld }: ReadyProps) {
  const project = useProject();
  const { ticked } = useProjectState().project;
  const [at, setAt] = useState<string | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const parts = useMemo(() => partsOf(plan), [plan]);
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
    turnTo(turnAfter(plan, ticked, step));
  };
  // Ticking in the list doesn't turn the page.
  const tick = (ticking: Step, isDone: boolean) => {
    setAt(step.id);
    project.tick(ticking.id, isDone);
  };
  return (
    <div className={styles.page}>
      <Head plan={plan} place={place} isOld={isOld} heading={heading} />
      <StepPage plan={plan} place={place} onGo={({ id }) => turnTo(id)} onNotDone={() => tick(step, false)} />
      <Turning place={place} onGo={({ id }) => turnTo(id)} onDone={done} />
      <StepList
        plan={plan}
        parts={parts}
        ticked={ticked}
        current={step}
        onGo={({ id }) => turnTo(id)}
        onTick={tick}
      />
    </div>
  );
}

type HeadProps = ReadyProps & {
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
