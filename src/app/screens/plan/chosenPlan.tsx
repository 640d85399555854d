import { Button, ProgressBar } from "react-aria-components";
import type { Drawing } from "../../../engine/drawing/index.ts";
import { adviceTexts, drawingTexts, planTexts } from "../../../words/index.ts";
import { useProject } from "../../frame/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { useTexts } from "../../parts/texts.ts";
import { type Marks, markingOf } from "./advice.tsx";
import { another, type Desk, type Found, seconds, type Wish } from "./desk.ts";
import styles from "./plan.module.css";

type ChosenPlanProps = {
  readonly wish: Wish;
  readonly found: Found;
  readonly empty: Drawing | null;
  readonly marks: Marks;
};

/** The chosen plan, large. */
export function ChosenPlan({ wish, found: { plan }, empty, marks: { marked } }: ChosenPlanProps) {
  const texts = useTexts(planTexts);
  const drawn = useTexts(drawingTexts);
  const advice = useTexts(adviceTexts);
  const drawing = plan === null ? empty : drawingOfPlan(plan);
  return (
    <section className={styles.chosen} aria-labelledby="chosen-style">
      <h2 id="chosen-style">{texts.style(wish.style)}</h2>
      <p className={styles.quiet}>{texts.styleIs(wish.style)}</p>
      {drawing !== null && (
        <figure className={styles.large}>
          <ClothDrawing
            drawing={drawing}
            name={plan === null ? texts.drawing : drawn.nameOfPlan(plan.style, plan.back)}
            ruler={drawn.ruler(drawing.ruler.length)}
            {...(marked === null ? {} : markingOf(marked))}
          />
          <figcaption>
            {drawn.seenFromBehind} {drawing.cutOff !== null && drawn.cutOff}{" "}
            {marked !== null && advice.marked(marked)}
          </figcaption>
        </figure>
      )}
    </section>
  );
}

type SearchProps = Pick<ChosenPlanProps, "wish" | "found"> & { readonly desk: Desk };

/** How the search for a better one stands, and what she can do about it. */
export function Search({ wish, found, desk }: SearchProps) {
  const texts = useTexts(planTexts);
  const project = useProject();
  const isSearching = found.state === "searching" || found.state === "waiting";
  return (
    <div className={styles.search}>
      <p role="status" className={styles.quiet}>
        {sayingOf(found.state, texts)}
      </p>
      <Progress found={found} isSearching={isSearching} />
      <div className={styles.ways}>
        {isSearching ? (
          <Button className="button" isDisabled={found.plan === null} onPress={() => desk.stop(wish)}>
            {texts.stop}
          </Button>
        ) : (
          <>
            <Button className="button" onPress={() => desk.search(wish, nextSearch(found))}>
              {found.state === "failed" ? texts.tryAgain : texts.searchOn}
            </Button>
            <Button className="button" onPress={() => project.setWishes(another(wish))}>
              {texts.another}
            </Button>
          </>
        )}
      </div>
    </div>
  );
}

function nextSearch({ state, seconds: done }: Found): number {
  return state === "found" && done >= seconds.look ? seconds.longLook : seconds.look;
}

function sayingOf(state: Found["state"], texts: ReturnType<typeof planTexts>): string {
  switch (state) {
    case "waiting":
    case "searching":
      return texts.searching;
    case "found":
      return texts.found;
    case "stopped":
      return texts.stopped;
    case "failed":
      return texts.failed;
  }
}

/** A thread that grows; its place is there when nothing grows, so that nothing jumps. */
function Progress({ found, isSearching }: { readonly found: Found; readonly isSearching: boolean }) {
  const texts = useTexts(planTexts);
  if (!isSearching) return <div className={styles.progress} />;
  const { share, covered } = found;
  return (
    <ProgressBar
      className={`${styles.progress}`}
      aria-label={texts.searching}
      value={share}
      maxValue={1}
      {...(covered === null ? {} : { valueLabel: texts.searchingShare(covered) })}
    >
      <div className={styles.thread} style={{ "--share": share }} />
    </ProgressBar>
  );
}
