import { type FormEvent, useState } from "react";
import { Button, Form } from "react-aria-components";
import type { Job } from "../../../engine/cloth/index.ts";
import { nodeAt, type Shiftable } from "../../../engine/layout/index.ts";
import { type Length, subtract, times } from "../../../engine/length/index.ts";
import { lengthAsMeasured, type Measured, type PlanDocument } from "../../../files/index.ts";
import { drawingTexts, type HandTexts, handTexts } from "../../../words/index.ts";
import { useProjectContent } from "../../frame/index.ts";
import { Choice } from "../../parts/choice/choice.tsx";
import { LengthField } from "../../parts/lengthField/lengthField.tsx";
import { useTexts } from "../../parts/texts.ts";
import styles from "./changePlan.module.css";
import type { OfCellProps } from "./changing.ts";
import { type Hand, keyOfPart } from "./useHand.ts";

/** The cell, or the row or larger part that it lies in, is moved, or made larger or smaller. */
export function PlaceAndSize({ planning: { job }, plan, cell, hand }: OfCellProps) {
  const texts = useTexts(handTexts);
  const { part } = hand;
  const toggled = (isOpen: boolean) => {
    if (isOpen !== (part !== null)) hand.takePart(isOpen ? likeliest(hand.parts, cell.node.kind) : null);
  };
  return (
    <details
      className={styles.list}
      open={part !== null}
      onToggle={({ currentTarget }) => toggled(currentTarget.open)}
    >
      <summary>{texts.placeAndSize}</summary>
      {part !== null && (
        <div className={styles.shifting}>
          <WhichPart plan={plan} hand={hand} part={part} />
          <Shifting key={keyOfPart(part)} plan={plan} hand={hand} part={part} job={job} />
        </div>
      )}
    </details>
  );
}

/** Of a piece she means the whole pieced part, which lies between what can give and take; of plain cloth itself. */
function likeliest(parts: readonly Shiftable[], kind: string): Shiftable | null {
  const largest = parts.findLast(({ canMove }) => canMove);
  return (kind === "cloth" ? parts[0] : (largest ?? parts[0])) ?? null;
}

type PartProps = { readonly plan: PlanDocument; readonly hand: Hand; readonly part: Shiftable };

function WhichPart({ plan, hand, part }: PartProps) {
  const texts = useTexts(handTexts);
  const drawn = useTexts(drawingTexts);
  const { parts } = hand;
  if (parts.length === 1) return <p>{drawn.cell(part.path, plan.layout, plan)}</p>;
  const options = parts.map((one) => ({
    value: keyOfPart(one),
    label: drawn.cell(one.path, plan.layout, plan),
  }));
  const take = (key: string) => hand.takePart(parts.find((one) => keyOfPart(one) === key) ?? part);
  return <Choice label={texts.whichPart} value={keyOfPart(part)} options={options} onChange={take} />;
}

type Typed = Measured<Length> | null;
type ShiftingProps = PartProps & { readonly job: Job };

function Shifting({ plan, hand, part, job }: ShiftingProps) {
  const texts = useTexts(handTexts);
  const { unit } = useProjectContent().settings;
  const [typed, setTyped] = useState<Typed>(() => lengthAsMeasured(job.step, unit));
  const by = typed?.value ?? null;
  const { path: at, along, canMove, canGrow } = part;
  const size = nodeAt(plan.layout, at)?.[along];
  const shift = (kind: Way["kind"], by: Length) => hand.edit({ kind, at, along, by });
  return (
    <>
      <div className={styles.byHowMuch}>
        <LengthField label={texts.byHowMuch} unit={unit} measured={typed} onChange={setTyped} texts={texts} />
      </div>
      {canMove && <Ways ways={movesAlong(texts)[along]} by={by} onWay={shift} />}
      {canGrow && <Ways ways={sizesAlong(texts)[along]} by={by} onWay={shift} />}
      {canGrow && size !== undefined && (
        <SizeField
          label={texts.size[along]}
          size={size}
          onSize={(wanted) => hand.edit({ kind: "resize", at, along, by: subtract<Length>(wanted, size) })}
        />
      )}
    </>
  );
}

type WaysProps = {
  readonly ways: readonly Way[];
  readonly by: Length | null;
  readonly onWay: (kind: Way["kind"], by: Length) => void;
};

function Ways({ ways, by, onWay }: WaysProps) {
  return (
    <div className={styles.edits}>
      {ways.map(({ label, kind, sign }) => (
        <Button
          key={label}
          className="button"
          isDisabled={by === null || by === 0}
          onPress={() => by !== null && onWay(kind, times(by, sign))}
        >
          {label}
        </Button>
      ))}
    </div>
  );
}

type Way = { readonly label: string; readonly kind: "move" | "resize"; readonly sign: 1 | -1 };
type ByWay = { readonly width: readonly Way[]; readonly height: readonly Way[] };

function movesAlong({ move }: HandTexts): ByWay {
  return {
    width: [
      { label: move.left, kind: "move", sign: -1 },
      { label: move.right, kind: "move", sign: 1 },
    ],
    height: [
      { label: move.up, kind: "move", sign: -1 },
      { label: move.down, kind: "move", sign: 1 },
    ],
  };
}

function sizesAlong({ become }: HandTexts): ByWay {
  return {
    width: [
      { label: become.narrower, kind: "resize", sign: -1 },
      { label: become.wider, kind: "resize", sign: 1 },
    ],
    height: [
      { label: become.shorter, kind: "resize", sign: -1 },
      { label: become.taller, kind: "resize", sign: 1 },
    ],
  };
}

type SizeFieldProps = {
  readonly label: string;
  readonly size: Length;
  readonly onSize: (size: Length) => void;
};

/** Its size as it is to show once sewn. */
function SizeField({ label, size, onSize }: SizeFieldProps) {
  const texts = useTexts(handTexts);
  const { unit } = useProjectContent().settings;
  const [typed, setTyped] = useState<Typed>(() => lengthAsMeasured(size, unit));
  const [last, setLast] = useState(size);
  if (last !== size) {
    setLast(size);
    setTyped(lengthAsMeasured(size, unit));
  }
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (typed?.value != null) onSize(typed.value);
  };
  return (
    <Form className={`${styles.byHowMuch}`} onSubmit={submit}>
      <LengthField label={label} unit={unit} measured={typed} onChange={setTyped} texts={texts} />
      <Button className="button" type="submit">
        {texts.makeItSo}
      </Button>
    </Form>
  );
}
