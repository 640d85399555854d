import type { Time } from "../engine/cloth/index.ts";
import type { Result } from "../engine/length/index.ts";
import type {
  HeapFacts,
  KeptPlan,
  Leftover,
  NewLeftover,
  Pictures,
  PlainCloth,
  Project,
  ProjectProblem,
  ProjectSettings,
  ProjectSize,
  RoughStock,
  TopPhoto,
  Wishes,
} from "../files/index.ts";

/**
 * The projects on this device. Nothing here throws or rejects for what a device, another tab or a file can do:
 * a store that cannot keep anything still works in memory and says so in every project's `saving`.
 *
 * For React: `useSyncExternalStore(store.subscribe, store.state)` and the same with a project; a state is the same
 * object until something in it changes, and unchanged parts of a project keep their identity.
 */
export type Store = {
  state(): StoreState;
  subscribe(listener: () => void): () => void;
  /** A new project, kept before it is given back. `from`: what it starts with, such as the sample. */
  create(from?: Partial<Project>, pictures?: Pictures): Promise<ProjectHandle>;
  /**
   * `null`: there is no such project (any more), or, where `trouble` says so, storage could not be read although it
   * was tried for some seconds. Opened twice in one tab it is the same handle.
   */
  open(id: string): Promise<ProjectHandle | null>;
  /** A copy under a new title, with its plan and ticks. `null`: no such project. */
  duplicate(id: string, title: string): Promise<ProjectHandle | null>;
  /** Away from the list, and back again with `restore` for thirty days. */
  remove(id: string): Promise<boolean>;
  restore(id: string): Promise<boolean>;
  /** A `.verso` file becomes a new project, or nothing changes. */
  importFile(bytes: Uint8Array): Promise<Result<ProjectHandle, readonly ProjectProblem[]>>;
  /** The project as a `.verso` file, unsaved edits included. `null`: no such project. */
  exportFile(id: string): Promise<Uint8Array | null>;
  /**
   * What earlier quilts left over, independent of any back: rows like those of a heap, kept with the same care. It is
   * no back and stands in no list.
   */
  shelf(): Promise<ProjectHandle>;
  /** Asks the browser not to clear this device's projects by itself. */
  askToPersist(): Promise<boolean>;
  /** Asks the browser anew how much room is taken and whether it keeps it. */
  lookAtDevice(): Promise<void>;
  /** Every project, version and deleted project on this device. Other tabs close theirs. */
  wipeAll(): Promise<boolean>;
  close(): Promise<void>;
};

export type StoreState = {
  /** `null`: still being read, or, with a `trouble`, not readable yet; it is tried again. The last changed first. */
  readonly projects: readonly ProjectSummary[] | null;
  readonly removed: readonly ProjectSummary[];
  /** What keeps storage from being read or written; `null`: it works. */
  readonly trouble: SavingTrouble | null;
  /** Whether the browser promised to keep the data; `null`: not known yet. */
  readonly persisted: boolean | null;
  /** In bytes; `null`: the browser doesn't say. */
  readonly space: { readonly used: number; readonly quota: number } | null;
};

export type ProjectSummary = {
  readonly id: string;
  readonly title: string;
  readonly sample: boolean;
  /** Milliseconds since 1970, UTC. */
  readonly createdAt: number;
  readonly changedAt: number;
  readonly removedAt: number | null;
  /** Rows of the heap. */
  readonly leftovers: number;
  readonly planned: boolean;
};

export const savingTroubles = [
  /** The device has no room left for it. */
  "full",
  /** The browser keeps nothing here: a private window, or storage turned off. */
  "no-storage",
  /** A later Verso in another tab changed the store; this tab must be loaded anew. */
  "newer-tab",
  /** Anything else. */
  "failed",
] as const;
export type SavingTrouble = (typeof savingTroubles)[number];

export type Saving =
  | { readonly kind: "steady" }
  | { readonly kind: "saving" }
  /** It is tried again by itself; `saveAgain` tries at once. The way out: a file (`exportFile`). */
  | { readonly kind: "not-saved"; readonly why: SavingTrouble };

/** A part of what was stored that could not be used. Everything else is there; nothing stored was overwritten. */
export type StoredProblem =
  /** A record whose checksum does not fit. `at`: when it was written, where that is known. */
  | { readonly kind: "damaged-record"; readonly at: number | null }
  /** Edits that follow upon a damaged one. */
  | { readonly kind: "edits-missing" }
  /** A value no screen could have made; its place shows the usual one instead. */
  | { readonly kind: "unusable-part"; readonly problem: ProjectProblem };

export type ProjectState = {
  readonly project: Project;
  readonly saving: Saving;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Made by a later Verso: it can be looked at and exported, edits do nothing. */
  readonly readOnly: boolean;
  /** Removed in another tab, or wiped; edits do nothing. */
  readonly gone: boolean;
  readonly problems: readonly StoredProblem[];
};

/** A cell set to `null` is left blank. */
export type LeftoverChange = {
  readonly line?: string;
  readonly cells?: { readonly [C in keyof Leftover["cells"]]?: Leftover["cells"][C] | null };
  readonly others?: Readonly<Record<string, string>>;
};
type WithoutId<T> = T extends unknown ? Omit<T, "id"> : never;
export type NewRoughStock = WithoutId<RoughStock>;

/**
 * One open project. Each edit is one step of undo and one write; edits of one and the same field within a second
 * are one step of undo. An edit shows in `state()` at once and is kept when `saving` is `steady` again.
 */
export type ProjectHandle = ProjectEdits & {
  readonly id: string;
  state(): ProjectState;
  subscribe(listener: () => void): () => void;
  /** Her own edits since she opened it; never those of another tab. */
  undo(): void;
  redo(): void;
  /** Resolves when all edits up to now are kept, and in the copy beside them too (true), or at the next failure (false). */
  saved(): Promise<boolean>;
  saveAgain(): void;
  exportFile(): Uint8Array;
  /**
   * Keeps pictures (JPEG or PNG) beside the project, with the next edit. Gives what each is known by, for
   * `Leftover.picture`; `null`: this one can't be kept.
   */
  addPictures(pictures: readonly Uint8Array[]): Promise<readonly (string | null)[]>;
  /** Pictures that are known by these names already, with cloth that moves from elsewhere. */
  keepPictures(pictures: Pictures): void;
  /** A picture by what it is known by; `null`: it isn't here. */
  picture(id: string): Uint8Array | null;
  versions(): Promise<readonly ProjectVersion[]>;
  /** `plan`: kept in it, with nothing ticked, in place of the one that she keeps now. */
  saveNamedVersion(name: string, plan?: KeptPlan): Promise<boolean>;
  /** What a version holds, to look at. `null`: it can't be read. */
  readVersion(id: string): Promise<Project | null>;
  /** As an edit of its own, which can be undone; what is there now is kept as a version first. */
  goBackTo(id: string): Promise<boolean>;
  /** Gives what puts it back as it was (false: it can't); `null`: it could not be removed. */
  removeVersion(id: string): Promise<(() => Promise<boolean>) | null>;
  /** Keeps what is still unsaved if that can be done, and lets go of it. */
  close(): Promise<void>;
};

export type ProjectEdits = {
  setTitle(title: string): void;
  setSettings(change: Partial<ProjectSettings>): void;
  setSize(change: Partial<ProjectSize>): void;
  /** Its picture is kept before (`addPictures`). `null`: there is none any more. */
  setTopPhoto(topPhoto: TopPhoto | null): void;
  /** Photos of leftovers, kept before (`addPictures`); at most `mostPhotos`. */
  setPhotos(photos: readonly string[]): void;
  setTime(time: Time): void;
  setPlain(change: Partial<PlainCloth>): void;
  setHeap(change: Partial<HeapFacts>): void;
  setWishes(change: Partial<Wishes>): void;
  /** At the end, or before another row. Gives the new ids in order. */
  addRows(rows: readonly NewLeftover[], before?: string): readonly string[];
  changeRow(id: string, change: LeftoverChange): void;
  /** One edit for a whole pile. */
  changeRows(ids: readonly string[], change: LeftoverChange): void;
  removeRows(ids: readonly string[]): void;
  /** `null`: to the end. */
  moveRow(id: string, before: string | null): void;
  addRough(stock: NewRoughStock): string;
  changeRough(id: string, stock: NewRoughStock): void;
  removeRough(id: string): void;
  /** Another plan takes the ticks of the one before with it. */
  keepPlan(plan: KeptPlan | null): void;
  tick(step: string, done: boolean): void;
};

export type ProjectVersion = {
  readonly id: string;
  /** `null`: kept by itself. */
  readonly name: string | null;
  /** Milliseconds since 1970, UTC. */
  readonly at: number;
  readonly leftovers: number;
  readonly planned: boolean;
};

/** What the store takes from outside, so that a test may give its own. */
export type StoreSurroundings = {
  readonly clock: () => number;
  /** A name no one else has: `crypto.randomUUID`. */
  readonly newId: () => string;
  /** Titles of new projects are words, and words come from outside. */
  readonly titleOfNew: string;
  readonly storage: IDBFactory | null;
  /** What the browser says of the room it gives; `null`: nothing. */
  readonly device:
    | (Pick<StorageManager, "persist" | "persisted" | "estimate"> &
        Partial<Pick<StorageManager, "getDirectory">>)
    | null;
  readonly databaseName?: string;
};
