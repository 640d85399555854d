/** Photos are unpacked and measured here, beside the page. It is stopped by ending the worker. */
import {
  corrected,
  type MeasuredPiece,
  type OpenPhoto,
  openPhoto,
  type Place,
  type Vision,
  withFloorAt,
} from "../../../photo/index.ts";
import { decodePhoto } from "./decode.ts";
import { loadVision } from "./libraries.ts";
import type {
  FoundPiece,
  FromPhotoWorker,
  PhotoCorrection,
  PhotoRequest,
  PhotoStage,
  ToPhotoWorker,
} from "./messages.ts";
import { cutOutPicture, pictureOf } from "./pictures.ts";
import { openTop, straightTop } from "./top.ts";

let open: OpenPhoto | null = null;

addEventListener("message", ({ data }: MessageEvent<ToPhotoWorker>) => {
  work(data).catch((error: unknown) => say({ kind: "failed", detail: String(error) }));
});

async function work(data: ToPhotoWorker): Promise<void> {
  switch (data.kind) {
    case "measure":
      return measure(data);
    case "correct":
      return correct(data.correction);
    case "open-top":
      return say(await openTop(data.file));
    case "straighten":
      return say({ kind: "straightened", top: await straightTop(data.corners, data.ratio) });
  }
}

async function measure({ file, printed, step, floor = null }: PhotoRequest): Promise<void> {
  reach("opening");
  const decoded = await decodePhoto(file);
  if (!decoded.ok) return say({ kind: "refused", why: decoded.error });
  const { photo, focal35 } = decoded.value;
  const opened = openPhoto(photo, await loadVision(), { printed, focal35, step, onStage: reach });
  if (!("measured" in opened)) return say({ kind: "refused", why: { kind: "no-cards" } });
  open = (floor && withFloorAt(opened, await loadVision(), floor)) ?? opened;
  reach("pictures");
  const { width, height } = photo;
  const { pieces, warnings } = open.measured;
  const found = { picture: await pictureOf(photo), width, height, warnings };
  say({ kind: "measured", found: { ...found, pieces: await withPictures(open, pieces) } });
}

async function correct(correction: PhotoCorrection): Promise<void> {
  if (open === null) throw new Error("no photo is open to be corrected");
  const vision = await loadVision();
  const pieces =
    correction.kind === "floor"
      ? onFloorAt(open, vision, correction.at)
      : corrected(open, vision, correction);
  say({ kind: "corrected", pieces: await withPictures(open, pieces) });
}

/** From now on the floor is taken for what lies there. */
function onFloorAt(now: OpenPhoto, vision: Vision, at: Place): readonly MeasuredPiece[] {
  const again = withFloorAt(now, vision, at);
  if (again === null || again.measured.pieces.length === 0) return [];
  open = again;
  return again.measured.pieces;
}

async function withPictures({ scene }: OpenPhoto, pieces: readonly MeasuredPiece[]): Promise<FoundPiece[]> {
  const found: FoundPiece[] = [];
  for (const piece of pieces) found.push({ piece, cutOut: await cutOutPicture(scene.photo, piece) });
  return found;
}

function reach(stage: PhotoStage): void {
  say({ kind: "stage", stage });
}

function say(message: FromPhotoWorker): void {
  postMessage(message);
}
