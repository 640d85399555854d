import { type MouseEvent, useMemo } from "react";
import { Button, ProgressBar } from "react-aria-components";
import type { Reason } from "../../../engine/choice/index.ts";
import type { Lab } from "../../../engine/cloth/index.ts";
import type { Drawing, Rect } from "../../../engine/drawing/index.ts";
import { add } from "../../../engine/length/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { adviceTexts, drawingTexts, planTexts } from "../../../words/index.ts";
import { useProject } from "../../frame/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { useTexts } from "../../parts/texts.ts";
import { type Marks, markingOf } from "./advice.tsx";
import { another, type Desk, type Found, seconds, type Wish } from "./desk.ts";
import styles from "./plan.module.css";
import { type Cell, cellAt, cellsOf, stayingIn } from "./stays.ts";

type ChosenPlanProps = {
  readonly wish: Wish;
  readonly found: Found;
  readonly empty: Drawing | null;
  readonly reasons: readonly Reason[];
  readonly cell: Cell | null;
  readonly onCell: (cell: Cell) => void;
  readonly marks: Marks;
};

/** The chosen plan, large. Its pieces can be tapped; the list below does the same for who can't. */
export function ChosenPlan({ wish, found: { plan }, empty, reasons, ...cells }: ChosenPlanProps) {
  const texts = useTexts(planTexts);
  return (
    <section className={styles.chosen} aria-labelledby="chosen-style">
      <h2 id="chosen-style">{texts.style(wish.style)}</h2>
      <p className={styles.quiet}>{texts.styleIs(wish.style)}</p>
      {reasons.length > 0 && <p className={styles.reason}>{texts.reasons(reasons)}</p>}
      {plan === null ? (
        empty !== null && <Figure drawing={empty} name={texts.drawing} />
      ) : (
        <PlanFigure plan={plan} stays={wish.stays} {...cells} />
      )}
    </section>
  );
}

type PlanFigureProps = Pick<ChosenPlanProps, "cell" | "onCell" | "marks"> & {
  readonly plan: PlanDocument;
  readonly stays: Wish["stays"];
};

function PlanFigure({ plan, stays, cell, onCell, marks: { marked } }: PlanFigureProps) {
  const drawn = useTexts(drawingTexts);
  const advice = useTexts(adviceTexts);
  const pinned = useMemo(() => {
    const staying = stayingIn(plan, stays);
    return cellsOf(plan).flatMap((one) => (staying.has(one.key) ? [rectOf(one, plan)] : []));
  }, [plan, stays]);
  const tapped = (x: number, y: number) => {
    const found = cellAt(plan, x * plan.back.width, y * plan.back.height);
    if (found !== null) onCell(found);
  };
  return (
    <Figure
      drawing={drawingOfPlan(plan)}
      name={drawn.nameOfPlan(plan.style, plan.back)}
      onTap={tapped}
      pinned={pinned}
      {...(cell === null ? {} : { framed: rectOf(cell, plan) })}
      {...(marked === null ? {} : { ...markingOf(marked), said: advice.marked(marked) })}
    />
  );
}

/** Where a cell lies on the back, from its raw corner. */
function rectOf({ x, y, node: { width, height } }: Cell, { seam }: PlanDocument): Rect {
  return { x: add(x, seam), y: add(y, seam), width, height };
}

type FigureProps = {
  readonly drawing: Drawing;
  readonly name: string;
  /** A place of the drawing, each way 0 to 1. */
  readonly onTap?: (x: number, y: number) => void;
  readonly pinned?: readonly Rect[];
  readonly framed?: Rect;
  readonly marked?: readonly Rect[];
  readonly newCloth?: Lab;
  /** What the marked cells are. */
  readonly said?: string;
};

function Figure({ drawing, name, onTap, said, ...marks }: FigureProps) {
  const drawn = useTexts(drawingTexts);
  const tap = ({ currentTarget, clientX, clientY }: MouseEvent<HTMLDivElement>) => {
    const box = currentTarget.querySelector("svg")?.getBoundingClientRect();
    if (box !== undefined) onTap?.((clientX - box.left) / box.width, (clientY - box.top) / box.height);
  };
  return (
    <figure className={styles.large}>
      {/* biome-ignore lint/a11y: by keyboard the list of pieces does the same */}
      <div className={onTap === undefined ? undefined : styles.tapped} onClick={tap}>
        <ClothDrawing drawing={drawing} name={name} ruler={drawn.ruler(drawing.ruler.length)} {...marks} />
      </div>
      <figcaption>
        {drawn.seenFromBehind} {drawing.cutOff !== null && drawn.cutOff} {said}
      </figcaption>
    </figure>
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
            <Button className="button" onPress={() => desk.search(wish, nextSearch(found), true)}>
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
