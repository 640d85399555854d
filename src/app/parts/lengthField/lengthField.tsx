import { useState } from "react";
import { Button, FieldError, Input, Label, Text, TextField } from "react-aria-components";
import type { DisplayUnit, Length, LengthProblem } from "../../../engine/length/index.ts";
import { type Measured, measuredLength } from "../../../files/index.ts";
import styles from "./lengthField.module.css";
import { onceLetGo } from "./onceLetGo.ts";
import { problemIn, readingsOf, shownText } from "./shownText.ts";

type LengthFieldProps = {
  readonly label: string;
  /** Where the label says too little without what stands round the field. */
  readonly name?: string;
  readonly unit: DisplayUnit;
  readonly measured: Measured<Length> | null;
  readonly onChange: (measured: Measured<Length> | null) => void;
  readonly hint?: string;
  readonly texts: LengthFieldTexts;
  /** One of several side by side: what is wrong with it stands below all of them. */
  readonly inRow?: boolean;
  /** Something about a length that can be read, such as its being too large. */
  readonly trouble?: string | undefined;
};

export type LengthFieldTexts = {
  readonly problem: (problem: LengthProblem) => string;
  /** One of two readings, on a button. */
  readonly meant: (reading: string) => string;
};

/**
 * A length as she types it: `2 1/2`, `2½`, `6,5 cm`. Each letter is kept at once; what can't be read is said once she
 * has left the field.
 */
export function LengthField(props: LengthFieldProps) {
  const { label, name, unit, measured, onChange, hint, texts, trouble, inRow = false } = props;
  const [writing, setWriting] = useState(false);
  const problem = writing ? null : problemIn(measured);
  const said = problem === null ? trouble : texts.problem(problem);
  return (
    <TextField
      className={`${inRow ? styles.inRow : styles.field}`}
      value={shownText(measured, unit)}
      onChange={(text) => onChange(measuredLength(text, unit))}
      onFocusChange={(writes) => onceLetGo(() => setWriting(writes))}
      isInvalid={said !== undefined}
      validationBehavior="aria"
      {...(name === undefined ? {} : { "aria-label": name })}
    >
      {name === undefined ? (
        <Label className={`${styles.label}`}>{label}</Label>
      ) : (
        <span className={styles.label} aria-hidden="true">
          {label}
        </span>
      )}
      <Input className={`${styles.input}`} inputMode="decimal" autoComplete="off" enterKeyHint="next" />
      {hint !== undefined && (
        <Text slot="description" className={`${styles.hint}`}>
          {hint}
        </Text>
      )}
      {said !== undefined && (
        <div className={styles.said}>
          <FieldError className={`${styles.error}`}>{inRow ? `${label}: ${said}` : said}</FieldError>
          {problem !== null &&
            readingsOf(problem).map((reading) => (
              <Button
                key={reading}
                className="button"
                onPress={() => onChange(measuredLength(reading, unit))}
              >
                {texts.meant(reading)}
              </Button>
            ))}
        </div>
      )}
    </TextField>
  );
}
