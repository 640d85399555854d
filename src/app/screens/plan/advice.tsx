import { useEffect, useMemo, useState } from "react";
import { ToggleButton } from "react-aria-components";
import type { Advice, AdviceKind } from "../../../engine/advice/index.ts";
import { type Job, type Lab, readColour } from "../../../engine/cloth/index.ts";
import type { Rect } from "../../../engine/drawing/index.ts";
import type { PlanDocument, TopPhoto } from "../../../files/index.ts";
import { adviceTexts } from "../../../words/index.ts";
import { useProjectContent } from "../../frame/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { useTexts } from "../../parts/texts.ts";
import { beside } from "../../worker/index.ts";
import styles from "./advice.module.css";
import type { Found } from "./desk.ts";

type Advised = {
  readonly job: Job;
  readonly top: TopPhoto | null;
  readonly advice: Promise<readonly Advice[]>;
};
const known = new WeakMap<PlanDocument, Advised>();

/** The same plan under the same top has the same advice, and is asked for it once. */
function adviceOn(plan: PlanDocument, job: Job, top: TopPhoto | null): Promise<readonly Advice[]> {
  const before = known.get(plan);
  if (before?.job === job && before.top === top) return before.advice;
  // Where it fails the plan is as good as before, only nothing is said about it.
  const advice = beside.adviseOn({ ...plan, topColours: coloursOf(top) }, job).catch(() => []);
  known.set(plan, { job, top, advice });
  return advice;
}

function coloursOf(top: TopPhoto | null) {
  return (top?.colours ?? []).flatMap(({ colour, share }) => {
    const lab = readColour(colour)?.lab;
    return lab === undefined ? [] : [{ lab, share }];
  });
}

/** What is worth knowing of the plan, and what of it she wants to be shown in the drawing. */
export type Marks = {
  /** While better plans come one after the other, advice on each would only flicker. */
  readonly advice: readonly Advice[];
  /** null: nothing, or what this plan has no hint about. */
  readonly marked: Advice | null;
  readonly onMark: (kind: AdviceKind | null) => void;
};

const none: readonly Advice[] = [];

export function useMarks({ plan, state }: Pick<Found, "plan" | "state">, job: Job): Marks {
  const [wanted, onMark] = useState<AdviceKind | null>(null);
  const isSettled = state !== "searching" && state !== "waiting";
  const advice = useAdvice(isSettled ? plan : null, job);
  return useMemo(
    () => ({ advice, marked: advice.find(({ kind }) => kind === wanted) ?? null, onMark }),
    [advice, wanted],
  );
}

/** It comes a moment after the plan. */
function useAdvice(plan: PlanDocument | null, job: Job): readonly Advice[] {
  const { topPhoto } = useProjectContent();
  const [found, setFound] = useState<{ plan: PlanDocument; advice: readonly Advice[] } | null>(null);
  useEffect(() => {
    if (plan === null) return;
    let isWanted = true;
    void adviceOn(plan, job, topPhoto).then((advice) => isWanted && setFound({ plan, advice }));
    return () => {
      isWanted = false;
    };
  }, [plan, job, topPhoto]);
  return found !== null && found.plan === plan ? found.advice : none;
}

/** A fabric that would mend the plan is shown where it would go, as the cloth it is. */
export function markingOf(advice: Advice): { readonly marked: readonly Rect[]; readonly newCloth?: Lab } {
  const marked = advice.where.cells;
  const mend = advice.kind === "contrast" ? advice.mend : null;
  return mend === null ? { marked } : { marked, newCloth: mend.lab };
}

type AdviceListProps = { readonly plan: PlanDocument; readonly marks: Marks };

/** What is worth knowing before one sews this plan; each hint can be shown in the drawing. */
export function AdviceList({ plan, marks }: AdviceListProps) {
  const texts = useTexts(adviceTexts);
  const { advice, marked, onMark } = marks;
  if (advice.length === 0) return null;
  return (
    <section aria-labelledby="before-you-sew">
      <h3 id="before-you-sew">{texts.heading}</h3>
      <ul className={styles.hints}>
        {advice.map((one) => (
          <Hint
            key={one.kind}
            advice={one}
            plan={plan}
            isMarked={one.kind === marked?.kind}
            onMark={(on) => onMark(on ? one.kind : null)}
          />
        ))}
      </ul>
    </section>
  );
}

type HintProps = {
  readonly advice: Advice;
  readonly plan: PlanDocument;
  readonly isMarked: boolean;
  readonly onMark: (on: boolean) => void;
};

function Hint({ advice, plan, isMarked, onMark }: HintProps) {
  const texts = useTexts(adviceTexts);
  const where = texts.where(advice, plan);
  return (
    <li className={styles.hint}>
      <h4>{texts.title(advice)}</h4>
      <p>{texts.text(advice, plan)}</p>
      {where !== null && <p className={styles.where}>{where}</p>}
      <ToggleButton
        className={`button plain ${styles.show}`}
        aria-label={texts.showOf(advice)}
        isSelected={isMarked}
        onChange={onMark}
      >
        {texts.show}
      </ToggleButton>
      {isMarked && <Nearby advice={advice} plan={plan} />}
    </li>
  );
}

/** On a phone the large drawing is out of sight; who can't see this one has it all in words above. */
function Nearby({ advice, plan }: Pick<HintProps, "advice" | "plan">) {
  return (
    <div className={styles.nearby} aria-hidden="true">
      <ClothDrawing drawing={drawingOfPlan(plan)} look="medium" name="" {...markingOf(advice)} />
    </div>
  );
}
