import { useEffect, useSyncExternalStore } from "react";
import { newProject } from "../../../files/index.ts";
import { drawingTexts } from "../../../words/index.ts";
import { useLocale } from "../../frame/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { keyOf, seconds } from "../plan/desk.ts";
import { deskFor } from "../plan/deskFor.ts";
import { planningFor, shownFor } from "../plan/planning.ts";
import styles from "./projects.module.css";
import { sampleProject } from "./sample.ts";
import { useProjectsTexts } from "./texts.ts";

const sample = { ...newProject({ title: "", createdAt: 0 }), ...sampleProject("") };
const planning = planningFor(sample);

/** What it is all about, in a picture: a back for the sample, planned at this moment. */
export default function Glimpse() {
  return planning.kind === "ready" ? <Planned planning={planning} /> : null;
}

type PlannedProps = { readonly planning: Extract<typeof planning, { readonly kind: "ready" }> };

function Planned({ planning }: PlannedProps) {
  const texts = useProjectsTexts();
  const drawn = drawingTexts(useLocale(), "in");
  const desk = deskFor(planning);
  const { chosen } = shownFor(sample, planning);
  const plan = useSyncExternalStore(desk.subscribe, desk.found).get(keyOf(chosen))?.plan ?? null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the sample is always the same
  useEffect(() => {
    desk.search(chosen, seconds.glance);
    return () => desk.leave();
  }, [desk]);
  if (plan === null) return null;
  return (
    <figure className={styles.glimpse}>
      <ClothDrawing
        drawing={drawingOfPlan(plan)}
        look="medium"
        name={drawn.nameOfPlan(plan.style, plan.back)}
      />
      <figcaption className={styles.quiet}>{texts.glimpse}</figcaption>
    </figure>
  );
}
