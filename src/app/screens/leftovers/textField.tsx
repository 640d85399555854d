import type { ClipboardEvent, ReactNode, Ref } from "react";
import { FieldError, Input, Label, TextField } from "react-aria-components";
import styles from "./fields.module.css";

type LineFieldProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  /** What is wrong with it, in words. */
  readonly trouble?: string | null;
  readonly onFocusChange?: (focused: boolean) => void;
  readonly onPaste?: (event: ClipboardEvent) => void;
  readonly input?: Ref<HTMLInputElement>;
  readonly autoFocus?: boolean;
  readonly inputMode?: "text" | "decimal";
  readonly children?: ReactNode;
};

/** A field of one line with its words below. */
export function LineField(props: LineFieldProps) {
  const { label, value, onChange, trouble = null, input, children, inputMode = "text" } = props;
  return (
    <TextField
      className={`${styles.field}`}
      value={value}
      onChange={onChange}
      isInvalid={trouble !== null}
      validationBehavior="aria"
      {...(props.onFocusChange === undefined ? {} : { onFocusChange: props.onFocusChange })}
      autoFocus={props.autoFocus ?? false}
    >
      <Label className={`${styles.label}`}>{label}</Label>
      <Input
        className={`${styles.input}`}
        inputMode={inputMode}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck="false"
        {...(props.onPaste === undefined ? {} : { onPaste: props.onPaste })}
        {...(input === undefined ? {} : { ref: input })}
      />
      <FieldError className={`${styles.trouble}`}>{trouble}</FieldError>
      {children}
    </TextField>
  );
}

type WordFieldProps = {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly onChange: (value: string) => void;
};

/** One of a few words. The browser's own list is the one that fits her device. */
export function WordField({ label, value, options, onChange }: WordFieldProps) {
  return (
    <label className={styles.field}>
      <span className={styles.label}>{label}</span>
      <select className={styles.input} value={value} onChange={(event) => onChange(event.target.value)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </label>
  );
}
