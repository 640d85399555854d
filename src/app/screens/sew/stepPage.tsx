import { useMemo } from "react";
import type { Step } from "../../../engine/sewing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { drawingTexts, sewTexts } from "../../../words/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./sew.module.css";
import { cautionsAt, drawingOfStep, placeOf } from "./sewFacts.ts";

type StepPageProps = { readonly plan: PlanDocument; readonly step: Step; readonly isDone: boolean };

/** One step: its drawing, what is taken and how large it is cut, how it is sewn, pressed and squared up. */
export function StepPage({ plan, step, isDone }: StepPageProps) {
  const texts = useTexts(sewTexts);
  const measureFirst = texts.measureFirst(step);
  return (
    <>
      <StepDrawing plan={plan} step={step} />
      <section className={styles.step} data-done={isDone}>
        <h2>{texts.makes(step, plan)}</h2>
        {isDone && <p className={styles.isDone}>{texts.isDone}</p>}
        <h3>{texts.lay(step)}</h3>
        <ol className={styles.parts}>
          {step.from.map((part, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a part is known by its place in the step
            <li key={index}>
              <span className={styles.size}>
                {texts.partCount(part) !== "" && (
                  <span className={styles.count}>{texts.partCount(part)} </span>
                )}
                {texts.partSize(part)}
              </span>
              <span className={styles.what}>{texts.partWhat(part, plan)}</span>
            </li>
          ))}
        </ol>
        {measureFirst !== null && <p className={styles.note}>{measureFirst}</p>}
        <p>{texts.sewing(step)}</p>
        <p>{texts.press(step)}</p>
        <p>
          <strong>{texts.result(step, plan)}</strong>
        </p>
        {cautionsAt(plan, step).map((caution) => (
          <p key={caution} className={styles.caution}>
            {texts.caution(caution)}
          </p>
        ))}
      </section>
    </>
  );
}

function StepDrawing({ plan, step }: Omit<StepPageProps, "isDone">) {
  const texts = useTexts(sewTexts);
  const drawn = useTexts(drawingTexts);
  const drawing = useMemo(() => drawingOfStep(plan, step), [plan, step]);
  const place = useMemo(() => placeOf(plan, step), [plan, step]);
  if (drawing === null || place === null) return null;
  return (
    <div className={styles.drawings}>
      <div className={styles.drawing}>
        <ClothDrawing
          drawing={drawing}
          name={texts.drawingOf(step)}
          ruler={drawn.ruler(drawing.ruler.length)}
        />
      </div>
      <figure className={styles.where}>
        <ClothDrawing
          drawing={drawingOfPlan(plan)}
          look="small"
          name={texts.placeOf(step, plan)}
          framed={place}
        />
        <figcaption>{texts.whereItGoes}</figcaption>
      </figure>
    </div>
  );
}
