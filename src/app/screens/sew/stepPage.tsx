import { useMemo } from "react";
import { Button } from "react-aria-components";
import type { Drawing } from "../../../engine/drawing/index.ts";
import type { Step } from "../../../engine/sewing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { drawingTexts, sewTexts } from "../../../words/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import { useClothPictures } from "../../parts/drawing/clothPictures.tsx";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./sew.module.css";
import { cautionsAt, type Place, pictureOfStep } from "./sewFacts.ts";

type OfStep = { readonly plan: PlanDocument; readonly step: Step };
type StepPageProps = {
  readonly plan: PlanDocument;
  readonly place: Place;
  readonly pictureOf: ReadonlyMap<string, string>;
  readonly onGo: (step: Step) => void;
  readonly onNotDone: () => void;
};

/** One step: its drawing, what is taken and how large it is cut, how it is sewn, pressed and squared up. */
export function StepPage({ plan, place, pictureOf, onGo, onNotDone }: StepPageProps) {
  const texts = useTexts(sewTexts);
  const { step, isDone, waitsFor } = place;
  const measureFirst = texts.measureFirst(step);
  return (
    <>
      <StepDrawing plan={plan} step={step} pictureOf={pictureOf} />
      <section className={styles.step}>
        <h2>{texts.makes(step, plan)}</h2>
        {isDone && (
          <div className={styles.isDone}>
            <p>{texts.isDone}</p>
            <Button className="button" onPress={onNotDone}>
              {texts.notDone}
            </Button>
          </div>
        )}
        <WaitsFor steps={waitsFor} onGo={onGo} />
        <h3>{texts.lay(step)}</h3>
        <PartsToTake plan={plan} step={step} />
        {measureFirst !== null && <p className={styles.note}>{measureFirst}</p>}
        <p>{texts.sewing(step, plan)}</p>
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

type WaitsForProps = { readonly steps: readonly Step[]; readonly onGo: (step: Step) => void };

/** Said, not forbidden: she may have sewn them and not ticked them yet. */
function WaitsFor({ steps, onGo }: WaitsForProps) {
  const texts = useTexts(sewTexts);
  const [first] = steps;
  if (first === undefined) return null;
  return (
    <div className={styles.note}>
      <p>{texts.waits(steps)}</p>
      <Button className="button" onPress={() => onGo(first)}>
        {texts.goTo(first)}
      </Button>
    </div>
  );
}

function PartsToTake({ plan, step }: OfStep) {
  const texts = useTexts(sewTexts);
  return (
    <ol className={styles.parts}>
      {step.from.map((part, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a part is known by its place in the step
        <li key={index} data-sewn={"step" in part}>
          <span className={styles.size}>
            {texts.partCount(part) !== "" && <span className={styles.count}>{texts.partCount(part)} </span>}
            {texts.partSize(part)}
          </span>
          <span className={styles.what}>{texts.partWhat(part, plan)}</span>
        </li>
      ))}
    </ol>
  );
}

function StepDrawing({ plan, step, pictureOf }: OfStep & Pick<StepPageProps, "pictureOf">) {
  const texts = useTexts(sewTexts);
  const picture = useMemo(() => pictureOfStep(plan, step), [plan, step]);
  if (picture === null) return null;
  const { drawing, place, isWide } = picture;
  return (
    <div className={styles.drawings} data-wide={isWide}>
      <div className={styles.drawing}>
        <DrawnInCloth plan={plan} step={step} drawing={drawing} pictureOf={pictureOf} />
      </div>
      {place !== null && (
        <figure className={styles.where}>
          <ClothDrawing
            drawing={drawingOfPlan(plan)}
            look="small"
            name={texts.placeOf(step)}
            framed={place}
          />
          <figcaption>{texts.whereItGoes}</figcaption>
        </figure>
      )}
    </div>
  );
}

type DrawnProps = OfStep & Pick<StepPageProps, "pictureOf"> & { readonly drawing: Drawing };

/** Her own cloth where it was photographed, as it lies beside the machine. */
function DrawnInCloth({ plan, step, drawing, pictureOf }: DrawnProps) {
  const texts = useTexts(sewTexts);
  const drawn = useTexts(drawingTexts);
  return (
    <ClothDrawing
      drawing={drawing}
      name={texts.drawingOf(step, plan)}
      ruler={drawn.ruler(drawing.ruler.length)}
      onCloth={useClothPictures({ drawing, plan, pictureOf })}
    />
  );
}
