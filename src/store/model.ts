import * as Y from "yjs";
import { type Project, type ProjectProblem, projectVersion } from "../files/index.ts";
import { applyDifference } from "./difference.ts";
import { editsOf, writeWhole } from "./edits.ts";
import { migrateDocument } from "./migrate.ts";
import { ProjectReader } from "./reader.ts";
import { lacksEdits, replay } from "./records.ts";
import { type Roots, rootsOf } from "./roots.ts";
import type { ProjectEdits } from "./types.ts";

export type ModelSurroundings = {
  readonly clock: () => number;
  readonly newId: () => string;
  /** Something to keep: the bytes of one edit. */
  readonly onUpdate: (update: Uint8Array) => void;
  /** `project` or what can be undone changed. */
  readonly onChange: () => void;
};

/** Where a change comes from. What was stored needs no keeping. */
const own = { name: "own" };
const stored = { name: "stored" };
const foundation = { name: "foundation" };

/** Milliseconds: letters typed into one field are one step of undo. */
const sameFieldWithin = 1_000;

export type Otherwise = {
  readonly copies?: readonly Uint8Array[];
  readonly instead?: Project | null;
};

/** A project in memory: its document, what it says, and the edits of this tab. Knows nothing of storage. */
export class ProjectModel {
  readonly edits: ProjectEdits;
  readonly #surroundings: ModelSurroundings;
  readonly #doc = new Y.Doc();
  readonly #roots: Roots = rootsOf(this.#doc);
  readonly #reader: ProjectReader;
  #past: readonly Step[] = [];
  #future: readonly Step[] = [];
  #hasChanged = false;
  #damaged: readonly (number | null)[] = [];
  #canMigrate = true;
  #isFrozen = false;
  #willEdit: () => void = () => {};

  private constructor(surroundings: ModelSurroundings, fill: (model: ProjectModel) => void) {
    this.#surroundings = surroundings;
    fill(this);
    this.#reader = new ProjectReader(this.#roots);
    this.edits = editsOf(
      this.#roots,
      () => this.#reader.project,
      (field, change) => this.#edit(field, change),
      surroundings.newId,
    );
    this.#doc.on("afterTransaction", ({ changed }: Y.Transaction) => {
      if (changed.size === 0) return;
      this.#hasChanged = true;
      this.#reader.refresh();
    });
  }

  /** A new document that says this project; its first update goes to `onUpdate` at once. */
  static of(project: Project, surroundings: ModelSurroundings): ProjectModel {
    return new ProjectModel(surroundings, (model) => {
      model.#tellUpdates();
      model.#found(project);
    });
  }

  /**
   * The document in stored records. Damaged ones are passed over; what is in a copy and not in them is new and goes to
   * `onUpdate`. Where nothing of it can be read, `instead` is what it says.
   */
  static from(
    records: readonly unknown[],
    surroundings: ModelSurroundings,
    { copies = [], instead = null }: Otherwise = {},
  ): ProjectModel {
    return new ProjectModel(surroundings, (model) => {
      model.#replay(records);
      // Not before: all that was stored would be put into bytes once more, for nobody.
      model.#tellUpdates();
      for (const copy of copies) model.#mend(copy);
      if (!model.isReadable && instead !== null) model.#found(instead);
      model.#doc.transact(() => {
        model.#canMigrate = migrateDocument(model.#roots);
      }, foundation);
    });
  }

  /** All of it, as one update. */
  get bytes(): Uint8Array {
    return Y.encodeStateAsUpdate(this.#doc);
  }

  get project(): Project {
    return this.#reader.project;
  }

  get problems(): readonly ProjectProblem[] {
    return this.#reader.problems;
  }

  /** When the records that could not be used were written, where that is known. */
  get damaged(): readonly (number | null)[] {
    return this.#damaged;
  }

  get lacksEdits(): boolean {
    return lacksEdits(this.#doc);
  }

  /** Whether there is a document at all. */
  get isReadable(): boolean {
    return this.#roots.about.has("version");
  }

  get isReadOnly(): boolean {
    return this.#reader.isNewer || !this.#canMigrate;
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  get canRedo(): boolean {
    return this.#future.length > 0;
  }

  /** Is told before each own edit, while `project` is still as it was. */
  beforeEdit(listener: () => void): void {
    this.#willEdit = listener;
  }

  undo(): void {
    while (this.#canEdit && this.canUndo) if (this.#turnBack()) return;
  }

  redo(): void {
    while (this.#canEdit && this.canRedo) if (this.#turnForth()) return;
  }

  /** From now on edits do nothing. */
  freeze(): void {
    this.#isFrozen = true;
  }

  get #canEdit(): boolean {
    return !this.#isFrozen && !this.isReadOnly;
  }

  /** As one edit that can be undone. */
  become(project: Project): void {
    this.#edit(null, () => writeWhole(this.#roots, project));
  }

  /** What another tab stored. */
  take(records: readonly unknown[]): void {
    this.#replay(records);
    this.#surroundings.onChange();
  }

  destroy(): void {
    this.#doc.destroy();
  }

  #tellUpdates(): void {
    this.#doc.on("update", (update: Uint8Array, origin: unknown) => {
      if (origin !== stored) this.#surroundings.onUpdate(update);
    });
  }

  #found(project: Project): void {
    this.#doc.transact(() => {
      this.#roots.about.set("version", projectVersion);
      writeWhole(this.#roots, project);
    }, foundation);
  }

  #mend(copy: Uint8Array): void {
    try {
      Y.applyUpdate(this.#doc, copy, foundation);
    } catch {
      // It is only a copy.
    }
  }

  #replay(records: readonly unknown[]): void {
    const { damaged } = replay(this.#doc, records, stored);
    if (damaged.length > 0) this.#damaged = [...this.#damaged, ...damaged];
  }

  #edit(field: string | null, change: () => void): void {
    if (!this.#canEdit) return;
    this.#willEdit();
    const before = this.project;
    if (!this.#transact(change)) return;
    const step = { before, after: this.project, field, at: this.#surroundings.clock() };
    this.#past = withStep(this.#past, step);
    this.#future = [];
    this.#surroundings.onChange();
  }

  /** False: another tab has since changed all of it, so there was nothing to turn back. */
  #turnBack(): boolean {
    const step = this.#past.at(-1);
    if (step === undefined) return true;
    this.#past = this.#past.slice(0, -1);
    this.#future = [...this.#future, { ...step, field: null }];
    return this.#turn(step.after, step.before);
  }

  #turnForth(): boolean {
    const step = this.#future.at(-1);
    if (step === undefined) return true;
    this.#future = this.#future.slice(0, -1);
    this.#past = [...this.#past, step];
    return this.#turn(step.before, step.after);
  }

  #turn(from: Project, to: Project): boolean {
    const hasTurned = this.#transact(() => applyDifference(this.#roots, from, to));
    this.#surroundings.onChange();
    return hasTurned;
  }

  /** Whether the document changed. */
  #transact(change: () => void): boolean {
    this.#hasChanged = false;
    this.#doc.transact(change, own);
    return this.#hasChanged;
  }
}

/** One own edit: what the project said before and after. What other tabs changed meanwhile is in neither. */
type Step = {
  readonly before: Project;
  readonly after: Project;
  /** `null`: the next edit is a step of its own. */
  readonly field: string | null;
  readonly at: number;
};

const mostSteps = 1_000;

function withStep(steps: readonly Step[], step: Step): readonly Step[] {
  const last = steps.at(-1);
  const goesOn =
    last !== undefined &&
    step.field !== null &&
    last.field === step.field &&
    last.after === step.before &&
    Math.abs(step.at - last.at) < sameFieldWithin;
  return goesOn
    ? [...steps.slice(0, -1), { ...step, before: last.before }]
    : [...steps, step].slice(-mostSteps);
}
