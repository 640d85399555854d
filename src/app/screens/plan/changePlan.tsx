import { memo, useState } from "react";
import { Button } from "react-aria-components";
import { drawingTexts, planTexts } from "../../../words/index.ts";
import { useProject } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import { Another, OtherCloth } from "./anotherHere.tsx";
import { AtOnce } from "./atOnce.tsx";
import styles from "./changePlan.module.css";
import type { ChangePlanProps, Changing, OfCellProps } from "./changing.ts";
import { another, type Wish } from "./desk.ts";
import { HerMarks } from "./herMarks.tsx";
import { PlaceAndSize } from "./placeAndSize.tsx";
import { type Cell, cellsOf, letGoIn, stayingIn, toggled } from "./stays.ts";
import { Toggle } from "./toggle.tsx";

/** What stays, what must be in and what is left out, for the cell she has tapped or chosen in the list. */
export const ChangePlan = memo(function ChangePlan({ planning, ...changing }: ChangePlanProps) {
  const texts = useTexts(planTexts);
  const { cell } = changing.hand;
  return (
    <section className={styles.change} aria-labelledby="change-plan">
      <h3 id="change-plan">{texts.change}</h3>
      {cell === null ? (
        <p className={styles.quiet}>{texts.changeHow}</p>
      ) : (
        <OfCell {...changing} cell={cell} planning={planning} />
      )}
      <Staying {...changing} />
      <PieceList {...changing} />
    </section>
  );
});

/** Toggling what stays changes nothing else: the plan that is shown is the first of those that keep it. */
function useStays({ wish, plan, desk }: Changing) {
  const project = useProject();
  const set = (stays: Wish["stays"]) => {
    desk.put({ ...wish, stays }, plan);
    project.setWishes({ ...wish, stays });
  };
  return {
    now: stayingIn(plan, wish.stays),
    toggle: (cell: Cell) => set(toggled(plan, wish.stays, cell)),
    letGo: () => set(null),
  };
}

function OfCell({ planning, ...changing }: OfCellProps) {
  const { plan, cell, hand } = changing;
  const texts = useTexts(planTexts);
  const drawn = useTexts(drawingTexts);
  const stays = useStays(changing);
  const { node } = cell;
  const row = node.kind === "piece" ? (planning.rowOf.get(node.piece) ?? null) : null;
  return (
    <div className={styles.cell}>
      <p aria-live="polite">{drawn.cell(cell.path, plan.layout, plan)}</p>
      <AtOnce planning={planning} {...changing} />
      {hand.parts.length > 0 && <PlaceAndSize key={cell.key} planning={planning} {...changing} />}
      <div className={styles.toggles}>
        <Toggle label={texts.stays} isOn={stays.now.has(cell.key)} onChange={() => stays.toggle(cell)} />
        {row !== null && <HerMarks row={row} wish={changing.wish} />}
      </div>
      <Another key={cell.key} planning={planning} {...changing} />
      {node.kind === "cloth" && <OtherCloth planning={planning} {...changing} />}
      <Button className="button" onPress={() => hand.pick(null)}>
        {texts.done}
      </Button>
    </div>
  );
}

function Staying(changing: Changing) {
  const texts = useTexts(planTexts);
  const project = useProject();
  const stays = useStays(changing);
  const letGo = letGoIn(changing.plan, changing.wish.stays);
  if (stays.now.size + letGo === 0) return null;
  return (
    <div className={styles.staying}>
      {stays.now.size > 0 && <p role="status">{texts.staying(stays.now.size)}</p>}
      {letGo > 0 && <p role="status">{texts.couldNotStay(letGo)}</p>}
      <div className={styles.ways}>
        <Button className="button" onPress={() => project.setWishes(another(changing.wish))}>
          {texts.again}
        </Button>
        <Button className="button plain" onPress={stays.letGo}>
          {texts.letAllGo}
        </Button>
      </div>
    </div>
  );
}

/** All cells, for who can't tap them in the drawing. */
function PieceList(changing: Changing) {
  const { plan, hand } = changing;
  const texts = useTexts(planTexts);
  const drawn = useTexts(drawingTexts);
  const [isOpen, setOpen] = useState(false);
  const stays = useStays(changing);
  return (
    <details className={styles.list} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{texts.pieces}</summary>
      {isOpen && (
        <ul>
          {cellsOf(plan).map((cell) => {
            const name = drawn.cell(cell.path, plan.layout, plan);
            return (
              <li key={cell.key}>
                <Button
                  className={`${styles.name}`}
                  aria-pressed={hand.cell?.key === cell.key}
                  onPress={() => hand.pick(cell)}
                >
                  {name}
                </Button>
                <Toggle
                  label={texts.stays}
                  name={`${texts.stays}: ${name}`}
                  isOn={stays.now.has(cell.key)}
                  onChange={() => stays.toggle(cell)}
                />
              </li>
            );
          })}
        </ul>
      )}
    </details>
  );
}
