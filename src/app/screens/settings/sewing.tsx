import { useSyncExternalStore } from "react";
import { defaultSettings } from "../../../engine/cloth/index.ts";
import { displayUnits, type Length, length } from "../../../engine/length/index.ts";
import { lengthAsMeasured, type ProjectSettings } from "../../../files/index.ts";
import type { ProjectHandle } from "../../../store/index.ts";
import { newBackSettings, useLocale, usePreferences } from "../../frame/index.ts";
import { Choice } from "../../parts/choice/choice.tsx";
import { Fractions } from "../../parts/lengthField/fractions.tsx";
import { LengthField } from "../../parts/lengthField/lengthField.tsx";
import styles from "./settings.module.css";
import { marksFor, seams, troublesIn } from "./sewingFacts.ts";
import { useSettingsTexts } from "./texts.ts";

type Change = Partial<Pick<ProjectSettings, "unit" | "step" | "seam" | "plainSeam">>;

/** The back she came from. */
export function ThisBack({ project }: { readonly project: ProjectHandle }) {
  const { title, settings } = useSyncExternalStore(project.subscribe, project.state).project;
  const texts = useSettingsTexts(settings.unit);
  return (
    <section className={styles.group} aria-labelledby="this-back">
      <h2 id="this-back">{texts.thisBack}</h2>
      <p className={styles.quiet}>{texts.thisBackWhat(title)}</p>
      <SewingFields settings={settings} onChange={project.setSettings} />
    </section>
  );
}

/** What a new back begins with. */
export function NewBacks() {
  const [{ newBacks }, preferences] = usePreferences();
  const settings = newBackSettings(newBacks, useLocale());
  const texts = useSettingsTexts();
  const change = (part: Change) => preferences.change({ newBacks: { ...newBacks, ...part } });
  return (
    <section className={styles.group} aria-labelledby="new-backs">
      <h2 id="new-backs">{texts.newBacks}</h2>
      <p className={styles.quiet}>{texts.newBacksWhat}</p>
      <SewingFields settings={settings} onChange={change} />
    </section>
  );
}

type SewingFieldsProps = {
  readonly settings: ProjectSettings;
  readonly onChange: (change: Change) => void;
};

function SewingFields({ settings, onChange }: SewingFieldsProps) {
  const { unit } = settings;
  const texts = useSettingsTexts(unit);
  const troubles = troublesIn(settings);
  const options = displayUnits.map((value) => ({ value, label: texts.units[value] }));
  return (
    <>
      <Choice
        label={texts.unit}
        value={unit}
        options={options}
        onChange={(value) => onChange({ unit: value })}
      />
      <Ruler settings={settings} onChange={onChange} />
      <Fractions unit={unit} label={texts.eighths}>
        <div className={styles.pair}>
          {seams.map((seam) => (
            <LengthField
              key={seam}
              label={texts[seam]}
              unit={unit}
              measured={settings[seam]}
              onChange={(measured) => onChange({ [seam]: measured })}
              hint={texts.usual(defaultSettings[unit][seam])}
              texts={texts}
              trouble={troubles[seam] && texts.jobProblem(troubles[seam])}
            />
          ))}
        </div>
      </Fractions>
    </>
  );
}

/** Which marks she likes to cut by; where there is but one there is nothing to choose. */
function Ruler({ settings, onChange }: SewingFieldsProps) {
  const { unit, step } = settings;
  const texts = useSettingsTexts(unit);
  const usual = defaultSettings[unit].step;
  const options = marksFor(settings).map((mark: Length) => ({
    value: String(mark),
    label: texts.mark(mark),
  }));
  if (options.length < 2) return null;
  const choose = (value: string) => {
    const mark = length(Number(value));
    onChange({ step: mark === usual ? null : lengthAsMeasured(mark, unit) });
  };
  return (
    <Choice label={texts.ruler} value={String(step?.value ?? usual)} options={options} onChange={choose} />
  );
}
