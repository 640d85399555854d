import { memo, useCallback, useMemo, useState } from "react";
import { Button, Toolbar } from "react-aria-components";
import type { Use } from "../../../engine/cloth/index.ts";
import type { Length } from "../../../engine/length/index.ts";
import { type LeftoversTexts, shelfTexts } from "../../../words/index.ts";
import { useProjectPart } from "../../frame/index.ts";
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
  const { unit } = useProjectPart(({ settings }) => settings);
  const scale = useMemo(() => picturesOf(rows), [rows]);
  const [isGrey, setGrey] = useState(false);
  return (
    <section className={styles.piles} aria-label={texts.views.piles}>
      <button type="button" className="button plain" aria-pressed={isGrey} onClick={() => setGrey(!isGrey)}>
        {shelf.blackAndWhite}
      </button>
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

type OnePileProps = Scale & PilesProps & { readonly pile: Pile; readonly isGrey: boolean };

const OnePile = memo(function OnePile({ pile, chosen, onMark, pictures, ...rest }: OnePileProps) {
  const texts = useLeftoversTexts();
  const { colours } = useHeap();
  const { shown, rest: hidden, showMore } = useShownPart(pile.rows);
  return (
    <section className={styles.pile} aria-label={texts.pile[pile.name]}>
      <PileHead pile={pile} onMark={onMark} />
      {/* One stop for the Tab key; along the pieces with the arrow keys. */}
      <Toolbar aria-label={texts.pile[pile.name]}>
        <ul className={styles.rows}>
          {shown.map((row) => (
            <li key={row.id}>
              <PileRow
                row={row}
                colour={colours.get(row.id) ?? null}
                picture={pictures.get(row.id)}
                isChosen={chosen.has(row.id)}
                texts={texts}
                {...rest}
              />
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
});

type PileHeadProps = Pick<OnePileProps, "pile" | "onMark">;

function PileHead({ pile, onMark }: PileHeadProps) {
  const texts = useLeftoversTexts();
  const listed = useMemo(() => pile.rows.flatMap(({ id, rough }) => (rough === null ? [id] : [])), [pile]);
  const markAll = useCallback((use: Use) => onMark(listed, use), [listed, onMark]);
  return (
    <>
      <header className={styles.head}>
        <h2>{texts.pile[pile.name]}</h2>
        <p className={styles.is}>{texts.pileIs(pile.count, pile.area)}</p>
      </header>
      {listed.length > 0 && (
        <Marks lead={texts.allOfThese} label={texts.markPile(pile.name)} now={pile.use} onMark={markAll} />
      )}
    </>
  );
}

type PileRowProps = Pick<Scale, "across"> & {
  readonly row: Sorted;
  /** null: none is known. */
  readonly colour: string | null;
  readonly picture: RowPicture | undefined;
  readonly isGrey: boolean;
  readonly isChosen: boolean;
  readonly texts: LeftoversTexts;
  readonly onToggle: (id: string) => void;
};

/** Tapped, it is chosen, and alone drawn anew; what was only estimated can't be. */
const PileRow = memo(function PileRow(props: PileRowProps) {
  const { row, colour, picture, across, isGrey, isChosen, texts, onToggle } = props;
  const drawn = (
    <>
      {picture !== undefined && (
        <PieceCloth
          picture={picture}
          colour={isGrey && colour !== null ? greyOf(row.fabric) : colour}
          across={across}
        />
      )}
      <Caption row={row} isChosen={isChosen} more={picture?.more ?? 0} texts={texts} />
    </>
  );
  if (row.rough !== null) return <div className={styles.piece}>{drawn}</div>;
  return (
    <button
      type="button"
      className={styles.piece}
      aria-label={texts.understood({ ...row.piece, fabric: row.fabric.name })}
      aria-pressed={isChosen}
      onClick={() => onToggle(row.id)}
    >
      {drawn}
    </button>
  );
});

type CaptionProps = Pick<PileRowProps, "row" | "isChosen" | "texts"> & { readonly more: number };

function Caption({ row: { piece, rough }, isChosen, more, texts }: CaptionProps) {
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
