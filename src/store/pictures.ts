import { largestPicture, type Pictures } from "../files/index.ts";
import type { Connection } from "./database.ts";
import { versionsOf } from "./versions.ts";

/** What a picture is known by; `null` where this page may not compute it (it is served without a lock). */
export async function pictureIdOf(bytes: Uint8Array): Promise<string | null> {
  if (bytes.length > largestPicture || globalThis.crypto?.subtle === undefined) return null;
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes.slice()));
  return [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** All pictures of a project. */
export async function readPictures(connection: Connection, project: string): Promise<Pictures> {
  const all = await connection.read(["pictures"], (reading) => {
    return reading.objectStore("pictures").getAll(versionsOf(project));
  });
  return new Map(all.flatMap(({ id, bytes }) => (bytes instanceof Uint8Array ? [[id, bytes]] : [])));
}

export async function writePictures(
  connection: Connection,
  project: string,
  pictures: Pictures,
): Promise<void> {
  if (pictures.size === 0) return;
  await connection.write(["pictures"], async (writing) => {
    for (const [id, bytes] of pictures) await writing.objectStore("pictures").put({ project, id, bytes });
  });
}
