import { type ReactNode, useRef, useState } from "react";
import type { DisplayUnit } from "../../../engine/length/index.ts";
import styles from "./lengthField.module.css";
import { onceLetGo } from "./onceLetGo.ts";

const eighths = ["⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"] as const;

type FractionsProps = { readonly unit: DisplayUnit; readonly label: string; readonly children: ReactNode };

/** The keys for digits on a phone have no fractions: here they are, below the fields, while one is written in. */
export function Fractions({ unit, label, children }: FractionsProps) {
  const group = useRef<HTMLDivElement>(null);
  const [field, setField] = useState<HTMLInputElement | null>(null);
  const look = () => onceLetGo(() => setField(writtenIn(group.current)));
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only hears which of its fields is written in
    <div ref={group} onFocus={look} onBlur={look}>
      {children}
      {field !== null && unit === "in" && (
        <fieldset className={styles.fractions} aria-label={label}>
          {eighths.map((eighth) => (
            <button
              key={eighth}
              type="button"
              tabIndex={-1}
              className="button"
              // The field stays the one that is written in.
              onPointerDown={(event) => event.preventDefault()}
              onMouseDown={(event) => event.preventDefault()}
              onClick={() => writeInto(field, eighth)}
            >
              {eighth}
            </button>
          ))}
        </fieldset>
      )}
    </div>
  );
}

function writtenIn(group: Element | null): HTMLInputElement | null {
  const focused = document.activeElement;
  const takesLengths = focused instanceof HTMLInputElement && focused.inputMode === "decimal";
  return takesLengths && group?.contains(focused) ? focused : null;
}

/** In place of the fraction that stands before the caret, if there is one. */
function writeInto(input: HTMLInputElement, eighth: string): void {
  const end = input.selectionEnd ?? input.value.length;
  const start = input.selectionStart ?? end;
  const replaced = /[⅛¼⅜½⅝¾⅞]$/.test(input.value.slice(0, start)) ? 1 : 0;
  input.setRangeText(eighth, start - replaced, end, "end");
  input.dispatchEvent(new Event("input", { bubbles: true }));
}
