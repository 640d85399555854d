import { useMemo, useState } from "react";
import { Button, Checkbox } from "react-aria-components";
import type { Job } from "../../../engine/cloth/index.ts";
import { choicesFor, type PieceNode } from "../../../engine/layout/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import type { LeftoverChange } from "../../../store/index.ts";
import { drawingTexts, planTexts } from "../../../words/index.ts";
import { useProject, useProjectState } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./changePlan.module.css";
import { another, type Desk, type Wish } from "./desk.ts";
import type { Planning } from "./planning.ts";
import { type Cell, cellsOf, letGoIn, stayingIn, toggled, withAnother } from "./stays.ts";

export type Changing = {
  readonly wish: Wish;
  readonly plan: PlanDocument;
  readonly desk: Desk;
  /** The cell she speaks of; null: none. */
  readonly cell: Cell | null;
  readonly onCell: (cell: Cell | null) => void;
};

type ChangePlanProps = Changing & { readonly planning: Planning & { readonly kind: "ready" } };

/** What stays, what must be in and what is left out, for the cell she has tapped or chosen in the list. */
export function ChangePlan({ planning, ...changing }: ChangePlanProps) {
  const texts = useTexts(planTexts);
  const { cell } = changing;
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
}

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

type OfCellProps = ChangePlanProps & { readonly cell: Cell };

function OfCell({ planning, ...changing }: OfCellProps) {
  const { plan, cell, onCell } = changing;
  const texts = useTexts(planTexts);
  const drawn = useTexts(drawingTexts);
  const stays = useStays(changing);
  const { node } = cell;
  const row = node.kind === "piece" ? (planning.rowOf.get(node.piece) ?? null) : null;
  return (
    <div className={styles.cell}>
      <p aria-live="polite">{drawn.cell(cell.path, plan.layout, plan)}</p>
      <div className={styles.toggles}>
        <Toggle label={texts.stays} isOn={stays.now.has(cell.key)} onChange={() => stays.toggle(cell)} />
        {row !== null && <OfRow row={row} wish={changing.wish} />}
      </div>
      <Another key={cell.key} planning={planning} {...changing} />
      <Button className="button" onPress={() => onCell(null)}>
        {texts.done}
      </Button>
    </div>
  );
}

/** Her marks on the leftover that the cell is cut from; the plan is made again at once. */
function OfRow({ row, wish }: { readonly row: string; readonly wish: Wish }) {
  const texts = useTexts(planTexts);
  const project = useProject();
  const leftover = useProjectState().project.leftovers.find(({ id }) => id === row);
  if (leftover === undefined) return null;
  const { use, keep } = leftover.cells;
  // The style she looks at is the one she goes on with.
  const change = (cells: NonNullable<LeftoverChange["cells"]>) => {
    project.setWishes(wish);
    project.changeRow(row, { cells });
  };
  const mark = (value: "must" | "keep-back", isOn: boolean) =>
    change({ use: isOn ? { text: value, value } : null });
  const whole = (isOn: boolean) => change({ keep: isOn ? { text: "whole", value: "whole" } : null });
  return (
    <>
      <Toggle label={texts.mustBeIn} isOn={use?.value === "must"} onChange={(isOn) => mark("must", isOn)} />
      <Toggle
        label={texts.leaveOut}
        isOn={use?.value === "keep-back"}
        onChange={(isOn) => mark("keep-back", isOn)}
      />
      <Toggle label={texts.keepWhole} isOn={keep?.value === "whole"} onChange={whole} />
    </>
  );
}

/** Her other leftovers of the size of this place; the chosen one stays there in the next plan. */
function Another({ planning: { job }, wish, plan, cell, onCell }: OfCellProps) {
  const texts = useTexts(planTexts);
  const drawn = useTexts(drawingTexts);
  const project = useProject();
  const [isOpen, setOpen] = useState(false);
  const choices = useMemo(
    () => (isOpen ? unusedFirst(choicesFor(cell, plan.layout, job), plan) : []),
    [isOpen, cell, job, plan],
  );
  const put = (piece: PieceNode) => {
    project.setWishes({ ...wish, stays: withAnother(plan, wish.stays, { cell, piece }) });
    onCell(null);
  };
  return (
    <details className={styles.list} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{texts.anotherHere}</summary>
      {isOpen && <p className={styles.quiet}>{choices.length === 0 ? texts.noOther : texts.anotherHow}</p>}
      <ul>
        {choices.map(({ piece, isUnused }) => (
          <li key={piece.piece}>
            <Button className={`${styles.name}`} onPress={() => put(piece)}>
              <span
                className={`cloth ${styles.swatch}`}
                style={{ background: colourOf(piece.piece, job) }}
                aria-hidden="true"
              />
              {drawn.leaf(piece, plan)}
              {!isUnused && ` (${texts.elsewhere})`}
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}

type OtherPiece = { readonly piece: PieceNode; readonly isUnused: boolean };

function unusedFirst(pieces: readonly PieceNode[], { unused }: PlanDocument): readonly OtherPiece[] {
  const left = new Set(unused.map(({ piece }) => piece));
  return pieces
    .map((piece) => ({ piece, isUnused: left.has(piece.piece) }))
    .sort((one, other) => Number(other.isUnused) - Number(one.isUnused));
}

function colourOf(id: string, { pieces, fabrics }: Job): string | undefined {
  const fabric = pieces.find((piece) => piece.id === id)?.fabric;
  return fabrics.find((one) => one.id === fabric)?.colour;
}

type ToggleProps = {
  readonly label: string;
  readonly name?: string;
  readonly isOn: boolean;
  readonly onChange: (isOn: boolean) => void;
};

function Toggle({ label, name, isOn, onChange }: ToggleProps) {
  return (
    <Checkbox
      className={`${styles.toggle}`}
      isSelected={isOn}
      onChange={onChange}
      {...(name === undefined ? {} : { "aria-label": name })}
    >
      <span className={styles.box} aria-hidden="true" />
      {label}
    </Checkbox>
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
  const { plan, cell: chosen, onCell } = changing;
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
                  aria-pressed={chosen?.key === cell.key}
                  onPress={() => onCell(cell)}
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
