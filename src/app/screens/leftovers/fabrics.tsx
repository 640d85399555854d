import { memo } from "react";
import { Button } from "react-aria-components";
import { shelfTexts } from "../../../words/index.ts";
import { useProject } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import { fabricChanges, swatchOf, valueStrips } from "./fabricFacts.ts";
import styles from "./fabrics.module.css";
import type { FabricShare } from "./heap.ts";
import { useHeap, useLeftoversTexts } from "./heapContext.ts";
import { remarksOf } from "./remarks.ts";
import { useShownPart } from "./shownPart.ts";

/** How much there is of each fabric, and how light or dark it is. */
export const Fabrics = memo(function Fabrics() {
  const texts = useLeftoversTexts();
  const { fabrics, values } = useHeap();
  const { shown, rest, showMore } = useShownPart(fabrics);
  return (
    <section className={styles.fabrics} aria-label={texts.fabrics}>
      <h2>{texts.fabrics}</h2>
      <Remarks />
      <ul className={styles.list}>
        {shown.map((share) => (
          <FabricRow key={share.fabric.id} {...share} />
        ))}
      </ul>
      {rest > 0 && (
        <Button className="button plain" onPress={showMore}>
          {texts.more(rest)}
        </Button>
      )}
      {values.length > 1 && <ValueStrip values={values} />}
    </section>
  );
});

function Remarks() {
  const texts = useTexts(shelfTexts);
  const heap = useHeap();
  return remarksOf(heap).map((remark) => (
    <p key={remark.kind} className={styles.remark}>
      {texts.remark(remark)}
    </p>
  ));
}

function FabricRow(share: FabricShare) {
  const texts = useLeftoversTexts();
  const { fabric, isKnown } = share;
  const name = texts.fabric(fabric);
  return (
    <li className={styles.row}>
      <ColourField share={share} name={texts.colourOf(name)} />
      <span className={styles.name}>
        {name}
        <small className={styles.is}>
          {texts.fabricIs(share.area, share.share)}
          {!isKnown && ` · ${texts.colourNotKnown}`}
        </small>
      </span>
      <svg
        className={`cloth ${styles.bar}`}
        viewBox="0 0 1 1"
        preserveAspectRatio="none"
        style={{ "--share": share.ofMost }}
        aria-hidden="true"
      >
        <rect
          width="1"
          height="1"
          {...(isKnown ? { fill: fabric.colour } : { className: styles.noColour })}
        />
      </svg>
    </li>
  );
}

/** The browser's own colours: they know her device, her pen and her screen. */
function ColourField({ share, name }: { readonly share: FabricShare; readonly name: string }) {
  const handle = useProject();
  const colour = (value: string) => {
    const { rows, rough } = fabricChanges(share, handle.state().project, value);
    if (rows.length > 0) handle.changeRows(rows, { cells: { colour: { text: value, value } } });
    for (const { id, ...stock } of rough) handle.changeRough(id, stock);
  };
  return (
    <input
      type="color"
      className={styles.colour}
      aria-label={name}
      value={swatchOf(share.fabric)}
      onChange={(event) => colour(event.target.value)}
    />
  );
}

function ValueStrip({ values }: { readonly values: readonly FabricShare[] }) {
  const texts = useLeftoversTexts();
  const strips = valueStrips(values);
  return (
    <figure className={styles.values}>
      <figcaption>
        <h3>{texts.values}</h3>
        <p className={styles.is}>{texts.valuesWhat}</p>
      </figcaption>
      <svg
        className={`cloth ${styles.strip}`}
        viewBox="0 0 1 2"
        preserveAspectRatio="none"
        role="img"
        aria-label={texts.valuesOf(values.map(({ fabric }) => texts.fabric(fabric)))}
      >
        {strips.map(({ id, from, share, colour, grey }) => (
          <g key={id}>
            <rect x={from} y={0} width={share} height={1.15} fill={colour} />
            <rect x={from} y={1.15} width={share} height={0.85} fill={grey} />
          </g>
        ))}
      </svg>
      <p className={styles.ends} aria-hidden="true">
        <span>{texts.light}</span>
        <span>{texts.dark}</span>
      </p>
    </figure>
  );
}
