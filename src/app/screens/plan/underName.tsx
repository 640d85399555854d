import { type FormEvent, useEffect, useRef, useState } from "react";
import { Button, FieldError, Form, Input, Label, TextField } from "react-aria-components";
import type { PlanDocument } from "../../../files/index.ts";
import { comparisonTexts, planTexts } from "../../../words/index.ts";
import { useProject } from "../../frame/index.ts";
import fieldStyles from "../../parts/lengthField/lengthField.module.css";
import { useTexts } from "../../parts/texts.ts";
import type { NamedPlan } from "./namedPlans.ts";
import { keptFrom } from "./planning.ts";
import styles from "./sideBySide.module.css";

type UnderNameProps = {
  /** The one she looks at; null: none yet. */
  readonly plan: PlanDocument | null;
  readonly hash: string;
  /** null: not read yet. */
  readonly named: readonly NamedPlan[] | null;
  /** One more is kept, or one less. */
  readonly onKept: () => Promise<void>;
  readonly onGoBack: (to: NamedPlan) => void;
};

/** Keeps the plan she looks at under a name, and lists those that are, to go back to. */
export function UnderName({ plan, hash, named, onKept, onGoBack }: UnderNameProps) {
  const texts = useTexts(comparisonTexts);
  return (
    <section className={styles.underName} aria-labelledby="under-name">
      <h3 id="under-name">{texts.underName}</h3>
      <p>{texts.underNameHow}</p>
      {plan !== null && <KeepUnderName plan={plan} hash={hash} onKept={onKept} />}
      <NamedPlans named={named} onKept={onKept} onGoBack={onGoBack} />
    </section>
  );
}

type NamedPlansProps = Pick<UnderNameProps, "named" | "onKept" | "onGoBack">;

function NamedPlans({ named, onKept, onGoBack }: NamedPlansProps) {
  const texts = useTexts(comparisonTexts);
  const { removed, said, remove, putBack } = useRemoving(onKept);
  const news = useRef<HTMLParagraphElement>(null);
  // The button that was pressed is gone; what came of it is read in its place.
  useEffect(() => {
    if (said !== "") news.current?.focus();
  }, [said]);
  return (
    <>
      {named?.length === 0 && <p>{texts.noneNamed}</p>}
      <div className={styles.removed}>
        <p role="status" ref={news} tabIndex={-1}>
          {said}
        </p>
        {removed !== null && (
          <Button className="button" onPress={putBack}>
            {texts.putBack}
          </Button>
        )}
      </div>
      <ul className={styles.named}>
        {(named ?? []).map((one) => (
          <Named key={one.id} named={one} onGoBack={() => onGoBack(one)} onRemove={() => remove(one)} />
        ))}
      </ul>
    </>
  );
}

type Removed = { readonly named: NamedPlan; readonly back: () => Promise<boolean> };

/** One kept plan is removed at once, and comes back as it was as long as this page is open. */
function useRemoving(onChanged: () => Promise<void>) {
  const texts = useTexts(comparisonTexts);
  const project = useProject();
  const [removed, setRemoved] = useState<Removed | null>(null);
  const [said, setSaid] = useState("");
  const remove = async (named: NamedPlan) => {
    const back = await project.removeVersion(named.id);
    await onChanged();
    setRemoved(back === null ? null : { named, back });
    setSaid(back === null ? texts.notRemoved : texts.wasRemoved(named));
  };
  const putBack = async ({ named, back }: Removed) => {
    const isBack = await back();
    await onChanged();
    setRemoved(null);
    setSaid(isBack ? texts.wasPutBack(named) : texts.notKept);
  };
  return {
    removed,
    said,
    remove: (named: NamedPlan) => void remove(named),
    putBack: () => removed !== null && void putBack(removed),
  };
}

type KeepUnderNameProps = Pick<UnderNameProps, "hash" | "onKept"> & { readonly plan: PlanDocument };

function KeepUnderName({ plan, hash, onKept }: KeepUnderNameProps) {
  const texts = useTexts(comparisonTexts);
  const project = useProject();
  const [name, setName] = useState("");
  const [isMissing, setMissing] = useState(false);
  const [said, setSaid] = useState("");
  const keep = async () => {
    const isKept = await project.saveNamedVersion(name.trim(), keptFrom(plan, hash));
    setSaid(isKept ? texts.wasKept(name.trim()) : texts.notKept);
    if (!isKept) return;
    setName("");
    await onKept();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setMissing(name.trim() === "");
    if (name.trim() !== "") void keep();
  };
  return (
    <>
      <Form className={`${styles.keepUnder}`} onSubmit={submit}>
        <TextField
          className={`${fieldStyles.field} ${styles.nameField}`}
          value={name}
          onChange={(text) => {
            setMissing(false);
            setName(text);
          }}
          isInvalid={isMissing}
          autoComplete="off"
        >
          <Label className={`${fieldStyles.label}`}>{texts.name}</Label>
          <Input className={`${fieldStyles.input}`} maxLength={120} />
          <FieldError className={`${fieldStyles.error}`}>{texts.nameFirst}</FieldError>
        </TextField>
        <Button className="button" type="submit">
          {texts.keepUnder}
        </Button>
      </Form>
      <p role="status">{said}</p>
    </>
  );
}

type NamedProps = {
  readonly named: NamedPlan;
  readonly onGoBack: () => void;
  readonly onRemove: () => void;
};

function Named({ named, onGoBack, onRemove }: NamedProps) {
  const texts = useTexts(comparisonTexts);
  const plans = useTexts(planTexts);
  const { plan } = named;
  return (
    <li>
      <span>
        {named.name}
        <span className={styles.origin}>
          {texts.keptUnder(named)}:{" "}
          {plan === null ? texts.withoutPlan : `${plans.style(plan.style)}, ${plans.hours(plan.figures)}`}
        </span>
      </span>
      <Button className="button" aria-label={texts.goBackTo(named)} onPress={onGoBack}>
        {texts.goBack}
      </Button>
      <Button className="button plain" aria-label={texts.removeNamed(named)} onPress={onRemove}>
        {texts.remove}
      </Button>
    </li>
  );
}
