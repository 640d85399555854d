import { useRef, useState } from "react";
import { Button } from "react-aria-components";
import { mostPhotos } from "../../../files/index.ts";
import { useProject, useProjectContent } from "../../frame/index.ts";
import { usePicture } from "../../parts/pictures.ts";
import styles from "./keptPhotos.module.css";
import type { TablePhoto } from "./table.ts";
import { usePhotoTexts, useTable, useTableState } from "./tableFor.ts";

type KeepPhotoProps = { readonly photo: TablePhoto & { readonly kind: "measured" } };

/** A photo stays with the back only where she says so: made anew, without what its file said of place and camera. */
export function KeepPhoto({ photo }: KeepPhotoProps) {
  const texts = usePhotoTexts();
  const table = useTable();
  const project = useProject();
  const { photos } = useProjectContent();
  const picture = useTableState().keptAs.get(photo.id);
  const [isTooLarge, setTooLarge] = useState(false);
  const isKept = picture !== undefined && photos.includes(picture);
  // Making it anew takes a moment: the tick is there at once, and may go again before that.
  const wanted = useRef(false);
  const [isComing, setComing] = useState(false);
  const keep = async () => {
    const [id] = await project.addPictures([await table.pictureAt(photo.picture)]);
    setComing(false);
    if (!wanted.current) return;
    setTooLarge(id == null);
    if (id == null) return;
    table.keptAs(photo.id, id);
    const now = project.state().project.photos;
    if (!now.includes(id)) project.setPhotos([...now, id]);
  };
  const change = (isWanted: boolean) => {
    wanted.current = isWanted;
    setComing(isWanted);
    if (!isWanted) project.setPhotos(photos.filter((one) => one !== picture));
    else if (!isComing) keep().catch(() => setComing(false));
  };
  const isFull = !isKept && photos.length >= mostPhotos;
  return (
    <span className={styles.keep}>
      <label className={styles.choice}>
        <input
          type="checkbox"
          checked={isKept || isComing}
          disabled={isFull}
          onChange={({ target }) => change(target.checked)}
        />
        {texts.keepPhoto}
      </label>
      <span role="status">{isFull ? texts.keptFull(mostPhotos) : isTooLarge ? texts.notKept : ""}</span>
    </span>
  );
}

/** The photos that stay with the back, to look a piece up in. */
export function KeptPhotos() {
  const texts = usePhotoTexts();
  const { photos } = useProjectContent();
  if (photos.length === 0) return null;
  return (
    <section className={styles.kept} aria-labelledby="kept-photos">
      <h2 id="kept-photos">{texts.keptPhotos}</h2>
      <ul className={styles.photos}>
        {photos.map((picture, at) => (
          <li key={picture}>
            <KeptPhoto picture={picture} number={at + 1} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function KeptPhoto({ picture, number }: { readonly picture: string; readonly number: number }) {
  const texts = usePhotoTexts();
  const project = useProject();
  const address = usePicture(picture);
  const remove = () => project.setPhotos(project.state().project.photos.filter((one) => one !== picture));
  return (
    <>
      {address !== null && (
        <img className={`cloth ${styles.photo}`} src={address} alt={texts.keptPhoto(number)} />
      )}
      <Button className="button plain" aria-label={texts.letGoNamed(number)} onPress={remove}>
        {texts.letGo}
      </Button>
    </>
  );
}
