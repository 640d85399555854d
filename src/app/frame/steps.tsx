import { screens } from "../screens/index.ts";
import styles from "./frame.module.css";
import { hrefOf, isStep, useRoute } from "./route.ts";
import { useFrameWords } from "./surroundings.ts";

/** The steps of the job that are built, in their order: at the bottom on a phone, in the bar elsewhere. */
export function Steps({ project }: { readonly project: string }) {
  const words = useFrameWords();
  const { screen } = useRoute();
  // From photos one comes back to the leftovers.
  const here = screen === "photo" ? "leftovers" : screen;
  const steps = screens.map(({ name }) => name).filter(isStep);
  if (steps.length < 2) return null;
  return (
    <nav className={styles.steps} aria-label={words.stepsOfTheJob}>
      <ol>
        {steps.map((step) => (
          <li key={step}>
            <a
              href={hrefOf({ screen: step, project })}
              aria-current={step === here ? (screen === step ? "page" : "step") : undefined}
            >
              {words[step]}
            </a>
          </li>
        ))}
      </ol>
    </nav>
  );
}
