import { Button, Label, Radio, RadioGroup } from "react-aria-components";
import type { Drawing } from "../../../engine/drawing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { drawingTexts, planTexts } from "../../../words/index.ts";
import { useProject } from "../../frame/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { useTexts } from "../../parts/texts.ts";
import { type Found, keyOf, type Wish } from "./desk.ts";
import styles from "./plan.module.css";
import type { Shown } from "./planning.ts";

type StyleChoiceProps = {
  readonly shown: Shown;
  readonly empty: Drawing | null;
  readonly foundFor: (wish: Wish) => Found;
  readonly withOthers: boolean;
  readonly onOthers: () => void;
};

/** The styles as small drawings that fill as they are found, with their hours and what to buy. */
export function StyleChoice({ shown, empty, foundFor, withOthers, onOthers }: StyleChoiceProps) {
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
            <StyleCard key={keyOf(wish)} wish={wish} plan={foundFor(wish).plan} empty={empty} />
          ))}
        </div>
      </RadioGroup>
      {!withOthers && (
        <Button className="button plain" onPress={onOthers}>
          {texts.otherStyles}
        </Button>
      )}
    </div>
  );
}

type StyleCardProps = {
  readonly wish: Wish;
  readonly plan: PlanDocument | null;
  readonly empty: Drawing | null;
};

function StyleCard({ wish, plan, empty }: StyleCardProps) {
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
      </span>
    </Radio>
  );
}
