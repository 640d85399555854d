import * as v from "valibot";
import { crc32Text } from "../files/index.ts";

/** What a copy is of: a project as a tab last kept it, or a version of it. */
export type Copy = {
  readonly project: string;
  /** The version's id; `null`: the project itself. */
  readonly version: string | null;
  /** A line of the table it would go back to, as JSON. */
  readonly about: unknown;
  readonly bytes: Uint8Array;
};

export type Folder = () => Promise<FileSystemDirectoryHandle>;

const folderName = "verso-copies";
/** A file system that does not answer must not hold up what is already kept. Milliseconds. */
const patience = 20_000;

/**
 * Whole copies of all projects in the browser's file system for this page, beside its database. A browser that was
 * killed may find its database damaged later on, and then deletes all of it; then everything is put back from here.
 * One file per project and tab, replaced as a whole at each write. Nothing here rejects: without copies all works the
 * same, only less safely.
 */
export class Copies {
  readonly #folder: () => Promise<FileSystemDirectoryHandle | null>;
  readonly #tab: string;
  readonly #life: TabLife;

  constructor(root: Folder | null, databaseName: string, tab: string) {
    this.#tab = tab;
    this.#life = liveAs(tab, root === null ? undefined : locksHere());
    let folder: Promise<FileSystemDirectoryHandle | null> | null = null;
    this.#folder = () => {
      folder ??= openFolder(root, `${folderName}-${databaseName}`);
      return folder;
    };
  }

  /** Replaces what this tab has of the same project or version. */
  async write(copy: Copy): Promise<void> {
    await withPatience(async () => {
      await this.#life.begun;
      const folder = await this.#folder();
      const file = await folder?.getFileHandle(this.#nameOf(copy), { create: true });
      const writing = await file?.createWritable();
      await writing?.write(packed(copy));
      await writing?.close();
    });
  }

  /** The projects there are copies of. */
  async projects(): Promise<ReadonlySet<string>> {
    return new Set((await this.#names()).map((name) => projectIn(name)));
  }

  /** All that can be read of a project's copies, of whichever tab. */
  async read(project: string): Promise<readonly Copy[]> {
    const names = (await this.#names()).filter((name) => projectIn(name) === project);
    const copies = await Promise.all(names.map((name) => this.#readFile(name)));
    return copies.filter((copy) => copy !== null);
  }

  /**
   * Copies of the project by tabs that are closed: what is in them is in this tab's by now. Those of open tabs stay,
   * they are written anew at each edit.
   */
  async removeOfClosedTabs(project: string): Promise<void> {
    const open = await withPatience(() => this.#life.openTabs());
    if (open === null) return;
    await this.#remove((name) => projectIn(name) === project && !isOfVersion(name) && !open.has(tabIn(name)));
  }

  async removeVersions(project: string, versions: readonly string[]): Promise<void> {
    const names = new Set(versions.map((version) => this.#nameOf({ project, version })));
    if (names.size > 0) await this.#remove((name) => names.has(name));
  }

  async removeProject(project: string): Promise<void> {
    await this.#remove((name) => projectIn(name) === project);
  }

  async removeAll(): Promise<void> {
    await this.#remove(() => true);
  }

  /** This tab is closed: others may clear up behind it. */
  close(): void {
    this.#life.end();
  }

  #nameOf({ project, version }: Pick<Copy, "project" | "version">): string {
    return version === null
      ? `${encodeURIComponent(project)}~tab~${encodeURIComponent(this.#tab)}`
      : `${encodeURIComponent(project)}~version~${encodeURIComponent(version)}`;
  }

  async #names(): Promise<readonly string[]> {
    const names = await withPatience(async () => {
      const found: string[] = [];
      for await (const name of (await this.#folder())?.keys() ?? []) found.push(name);
      // A write that was broken off leaves a file beside the one it was to replace, and that may be whole.
      return found.filter((name) => /^[^~]+~(tab|version)~[^~]+$/.test(name));
    });
    return names ?? [];
  }

  async #readFile(name: string): Promise<Copy | null> {
    const bytes = await withPatience(async () => {
      const file = await (await this.#folder())?.getFileHandle(name);
      return file === undefined ? null : await (await file.getFile()).arrayBuffer();
    });
    return bytes === null ? null : unpacked(new Uint8Array(bytes));
  }

  async #remove(isMeant: (name: string) => boolean): Promise<void> {
    const folder = await this.#folder();
    const names = (await this.#names()).filter(isMeant);
    await Promise.all(names.map((name) => withPatience(async () => await folder?.removeEntry(name))));
  }
}

type TabLife = {
  /** Settled as soon as other tabs can see that this one is open. */
  readonly begun: Promise<unknown>;
  /** Ids of all open tabs; `null`: the browser can't tell. */
  readonly openTabs: () => Promise<ReadonlySet<string> | null>;
  readonly end: () => void;
};

const lockName = "verso tab ";

/** A tab holds a lock as long as it lives, however it dies. */
function liveAs(tab: string, locks: LockManager | undefined): TabLife {
  if (locks === undefined) return { begun: Promise.resolve(), openTabs: async () => null, end: () => {} };
  let end = () => {};
  const closed = new Promise<void>((resolve) => {
    end = resolve;
  });
  const begun = new Promise<void>((resolve) => {
    const hold = () => {
      resolve();
      return closed;
    };
    locks.request(`${lockName}${tab}`, hold).catch(() => resolve());
  });
  const openTabs = async () => {
    const { held = [] } = await locks.query();
    return new Set(
      held.flatMap(({ name }) => (name?.startsWith(lockName) ? [name.slice(lockName.length)] : [])),
    );
  };
  return { begun, openTabs, end };
}

function locksHere(): LockManager | undefined {
  return typeof navigator === "undefined" ? undefined : navigator.locks;
}

async function openFolder(root: Folder | null, name: string): Promise<FileSystemDirectoryHandle | null> {
  if (root === null) return null;
  return await withPatience(async () => (await root()).getDirectoryHandle(name, { create: true }));
}

function projectIn(name: string): string {
  return decodeURIComponent(name.slice(0, name.indexOf("~")));
}

function tabIn(name: string): string {
  return decodeURIComponent(name.slice(name.lastIndexOf("~") + 1).replace(/[.].*$/, ""));
}

function isOfVersion(name: string): boolean {
  return name.includes("~version~");
}

/** `null`: it failed or took too long. */
async function withPatience<T>(work: () => Promise<T>): Promise<T | null> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const tooLong = new Promise<null>((resolve) => {
    timer = setTimeout(() => resolve(null), patience);
  });
  const done = work().catch(() => null);
  const result = await Promise.race([done, tooLong]);
  clearTimeout(timer);
  return result;
}

/** A line with the checksum of the rest, a line of JSON, the bytes. */
function packed({ project, version, about, bytes }: Copy): Uint8Array<ArrayBuffer> {
  const head = new TextEncoder().encode(`${JSON.stringify({ project, version, about })}\n`);
  const rest = new Uint8Array(head.length + bytes.length);
  rest.set(head);
  rest.set(bytes, head.length);
  const sum = new TextEncoder().encode(`${crc32Text(rest)}\n`);
  const all = new Uint8Array(sum.length + rest.length);
  all.set(sum);
  all.set(rest, sum.length);
  return all;
}

const headSchema = v.object({
  project: v.string(),
  version: v.nullable(v.string()),
  about: v.unknown(),
});

function unpacked(file: Uint8Array): Copy | null {
  const rest = file.subarray(9);
  if (new TextDecoder().decode(file.subarray(0, 9)) !== `${crc32Text(rest)}\n`) return null;
  const end = rest.indexOf(10);
  try {
    const head: unknown = JSON.parse(new TextDecoder().decode(rest.subarray(0, end)));
    return { ...v.parse(headSchema, head), bytes: rest.slice(end + 1) };
  } catch {
    return null;
  }
}
