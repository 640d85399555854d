import { type FocusEvent, type ReactNode, useRef, useState } from "react";
import type { DisplayUnit } from "../../../engine/length/index.ts";
import styles from "./lengthField.module.css";

const eighths = ["⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"] as const;

type FractionsProps = { readonly unit: DisplayUnit; readonly label: string; readonly children: ReactNode };

/** The keys for digits on a phone have no fractions: here they are, below the fields, while one is written in. */
export function Fractions({ unit, label, children }: FractionsProps) {
  const field = useRef<HTMLInputElement | null>(null);
  const [writing, setWriting] = useState(false);
  const entered = ({ target }: FocusEvent) => {
    if (!(target instanceof HTMLInputElement) || target.inputMode !== "decimal") return;
    field.current = target;
    setWriting(true);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only hears which of its fields is written in
    <div onFocus={entered} onBlur={() => setWriting(false)}>
      {children}
      {writing && unit === "in" && (
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
              onClick={() => field.current && writeInto(field.current, eighth)}
            >
              {eighth}
            </button>
          ))}
        </fieldset>
      )}
    </div>
  );
}

/** In place of the fraction that stands before the caret, if there is one. */
function writeInto(input: HTMLInputElement, eighth: string): void {
  const end = input.selectionEnd ?? input.value.length;
  const start = input.selectionStart ?? end;
  const replaced = /[⅛¼⅜½⅝¾⅞]$/.test(input.value.slice(0, start)) ? 1 : 0;
  input.setRangeText(eighth, start - replaced, end, "end");
  input.dispatchEvent(new Event("input", { bubbles: true }));
}
