import { looks } from "../../../store/index.ts";
import { type Language, locales } from "../../../words/index.ts";
import { usePreferences } from "../../frame/index.ts";
import { Choice } from "../../parts/choice/choice.tsx";
import styles from "./settings.module.css";
import { useSettingsTexts } from "./texts.ts";

const spoken = locales.filter((locale): locale is Language => locale !== "en-XA");

/** How it looks, and in which words. */
export function OnScreen() {
  const texts = useSettingsTexts();
  const [{ look, words }, preferences] = usePreferences();
  const chosen = spoken.find((locale) => locale === words) ?? "browser";
  return (
    <section className={styles.group} aria-labelledby="on-screen">
      <h2 id="on-screen">{texts.onScreen}</h2>
      <Choice
        label={texts.look}
        value={look}
        options={looks.map((value) => ({ value, label: texts.looks[value] }))}
        onChange={(value) => preferences.change({ look: value })}
      />
      <p className={styles.quiet}>{texts.lookWhat}</p>
      <Choice<Language | "browser">
        label={texts.language}
        value={chosen}
        options={[
          { value: "browser", label: texts.asBrowser },
          ...spoken.map((value) => ({ value, label: texts.languages[value] })),
        ]}
        onChange={(value) => preferences.change({ words: value === "browser" ? null : value })}
      />
    </section>
  );
}
