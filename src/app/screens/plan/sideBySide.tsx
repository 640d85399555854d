import { useEffect, useRef, useState } from "react";
import { Button, Checkbox, CheckboxGroup, Label } from "react-aria-components";
import type { PlanDocument } from "../../../files/index.ts";
import { type ComparisonTexts, comparisonTexts, drawingTexts, planTexts } from "../../../words/index.ts";
import { useProject, useProjectContent } from "../../frame/index.ts";
import { ClothDrawing } from "../../parts/drawing/clothDrawing.tsx";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { useTexts } from "../../parts/texts.ts";
import { type ComparedPlan, comparedPlans, laidSideBySide } from "./comparedPlans.ts";
import type { Found, Wish } from "./desk.ts";
import { type NamedPlan, useNamedPlans } from "./namedPlans.ts";
import type { Shown } from "./planning.ts";
import styles from "./sideBySide.module.css";
import { UnderName } from "./underName.tsx";

export type SideBySideProps = {
  readonly shown: Shown;
  readonly foundFor: (wish: Wish) => Found;
  readonly hash: string;
  /** `said`: what has happened to the plan since. */
  readonly onClose: (said: string) => void;
};

/** Plans beside each other with what each takes, and those that are kept under a name to go back to. */
export default function SideBySide({ shown, foundFor, hash, onClose }: SideBySideProps) {
  const texts = useTexts(comparisonTexts);
  const project = useProject();
  const { plan: kept } = useProjectContent();
  const { named, readAgain } = useNamedPlans();
  const all = comparedPlans({ shown, foundFor, kept, named: named ?? [] });
  const goBack = async (to: NamedPlan) =>
    onClose((await project.goBackTo(to.id)) ? texts.wentBack(to) : texts.notGoneBack);
  const take = ({ wish, named }: ComparedPlan) => {
    if (named !== null) return void goBack(named);
    if (wish !== null) project.setWishes(wish);
    onClose("");
  };
  return (
    <WholePage onClose={() => onClose("")}>
      <header className={styles.head}>
        <h2 id="side-by-side">{texts.sideBySide}</h2>
        <Button className="button" onPress={() => onClose("")}>
          {texts.close}
        </Button>
      </header>
      <Comparison all={all} keptIsOld={shown.keptIsOld} onTake={take} />
      <UnderName
        plan={foundFor(shown.chosen).plan}
        hash={hash}
        named={named}
        onKept={readAgain}
        onGoBack={(to) => void goBack(to)}
      />
    </WholePage>
  );
}

type WholePageProps = { readonly onClose: () => void; readonly children: React.ReactNode };

/** Over the whole page; the browser holds the focus in it, closes it at Escape and gives the focus back. */
function WholePage({ onClose, children }: WholePageProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (dialog.current?.open === false) dialog.current.showModal();
  }, []);
  return (
    <dialog ref={dialog} className={styles.page} aria-labelledby="side-by-side" onClose={onClose}>
      {children}
    </dialog>
  );
}

type ComparisonProps = {
  readonly all: readonly ComparedPlan[];
  readonly keptIsOld: boolean;
  readonly onTake: (plan: ComparedPlan) => void;
};

function Comparison({ all, keptIsOld, onTake }: ComparisonProps) {
  const texts = useTexts(comparisonTexts);
  const [wanted, setWanted] = useState<ReadonlySet<string> | null>(null);
  const [room] = useState(() => (matchMedia("(min-width: 44rem)").matches ? 3 : 2));
  const laid = laidSideBySide(all, wanted, room);
  const nameOf = useNames();
  return (
    <>
      {all.length < 2 && <p role="status">{texts.onlyOne}</p>}
      {all.length > 2 && (
        <CheckboxGroup
          className={`${styles.which}`}
          value={laid.map(({ key }) => key)}
          onChange={(keys) => setWanted(new Set(keys))}
        >
          <Label className={`${styles.label}`}>{texts.which}</Label>
          {all.map((one) => (
            <Checkbox key={one.key} value={one.key} className={`${styles.choice}`}>
              <span className={styles.box} aria-hidden="true" />
              {nameOf(one)}
            </Checkbox>
          ))}
        </CheckboxGroup>
      )}
      <div className={styles.sideways}>
        <table className={styles.table}>
          <thead>
            <tr>
              <td />
              {laid.map((one) => (
                <th key={one.key} scope="col">
                  <Picture plan={one.plan} />
                  {nameOf(one)}
                  <span className={styles.origin}>{originOf(one, keptIsOld, texts)}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <Facts laid={laid} />
            <tr>
              <th scope="row">{texts.goOn}</th>
              {laid.map((one) => (
                <td key={one.key}>
                  {!one.isChosen && (one.wish !== null || one.named !== null) && (
                    <Button
                      className="button"
                      aria-label={texts.takeOf(nameOf(one))}
                      onPress={() => onTake(one)}
                    >
                      {texts.take}
                    </Button>
                  )}
                </td>
              ))}
            </tr>
          </tbody>
        </table>
      </div>
    </>
  );
}

function useNames() {
  const texts = useTexts(planTexts);
  return ({ named, plan }: ComparedPlan) => named?.name ?? texts.style(plan.style);
}

function originOf({ isChosen, isKept, named }: ComparedPlan, isOld: boolean, texts: ComparisonTexts): string {
  if (named !== null) return texts.keptUnder(named);
  if (isKept) return isOld ? texts.keepsOld : texts.keeps;
  return isChosen ? texts.looksAt : "";
}

function Picture({ plan }: { readonly plan: PlanDocument }) {
  const drawn = useTexts(drawingTexts);
  return (
    <span className={styles.picture} aria-hidden="true">
      <ClothDrawing
        drawing={drawingOfPlan(plan)}
        look="small"
        name={drawn.nameOfPlan(plan.style, plan.back)}
      />
    </span>
  );
}

function Facts({ laid }: { readonly laid: readonly ComparedPlan[] }) {
  const texts = useTexts(comparisonTexts);
  const plans = useTexts(planTexts);
  const rows: readonly (readonly [string, (plan: PlanDocument) => string])[] = [
    [texts.time, ({ figures }) => plans.hours(figures)],
    [texts.toBuy, ({ buy }) => plans.toBuy(buy)],
    [texts.covered, ({ figures }) => texts.coveredOf(figures)],
    [texts.seams, ({ figures }) => texts.seamsOf(figures)],
    [texts.plain, ({ figures }) => texts.plainOf(figures)],
    [texts.contrast, ({ figures }) => texts.contrastOf(figures)],
  ];
  return rows.map(([head, fact]) => (
    <tr key={head}>
      <th scope="row">{head}</th>
      {laid.map(({ key, plan }) => (
        <td key={key}>{fact(plan)}</td>
      ))}
    </tr>
  ));
}
