import { Input, Label, TextField } from "react-aria-components";
import { methods, times } from "../../../engine/cloth/index.ts";
import type { Length } from "../../../engine/length/index.ts";
import { displayUnits } from "../../../engine/length/index.ts";
import type { Measured, ProjectSize, ThreeMeasures } from "../../../files/index.ts";
import { sizeTexts } from "../../../words/index.ts";
import { useProject, useProjectContent } from "../../frame/index.ts";
import { Choice } from "../../parts/choice/choice.tsx";
import { Fractions } from "../../parts/lengthField/fractions.tsx";
import fieldStyles from "../../parts/lengthField/lengthField.module.css";
import { LengthField } from "../../parts/lengthField/lengthField.tsx";
import { useTexts } from "../../parts/texts.ts";
import styles from "./size.module.css";
import type { SizeFacts } from "./sizeFacts.ts";

type Facts = { readonly facts: SizeFacts };

export function NameOfBack() {
  const texts = useTexts(sizeTexts);
  const project = useProject();
  const { title } = useProjectContent();
  return (
    <TextField
      className={`${fieldStyles.field}`}
      value={title}
      onChange={project.setTitle}
      autoComplete="off"
    >
      <Label className={`${fieldStyles.label}`}>{texts.nameOfBack}</Label>
      <Input className={`${fieldStyles.input}`} maxLength={200} />
    </TextField>
  );
}

export function From() {
  const texts = useTexts(sizeTexts);
  const project = useProject();
  const { from } = useProjectContent().size;
  const options = [
    { value: "top", label: texts.fromTop },
    { value: "back", label: texts.fromBack },
  ] as const;
  return (
    <Choice
      label={texts.from}
      value={from}
      options={options}
      onChange={(value) => project.setSize({ from: value })}
    />
  );
}

const threePlaces = [0, 1, 2] as const;

/** Three measures each way; the largest counts. */
export function Measures({ facts }: Facts) {
  const texts = useTexts(sizeTexts);
  return (
    <section className={styles.group}>
      <h2>{texts.top}</h2>
      <p className={styles.quiet}>{texts.measureThrice}</p>
      <SideMeasures side="width" heading={texts.widths} differ={facts.differ.width} />
      <SideMeasures side="height" heading={texts.heights} differ={facts.differ.height} />
    </section>
  );
}

type SideMeasuresProps = {
  readonly side: "width" | "height";
  readonly heading: string;
  readonly differ: Length | null;
};

function SideMeasures({ side, heading, differ }: SideMeasuresProps) {
  const texts = useTexts(sizeTexts);
  const project = useProject();
  const { size, settings } = useProjectContent();
  const name = side === "width" ? "topWidths" : "topHeights";
  const measures = size[name];
  return (
    <Fractions unit={settings.unit} label={texts.eighths}>
      <fieldset className={styles.measures}>
        <legend>{heading}</legend>
        {threePlaces.map((place) => (
          <LengthField
            key={place}
            label={texts.places[side][place]}
            name={texts.measureOf(side, place)}
            unit={settings.unit}
            measured={measures[place]}
            onChange={(measured) => project.setSize({ [name]: withMeasure(measures, place, measured) })}
            texts={texts}
            inRow
          />
        ))}
      </fieldset>
      {differ !== null && <p className={styles.note}>{texts.differ(side, differ)}</p>}
    </Fractions>
  );
}

function withMeasure(
  measures: ThreeMeasures,
  place: 0 | 1 | 2,
  measured: Measured<Length> | null,
): ThreeMeasures {
  const [one, two, three] = measures;
  switch (place) {
    case 0:
      return [measured, two, three];
    case 1:
      return [one, measured, three];
    case 2:
      return [one, two, measured];
  }
}

export function Method({ facts }: Facts) {
  const texts = useTexts(sizeTexts);
  const project = useProject();
  const { method } = useProjectContent().size;
  const options = methods.map((value) => ({
    value,
    label: texts.methods(value),
    what: texts.methodTakes(facts.extras[value]),
  }));
  return (
    <Choice
      label={texts.method}
      value={method}
      options={options}
      onChange={(value) => project.setSize({ method: value })}
    />
  );
}

export function Extra({ facts }: Facts) {
  const texts = useTexts(sizeTexts);
  const { size } = useProjectContent();
  const isAsked = size.asksExtra !== null;
  return (
    <SizeField
      field="extra"
      label={texts.extra}
      hint={isAsked ? texts.extraAsked : texts.extraUsual(facts.extras[size.method])}
      trouble={isAsked ? undefined : troubleIn(facts, texts.jobProblem)}
    />
  );
}

/** What her quilter asks for; open from the start where something stands in it. */
export function Asked({ facts }: Facts) {
  const texts = useTexts(sizeTexts);
  const { size } = useProjectContent();
  const trouble = size.asksExtra === null ? undefined : troubleIn(facts, texts.jobProblem);
  if (size.from === "back") return <OwnSize />;
  const filled = [size.asksExtra, size.asksWidth, size.asksHeight, size.backWidth, size.backHeight];
  return (
    <details className={styles.asked} open={filled.some((measure) => measure !== null) || undefined}>
      <summary>{texts.asks}</summary>
      <p className={styles.quiet}>{texts.asksWhat}</p>
      <SizeField field="asksExtra" label={texts.asksExtra} trouble={trouble} />
      <div className={styles.pair}>
        <SizeField field="asksWidth" label={texts.asksWidth} />
        <SizeField field="asksHeight" label={texts.asksHeight} />
      </div>
      <h3>{texts.ownSize}</h3>
      <OwnSize />
    </details>
  );
}

function OwnSize() {
  const texts = useTexts(sizeTexts);
  return (
    <div className={styles.pair}>
      <SizeField field="backWidth" label={texts.ownWidth} />
      <SizeField field="backHeight" label={texts.ownHeight} />
    </div>
  );
}

function troubleIn(facts: SizeFacts, say: (problem: SizeFacts["extraProblems"][number]) => string) {
  const [problem] = facts.extraProblems;
  return problem === undefined ? undefined : say(problem);
}

type SizeFieldProps = {
  readonly field: Exclude<keyof ProjectSize, "from" | "method" | "topWidths" | "topHeights">;
  readonly label: string;
  readonly hint?: string;
  readonly trouble?: string | undefined;
};

function SizeField({ field, label, hint, trouble }: SizeFieldProps) {
  const texts = useTexts(sizeTexts);
  const project = useProject();
  const { size, settings } = useProjectContent();
  return (
    <Fractions unit={settings.unit} label={texts.eighths}>
      <LengthField
        label={label}
        unit={settings.unit}
        measured={size[field]}
        onChange={(measured) => project.setSize({ [field]: measured })}
        texts={texts}
        trouble={trouble}
        {...(hint === undefined ? {} : { hint })}
      />
    </Fractions>
  );
}

export function TimeGiven() {
  const texts = useTexts(sizeTexts);
  const project = useProject();
  const { time } = useProjectContent();
  const options = times.map((value) => ({ value, label: texts.times(value), what: texts.timeWhat(value) }));
  return <Choice label={texts.time} value={time} options={options} onChange={project.setTime} />;
}

export function Unit() {
  const texts = useTexts(sizeTexts);
  const project = useProject();
  const { unit } = useProjectContent().settings;
  const options = displayUnits.map((value) => ({ value, label: texts.units[value] }));
  return (
    <Choice
      label={texts.unit}
      value={unit}
      options={options}
      onChange={(value) => project.setSettings({ unit: value })}
    />
  );
}
