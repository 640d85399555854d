import { memo, useMemo } from "react";
import { Button, ProgressBar } from "react-aria-components";
import type { Reason } from "../../../engine/choice/index.ts";
import type { Drawing, Rect } from "../../../engine/drawing/index.ts";
import { type Placed, placedAt } from "../../../engine/layout/index.ts";
import { add } from "../../../engine/length/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { adviceTexts, drawingTexts, handTexts, planTexts } from "../../../words/index.ts";
import { useProject, useProjectContent } from "../../frame/index.ts";
import { useClothPictures } from "../../parts/drawing/clothPictures.tsx";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { useTexts } from "../../parts/texts.ts";
import { type Marks, markingOf } from "./advice.tsx";
import type { Carrying } from "./carried.tsx";
import { another, type Desk, type Found, seconds, type Wish } from "./desk.ts";
import { Figure } from "./figure.tsx";
import styles from "./plan.module.css";
import { cellAt, cellsOf, stayingIn } from "./stays.ts";
import { useToGo } from "./stepsToGo.tsx";
import { useFound } from "./useDesk.ts";
import type { Hand } from "./useHand.ts";

type ChosenPlanProps = {
  readonly wish: Wish;
  /** The best so far; null: none yet. */
  readonly plan: PlanDocument | null;
  readonly empty: Drawing | null;
  readonly reasons: readonly Reason[];
  readonly hand: Hand;
  readonly marks: Marks;
  /** Pictures of her cloth, by the pieces of the plan. */
  readonly pictureOf: ReadonlyMap<string, string>;
};

/** The chosen plan, large. Its pieces can be tapped; the list below does the same for who can't. */
export const ChosenPlan = memo(function ChosenPlan({
  wish,
  plan,
  empty,
  reasons,
  ...cells
}: ChosenPlanProps) {
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
});

type PlanFigureProps = Pick<ChosenPlanProps, "hand" | "marks" | "pictureOf"> & {
  readonly plan: PlanDocument;
  readonly stays: Wish["stays"];
};

function PlanFigure({ plan, stays, hand, marks, pictureOf }: PlanFigureProps) {
  const { marked } = marks;
  const { cell, part, partners, pick } = hand;
  const { width, height } = plan.back;
  const framed = part === null ? cell : (placedAt(plan.layout, part.path, plan) ?? null);
  const drawing = drawingOfPlan(plan);
  const onCloth = useClothPictures({ drawing, plan, pictureOf });
  const drawn = useTexts(drawingTexts);
  const advice = useTexts(adviceTexts);
  const pinned = useMemo(() => {
    const staying = stayingIn(plan, stays);
    return cellsOf(plan).flatMap((one) => (staying.has(one.key) ? [rectOf(one, plan)] : []));
  }, [plan, stays]);
  const tapped = (x: number, y: number) => {
    const found = cellAt(plan, x * width, y * height);
    if (found !== null) pick(found);
  };
  const carrying: Carrying = {
    onCarry: (isCarried) => part === null && hand.seekPartner(isCarried),
    onDrop: (from, to) =>
      hand.drop(cellAt(plan, to.x * width, to.y * height), {
        width: (to.x - from.x) * width,
        height: (to.y - from.y) * height,
      }),
  };
  return (
    <Figure
      drawing={drawing}
      name={drawn.nameOfPlan(plan.style, plan.back)}
      onCloth={onCloth}
      topPicture={useProjectContent().topPhoto?.picture}
      onTap={tapped}
      carrying={carrying}
      toGo={useToGo(plan)}
      pinned={pinned}
      {...(framed === null ? {} : { framed: rectOf(framed, plan) })}
      {...(marked === null ? {} : { ...markingOf(marked), said: advice.marked(marked) })}
      {...(partners === null ? {} : { marked: partners.map((one) => rectOf(one, plan)), said: "" })}
    />
  );
}

/** Where a cell or a larger part lies on the back, from its raw corner. */
function rectOf({ x, y, node: { width, height } }: Placed, { seam }: PlanDocument): Rect {
  return { x: add(x, seam), y: add(y, seam), width, height };
}

type SearchProps = { readonly wish: Wish; readonly found: Found; readonly desk: Desk };

/** How the search for a better one stands, and what she can do about it. What she changed is hers: nothing is searched. */
export function Search(props: SearchProps) {
  return props.wish.byHand === null ? <Searching {...props} /> : <ChangedByHand wish={props.wish} />;
}

function ChangedByHand({ wish }: Pick<SearchProps, "wish">) {
  const texts = useTexts(planTexts);
  const hand = useTexts(handTexts);
  const project = useProject();
  return (
    <div className={styles.search}>
      <p role="status" className={styles.quiet}>
        {hand.changed}
      </p>
      <div className={styles.ways}>
        <Button className="button" onPress={() => project.setWishes({ ...wish, byHand: null })}>
          {hand.takeBack}
        </Button>
        <Button className="button" onPress={() => project.setWishes(another(wish))}>
          {texts.another}
        </Button>
      </div>
    </div>
  );
}

function Searching({ wish, found, desk }: SearchProps) {
  const texts = useTexts(planTexts);
  const project = useProject();
  const isSearching = found.state === "searching" || found.state === "waiting";
  return (
    <div className={styles.search}>
      <p role="status" className={styles.quiet}>
        {sayingOf(found.state, texts)}
      </p>
      {isSearching ? <Progress wish={wish} desk={desk} /> : <div className={styles.progress} />}
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
function Progress({ wish, desk }: Pick<SearchProps, "wish" | "desk">) {
  const texts = useTexts(planTexts);
  const { share, covered } = useFound(desk, wish);
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
