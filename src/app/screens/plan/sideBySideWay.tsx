import { lazy, Suspense, useState } from "react";
import { Button } from "react-aria-components";
import { comparisonTexts } from "../../../words/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./plan.module.css";
import type { SideBySideProps } from "./sideBySide.tsx";

const SideBySide = lazy(() => import("./sideBySide.tsx"));

/** The way to where plans lie side by side, and where one is kept under a name. */
export function SideBySideWay(props: Omit<SideBySideProps, "onClose">) {
  const texts = useTexts(comparisonTexts);
  const [isOpen, setOpen] = useState(false);
  const [said, setSaid] = useState("");
  const close = (happened: string) => {
    setOpen(false);
    setSaid(happened);
  };
  return (
    <div className={styles.aside}>
      <Button className="button plain" onPress={() => setOpen(true)}>
        {texts.sideBySide}
      </Button>
      <p role="status" className={styles.quiet}>
        {said}
      </p>
      {isOpen && (
        <Suspense>
          <SideBySide {...props} onClose={close} />
        </Suspense>
      )}
    </div>
  );
}
