import * as Y from "yjs";
import type { Saving, SavingTrouble } from "./types.ts";

export type SaverSurroundings = {
  /** Writes durably; resolves with whether the project is still there. Rejects where nothing was written. */
  readonly write: (bytes: Uint8Array) => Promise<boolean>;
  readonly troubleOf: (error: unknown) => SavingTrouble;
  readonly onChange: () => void;
};

/** After a failure: soon, since most pass; then ever less often. Milliseconds. */
const waits = [1_000, 2_000, 5_000, 10_000, 30_000];

/**
 * Keeps edits in their order: one write at a time, what was edited meanwhile goes with the next. A failed write
 * loses nothing; it is tried again by itself, and with every edit.
 */
export class Saver {
  readonly #surroundings: SaverSurroundings;
  #unsaved: readonly Uint8Array[] = [];
  #edits = 0;
  #kept = 0;
  #isWriting = false;
  #failures = 0;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #waiting: readonly { readonly upTo: number; readonly tell: (kept: boolean) => void }[] = [];
  #isGone = false;
  saving: Saving = { kind: "steady" };

  constructor(surroundings: SaverSurroundings) {
    this.#surroundings = surroundings;
  }

  add(update: Uint8Array): void {
    if (this.#isGone) return;
    this.#unsaved = [...this.#unsaved, update];
    this.#edits++;
    if (this.saving.kind === "steady") this.#turn({ kind: "saving" });
    this.tryNow();
  }

  tryNow(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    if (!this.#isWriting && this.#unsaved.length > 0) void this.#writeAll();
  }

  /** True when all edits up to now are kept, false at the next failure. */
  kept(): Promise<boolean> {
    const upTo = this.#edits;
    if (this.#kept >= upTo) return Promise.resolve(true);
    if (this.#isGone) return Promise.resolve(false);
    return new Promise((tell) => {
      this.#waiting = [...this.#waiting, { upTo, tell }];
    });
  }

  /** The project is there no more: nothing can be kept. */
  stop(): void {
    this.#isGone = true;
    this.#unsaved = [];
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    this.#tell(false);
  }

  async #writeAll(): Promise<void> {
    this.#isWriting = true;
    while (this.#unsaved.length > 0) {
      const [batch, upTo] = [this.#unsaved, this.#edits];
      this.#unsaved = [];
      const bytes = together(batch);
      const trouble = await this.#write(bytes);
      if (trouble !== null) {
        // Whoever hears of the failure may try at once, so this must be over by then.
        this.#isWriting = false;
        this.#failed(bytes, trouble);
        return;
      }
      if (this.#isGone) break;
      this.#kept = upTo;
      this.#failures = 0;
      this.#tell(true);
    }
    this.#isWriting = false;
    this.#turn({ kind: "steady" });
  }

  /** `null`: it is kept, or there is nothing left to keep it in. */
  async #write(bytes: Uint8Array): Promise<SavingTrouble | null> {
    try {
      const isThere = await this.#surroundings.write(bytes);
      if (!isThere) this.stop();
      return null;
    } catch (error) {
      return this.#isGone ? null : this.#surroundings.troubleOf(error);
    }
  }

  #failed(bytes: Uint8Array, why: SavingTrouble): void {
    this.#unsaved = [bytes, ...this.#unsaved];
    const wait = waits[Math.min(this.#failures, waits.length - 1)];
    this.#failures++;
    this.#timer = setTimeout(() => this.tryNow(), wait);
    this.#turn({ kind: "not-saved", why });
    this.#tell(false);
  }

  #tell(kept: boolean): void {
    const told = this.#waiting.filter(({ upTo }) => !kept || upTo <= this.#kept);
    this.#waiting = this.#waiting.filter((one) => !told.includes(one));
    for (const { tell } of told) tell(kept);
  }

  #turn(saving: Saving): void {
    this.saving = saving;
    this.#surroundings.onChange();
  }
}

function together(updates: readonly Uint8Array[]): Uint8Array {
  const [first] = updates;
  return updates.length === 1 && first !== undefined ? first : Y.mergeUpdates([...updates]);
}
