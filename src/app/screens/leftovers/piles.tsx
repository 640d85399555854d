import { useMemo, useState } from "react";
import { Button, ToggleButton, Toolbar } from "react-aria-components";
import type { Use } from "../../../engine/cloth/index.ts";
import type { Length } from "../../../engine/length/index.ts";
import { shelfTexts } from "../../../words/index.ts";
import { useProjectState } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import { PieceCloth, ScaleRuler } from "./cloth.tsx";
import { greyOf } from "./fabricFacts.ts";
import type { Pile, Sorted } from "./heap.ts";
import { useHeap, useLeftoversTexts } from "./heapContext.ts";
import { Marks } from "./marks.tsx";
import { picturesOf, type RowPicture } from "./pictures.ts";
import styles from "./piles.module.css";
import { useShownPart } from "./shownPart.ts";

type PilesProps = {
  readonly chosen: ReadonlySet<string>;
  readonly onToggle: (id: string) => void;
  readonly onMark: (rows: readonly string[], use: Use) => void;
};

/** The heap as it lies on the table, sorted in piles; all of it drawn to one scale. */
export function Piles(props: PilesProps) {
  const texts = useLeftoversTexts();
  const shelf = useTexts(shelfTexts);
  const { piles, rows } = useHeap();
  const { unit } = useProjectState().project.settings;
  const scale = useMemo(() => picturesOf(rows), [rows]);
  const [isGrey, setGrey] = useState(false);
  return (
    <section className={styles.piles} aria-label={texts.views.piles}>
      <ToggleButton className="button plain" isSelected={isGrey} onChange={setGrey}>
        {shelf.blackAndWhite}
      </ToggleButton>
      {piles.map((pile) => (
        <OnePile key={pile.name} pile={pile} isGrey={isGrey} {...scale} {...props} />
      ))}
      {piles.length > 0 && (
        <div className={styles.scale}>
          <ScaleRuler across={scale.across} unit={unit} name={texts.ruler} />
        </div>
      )}
    </section>
  );
}

type Scale = { readonly pictures: ReadonlyMap<string, RowPicture>; readonly across: Length };
type Look = { readonly isGrey: boolean };

function OnePile({ pile, onMark, ...rest }: Scale & Look & PilesProps & { readonly pile: Pile }) {
  const texts = useLeftoversTexts();
  const { shown, rest: hidden, showMore } = useShownPart(pile.rows);
  const listed = pile.rows.flatMap(({ id, rough }) => (rough === null ? [id] : []));
  return (
    <section className={styles.pile} aria-label={texts.pile[pile.name]}>
      <header className={styles.head}>
        <h2>{texts.pile[pile.name]}</h2>
        <p className={styles.is}>{texts.pileIs(pile.count, pile.area)}</p>
      </header>
      {listed.length > 0 && (
        <Marks
          lead={texts.allOfThese}
          label={texts.markPile(pile.name)}
          now={pile.use}
          onMark={(use) => onMark(listed, use)}
        />
      )}
      {/* One stop for the Tab key; along the pieces with the arrow keys. */}
      <Toolbar aria-label={texts.pile[pile.name]}>
        <ul className={styles.rows}>
          {shown.map((row) => (
            <li key={row.id}>
              <PileRow row={row} {...rest} />
            </li>
          ))}
        </ul>
      </Toolbar>
      {hidden > 0 && (
        <Button className="button plain" onPress={showMore}>
          {texts.more(hidden)}
        </Button>
      )}
    </section>
  );
}

type PileRowProps = Scale & Look & Omit<PilesProps, "onMark"> & { readonly row: Sorted };

/** Tapped, it is chosen; what was only estimated can't be. */
function PileRow({ row, isGrey, pictures, across, chosen, onToggle }: PileRowProps) {
  const texts = useLeftoversTexts();
  const { colours } = useHeap();
  const picture = pictures.get(row.id);
  const own = colours.get(row.id) ?? null;
  const isChosen = chosen.has(row.id);
  const drawn = (
    <>
      {picture !== undefined && (
        <PieceCloth
          picture={picture}
          colour={isGrey && own !== null ? greyOf(row.fabric) : own}
          across={across}
        />
      )}
      <Caption row={row} isChosen={isChosen} more={picture?.more ?? 0} />
    </>
  );
  if (row.rough !== null) return <div className={styles.piece}>{drawn}</div>;
  return (
    <ToggleButton
      className={`${styles.piece}`}
      aria-label={texts.understood({ ...row.piece, fabric: row.fabric.name })}
      isSelected={isChosen}
      onChange={() => onToggle(row.id)}
    >
      {drawn}
    </ToggleButton>
  );
}

type CaptionProps = { readonly row: Sorted; readonly isChosen: boolean; readonly more: number };

function Caption({ row: { piece, rough }, isChosen, more }: CaptionProps) {
  const texts = useLeftoversTexts();
  const states = [
    ...(more > 0 ? [texts.more(more)] : []),
    ...(piece.use === "yes" ? [] : [texts.use[piece.use]]),
    ...(isChosen ? [texts.chosen] : []),
  ];
  return (
    <span className={styles.caption}>
      <span>
        {rough?.kind === "strips"
          ? texts.roughCaption(rough.total.text, rough.width.text)
          : texts.rowCaption(piece)}
      </span>
      {states.map((state) => (
        <strong key={state}>{state}</strong>
      ))}
    </span>
  );
}
