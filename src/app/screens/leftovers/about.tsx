import { memo, useMemo } from "react";
import { Checkbox } from "react-aria-components";
import { roughEdge } from "../../../files/index.ts";
import { useProject, useProjectPart } from "../../frame/index.ts";
import { Choice } from "../../parts/choice/choice.tsx";
import styles from "./about.module.css";
import { useHeap, useLeftoversTexts } from "./heapContext.ts";
import { reservedOf } from "./reserved.ts";
import { Stock } from "./stock.tsx";

/** What holds for the whole heap, and what is known of it without a list. */
export const About = memo(function About() {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const { cutting } = useProjectPart(({ heap }) => heap);
  return (
    <section className={styles.about} aria-label={texts.about}>
      <h2>{texts.about}</h2>
      <Choice
        label={texts.cutting}
        value={cutting}
        options={[
          { value: "clean", label: texts.clean },
          { value: "rough", label: texts.rough, what: texts.roughWhat(roughEdge) },
        ]}
        onChange={(value) => handle.setHeap({ cutting: value })}
      />
      <PutAside />
      <Stock />
    </section>
  );
});

function PutAside() {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const { reserveBinding, reserveLabel } = useProjectPart(({ heap }) => heap);
  const { project } = useHeap();
  const reserved = useMemo(() => reservedOf(project), [project]);
  return (
    <fieldset className={styles.aside}>
      <legend>{texts.reserve}</legend>
      <Tick
        label={texts.reserveBinding}
        isTicked={reserveBinding}
        onTick={(reserve) => handle.setHeap({ reserveBinding: reserve })}
        what={reserved.binding === null ? null : texts.reserved(reserved.binding)}
      />
      <Tick
        label={texts.reserveLabel}
        isTicked={reserveLabel}
        onTick={(reserve) => handle.setHeap({ reserveLabel: reserve })}
        what={reserved.label === null ? null : texts.reserved(reserved.label)}
      />
    </fieldset>
  );
}

type TickProps = {
  readonly label: string;
  readonly isTicked: boolean;
  readonly onTick: (ticked: boolean) => void;
  /** What follows from it; null: it isn't ticked. */
  readonly what: string | null;
};

function Tick({ label, isTicked, onTick, what }: TickProps) {
  return (
    <div>
      <Checkbox className={`${styles.tick}`} isSelected={isTicked} onChange={onTick}>
        <span className={styles.box} aria-hidden="true" />
        {label}
      </Checkbox>
      {what !== null && <p className={styles.what}>{what}</p>}
    </div>
  );
}
