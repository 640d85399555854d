import { Label, Radio, RadioGroup } from "react-aria-components";
import styles from "./choice.module.css";

type ChoiceProps<T extends string> = {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string; readonly what?: string }[];
  readonly onChange: (value: T) => void;
};

/** One of a few, all of them to be seen. */
export function Choice<T extends string>({ label, value, options, onChange }: ChoiceProps<T>) {
  const choose = (name: string) => {
    const option = options.find((one) => one.value === name);
    if (option !== undefined) onChange(option.value);
  };
  return (
    <RadioGroup className={`${styles.choice}`} value={value} onChange={choose}>
      <Label className={`${styles.label}`}>{label}</Label>
      <div className={styles.options}>
        {options.map((option) => (
          <Radio key={option.value} value={option.value} className={`${styles.option}`}>
            <span className={styles.mark} aria-hidden="true" />
            <span>
              {option.label}
              {option.what !== undefined && <small className={styles.what}>{option.what}</small>}
            </span>
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
