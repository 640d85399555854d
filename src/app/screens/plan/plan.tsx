import { useMemo, useState } from "react";
import { planTexts } from "../../../words/index.ts";
import { hrefOf, useProject, useProjectState } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import { useMarks } from "./advice.tsx";
import { ChosenPlan, Search } from "./chosenPlan.tsx";
import { KeepBar } from "./keepBar.tsx";
import styles from "./plan.module.css";
import { PlanDetails } from "./planDetails.tsx";
import { type Planning, planningFor, shownFor } from "./planning.ts";
import { StyleChoice } from "./styleChoice.tsx";
import { useDesk } from "./useDesk.ts";

/** The styles that suit her leftovers, and the chosen one large while it is still growing better. */
export default function Plan() {
  const { project } = useProjectState();
  const { settings, size, time, plain, heap, leftovers, rough } = project;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the parts of a project that make the job
  const planning = useMemo(() => planningFor(project), [settings, size, time, plain, heap, leftovers, rough]);
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
  const { project } = useProjectState();
  const shown = shownFor(project, planning);
  const isAmongOthers = shown.others.includes(shown.chosen);
  const [opened, setOpened] = useState(false);
  const withOthers = opened || isAmongOthers;
  const { desk, ofChosen, foundFor } = useDesk(planning, shown, withOthers);
  const marks = useMarks(ofChosen, planning.job);
  return (
    <div className={styles.page}>
      <h1>{texts.title}</h1>
      <StyleChoice
        shown={shown}
        empty={planning.empty}
        foundFor={foundFor}
        withOthers={withOthers}
        onOthers={() => setOpened(true)}
      />
      <ChosenPlan wish={shown.chosen} found={ofChosen} empty={planning.empty} marks={marks} />
      <Search wish={shown.chosen} found={ofChosen} desk={desk} />
      {ofChosen.plan !== null && <PlanDetails plan={ofChosen.plan} planning={planning} marks={marks} />}
      <KeepBar plan={ofChosen.plan} hash={planning.hash} keptIsOld={shown.keptIsOld} />
    </div>
  );
}
