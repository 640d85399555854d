import { useMemo, useRef, useState } from "react";
import { Button } from "react-aria-components";
import type { Step } from "../../../engine/sewing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { sewTexts } from "../../../words/index.ts";
import { hrefOf, Notice, useProject, useProjectState } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./sew.module.css";
import { nextOpen, type Place, placeIn, sewingFor } from "./sewFacts.ts";
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
  const texts = useTexts(sewTexts);
  const project = useProject();
  const { ticked } = useProjectState().project;
  const [at, setAt] = useState<string | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const place = placeIn(plan, ticked, at);
  if (place === null) return null;
  const goTo = (step: Step) => {
    setAt(step.id);
    // The next step is read from its beginning, by eye and by ear.
    heading.current?.focus({ preventScroll: true });
    scrollTo(0, 0);
  };
  const done = () => {
    project.tick(place.step.id, true);
    goTo(nextOpen(plan, ticked, place.step.id) ?? place.step);
  };
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <h1 ref={heading} tabIndex={-1}>
          {texts.stepOf(place.index + 1, plan.steps.length)}
        </h1>
        <p role="status">
          {place.open === null ? texts.allDone : texts.progress(place.done, plan.steps.length)}
        </p>
        {place.open === null && <p className={styles.quiet}>{texts.allDoneWhat}</p>}
        {isOld && <p className={styles.note}>{texts.changedSince}</p>}
      </header>
      <StepPage plan={plan} step={place.step} isDone={ticked.has(place.step.id)} />
      <StepList plan={plan} ticked={ticked} current={place.step} onChoose={goTo} />
      <Turning plan={plan} place={place} isDone={ticked.has(place.step.id)} onGo={goTo} onDone={done} />
    </div>
  );
}

type TurningProps = {
  readonly plan: PlanDocument;
  readonly place: Place;
  readonly isDone: boolean;
  readonly onGo: (step: Step) => void;
  readonly onDone: () => void;
};

/** In thumb's reach: done and on to the next, or one step back. */
function Turning({ plan, place, isDone, onGo, onDone }: TurningProps) {
  const texts = useTexts(sewTexts);
  const project = useProject();
  const { step, before, after, open } = place;
  const isLast = plan.steps.length - place.done <= 1;
  return (
    <div className={styles.turning}>
      <Button className="button" isDisabled={before === null} onPress={() => before && onGo(before)}>
        {texts.back}
      </Button>
      {isDone ? (
        <>
          <Button className="button" onPress={() => project.tick(step.id, false)}>
            {texts.notDone}
          </Button>
          {open !== null ? (
            <Button className="button next" onPress={() => onGo(open)}>
              {texts.jumpToNext}
            </Button>
          ) : (
            <Button className="button" isDisabled={after === null} onPress={() => after && onGo(after)}>
              {texts.next}
            </Button>
          )}
        </>
      ) : (
        <Button className="button next" onPress={onDone}>
          {isLast ? texts.doneLast : texts.done}
        </Button>
      )}
    </div>
  );
}
