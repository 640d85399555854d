import { useEffect, useMemo, useState } from "react";
import { useProject } from "../frame/index.ts";
import { letPressesThrough } from "./letPressesThrough.ts";

/** A picture that is kept with the project, unpacked once so that its size is known. */
export type KeptPicture = {
  /** For an `img` or `image`, until whoever asked for it is gone. */
  readonly address: string;
  /** In pixels. */
  readonly width: number;
  readonly height: number;
  /** Not all of it is cloth: the rest is clear. */
  readonly isPartClear: boolean;
};

type Held = { readonly picture: Promise<KeptPicture | null>; readonly address: string; users: number };

// A name says what is in it, so one address does for every project and every place that shows it.
const held = new Map<string, Held>();

function hold(id: string, bytes: Uint8Array): Held {
  const known = held.get(id);
  if (known !== undefined) {
    known.users += 1;
    return known;
  }
  const isPartClear = bytes[0] !== 0xff;
  const type = isPartClear ? "image/png" : "image/jpeg";
  const address = URL.createObjectURL(new Blob([bytes.slice()], { type }));
  const made = { picture: unpacked(address, isPartClear), address, users: 1 };
  held.set(id, made);
  return made;
}

function letGo(id: string): void {
  const known = held.get(id);
  if (known === undefined) return;
  known.users -= 1;
  if (known.users > 0) return;
  held.delete(id);
  URL.revokeObjectURL(known.address);
}

/** What can't be shown is left out; the row or the cell has its plain color then. */
async function unpacked(address: string, isPartClear: boolean): Promise<KeptPicture | null> {
  const image = new Image();
  image.src = address;
  try {
    await image.decode();
  } catch {
    return null;
  }
  return { address, width: image.naturalWidth, height: image.naturalHeight, isPartClear };
}

// Whoever shows the same cloth next, in another plan, finds it unpacked. In milliseconds.
const heldOn = 1000;

// Each takes a slow tablet several milliseconds, and a back may have fifty.
const atOnce = 8;

const none: ReadonlyMap<string, KeptPicture> = new Map();

/** Pictures by their ids (`Leftover.picture`), as soon as they are unpacked; what isn't here is left out. */
export function usePictures(ids: readonly string[]): ReadonlyMap<string, KeptPicture> {
  const project = useProject();
  const [pictures, setPictures] = useState(none);
  const wanted = [...new Set(ids)].toSorted().join(" ");
  useEffect(() => {
    const own: string[] = [];
    let here = true;
    const take = async () => {
      const found: Promise<readonly [string, KeptPicture | null]>[] = [];
      for (const id of wanted.split(" ")) {
        const bytes = project.picture(id);
        if (bytes === null) continue;
        if (own.length > 0 && own.length % atOnce === 0) await letPressesThrough();
        if (!here) return;
        own.push(id);
        found.push(hold(id, bytes).picture.then((picture) => [id, picture] as const));
      }
      const all = await Promise.all(found);
      const shown = all.flatMap(([id, picture]) => (picture === null ? [] : [[id, picture] as const]));
      if (here && own.length > 0) setPictures(new Map(shown));
    };
    void take();
    return () => {
      here = false;
      setTimeout(() => own.forEach(letGo), heldOn);
    };
  }, [project, wanted]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: others may be held for what is wanted now
  return useMemo(() => stillHeld(pictures), [pictures, wanted]);
}

function stillHeld(pictures: ReadonlyMap<string, KeptPicture>): ReadonlyMap<string, KeptPicture> {
  return new Map([...pictures].filter(([id, { address }]) => held.get(id)?.address === address));
}

/** An address of a leftover's picture, for an `img`; null where there is none. `id`: `Leftover.picture`. */
export function usePicture(id: string | undefined): string | null {
  const pictures = usePictures(id === undefined ? [] : [id]);
  return pictures.get(id ?? "")?.address ?? null;
}
