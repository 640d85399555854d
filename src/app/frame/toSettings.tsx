import styles from "./frame.module.css";
import { hrefOf, useRoute } from "./route.ts";
import { useFrameWords } from "./surroundings.ts";

/** The way to the settings, at the end of the bar. Where there is little room it is a sign. */
export function ToSettings() {
  const words = useFrameWords();
  const route = useRoute();
  const here = route.screen === "settings";
  const project =
    route.screen === "projects" || route.project === undefined ? {} : { project: route.project };
  return (
    <a
      className={styles.settings}
      href={hrefOf({ screen: "settings", ...project })}
      aria-current={here ? "page" : undefined}
      aria-label={words.settings}
    >
      <svg className={styles.sign} viewBox="0 0 24 24" aria-hidden="true">
        <path d="M3 7h9m6 0h3M3 17h3m6 0h9" />
        <circle cx="15" cy="7" r="2.75" />
        <circle cx="9" cy="17" r="2.75" />
      </svg>
      <span className={styles.settingsName}>{words.settings}</span>
    </a>
  );
}
