import { useDeferredValue, useMemo, useState } from "react";
import { handTexts, planTexts } from "../../../words/index.ts";
import { hrefOf, useProject, useProjectContent } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import { useMarks } from "./advice.tsx";
import { ChangePlan } from "./changePlan.tsx";
import { ChosenPlan, Search } from "./chosenPlan.tsx";
import type { Wish } from "./desk.ts";
import { KeepBar } from "./keepBar.tsx";
import { reasonsFor } from "./offered.ts";
import styles from "./plan.module.css";
import { PlanDetails } from "./planDetails.tsx";
import { type Planning, planningFor, shownFor } from "./planning.ts";
import { StyleChoice } from "./styleChoice.tsx";
import { useDesk, useOffered } from "./useDesk.ts";
import { useHand } from "./useHand.ts";
import { Wishes } from "./wishes.tsx";

/** The styles that suit her leftovers, and the chosen one large while it is still growing better. */
export default function Plan() {
  const project = useProjectContent();
  const { settings, size, time, plain, heap, leftovers, rough, wishes } = project;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the parts of a project that make the job
  const planning = useMemo(
    () => planningFor(project),
    [settings, size, time, plain, heap, leftovers, rough, wishes.asked, wishes.contrast],
  );
  return planning.kind === "ready" ? <Ready planning={planning} /> : <NotReady {...planning} />;
}

function NotReady({ missing, rows }: Planning & { readonly kind: "not-ready" }) {
  const texts = useTexts(planTexts);
  const { id } = useProject();
  return (
    <div className={styles.notReady}>
      <h1>{texts.title}</h1>
      <h2>{texts.notReady}</h2>
      {missing.map(({ page, problems }, index) => (
        <section key={page} className={styles.missing}>
          {problems.map((problem) => (
            <p key={`${problem.kind} ${problem.field}`}>{texts.stops(problem, rows)}</p>
          ))}
          <a className={index === 0 ? "button next" : "button"} href={hrefOf({ screen: page, project: id })}>
            {texts.mendOn[page]}
          </a>
        </section>
      ))}
    </div>
  );
}

function Ready({ planning }: { readonly planning: Planning & { readonly kind: "ready" } }) {
  const texts = useTexts(planTexts);
  const handed = useTexts(handTexts);
  const project = useProjectContent();
  const { desk, offered } = useOffered(planning);
  const shown = useMemo(() => shownFor(project, planning, offered), [project, planning, offered]);
  const isAmongOthers = shown.others.includes(shown.chosen);
  const [opened, setOpened] = useState(false);
  const withOthers = opened || isAmongOthers;
  const { ofChosen, foundFor } = useDesk(desk, shown, withOthers);
  const wish = useDrawnWish(shown.chosen);
  const drawn = foundFor(wish);
  const { plan } = drawn;
  const hand = useHand({ wish, plan, desk, planning });
  const marks = useMarks(drawn, planning.job);
  return (
    <div className={styles.page}>
      <div className={styles.head}>
        <h1>{texts.title}</h1>
        {shown.changesAreOld && <p className={styles.note}>{handed.changesAreOld}</p>}
      </div>
      <StyleChoice
        shown={shown}
        offered={offered}
        empty={planning.empty}
        foundFor={foundFor}
        hash={planning.hash}
        withOthers={withOthers}
        onOthers={setOpened}
      />
      <ChosenPlan
        wish={wish}
        plan={plan}
        empty={planning.empty}
        reasons={reasonsFor(wish, offered)}
        hand={hand}
        marks={marks}
        pictureOf={planning.pictureOf}
      />
      <KeepBar plan={plan} hash={planning.hash} keptIsOld={shown.keptIsOld} />
      <Search wish={shown.chosen} found={ofChosen} desk={desk} />
      {plan !== null && <ChangePlan wish={wish} plan={plan} desk={desk} hand={hand} planning={planning} />}
      <Wishes />
      {plan !== null && <PlanDetails plan={plan} planning={planning} marks={marks} />}
    </div>
  );
}

/**
 * Another style is marked at once where she presses it, and all that is drawn and said of its plan follows a moment
 * later. What she does by hand is drawn at once.
 */
function useDrawnWish(chosen: Wish): Wish {
  const before = useDeferredValue(chosen);
  const isByHand = before.byHand !== null || chosen.byHand !== null;
  return isByHand || before.style === chosen.style ? chosen : before;
}
