import { Button } from "react-aria-components";
import { printedOf } from "../../parts/paper.ts";
import { KeepPhoto } from "./keptPhotos.tsx";
import type { Marking } from "./marking.ts";
import { MarkBar } from "./marks.tsx";
import { Outlines } from "./outlines.tsx";
import styles from "./photos.module.css";
import { isSure } from "./pieces.ts";
import type { PiecesProps } from "./selection.ts";
import type { TablePhoto } from "./table.ts";
import { usePhotoTexts, useTable, useTableState } from "./tableFor.ts";

type PhotosProps = PiecesProps & { readonly marking: Marking };

/** The photos in the order they came, each with what was found drawn over it, or how far it has come. */
export function Photos({ pieces, selection, marking }: PhotosProps) {
  const { photos } = useTableState();
  return (
    <div className={styles.photos}>
      <MeasureAgain pieces={pieces} />
      {photos.map((photo) => {
        const own = pieces.filter((piece) => piece.photo === photo.id);
        return photo.kind === "measured" ? (
          <Measured key={photo.id} photo={photo} pieces={own} selection={selection} marking={marking} />
        ) : (
          <Unmeasured key={photo.id} photo={photo} />
        );
      })}
    </div>
  );
}

/** She typed what her ruler says after the photos were measured. What is in the heap already is left alone. */
function MeasureAgain({ pieces }: Pick<PiecesProps, "pieces">) {
  const texts = usePhotoTexts();
  const table = useTable();
  const state = useTableState();
  const now = printedOf(state);
  const open = new Set(pieces.map(({ photo }) => photo));
  const stale = state.photos.filter(
    ({ id, kind, printed }) => kind === "measured" && printed !== now && open.has(id),
  );
  if (now === null || stale.length === 0) return null;
  return (
    <p>
      <Button className="button" onPress={() => table.measure(new Set(stale.map(({ id }) => id)))}>
        {texts.measureAgain}
      </Button>
    </p>
  );
}

type MeasuredProps = PhotosProps & { readonly photo: TablePhoto & { readonly kind: "measured" } };

function Measured({ photo, pieces, selection, marking }: MeasuredProps) {
  const texts = usePhotoTexts();
  const all = useTableState().pieces.filter((piece) => piece.photo === photo.id).length;
  const doubted = pieces.filter(({ seen }) => !isSure(seen.check)).length;
  return (
    <figure className={styles.photo} aria-label={texts.photo(photo.file.name)}>
      <Outlines photo={photo} pieces={pieces} selection={selection} marking={marking} />
      <MarkBar
        photo={photo}
        marking={marking}
        pieces={pieces}
        chosen={pieces.find(({ id }) => id === selection.chosen)}
      />
      <figcaption className={styles.caption}>
        <span>{all > 0 && pieces.length === 0 ? texts.allIn : texts.found(pieces.length, doubted)}</span>
        <PutAway photo={photo} />
        <KeepPhoto photo={photo} />
        {photo.found.warnings.map((warning) => (
          <strong key={warning} className={styles.warning}>
            {texts.warning(warning)}
          </strong>
        ))}
      </figcaption>
    </figure>
  );
}

function Unmeasured({
  photo,
}: {
  readonly photo: TablePhoto & { readonly kind: Exclude<TablePhoto["kind"], "measured"> };
}) {
  const texts = usePhotoTexts();
  const table = useTable();
  const isUnderWay = photo.kind === "waiting" || photo.kind === "measuring";
  return (
    <div className={styles.unmeasured}>
      <p role="status">{useStandOf(photo)}</p>
      {isUnderWay ? (
        <>
          <progress className={styles.progress} aria-label={photo.file.name} {...shareOf(photo)} />
          <Button className="button" onPress={() => table.putAway(photo.id)}>
            {texts.stop}
          </Button>
        </>
      ) : (
        <span className={styles.ways}>
          {photo.kind === "failed" && (
            <Button className="button" onPress={() => table.measure(new Set([photo.id]))}>
              {texts.tryAgain}
            </Button>
          )}
          <PutAway photo={photo} />
        </span>
      )}
    </div>
  );
}

function useStandOf(photo: TablePhoto): string {
  const texts = usePhotoTexts();
  const { name } = photo.file;
  switch (photo.kind) {
    case "waiting":
      return texts.stage("waiting", name);
    case "measuring":
      return texts.stage(photo.stage, name);
    case "refused":
      return texts.refused(photo.why, name);
    case "failed":
      return texts.failed(name);
    case "measured":
      return "";
  }
}

const stages = ["opening", "markers", "floor", "pieces", "pictures"] as const;

function shareOf(photo: TablePhoto) {
  return { max: stages.length, value: photo.kind === "measuring" ? stages.indexOf(photo.stage) : 0 };
}

function PutAway({ photo }: { readonly photo: TablePhoto }) {
  const texts = usePhotoTexts();
  const table = useTable();
  return (
    <Button
      className="button plain"
      aria-label={texts.awayNamed(photo.file.name)}
      onPress={() => table.putAway(photo.id)}
    >
      {texts.away}
    </Button>
  );
}
