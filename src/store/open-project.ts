import { type Pictures, type Project, type ProjectFile, writeProject } from "../files/index.ts";
import type { Copies, Copy } from "./copies.ts";
import type { Connection } from "./database.ts";
import { type ModelSurroundings, ProjectModel } from "./model.ts";
import { pictureIdOf, readPictures, writePictures } from "./pictures.ts";
import { compact, hasProject, type ReadRecords, readRecords, writeEntry } from "./project-table.ts";
import { isWhole } from "./records.ts";
import { Saver } from "./saver.ts";
import type { ProjectHandle, ProjectState, ProjectSummary, ProjectVersion, StoredProblem } from "./types.ts";
import {
  keepVersion,
  lastReadable,
  listVersions,
  putVersion,
  readVersion,
  removeVersion,
  versionEvery,
} from "./versions.ts";

export type ProjectSurroundings = {
  readonly connection: Connection;
  readonly copies: Copies;
  readonly clock: () => number;
  readonly newId: () => string;
  /** Something of this project was kept, or stopped being so. */
  readonly onKept: (id: string) => void;
  readonly onChange: () => void;
  readonly onClose: (project: OpenProject) => Promise<void>;
};

/** A shorter log opens faster; a compaction reads all of it. */
const compactEvery = 100;

/** What she opened, or edited, is to be drawn first; but no longer than so many milliseconds. */
const drawnWithin = { opened: 3_000, edited: 500 } as const;

function untilIdle(timeout: number): Promise<void> {
  return new Promise((done) => {
    if (typeof requestIdleCallback === "function") requestIdleCallback(() => done(), { timeout });
    else setTimeout(done, 0);
  });
}

type From = {
  readonly pictures: Pictures;
  readonly lastSeq: number;
  readonly changedAt: number;
  readonly model: (around: ModelSurroundings) => ProjectModel;
};

/** A project that is open in this tab, what is kept of it and what is not yet. */
export class OpenProject {
  readonly id: string;
  readonly #surroundings: ProjectSurroundings;
  readonly #model: ProjectModel;
  readonly #saver: Saver;
  readonly #listeners = new Set<() => void>();
  readonly #pictures: Map<string, Uint8Array>;
  /** Those that are not on the disk yet. */
  readonly #unkeptPictures = new Map<string, Uint8Array>();
  #state: ProjectState | null = null;
  #isNew: boolean;
  #isGone = false;
  #isLetGo = false;
  #lastSeq: number;
  #changedAt: number;
  #writes = 0;
  #lastVersionAt: number | null = null;
  #catchingUp: Promise<void> = Promise.resolve();
  #copying: Promise<void> = Promise.resolve();
  #isCopyDue = false;

  private constructor(id: string, surroundings: ProjectSurroundings, from: From) {
    this.id = id;
    this.#surroundings = surroundings;
    this.#changedAt = from.changedAt;
    this.#lastSeq = from.lastSeq;
    this.#isNew = from.lastSeq === 0;
    this.#pictures = new Map(from.pictures);
    if (this.#isNew) for (const [id, bytes] of from.pictures) this.#unkeptPictures.set(id, bytes);
    this.#saver = new Saver({
      write: (bytes) => this.#write(bytes),
      troubleOf: (error) => surroundings.connection.troubleOf(error),
      onChange: () => this.#publish(),
    });
    const unkept: Uint8Array[] = [];
    let keep = (update: Uint8Array): void => {
      unkept.push(update);
    };
    this.#model = from.model({
      clock: surroundings.clock,
      newId: surroundings.newId,
      onUpdate: (update) => keep(update),
      onChange: () => this.#publish(),
    });
    this.#model.beforeEdit(() => this.#keepVersionNow());
    keep = (update) => this.#keep(update);
    for (const update of unkept) keep(update);
  }

  /** A new project, in memory at once; `kept` says when it is on the disk. */
  static create(
    id: string,
    { project, pictures }: ProjectFile,
    surroundings: ProjectSurroundings,
  ): OpenProject {
    const model = (around: ModelSurroundings) => ProjectModel.of(project, around);
    const from = { pictures, lastSeq: 0, changedAt: surroundings.clock(), model };
    return new OpenProject(id, surroundings, from);
  }

  /** `null`: no such project. Rejects where storage can't be read. */
  static async read(id: string, surroundings: ProjectSurroundings): Promise<OpenProject | null> {
    const { connection } = surroundings;
    // Records first: whatever picture they name was there before them.
    const [read, found, pictures]: [ReadRecords, readonly Copy[], Pictures] = await Promise.all([
      readRecords(connection, id, 0),
      surroundings.copies.read(id),
      readPictures(connection, id),
    ]);
    if (read === null) return null;
    const { records, last, changedAt } = read;
    const instead = records.every(isWhole) ? null : await lastReadable(connection, id);
    const copies = found.flatMap(({ version, bytes }) => (version === null ? [bytes] : []));
    const model = (around: ModelSurroundings) => ProjectModel.from(records, around, { copies, instead });
    const from = { pictures, lastSeq: Math.max(last, 1), changedAt, model };
    const open = new OpenProject(id, surroundings, from);
    if (records.length > compactEvery) open.#compact();
    // Until then the copies of the tabs before this one are there.
    open.#copying = untilIdle(drawnWithin.opened);
    void open.#copy().then(() => surroundings.copies.removeOfClosedTabs(id));
    return open;
  }

  get state(): ProjectState {
    this.#state ??= this.#now();
    return this.#state;
  }

  get summary(): ProjectSummary {
    const { project } = this.#model;
    return {
      id: this.id,
      title: project.title,
      sample: project.sample,
      createdAt: project.createdAt,
      changedAt: this.#changedAt,
      removedAt: null,
      leftovers: project.leftovers.length,
      planned: project.plan !== null,
    };
  }

  /** Whether it is not on the disk at all yet. */
  get isUnkept(): boolean {
    return this.#isNew && !this.#isGone;
  }

  get isGone(): boolean {
    return this.#isGone;
  }

  async kept(): Promise<boolean> {
    const isKept = await this.#saver.kept();
    await this.#copying;
    return isKept;
  }

  /** Removed or wiped: it can still be looked at and exported. */
  leave(): void {
    if (this.#isGone) return;
    this.#isGone = true;
    this.#model.freeze();
    this.#saver.stop();
    this.#copying = this.#copying.then(() => this.#removeCopiesOfWiped());
    this.#publish();
  }

  /** Takes in what other tabs stored since. Rejects never; what can't be read now will be next time. */
  catchUp(): Promise<void> {
    this.#catchingUp = this.#catchingUp.then(() => this.#takeNew()).catch(() => {});
    return this.#catchingUp;
  }

  /** What is not kept by now is lost to this tab. */
  async letGo(): Promise<void> {
    this.#isLetGo = true;
    this.#model.freeze();
    this.#saver.stop();
    await Promise.all([this.#catchingUp, this.#copying]);
    this.#listeners.clear();
    this.#model.destroy();
  }

  get pictures(): Pictures {
    return this.#pictures;
  }

  exportFile(): Uint8Array {
    return writeProject(this.#model.project, this.#surroundings.clock(), this.#pictures);
  }

  async #addPictures(pictures: readonly Uint8Array[]): Promise<readonly (string | null)[]> {
    const ids = await Promise.all(pictures.map(pictureIdOf));
    const known = ids.flatMap((id, at) => {
      const bytes = pictures[at];
      return id === null || bytes === undefined ? [] : [[id, bytes] as const];
    });
    this.#keepPictures(new Map(known));
    return ids;
  }

  #keepPictures(pictures: Pictures): void {
    for (const [id, bytes] of pictures) {
      if (this.#pictures.has(id)) continue;
      this.#pictures.set(id, bytes);
      this.#unkeptPictures.set(id, bytes);
    }
  }

  handle(): ProjectHandle {
    const { edits } = this.#model;
    return {
      ...edits,
      id: this.id,
      state: () => this.state,
      subscribe: (listener) => {
        this.#listeners.add(listener);
        return () => this.#listeners.delete(listener);
      },
      undo: () => this.#model.undo(),
      redo: () => this.#model.redo(),
      saved: () => this.kept(),
      saveAgain: () => this.#saver.tryNow(),
      exportFile: () => this.exportFile(),
      addPictures: (pictures) => this.#addPictures(pictures),
      keepPictures: (pictures) => this.#keepPictures(pictures),
      picture: (id) => this.#pictures.get(id) ?? null,
      ...this.#versionsHandle(),
      close: () => this.#surroundings.onClose(this),
    };
  }

  #versionsHandle(): Pick<
    ProjectHandle,
    "versions" | "saveNamedVersion" | "readVersion" | "goBackTo" | "removeVersion"
  > {
    const { connection } = this.#surroundings;
    return {
      versions: () => listVersions(connection, this.id).catch((): readonly ProjectVersion[] => []),
      saveNamedVersion: (name, plan) => {
        const { project } = this.#model;
        const value = plan === undefined ? project : { ...project, plan, ticked: new Set<string>() };
        return this.#keepVersion(name.slice(0, 200), value);
      },
      readVersion: (version) => readVersion(connection, this.id, version).catch(() => null),
      goBackTo: (version) => this.#goBackTo(version),
      removeVersion: async (version) => {
        const removed = await removeVersion(this.#surroundings, this.id, version).catch(() => null);
        if (removed === null) return null;
        return () => putVersion(this.#surroundings, removed).catch(() => false);
      },
    };
  }

  #keep(update: Uint8Array): void {
    this.#changedAt = this.#surroundings.clock();
    this.#saver.add(update);
  }

  async #write(bytes: Uint8Array): Promise<boolean> {
    const { connection, clock, onKept } = this.#surroundings;
    // Before the rows that name them: where there is no room for a picture, the edit is not kept either, and says so.
    const pictures = new Map(this.#unkeptPictures);
    await writePictures(connection, this.id, pictures);
    for (const id of pictures.keys()) this.#unkeptPictures.delete(id);
    const entry = { bytes, at: clock(), summary: this.summary, isFirst: this.#isNew };
    const seq = await writeEntry(connection, entry);
    if (seq === null) {
      this.leave();
      return false;
    }
    this.#isNew = false;
    // The next edit doesn't wait for it.
    void this.#copy();
    // Another tab may have written in between; its edits are still to be taken in.
    if (seq === this.#lastSeq + 1) this.#lastSeq = seq;
    else void this.catchUp();
    this.#writes++;
    if (this.#writes % compactEvery === 0) this.#compact();
    onKept(this.id);
    return true;
  }

  /** One after the other, each with all that is known by then; one that hasn't begun serves all who ask. */
  #copy(): Promise<void> {
    if (this.#isCopyDue) return this.#copying;
    this.#isCopyDue = true;
    const { copies } = this.#surroundings;
    this.#copying = this.#copying.then(async () => {
      // All of a large back is put into bytes: not in the moment in which her next press may come.
      await untilIdle(drawnWithin.edited);
      this.#isCopyDue = false;
      if (this.#isGone || this.#isLetGo) return;
      const { bytes } = this.#model;
      await copies.write({ project: this.id, version: null, about: this.summary, bytes });
      if (this.#isGone) await this.#removeCopiesOfWiped();
    });
    return this.#copying;
  }

  /** What was wiped may not come back. What was only removed may. */
  async #removeCopiesOfWiped(): Promise<void> {
    const { connection, copies } = this.#surroundings;
    const isThere = await hasProject(connection, this.id).catch(() => true);
    if (!isThere) await copies.removeProject(this.id);
  }

  /** A log that stays long costs a moment on the next opening and nothing else. */
  #compact(): void {
    compact(this.#surroundings.connection, this.id, this.#surroundings.clock()).catch(() => {});
  }

  async #takeNew(): Promise<void> {
    if (this.#isNew || this.#isGone || this.#isLetGo) return;
    const read = await readRecords(this.#surroundings.connection, this.id, this.#lastSeq);
    if (read === null) {
      this.leave();
      return;
    }
    this.#lastSeq = read.last;
    this.#changedAt = Math.max(this.#changedAt, read.changedAt);
    if (read.records.length === 0) return;
    const pictures = await readPictures(this.#surroundings.connection, this.id);
    for (const [id, bytes] of pictures) this.#pictures.set(id, bytes);
    this.#model.take(read.records);
    void this.#copy();
    this.#publish();
  }

  /** What was there before she began, and every ten minutes while she edits. */
  #keepVersionNow(): void {
    const at = this.#surroundings.clock();
    if (this.#lastVersionAt !== null && at - this.#lastVersionAt < versionEvery) return;
    this.#lastVersionAt = at;
    const { project } = this.#model;
    if (project.leftovers.length === 0 && project.plan === null) return;
    // Packing it would hold up the letter she types.
    setTimeout(() => void this.#keepVersion(null, project), 0);
  }

  async #keepVersion(name: string | null, value: Project): Promise<boolean> {
    const { clock, newId } = this.#surroundings;
    const version = { project: this.id, id: newId(), name, at: clock(), value };
    return await keepVersion(this.#surroundings, version).catch(() => false);
  }

  async #goBackTo(version: string): Promise<boolean> {
    const { connection } = this.#surroundings;
    const project = await readVersion(connection, this.id, version).catch(() => null);
    if (project === null || this.#isGone || this.#model.isReadOnly) return false;
    await this.#keepVersion(null, this.#model.project);
    this.#model.become(project);
    return true;
  }

  #now(): ProjectState {
    const model = this.#model;
    const canEdit = !this.#isGone && !model.isReadOnly;
    return {
      project: model.project,
      saving: this.#saver.saving,
      canUndo: canEdit && model.canUndo,
      canRedo: canEdit && model.canRedo,
      readOnly: model.isReadOnly,
      gone: this.#isGone,
      problems: this.#problems(),
    };
  }

  #problems(): readonly StoredProblem[] {
    const { damaged, lacksEdits, problems } = this.#model;
    return [
      ...damaged.map((at): StoredProblem => ({ kind: "damaged-record", at })),
      ...(lacksEdits ? [{ kind: "edits-missing" } as const] : []),
      ...problems.map((problem): StoredProblem => ({ kind: "unusable-part", problem })),
    ];
  }

  #publish(): void {
    this.#state = null;
    for (const listener of [...this.#listeners]) listener();
    this.#surroundings.onChange();
  }
}
