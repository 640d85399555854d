import { useMemo } from "react";
import { type Drawing, firstStepOfCells } from "../../../engine/drawing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { drawingTexts, sewTexts, viewTexts } from "../../../words/index.ts";
import { useProjectContent } from "../../frame/index.ts";
import { boxOnPage } from "../../parts/drawing/page.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./figure.module.css";
import { isTheKept } from "./planning.ts";
import { cellsOf } from "./stays.ts";

/** How far a plan is sewn, as she ticked it off. */
export type ToGo = {
  readonly plan: PlanDocument;
  /** For each cell the step that sews it first, while that is not done; null: it is sewn. */
  readonly steps: readonly (string | null)[];
  readonly done: number;
  readonly all: number;
};

/** Only the plan that she keeps is sewn. */
export function useToGo(plan: PlanDocument): ToGo | undefined {
  const { plan: kept, ticked } = useProjectContent();
  return useMemo(() => {
    if (!isTheKept(plan, kept) || plan.steps.length === 0) return undefined;
    const steps = firstStepOfCells(plan).map((step) => (step === null || ticked.has(step) ? null : step));
    const done = plan.steps.filter(({ id }) => ticked.has(id)).length;
    return { plan, steps, done, all: plan.steps.length };
  }, [plan, kept, ticked]);
}

type StepNumbersProps = Pick<ToGo, "steps"> & { readonly drawing: Drawing };

// Of the drawing's page, in its pixels: from the smallest that can be read where the drawing is enlarged.
const sizes = { smallest: 12, largest: 30 } as const;

/** On each cell that is still to be sewn the number of its step, where it has room. */
export function StepNumbers({ drawing, steps }: StepNumbersProps) {
  return drawing.shapes.map((shape, cell) => {
    const step = steps[cell] ?? null;
    if (step === null) return null;
    const { x, y, width, height } = boxOnPage(shape, drawing, "large");
    const size = Math.min(sizes.largest, height * 0.7, (width * 1.4) / Math.max(2, step.length));
    if (size < sizes.smallest) return null;
    return (
      <text
        key={`${x} ${y}`}
        className={styles.stepNumber}
        x={x + width / 2}
        y={y + height / 2}
        fontSize={size}
      >
        {step}
      </text>
    );
  });
}

/** The same for who can't see it: each step to go, and what it sews first. */
export function StepsToGo({ toGo: { plan, steps, done, all } }: { readonly toGo: ToGo }) {
  const texts = useTexts(viewTexts);
  const sewing = useTexts(sewTexts);
  const drawn = useTexts(drawingTexts);
  const { ticked } = useProjectContent();
  const cells = cellsOf(plan);
  if (done === all) return null;
  return (
    <details className={styles.toGo}>
      <summary>{texts.listToGo}</summary>
      <ul>
        {plan.steps
          .filter(({ id }) => !ticked.has(id))
          .map((step) => (
            <li key={step.id}>
              {sewing.inList(step, plan)} {sewing.measures(step)}
              <ul>
                {cells
                  .filter((_, cell) => steps[cell] === step.id)
                  .map(({ key, path }) => (
                    <li key={key}>{drawn.cell(path, plan.layout, plan)}</li>
                  ))}
              </ul>
            </li>
          ))}
      </ul>
    </details>
  );
}
