import { type DBSchema, type IDBPDatabase, type IDBPTransaction, type StoreNames, wrap } from "idb";
import type { ProjectSummary, SavingTrouble } from "./types.ts";

/** One write of one project, or all its writes so far in one. */
export type StoredRecord = {
  readonly project: string;
  /** Counts up per project; the last one always stays, so that no number comes twice. */
  readonly seq: number;
  /** Milliseconds since 1970, UTC. */
  readonly at: number;
  readonly bytes: Uint8Array;
  /** CRC-32 of all of the above. */
  readonly sum: number;
};

export type StoredVersion = {
  readonly project: string;
  readonly id: string;
  readonly name: string | null;
  readonly at: number;
  readonly leftovers: number;
  readonly planned: boolean;
  /** A `.verso` file, which carries its own checksums. */
  readonly bytes: Uint8Array;
};

export type StoredPicture = {
  readonly project: string;
  /** The SHA-256 of its bytes. */
  readonly id: string;
  readonly bytes: Uint8Array;
};

export interface Tables extends DBSchema {
  projects: { key: string; value: ProjectSummary };
  records: { key: [string, number]; value: StoredRecord };
  versions: { key: [string, string]; value: StoredVersion };
  pictures: { key: [string, string]; value: StoredPicture };
}
export type Database = IDBPDatabase<Tables>;
type TableName = StoreNames<Tables>;
export type Writing = IDBPTransaction<Tables, TableName[], "readwrite">;
export type Reading = IDBPTransaction<Tables, TableName[], "readonly">;

const schemaVersion = 2;
export const tableNames: readonly TableName[] = ["projects", "records", "versions", "pictures"];

/** The connection is opened when it is first needed and again after it was lost. */
export class Connection {
  readonly #storage: IDBFactory | null;
  readonly #name: string;
  #database: Promise<Database> | null = null;
  #isOutdated = false;
  #isClosed = false;

  constructor(storage: IDBFactory | null, name: string) {
    this.#storage = storage;
    this.#name = name;
  }

  /** Why it does not work, from what was thrown. */
  troubleOf(error: unknown): SavingTrouble {
    if (this.#isOutdated) return "newer-tab";
    if (this.#storage === null) return "no-storage";
    const name = error instanceof Error ? error.name : "";
    if (name === "QuotaExceededError") return "full";
    if (name === "VersionError") return "newer-tab";
    return name === "SecurityError" ? "no-storage" : "failed";
  }

  /** Runs `work` in one transaction; resolves when it is on the disk. Rejects where it isn't, and then none of it is. */
  async write<T>(tables: readonly TableName[], work: (writing: Writing) => Promise<T>): Promise<T> {
    const database = await this.#open();
    const writing = database.transaction([...tables], "readwrite", { durability: "strict" });
    return await settled(writing, work(writing));
  }

  async read<T>(tables: readonly TableName[], work: (reading: Reading) => Promise<T>): Promise<T> {
    const database = await this.#open();
    const reading = database.transaction([...tables], "readonly");
    return await settled(reading, work(reading));
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    const database = await this.#database?.catch(() => null);
    database?.close();
    this.#database = null;
  }

  #open(): Promise<Database> {
    if (this.#isClosed) return Promise.reject(new Error("The store is closed."));
    const opening = this.#database ?? this.#connect();
    this.#database = opening;
    opening.catch(() => {
      if (this.#database === opening) this.#database = null;
    });
    return opening;
  }

  async #connect(): Promise<Database> {
    if (this.#storage === null) throw new Error("no storage");
    const request = this.#storage.open(this.#name, schemaVersion);
    request.onupgradeneeded = ({ oldVersion }) => createTables(request.result, oldVersion);
    // The library knows the tables only of what it opened itself, and that is always the browser's own storage.
    const database = wrap(await settledRequest(request)) as Database;
    // A later Verso wants to change the tables. Holding on would keep it from starting.
    database.addEventListener("versionchange", () => {
      this.#isOutdated = true;
      database.close();
      this.#database = null;
    });
    database.addEventListener("close", () => {
      this.#database = null;
    });
    return database;
  }
}

function settledRequest(request: IDBOpenDBRequest): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function createTables(database: IDBDatabase, from: number): void {
  if (from < 1) {
    database.createObjectStore("projects", { keyPath: "id" });
    database.createObjectStore("records", { keyPath: ["project", "seq"] });
    database.createObjectStore("versions", { keyPath: ["project", "id"] });
  }
  if (from < 2) database.createObjectStore("pictures", { keyPath: ["project", "id"] });
}

/** The result once the transaction is through. Where the work fails, nothing of it stays. */
async function settled<T>(transaction: Writing | Reading, work: Promise<T>): Promise<T> {
  const [done, result] = await Promise.allSettled([
    transaction.done,
    work.catch((error: unknown) => {
      abort(transaction);
      throw error;
    }),
  ]);
  // A request that failed for lack of room says only that it was aborted; the transaction knows why.
  if (done.status === "rejected" && transaction.error !== null) throw transaction.error;
  if (result.status === "rejected") throw result.reason;
  if (done.status === "rejected") throw done.reason;
  return result.value;
}

function abort(transaction: Writing | Reading): void {
  try {
    transaction.abort();
  } catch {
    // It is over already.
  }
}
