import { type KeyboardEvent, type MouseEvent, useState } from "react";
import { Button } from "react-aria-components";
import type { Place } from "../../../photo/index.ts";
import { placeAt, placeOf, wayOf } from "../../parts/corners/places.ts";
import type { Mark, Marking } from "./marking.ts";
import styles from "./marks.module.css";
import type { TablePiece } from "./pieces.ts";
import type { TablePhoto } from "./table.ts";
import { usePhotoTexts, useTableState } from "./tableFor.ts";

type MarksProps = {
  readonly photo: TablePhoto & { readonly kind: "measured" };
  readonly marking: Marking;
};

type MarkBarProps = MarksProps & {
  /** Those of this photo that are not in the heap. */
  readonly pieces: readonly TablePiece[];
  readonly chosen: TablePiece | undefined;
};

/** Below the photo: the chosen piece; or what to tap now, and how to leave it. */
export function MarkBar({ photo, marking, pieces, chosen }: MarkBarProps) {
  const texts = usePhotoTexts();
  const { isCorrecting } = useTableState();
  const { mark, trouble, begin, finish } = marking;
  const own = mark?.photo === photo.id ? mark : null;
  return (
    <div className={styles.bar}>
      <p role="status">{isCorrecting ? texts.working : own === null ? trouble : howTo(own, texts)}</p>
      {own === null && chosen !== undefined && <ToLine piece={chosen} />}
      {own === null ? (
        <>
          <Button
            className="button plain"
            isDisabled={isCorrecting}
            onPress={() => begin({ kind: "missed", photo: photo.id })}
          >
            {texts.missed}
          </Button>
          <Button
            className="button plain"
            isDisabled={isCorrecting}
            onPress={() => begin({ kind: "floor", photo: photo.id, pieces: pieces.map(({ id }) => id) })}
          >
            {texts.floorAgain}
          </Button>
        </>
      ) : (
        <>
          {own.kind === "corners" && (
            <Button className="button" isDisabled={own.corners.length < 3} onPress={finish}>
              {texts.allCorners}
            </Button>
          )}
          <Button className="button plain" onPress={() => begin(null)}>
            {texts.leaveIt}
          </Button>
        </>
      )}
    </div>
  );
}

/** On a phone the list is further down. */
function ToLine({ piece }: { readonly piece: TablePiece }) {
  const texts = usePhotoTexts();
  return (
    <Button
      className="button plain"
      onPress={() => document.getElementById(piece.id)?.scrollIntoView({ block: "start" })}
    >
      {texts.toLine(piece.number)}
    </Button>
  );
}

function howTo(mark: Mark, texts: ReturnType<typeof usePhotoTexts>): string {
  switch (mark.kind) {
    case "split":
      return texts.splitHow;
    case "merge":
      return texts.mergeHow;
    case "floor":
      return texts.floorHow;
    case "missed":
      return texts.missedHow;
    case "corners":
      return texts.cornersHow(mark.corners.length);
  }
}

// Of the photo's longer side, at one press of an arrow key; with Shift.
const steps = { near: 1 / 400, far: 1 / 40 };

/** Lies over the photo while a place on it is wanted: for taps, and for the arrow keys and Enter. */
export function MarkSurface({ photo, marking }: MarksProps) {
  const texts = usePhotoTexts();
  const { width, height } = photo.found;
  const [at, setAt] = useState<Place>([width / 2, height / 2]);
  const { mark } = marking;
  if (mark === null || mark.photo !== photo.id || mark.kind === "merge") return null;
  const tapped = (event: MouseEvent<HTMLButtonElement>) => {
    // By the keyboard it is pressed without a place.
    if (event.detail === 0) return marking.place(at);
    const place = placeAt(event, event.currentTarget, photo.found);
    setAt(place);
    marking.place(place);
  };
  const pressed = (event: KeyboardEvent) => {
    if (event.key === "Escape") return marking.begin(null);
    const way = wayOf(event.key);
    if (way === null) return;
    event.preventDefault();
    const far = Math.max(width, height) * (event.shiftKey ? steps.far : steps.near);
    const within = (value: number, most: number) => Math.max(0, Math.min(most, value));
    setAt(([x, y]) => [within(x + far * way[0], width), within(y + far * way[1], height)]);
  };
  const set = mark.kind === "corners" ? mark.corners : mark.kind === "split" && mark.from ? [mark.from] : [];
  return (
    <>
      <button
        type="button"
        className={styles.surface}
        aria-label={texts.surface}
        // She has asked for it just now, and the next key is meant for it.
        ref={(surface) => surface?.focus({ preventScroll: true })}
        onClick={tapped}
        onKeyDown={pressed}
      />
      <span className={styles.cross} style={placeOf(at, photo.found)} aria-hidden="true" />
      {set.map((place) => (
        <span
          key={place.join(" ")}
          className={styles.set}
          style={placeOf(place, photo.found)}
          aria-hidden="true"
        />
      ))}
    </>
  );
}
