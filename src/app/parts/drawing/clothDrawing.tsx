import { memo, type ReactNode, useMemo } from "react";
import { hexOf, type Lab } from "../../../engine/cloth/index.ts";
import type { Box, Drawing, Marks, PatchMark, Rect } from "../../../engine/drawing/index.ts";
import styles from "./drawing.module.css";
import { boxOnPage, type Look, pageFor, type RulerOnPage } from "./page.ts";

declare module "react" {
  interface CSSProperties {
    "--ratio"?: number;
    "--share"?: number;
    "--inches"?: number;
  }
}

type ClothDrawingProps = {
  readonly drawing: Drawing;
  /** What it shows, for who can't see it. */
  readonly name: string;
  readonly look?: Look;
  /** What the ruler's length is called; without it there is no ruler. */
  readonly ruler?: string;
  /** What its sides measure, to stand beside them. */
  readonly sides?: { readonly width: string; readonly height: string };
  /** The top lies on it, its right side up, and this stands on the top. */
  readonly topOn?: ReactNode;
  /** Lies on the plain colors, below the seams, in pixels of the page. */
  readonly onCloth?: ReactNode;
  /** Lies over all of it, and is exactly as large. */
  readonly over?: ReactNode;
  /** An address of the top's picture, to lie there in its place. */
  readonly topPicture?: string | undefined;
  /** What is spoken of, framed. */
  readonly framed?: Rect;
  /** Cells that are spoken of, each in a finer frame. */
  readonly marked?: readonly Rect[];
  /** Lies in the marked cells in place of what is there. */
  readonly newCloth?: Lab;
  /** What stays where it is: each with a pin. */
  readonly pinned?: readonly Rect[];
};

/**
 * A drawing of cloth, to scale: as wide as its place, as tall as `--tallest`. Cloth flat in its own colour, seams as
 * a double line, the cut-off edge hatched. All that stands round it is part of its name and hidden from who hears it.
 */
export const ClothDrawing = memo(function ClothDrawing(props: ClothDrawingProps) {
  const { drawing, name, look = "large", ruler, sides, topOn, framed, pinned = [] } = props;
  const { marked: cells = [], newCloth, onCloth, over, topPicture } = props;
  const page = useMemo(() => pageFor(drawing, look), [drawing, look]);
  const { marks, ratio, top } = page;
  return (
    <div
      className={styles.drawing}
      data-look={look}
      data-sides={sides !== undefined}
      style={{ "--ratio": ratio }}
    >
      {sides && <Side className={styles.across} text={sides.width} />}
      <div className={styles.sheet}>
        {sides && <Side className={styles.upright} text={sides.height} />}
        <svg
          className={`cloth ${styles.cloth}`}
          viewBox={`0 0 ${marks.width} ${marks.height}`}
          role="img"
          aria-label={name}
        >
          <Cloth {...marks} onCloth={onCloth} />
          {cells.map((cell) => (
            <Mark key={`${cell.x} ${cell.y}`} box={boxOnPage(cell, drawing, look)} cloth={newCloth} />
          ))}
          {pinned.map((rect) => (
            <Pin key={`${rect.x} ${rect.y}`} {...boxOnPage(rect, drawing, look)} />
          ))}
          {framed && <Frame {...boxOnPage(framed, drawing, look)} />}
          {topOn !== undefined && top !== null && <rect className={styles.top} {...top} />}
          {topPicture !== undefined && top !== null && (
            <image {...top} href={topPicture} preserveAspectRatio="none" />
          )}
        </svg>
        {over}
        {topOn !== undefined && top !== null && (
          <span className={styles.onTop} aria-hidden="true">
            {topOn}
          </span>
        )}
      </div>
      {ruler !== undefined && <Ruler {...page.ruler} name={ruler} />}
    </div>
  );
});

function Frame(box: Box) {
  return (
    <>
      <rect className={`${styles.frame} ${styles.light}`} {...box} />
      <rect className={`${styles.frame} ${styles.dark}`} {...box} />
    </>
  );
}

function Mark({ box, cloth }: { readonly box: Box; readonly cloth: Lab | undefined }) {
  return (
    <>
      {cloth !== undefined && <rect {...box} fill={hexOf(cloth)} />}
      <rect className={`${styles.mark} ${styles.light}`} {...box} />
      <rect className={`${styles.mark} ${styles.dark}`} {...box} />
    </>
  );
}

/** A pin's head in the middle of a cell, and a thin frame. */
function Pin(box: Box) {
  const centre = { cx: box.x + box.width / 2, cy: box.y + box.height / 2 };
  const r = Math.max(2.5, Math.min(6, box.width / 4, box.height / 4));
  return (
    <>
      <rect className={`${styles.held} ${styles.light}`} {...box} />
      <rect className={`${styles.held} ${styles.dark}`} {...box} />
      <circle className={styles.pin} {...centre} r={r} />
    </>
  );
}

function Side({ className, text }: { readonly className: string | undefined; readonly text: string }) {
  return (
    <span className={className} aria-hidden="true">
      {text}
    </span>
  );
}

type ClothProps = Marks & { readonly onCloth: ReactNode };

/** Not drawn anew for what is framed or marked on it: a back may have hundreds of patches. */
const Cloth = memo(function Cloth({
  patches,
  prints,
  onCloth,
  allowances,
  seams,
  cutOff,
  edges,
}: ClothProps) {
  return (
    <>
      {patches.map((patch, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a patch is known by its place alone
        <Patch key={index} {...patch} />
      ))}
      {prints.map(({ d, lab, broken }) => (
        <path key={d} className={broken ? styles.brokenPrint : styles.print} d={d} stroke={hexOf(lab)} />
      ))}
      {onCloth}
      <Twice className={styles.allowance} d={allowances} />
      {seams.map(({ kind, d }) => (
        <Twice key={kind} className={styles[kind]} d={d} />
      ))}
      {cutOff !== null && (
        <>
          <path className={`${styles.hatch} ${styles.light}`} d={cutOff.light} />
          <path className={`${styles.hatch} ${styles.dark}`} d={cutOff.dark} />
          <Twice className={styles.outline} d={cutOff.outline} />
        </>
      )}
      <path className={styles.edge} d={edges} />
    </>
  );
});

// Not a class: browsers are slow to find out what another class changes, and a back has hundreds of patches.
const noColour = "#cfc9bd";

function Patch(patch: PatchMark) {
  const fill = patch.lab === null ? noColour : hexOf(patch.lab);
  if (patch.kind === "box") return <rect {...patch.box} fill={fill} />;
  // A hair of its own colour closes the slit that a slanted edge leaves between two patches.
  return <path d={patch.d} fill={fill} stroke={fill} strokeWidth={0.4} />;
}

/** A line over cloth: a dark one on a light one, so that it shows on any print. */
function Twice({ className, d }: { readonly className: string | undefined; readonly d: string }) {
  if (d === "") return null;
  return (
    <>
      <path className={`${className} ${styles.light}`} d={d} />
      <path className={`${className} ${styles.dark}`} d={d} />
    </>
  );
}

function Ruler({ share, ticks, name }: RulerOnPage & { readonly name: string }) {
  return (
    <div className={styles.ruler} aria-hidden="true">
      <svg
        className={styles.marks}
        style={{ "--share": share }}
        viewBox="0 0 1 1"
        preserveAspectRatio="none"
        aria-hidden="true"
      >
        <path d={`M0 1H1${ticks.map(({ at, long }) => `M${at} 1V${long ? 0 : 0.5}`).join("")}`} />
      </svg>
      <span>{name}</span>
    </div>
  );
}
