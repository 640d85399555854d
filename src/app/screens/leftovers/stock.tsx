import { type FormEvent, useState } from "react";
import { Button, Disclosure, DisclosurePanel, Form, Heading } from "react-aria-components";
import type { RoughStock } from "../../../files/index.ts";
import { useProject, useProjectPart } from "../../frame/index.ts";
import styles from "./about.module.css";
import { useLeftoversTexts } from "./heapContext.ts";
import { type BagTyped, bagArea, bagOf, type StripsTyped, stripsOf } from "./roughStock.ts";
import { LineField } from "./textField.tsx";

/** What she would rather not count. */
export function Stock() {
  const texts = useLeftoversTexts();
  const rough = useProjectPart((now) => now.rough);
  return (
    <Disclosure className={`${styles.stock}`} defaultExpanded={rough.length > 0}>
      <Heading level={3}>
        <Button slot="trigger" className="button plain">
          {texts.stock}
        </Button>
      </Heading>
      <DisclosurePanel className={`${styles.panel}`}>
        <p>{texts.stockWhat}</p>
        {rough.length > 0 && (
          <ul className={styles.stocks}>
            {rough.map((stock) => (
              <StockRow key={stock.id} stock={stock} />
            ))}
          </ul>
        )}
        <StripsForm />
        <BagForm />
      </DisclosurePanel>
    </Disclosure>
  );
}

function StockRow({ stock }: { readonly stock: RoughStock }) {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const area = bagArea(stock);
  const what =
    stock.kind === "strips"
      ? texts.stockStripsIs(stock.total.text, stock.width.text, stock.fabric)
      : texts.stockBagIs(stock.weight.text, stock.fabric);
  return (
    <li className={styles.stockRow}>
      <span>
        {what}
        {area !== null && <small className={styles.what}>{texts.stockBagArea(area)}</small>}
      </span>
      <Button
        className="button plain"
        aria-label={texts.removeStock(what)}
        onPress={() => handle.removeRough(stock.id)}
      >
        {texts.remove}
      </Button>
    </li>
  );
}

const noStrips: StripsTyped = { total: "", width: "", fabric: "" };

function StripsForm() {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const { unit } = useProjectPart(({ settings }) => settings);
  const [typed, setTyped] = useState(noStrips);
  const [isAsked, setAsked] = useState(false);
  const read = stripsOf(typed, unit);
  const type = (field: keyof StripsTyped) => (text: string) => {
    setTyped({ ...typed, [field]: text });
    setAsked(false);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!read.ok) return setAsked(true);
    handle.addRough(read.value);
    setTyped(noStrips);
  };
  const trouble = (field: "total" | "width") => {
    return isAsked && !read.ok && read.error.field === field ? texts.lengthProblem(read.error.problem) : null;
  };
  return (
    <Form className={`${styles.stockForm}`} aria-label={texts.stockStrips} onSubmit={submit}>
      <h4>{texts.stockStrips}</h4>
      <LineField
        label={texts.stockTotal}
        value={typed.total}
        onChange={type("total")}
        trouble={trouble("total")}
      />
      <LineField
        label={texts.stockWidth}
        value={typed.width}
        onChange={type("width")}
        trouble={trouble("width")}
      />
      <LineField label={texts.stockFabric} value={typed.fabric} onChange={type("fabric")} />
      <Button type="submit" className="button">
        {texts.addStrips}
      </Button>
    </Form>
  );
}

const noBag: BagTyped = { weight: "", fabric: "" };

function BagForm() {
  const texts = useLeftoversTexts();
  const handle = useProject();
  const { unit } = useProjectPart(({ settings }) => settings);
  const [typed, setTyped] = useState(noBag);
  const [isAsked, setAsked] = useState(false);
  const read = bagOf(typed, unit);
  const type = (field: keyof BagTyped) => (text: string) => {
    setTyped({ ...typed, [field]: text });
    setAsked(false);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!read.ok) return setAsked(true);
    handle.addRough(read.value);
    setTyped(noBag);
  };
  return (
    <Form className={`${styles.stockForm}`} aria-label={texts.stockBag} onSubmit={submit}>
      <h4>{texts.stockBag}</h4>
      <LineField
        label={texts.stockWeight}
        value={typed.weight}
        onChange={type("weight")}
        trouble={isAsked && !read.ok ? texts.weightProblem(read.error) : null}
      />
      <LineField label={texts.stockFabric} value={typed.fabric} onChange={type("fabric")} />
      <Button type="submit" className="button">
        {texts.addBag}
      </Button>
    </Form>
  );
}
