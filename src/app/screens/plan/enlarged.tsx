import {
  type Dispatch,
  type KeyboardEvent,
  type ReactNode,
  type RefObject,
  type SetStateAction,
  useEffect,
  useLayoutEffect,
  useRef,
} from "react";
import { viewTexts } from "../../../words/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./figure.module.css";

declare module "react" {
  interface CSSProperties {
    "--larger"?: number;
  }
}

export const largest = 6;
const stride = 1.5;

/** So many strides larger or smaller: never smaller than whole. */
export function enlargedBy(size: number, strides: number): number {
  const next = size * stride ** strides;
  return Math.max(1, Math.min(largest, next));
}

type EnlargedProps = {
  /** How many times as large as its place; 1: whole. */
  readonly size: number;
  readonly onSize: Dispatch<SetStateAction<number>>;
  readonly children: ReactNode;
};

/**
 * A place in which a drawing may be larger than it. It moves as any page does, by wheel, fingers and arrow keys, and
 * what was in the middle stays there; two fingers, the wheel with Ctrl, plus, minus and zero change the size.
 */
export function Enlarged({ size, onSize, children }: EnlargedProps) {
  const texts = useTexts(viewTexts);
  const place = useRef<HTMLElement>(null);
  useMiddle(place, size);
  useFingers(place, onSize);
  const keys = ({ key }: KeyboardEvent) => {
    if (key === "+" || key === "=") onSize((now) => enlargedBy(now, 1));
    if (key === "-") onSize((now) => enlargedBy(now, -1));
    if (key === "0") onSize(1);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it takes the keys of what scrolls, once it does
    <section
      ref={place}
      className={styles.place}
      data-enlarged={size > 1}
      {...(size > 1 ? { tabIndex: 0, "aria-label": texts.enlarged } : {})}
      onKeyDown={keys}
    >
      <div className={styles.enlarged} style={{ "--larger": size }}>
        {children}
      </div>
    </section>
  );
}

/** What was in the middle before the size changed is there again. */
function useMiddle(place: RefObject<HTMLElement | null>, size: number) {
  const before = useRef(size);
  useLayoutEffect(() => {
    const { current: box } = place;
    const by = size / before.current;
    before.current = size;
    if (box === null || by === 1) return;
    const { clientWidth, clientHeight, scrollLeft, scrollTop } = box;
    box.scrollTo({
      left: (scrollLeft + clientWidth / 2) * by - clientWidth / 2,
      top: (scrollTop + clientHeight / 2) * by - clientHeight / 2,
      behavior: "instant",
    });
  }, [place, size]);
}

/** Two fingers, or a wheel with Ctrl held down, which is also how a touch pad tells of two fingers. */
function useFingers(place: RefObject<HTMLElement | null>, onSize: EnlargedProps["onSize"]) {
  useEffect(() => {
    const { current: box } = place;
    if (box === null) return;
    const times = (by: number) => onSize((now) => enlargedBy(now, Math.log(by) / Math.log(stride)));
    const wheel = (event: WheelEvent) => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      times(Math.exp(-event.deltaY / 200));
    };
    let apart: number | null = null;
    const touch = (event: TouchEvent) => {
      const next = distanceIn(event.touches);
      if (next !== null) event.preventDefault();
      if (next !== null && apart !== null) times(next / apart);
      apart = next;
    };
    const taken = new AbortController();
    const actively = { passive: false, signal: taken.signal };
    box.addEventListener("wheel", wheel, actively);
    for (const kind of ["touchstart", "touchmove", "touchend"] as const)
      box.addEventListener(kind, touch, actively);
    return () => taken.abort();
  }, [place, onSize]);
}

function distanceIn(touches: TouchList): number | null {
  const [one, other] = touches;
  if (one === undefined || other === undefined || touches.length !== 2) return null;
  return Math.hypot(one.clientX - other.clientX, one.clientY - other.clientY);
}
