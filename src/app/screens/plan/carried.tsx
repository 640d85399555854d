import { type PointerEvent, useEffect, useRef, useState } from "react";
import type { Rect } from "../../../engine/drawing/index.ts";
import type { Size } from "../../../engine/length/index.ts";
import styles from "./figure.module.css";

/** Each way from 0 to 1, of what is drawn. */
export type Spot = { readonly x: number; readonly y: number };

export type Carrying = {
  /** It has left its place, or is back there. */
  readonly onCarry: (isCarried: boolean) => void;
  /** It was taken up at one spot and let go at another. */
  readonly onDrop: (from: Spot, to: Spot) => void;
};

type CarriedProps = Carrying & { readonly framed: Rect; readonly size: Size };

/** A finger is never quite still. In pixels. */
const leastWay = 6;

type Begun = { readonly spot: Spot; readonly clientX: number; readonly clientY: number };
type Shift = { readonly left: number; readonly top: number };

/** What is framed can be dragged; Escape lays it back. The buttons and the list of pieces do the same without. */
export function Carried({ framed, size, onCarry, onDrop }: CarriedProps) {
  const [shift, setShift] = useState<Shift | null>(null);
  // It may be let go before the last move is drawn, so what happened is known beside what is drawn.
  const begun = useRef<Begun | null>(null);
  const wasCarried = useRef(false);
  const layBack = () => {
    if (begun.current !== null && wasCarried.current) onCarry(false);
    begun.current = null;
    setShift(null);
  };
  useEscape(shift !== null, layBack);
  const takeUp = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return;
    const { currentTarget, clientX, clientY } = event;
    currentTarget.setPointerCapture(event.pointerId);
    begun.current = { spot: spotOf(event, currentTarget), clientX, clientY };
    wasCarried.current = false;
  };
  const carry = ({ clientX, clientY }: PointerEvent<HTMLElement>) => {
    const { current: first } = begun;
    if (first === null) return;
    const [left, top] = [clientX - first.clientX, clientY - first.clientY];
    if (!wasCarried.current) {
      if (Math.hypot(left, top) < leastWay) return;
      wasCarried.current = true;
      onCarry(true);
    }
    setShift({ left, top });
  };
  const drop = (event: PointerEvent<HTMLElement>) => {
    const { current: first } = begun;
    begun.current = null;
    setShift(null);
    if (first !== null && wasCarried.current) onDrop(first.spot, spotOf(event, event.currentTarget));
  };
  return (
    <div
      className={styles.carried}
      data-carried={shift !== null}
      aria-hidden="true"
      style={{
        left: `${(framed.x / size.width) * 100}%`,
        top: `${(framed.y / size.height) * 100}%`,
        width: `${(framed.width / size.width) * 100}%`,
        height: `${(framed.height / size.height) * 100}%`,
        translate: shift === null ? "none" : `${shift.left}px ${shift.top}px`,
      }}
      onPointerDown={takeUp}
      onPointerMove={carry}
      onPointerUp={drop}
      onPointerCancel={layBack}
      onClick={(event) => wasCarried.current && event.stopPropagation()}
    />
  );
}

/** What it lies on is as large as what is drawn. */
function spotOf(
  { clientX, clientY }: { clientX: number; clientY: number },
  { parentElement }: HTMLElement,
): Spot {
  const box = parentElement?.getBoundingClientRect();
  if (box === undefined) return { x: 0, y: 0 };
  return { x: (clientX - box.left) / box.width, y: (clientY - box.top) / box.height };
}

function useEscape(isCarried: boolean, layBack: () => void) {
  useEffect(() => {
    if (!isCarried) return;
    const pressed = ({ key }: KeyboardEvent) => key === "Escape" && layBack();
    addEventListener("keydown", pressed);
    return () => removeEventListener("keydown", pressed);
  });
}
