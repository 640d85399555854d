import { type KeyboardEvent, useCallback, useRef } from "react";
import { moveBy, rowOf } from "./grid.ts";

export type Chosen = ReadonlySet<string>;
export type ChangeChosen = (change: (chosen: Chosen) => Chosen) => void;

/** Chooses rows of a grid: one, from one to another with the Shift key, all, none. `ids`: in their order. */
export function useGridChoice(ids: readonly string[], change: ChangeChosen) {
  // Where a stretch of rows begins: at what was pressed last, or where she began to hold the Shift key down.
  const from = useRef<string | null>(null);
  const stretchTo = useCallback(
    (id: string) => {
      const ends = [ids.indexOf(from.current ?? id), ids.indexOf(id)];
      const stretch = ids.slice(Math.max(0, Math.min(...ends)), Math.max(...ends) + 1);
      change((chosen) => new Set([...chosen, ...stretch]));
    },
    [ids, change],
  );
  const turn = useCallback(
    (id: string, isStretch: boolean) => {
      if (isStretch && from.current !== null) return stretchTo(id);
      from.current = id;
      change((chosen) => withTurned(chosen, id));
    },
    [change, stretchTo],
  );
  const turnAll = () => change((chosen) => new Set(ids.every((id) => chosen.has(id)) ? [] : ids));
  const move = (event: KeyboardEvent<HTMLTableElement>): boolean => {
    const left = rowOf(event.target);
    if (!moveBy(event, event.currentTarget)) return false;
    const reached = rowOf(document.activeElement);
    if (!event.shiftKey || reached === null || reached === left) return true;
    from.current ??= left;
    stretchTo(reached);
    return true;
  };
  const choose = ({ key, target, shiftKey, ctrlKey, metaKey }: KeyboardEvent): boolean => {
    const row = rowOf(target);
    if (key === "Escape") change(() => new Set());
    else if (key === "a" && (ctrlKey || metaKey)) change(() => new Set(ids));
    else if (key === " " && shiftKey && row !== null) turn(row, false);
    else return false;
    return true;
  };
  const onKeyDown = (event: KeyboardEvent<HTMLTableElement>) => {
    if (choose(event) || move(event)) event.preventDefault();
  };
  /** Some browsers press a button when the space bar is let go. */
  const onKeyUp = (event: KeyboardEvent) => {
    if (event.key === " " && event.shiftKey) event.preventDefault();
  };
  return { turn, turnAll, onKeyDown, onKeyUp };
}

export function withTurned(chosen: Chosen, id: string): Chosen {
  const now = new Set(chosen);
  if (!now.delete(id)) now.add(id);
  return now;
}
