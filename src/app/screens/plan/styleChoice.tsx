import { memo } from "react";
import { Button, Label, Radio, RadioGroup } from "react-aria-components";
import type { Reason } from "../../../engine/choice/index.ts";
import type { Drawing } from "../../../engine/drawing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { drawingTexts, planTexts } from "../../../words/index.ts";
import { useProject } from "../../frame/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { useTexts } from "../../parts/texts.ts";
import { type Found, keyOf, type Wish } from "./desk.ts";
import { type Offered, reasonsFor } from "./offered.ts";
import styles from "./plan.module.css";
import type { Shown } from "./planning.ts";
import { SideBySideWay } from "./sideBySideWay.tsx";

type StyleChoiceProps = {
  readonly shown: Shown;
  readonly offered: Offered;
  readonly empty: Drawing | null;
  readonly foundFor: (wish: Wish) => Found;
  readonly hash: string;
  readonly withOthers: boolean;
  readonly onOthers: (isOpen: boolean) => void;
};

/** The styles as small drawings that fill as they are found, with their hours and what to buy. */
export const StyleChoice = memo(function StyleChoice(props: StyleChoiceProps) {
  const { shown, offered, empty, foundFor, hash, withOthers, onOthers } = props;
  const texts = useTexts(planTexts);
  const project = useProject();
  const wishes = withOthers ? [...shown.best, ...shown.others] : shown.best;
  const choose = (key: string) => {
    const wish = wishes.find((one) => keyOf(one) === key);
    if (wish !== undefined) project.setWishes(wish);
  };
  return (
    <div className={styles.styles}>
      <RadioGroup value={keyOf(shown.chosen)} onChange={choose}>
        <Label className={`${styles.heading}`}>{withOthers ? texts.allStyles : texts.bestStyles}</Label>
        <div className={styles.cards} data-all={withOthers}>
          {wishes.map((wish) => (
            <StyleCard
              key={keyOf(wish)}
              wish={wish}
              plan={foundFor(wish).plan}
              empty={empty}
              reasons={reasonsFor(wish, offered)}
            />
          ))}
        </div>
      </RadioGroup>
      <p role="status" className={styles.quiet}>
        {offered.kind === "making" && texts.choosing}
      </p>
      {offered.kind === "made" &&
        offered.notes.map((note) => <p key={note.kind}>{texts.choiceNote(note)}</p>)}
      {!withOthers && (
        <Button className="button plain" onPress={() => onOthers(true)}>
          {texts.otherStyles}
        </Button>
      )}
      <SideBySideWay shown={shown} foundFor={foundFor} hash={hash} />
    </div>
  );
});

type StyleCardProps = {
  readonly wish: Wish;
  readonly plan: PlanDocument | null;
  readonly empty: Drawing | null;
  readonly reasons: readonly Reason[];
};

const StyleCard = memo(function StyleCard({ wish, plan, empty, reasons }: StyleCardProps) {
  const texts = useTexts(planTexts);
  const drawn = useTexts(drawingTexts);
  const drawing = plan === null ? empty : drawingOfPlan(plan);
  return (
    <Radio value={keyOf(wish)} className={`${styles.card}`}>
      <span className={styles.picture} aria-hidden="true">
        {drawing !== null && (
          <ClothDrawing
            drawing={drawing}
            look="small"
            name={plan === null ? texts.drawing : drawn.nameOfPlan(plan.style, plan.back)}
          />
        )}
      </span>
      <span className={styles.facts}>
        <span className={styles.name}>{texts.style(wish.style)}</span>
        <span className={styles.cost}>{plan === null ? "" : texts.hours(plan.figures)}</span>
        <span className={styles.cost}>{plan === null ? "" : texts.toBuy(plan.buy)}</span>
        {reasons.length > 0 && <span className={styles.why}>{texts.reasons(reasons)}</span>}
      </span>
    </Radio>
  );
});
