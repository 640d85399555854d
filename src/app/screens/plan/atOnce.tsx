import { useEffect, useRef } from "react";
import { Button, ToggleButton } from "react-aria-components";
import { drawingTexts, handTexts } from "../../../words/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./changePlan.module.css";
import type { OfCellProps } from "./changing.ts";
import type { Cell } from "./stays.ts";
import { fabricOf, Swatch } from "./swatch.tsx";

/** What is done with the cell at once. What came of it is said, and found again where its button has gone. */
export function AtOnce({ planning, plan, cell, hand }: OfCellProps) {
  const texts = useTexts(handTexts);
  const { node, path: at } = cell;
  const said = useRef<HTMLParagraphElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at after each edit
  useEffect(() => {
    if (hand.said !== "" && document.activeElement === document.body) said.current?.focus();
  }, [hand.said, plan]);
  return (
    <>
      <div className={styles.edits}>
        <ToggleButton
          className={`button ${styles.edit}`}
          isSelected={hand.partners !== null}
          onChange={hand.seekPartner}
        >
          {texts.swap}
        </ToggleButton>
        {node.kind !== "cloth" && (
          <>
            <Button className="button" onPress={() => hand.edit({ kind: "turn", at })}>
              {texts.turn}
            </Button>
            <Button className="button" onPress={() => hand.edit({ kind: "make-plain", at })}>
              {texts.makePlain}
            </Button>
          </>
        )}
      </div>
      <p role="status" ref={said} tabIndex={-1} className={styles.said}>
        {hand.said}
      </p>
      {hand.partners !== null && (
        <Partners planning={planning} plan={plan} hand={hand} partners={hand.partners} />
      )}
    </>
  );
}

type PartnersProps = Pick<OfCellProps, "plan" | "hand" | "planning"> & { readonly partners: readonly Cell[] };

/** Those that fit, for who can't tap them in the drawing. */
function Partners({ planning: { job }, plan, hand, partners }: PartnersProps) {
  const texts = useTexts(handTexts);
  const drawn = useTexts(drawingTexts);
  return (
    <div className={styles.list}>
      <p className={styles.quiet}>{partners.length === 0 ? texts.noPartner : texts.swapHow}</p>
      <ul>
        {partners.map((cell) => (
          <li key={cell.key}>
            <Button className={`${styles.name}`} onPress={() => hand.pick(cell)}>
              <Swatch fabric={fabricOf(cell.node, job)} job={job} />
              {drawn.cell(cell.path, plan.layout, plan)}
            </Button>
          </li>
        ))}
      </ul>
    </div>
  );
}
