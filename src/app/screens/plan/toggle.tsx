import { Checkbox } from "react-aria-components";
import styles from "./changePlan.module.css";

type ToggleProps = {
  readonly label: string;
  readonly name?: string;
  readonly isOn: boolean;
  readonly onChange: (isOn: boolean) => void;
};

export function Toggle({ label, name, isOn, onChange }: ToggleProps) {
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
