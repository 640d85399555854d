import type { Paper } from "../../../engine/cards/index.ts";
import { defaultSettings } from "../../../engine/cloth/index.ts";
import type { Length } from "../../../engine/length/index.ts";
import type { Measured, ProjectSettings } from "../../../files/index.ts";
import type { PhotoRefusal, Place } from "../../../photo/index.ts";
import type { Preferences } from "../../../store/index.ts";
import { printedOf } from "../../parts/paper.ts";
import type { correctBeside, measureBeside } from "../../worker/photo/measurePhotos.ts";
import type { FoundPhoto, PhotoCorrection, PhotoStage } from "../../worker/photo/messages.ts";
import {
  type FoundHere,
  type Laid,
  lastNumber,
  nothingLaid,
  withFound,
  withFoundAgain,
  withInstead,
  withSeen,
} from "./pieces.ts";

/** A photo on the page, and how far it has come. */
export type TablePhoto = {
  readonly id: string;
  readonly file: File;
  /** What the printed lines were taken to be when it was measured. */
  readonly printed: number;
  /** Where she said that its floor lies bare; null: where the cards lie. */
  readonly floor: Place | null;
} & (
  | { readonly kind: "waiting" }
  | { readonly kind: "measuring"; readonly stage: PhotoStage }
  | { readonly kind: "refused"; readonly why: PhotoRefusal }
  | { readonly kind: "failed" }
  | {
      readonly kind: "measured";
      readonly found: Omit<FoundPhoto, "pieces" | "picture">;
      /** An address of the picture. */
      readonly picture: string;
    }
);

export type TableState = Laid & {
  readonly photos: readonly TablePhoto[];
  readonly paper: Paper;
  /** What her ruler says of the printed line; null: as it should be. */
  readonly bar: Measured<Length> | null;
  /** The pieces that went into the heap, each with its row there. */
  readonly entered: ReadonlyMap<string, string>;
  /** Photos that were kept with the project, each with its picture there. */
  readonly keptAs: ReadonlyMap<string, string>;
  readonly canTakeBack: boolean;
  /** A correction is being worked out. */
  readonly isCorrecting: boolean;
};

type Surroundings = {
  readonly measure: typeof measureBeside;
  readonly correct: typeof correctBeside;
  readonly newId: () => string;
  readonly settings: () => ProjectSettings;
  readonly addressOf: (picture: Blob) => string;
  readonly paper: Paper;
  /** What her ruler said before, of what she printed then. */
  readonly bars: () => Preferences["bars"];
  readonly remember: (bars: Preferences["bars"]) => void;
};

/** What lay on the page before a step of hers; photos that the step put away or had measured again, as they were. */
type Before = Laid & { readonly photos: readonly Placed[] };
type Placed = { readonly photo: TablePhoto; readonly at: number };

type FoundAgain = { readonly old: readonly string[]; readonly found: FoundHere; readonly floor: Place };

/** Photos are measured one after another: each takes much memory. Everything on the page lives here. */
export class PhotoTable {
  readonly #surroundings: Surroundings;
  readonly #listeners = new Set<() => void>();
  readonly #stops = new Map<string, AbortController>();
  readonly #pictures = new Map<string, Blob>();
  #past: readonly Before[] = [];
  #lastField: string | null = null;
  #state: TableState;

  constructor(surroundings: Surroundings) {
    this.#surroundings = surroundings;
    const { paper, bars } = surroundings;
    const nothing = { ...nothingLaid, photos: [], entered: new Map(), keptAs: new Map() };
    this.#state = { ...nothing, paper, bar: bars()[paper], canTakeBack: false, isCorrecting: false };
  }

  readonly state = (): TableState => this.#state;

  readonly subscribe = (listener: () => void) => {
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  };

  /** Kept for the photos to come, unless it can't be. */
  readonly setBar = (bar: TableState["bar"]) => {
    const { bars, remember } = this.#surroundings;
    const { paper } = this.#state;
    this.#set({ bar });
    remember({ ...bars(), [paper]: printedOf({ bar, paper }) === null ? null : bar });
  };

  readonly setPaper = (paper: Paper) => this.#set({ paper, bar: this.#surroundings.bars()[paper] });

  addPhotos(files: readonly File[]): void {
    const { newId } = this.#surroundings;
    const unseen = { printed: 1, floor: null, kind: "waiting" } as const;
    const photos = files.map((file): TablePhoto => ({ id: newId(), file, ...unseen }));
    this.#set({ photos: [...this.#state.photos, ...photos] });
    this.#next();
  }

  /** A photo, and what was found in it, which can be taken back; where it is under way it is stopped. */
  putAway(id: string): void {
    this.#stops.get(id)?.abort();
    const { photos, pieces, cloths } = this.#state;
    const at = photos.findIndex((photo) => photo.id === id);
    const photo = photos[at];
    if (photo?.kind === "measured") this.#past = [...this.#past, { pieces, cloths, photos: [{ photo, at }] }];
    this.#lastField = null;
    this.#set({
      photos: photos.filter((one) => one !== photo),
      ...without({ pieces, cloths }, new Set([id])),
    });
    this.#next();
  }

  /** These photos, with what her ruler says now; what was found in them before comes back when that is taken back. */
  measure(ids: ReadonlySet<string>): void {
    const { photos, pieces, cloths } = this.#state;
    const asTheyWere = photos.map((photo, at) => ({ photo, at })).filter(({ photo }) => ids.has(photo.id));
    this.#past = [...this.#past, { pieces, cloths, photos: asTheyWere }];
    this.#lastField = null;
    this.#set(without(this.#state, ids));
    for (const id of ids)
      this.#setPhoto(id, ({ file, printed, floor }) => ({ id, file, printed, floor, kind: "waiting" }));
    this.#next();
  }

  /** A correction, to be taken back as one; letters typed into one `field` are one. */
  edit(change: (laid: Laid) => Laid, field: string | null = null): void {
    const { pieces, cloths } = this.#state;
    if (field === null || field !== this.#lastField)
      this.#past = [...this.#past, { pieces, cloths, photos: [] }];
    this.#lastField = field;
    this.#set(change({ pieces, cloths }));
  }

  readonly takeBack = () => {
    const last = this.#past.at(-1);
    this.#past = this.#past.slice(0, -1);
    this.#lastField = null;
    if (last === undefined) return;
    for (const { photo } of last.photos) this.#stops.get(photo.id)?.abort();
    this.#set({ ...last, photos: last.photos.reduce(withPhoto, this.#state.photos) });
    this.#next();
  };

  /**
   * A correction on a photo. `old`: the pieces that it is about; without any, one was missed. False: nothing came of
   * it, and nothing is changed.
   */
  async correct(photo: string, correction: PhotoCorrection, old: readonly string[]): Promise<boolean> {
    const { correct, newId, settings } = this.#surroundings;
    const { unit } = settings();
    this.#set({ isCorrecting: true });
    try {
      const shown = await this.#corrected(correct, photo, correction);
      const [first] = shown;
      const [id] = old;
      if (first === undefined) return false;
      const found = { photo, unit, pieces: shown, newId };
      if (correction.kind === "floor") this.#findAgain(photo, { old, found, floor: correction.at });
      else if (correction.kind === "corners" && id !== undefined)
        this.edit((laid) => withSeen(laid, id, first, unit));
      else this.edit((laid) => withInstead(laid, old, found));
      return true;
    } catch {
      return false;
    } finally {
      this.#set({ isCorrecting: false });
    }
  }

  #findAgain(photo: string, { old, found, floor }: FoundAgain): void {
    this.#setPhoto(photo, (now) => ({ ...now, floor }));
    this.edit((laid) => withFoundAgain(laid, old, found));
  }

  async #corrected(correct: typeof correctBeside, id: string, correction: PhotoCorrection) {
    const photo = this.#state.photos.find((one) => one.id === id);
    if (photo === undefined || this.#stops.size > 0) return [];
    const { file, printed, floor } = photo;
    const found = await correct({ file, printed, floor, step: this.#step }, correction);
    return found.map(({ piece, cutOut }) => ({ piece, cutOut: this.#shown(cutOut) }));
  }

  get #step(): Length {
    const { unit, step } = this.#surroundings.settings();
    return step?.value ?? defaultSettings[unit].step;
  }

  /** Pieces that went into the heap, each with its row there. */
  enter(rows: ReadonlyMap<string, string>): void {
    this.#past = [];
    this.#set({ entered: new Map([...this.#state.entered, ...rows]) });
  }

  /** The picture that an address of a photo or a piece stands for. */
  async pictureAt(address: string): Promise<Uint8Array> {
    const picture = this.#pictures.get(address) ?? new Blob();
    return new Uint8Array(await picture.arrayBuffer());
  }

  /** What a photo on the page is known by among the project's pictures. */
  keptAs(photo: string, picture: string): void {
    this.#set({ keptAs: new Map([...this.#state.keptAs, [photo, picture]]) });
  }

  #shown(picture: Blob): string {
    const address = this.#surroundings.addressOf(picture);
    this.#pictures.set(address, picture);
    return address;
  }

  #set(change: Partial<TableState>): void {
    this.#state = { ...this.#state, ...change, canTakeBack: this.#past.length > 0 };
    for (const listener of this.#listeners) listener();
  }

  #setPhoto(id: string, photo: (now: TablePhoto) => TablePhoto): void {
    this.#set({ photos: this.#state.photos.map((one) => (one.id === id ? photo(one) : one)) });
  }

  #next(): void {
    const { photos } = this.#state;
    if (photos.some(({ kind }) => kind === "measuring")) return;
    const photo = photos.find(({ kind }) => kind === "waiting");
    if (photo !== undefined) void this.#run(photo);
  }

  async #run({ id, file, floor }: TablePhoto): Promise<void> {
    const { measure } = this.#surroundings;
    const stop = new AbortController();
    this.#stops.set(id, stop);
    const photo = { id, file, floor, printed: printedOf(this.#state) ?? 1 };
    // Once it is stopped the photo is put away, or is as it was before.
    const set = (now: () => TablePhoto) => {
      if (!stop.signal.aborted) this.#setPhoto(id, now);
    };
    const onStage = (stage: PhotoStage) => set(() => ({ ...photo, kind: "measuring", stage }));
    onStage("opening");
    const request = { file, printed: photo.printed, floor, step: this.#step };
    try {
      const answer = await measure(request, { signal: stop.signal, onStage });
      if (answer?.kind === "refused") set(() => ({ ...photo, kind: "refused", why: answer.why }));
      if (answer?.kind === "measured" && !stop.signal.aborted) this.#take(photo, answer.found);
    } catch {
      set(() => ({ ...photo, kind: "failed" }));
    }
    if (this.#stops.get(id) === stop) this.#stops.delete(id);
    this.#next();
  }

  #take(
    photo: Pick<TablePhoto, "id" | "file" | "printed" | "floor">,
    { pieces, picture, ...found }: FoundPhoto,
  ): void {
    const { newId, settings } = this.#surroundings;
    const { unit } = settings();
    const shown = pieces.map(({ piece, cutOut }) => ({ piece, cutOut: this.#shown(cutOut) }));
    const taken = Math.max(0, ...this.#past.map(lastNumber));
    const now = withFound(this.#state, { photo: photo.id, unit, pieces: shown, newId, taken });
    // It was measured meanwhile: what she corrects is taken back without it. Before that it was as it was.
    const again = this.#past.findLastIndex(({ photos }) => photos.some((one) => one.photo.id === photo.id));
    this.#past = this.#past.map((before, at) =>
      at <= again ? before : { ...before, ...withAllOf(before, now, photo.id) },
    );
    this.#set(now);
    this.#setPhoto(photo.id, () => ({ ...photo, kind: "measured", found, picture: this.#shown(picture) }));
  }
}

/** The photos with this one as it was: in its place, or back among the others. */
function withPhoto(photos: readonly TablePhoto[], { photo, at }: Placed): readonly TablePhoto[] {
  const place = photos.findIndex(({ id }) => id === photo.id);
  return place < 0 ? photos.toSpliced(at, 0, photo) : photos.with(place, photo);
}

/** Without the pieces of some photos, and the cloths that only these had. */
function without({ pieces, cloths }: Laid, photos: ReadonlySet<string>): Laid {
  const left = pieces.filter(({ photo }) => !photos.has(photo));
  return { pieces: left, cloths: cloths.filter(({ id }) => left.some(({ cloth }) => cloth === id)) };
}

/** With the pieces that lie there now of one photo, and the cloths these are of. */
function withAllOf(before: Laid, now: Laid, photo: string): Laid {
  const pieces = now.pieces.filter((piece) => piece.photo === photo);
  const cloths = now.cloths.filter(
    ({ id }) => pieces.some(({ cloth }) => cloth === id) && before.cloths.every((cloth) => cloth.id !== id),
  );
  return { pieces: [...before.pieces, ...pieces], cloths: [...before.cloths, ...cloths] };
}
