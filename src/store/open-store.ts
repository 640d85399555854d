import { err, ok } from "../engine/length/index.ts";
import { newProject, type Pictures, type Project, readProjectFile } from "../files/index.ts";
import { Copies } from "./copies.ts";
import { Connection } from "./database.ts";
import { otherTabs, type Tabs } from "./messages.ts";
import { OpenProject, type ProjectSurroundings } from "./open-project.ts";
import { listProjects, purge, setRemoved, wipe } from "./projects-table.ts";
import { putBackLost } from "./put-back.ts";
import type {
  ProjectHandle,
  ProjectSummary,
  SavingTrouble,
  Store,
  StoreState,
  StoreSurroundings,
} from "./types.ts";

/** Opens the projects of this device. It is there at once; the list comes as soon as it is read. */
export function openStore(surroundings: StoreSurroundings): Store {
  return new ProjectsOnDevice(surroundings).store;
}

type Opened = { readonly project: OpenProject; readonly handle: ProjectHandle; users: number };

class ProjectsOnDevice {
  readonly store: Store;
  readonly #surroundings: StoreSurroundings;
  readonly #connection: Connection;
  readonly #copies: Copies;
  /** Before it is settled nobody may say that a project isn't there. */
  #puttingBack: Promise<void> | null = null;
  readonly #tabs: Tabs;
  readonly #open = new Map<string, Opened>();
  readonly #opening = new Map<string, Promise<Opened | null>>();
  readonly #listeners = new Set<() => void>();
  #listed: readonly ProjectSummary[] | null = null;
  #trouble: SavingTrouble | null = null;
  #device: Pick<StoreState, "persisted" | "space"> = { persisted: null, space: null };
  #state: StoreState | null = null;
  #isClosed = false;
  #shelfHeld: Promise<ProjectHandle | null> = Promise.resolve(null);
  #stopLooking: () => void = () => {};
  #failures = 0;
  #nextLook: ReturnType<typeof setTimeout> | undefined;

  constructor(surroundings: StoreSurroundings) {
    const { storage, device, databaseName = "verso" } = surroundings;
    const folder = device?.getDirectory === undefined ? null : () => folderOf(device);
    this.#surroundings = surroundings;
    this.#connection = new Connection(storage, databaseName);
    this.#copies = new Copies(folder, databaseName, surroundings.newId());
    this.#tabs = otherTabs(databaseName, (message) => {
      if (message.kind === "written") void this.#open.get(message.project)?.project.catchUp();
      void this.#readList();
    });
    this.store = this.#makeStore();
    this.#stopLooking = whenLookedAt(() => this.#lookAgain());
    void this.#begin();
  }

  #makeStore(): Store {
    return {
      state: () => {
        this.#state ??= this.#now();
        return this.#state;
      },
      subscribe: (listener) => {
        this.#listeners.add(listener);
        return () => this.#listeners.delete(listener);
      },
      create: (from, pictures) => this.#create(from ?? {}, pictures),
      open: async (id) => (await this.#use(id))?.handle ?? null,
      duplicate: (id, title) => this.#duplicate(id, title),
      remove: (id) => this.#remove(id),
      restore: async (id) => hasAny(await this.#change(() => setRemoved(this.#connection, id, null))),
      importFile: async (bytes) => {
        const read = readProjectFile(bytes);
        return read.ok ? ok(await this.#create(read.value.project, read.value.pictures)) : err(read.error);
      },
      exportFile: (id) => this.#with(id, (project) => project.exportFile()),
      shelf: () => this.#shelf(),
      askToPersist: () => this.#askToPersist(),
      lookAtDevice: () => this.#askDevice(),
      wipeAll: () => this.#wipeAll(),
      close: () => this.#close(),
    };
  }

  async #begin(): Promise<void> {
    const longAgo = this.#surroundings.clock() - keptAfterRemoval;
    await purge(this.#connection, longAgo, (id) => this.#copies.removeProject(id)).catch(() => {});
    await this.#readList();
    await this.#askDevice();
  }

  // ---- Projects

  async #create(
    from: Partial<Project>,
    pictures: Pictures = new Map(),
    id: string = this.#surroundings.newId(),
  ): Promise<ProjectHandle> {
    const { clock, titleOfNew } = this.#surroundings;
    const project = { ...newProject({ title: titleOfNew, createdAt: clock() }), ...from };
    const open = OpenProject.create(id, { project, pictures }, this.#around());
    const opened = this.#enter(open);
    opened.users++;
    await open.kept();
    this.#tabs.tell({ kind: "list" });
    await this.#readList();
    return opened.handle;
  }

  async #duplicate(id: string, title: string): Promise<ProjectHandle | null> {
    const found = await this.#with(id, ({ state: { project }, pictures }) => ({ project, pictures }));
    if (found === null) return null;
    const copy = { ...found.project, title, sample: false, createdAt: this.#surroundings.clock() };
    return await this.#create(copy, found.pictures);
  }

  /** Opened once and held. After everything was deleted there is a new one, empty. */
  async #shelf(): Promise<ProjectHandle> {
    const held = await this.#shelfHeld;
    if (held !== null && !held.state().gone) return held;
    const opening = this.#use(shelfId).then(
      (opened) => opened?.handle ?? this.#create({ title: "" }, new Map(), shelfId),
    );
    this.#shelfHeld = opening;
    return await opening;
  }

  /** The open project, opened if need be, and one more who uses it. */
  async #use(id: string): Promise<Opened | null> {
    const opened = this.#open.get(id) ?? (await this.#openOnce(id));
    if (opened !== null) opened.users++;
    return opened;
  }

  #openOnce(id: string): Promise<Opened | null> {
    const opening = this.#opening.get(id) ?? this.#read(id);
    this.#opening.set(id, opening);
    return opening.finally(() => this.#opening.delete(id));
  }

  async #read(id: string): Promise<Opened | null> {
    const open = await this.#readPatiently(id);
    if (open === null) return null;
    const opened = this.#enter(open);
    // What another tab wrote between the reading and now went unheard.
    await open.catchUp();
    return opened;
  }

  /** Just after a hard death of the browser its storage may still be held for a moment. */
  async #readPatiently(id: string): Promise<OpenProject | null> {
    for (const wait of readAgainAfter) {
      try {
        await this.#putBack();
        return await OpenProject.read(id, this.#around());
      } catch (error) {
        const trouble = this.#connection.troubleOf(error);
        this.#turn(trouble);
        if (trouble === "no-storage" || this.#isClosed) return null;
        await new Promise((resolve) => setTimeout(resolve, wait));
      }
    }
    return null;
  }

  #enter(project: OpenProject): Opened {
    const opened = { project, handle: project.handle(), users: 0 };
    this.#open.set(project.id, opened);
    return opened;
  }

  #around(): ProjectSurroundings {
    const { clock, newId } = this.#surroundings;
    return {
      connection: this.#connection,
      copies: this.#copies,
      clock,
      newId,
      onKept: (id) => {
        this.#trouble = null;
        this.#tabs.tell({ kind: "written", project: id });
      },
      onChange: () => this.#publish(),
      onClose: (project) => this.#leave(project),
    };
  }

  async #leave(project: OpenProject): Promise<void> {
    const opened = this.#open.get(project.id);
    if (opened?.project !== project) return;
    opened.users--;
    if (opened.users > 0) return;
    await project.kept();
    // Someone may have opened it again while the last edit was on its way.
    if (opened.users > 0 || this.#open.get(project.id) !== opened) return;
    this.#open.delete(project.id);
    await project.letGo();
    await this.#readList();
  }

  /** What `look` finds in a project, whether it is open or not. */
  async #with<T>(id: string, look: (project: OpenProject) => T): Promise<T | null> {
    const opened = await this.#use(id);
    if (opened === null) return null;
    const found = look(opened.project);
    await this.#leave(opened.project);
    return found;
  }

  async #remove(id: string): Promise<boolean> {
    const opened = this.#open.get(id);
    await opened?.project.kept();
    const now = this.#surroundings.clock();
    const isRemoved = hasAny(await this.#change(() => setRemoved(this.#connection, id, now)));
    if (!isRemoved || opened === undefined) return isRemoved;
    opened.project.leave();
    this.#open.delete(id);
    this.#publish();
    return true;
  }

  async #wipeAll(): Promise<boolean> {
    await this.#copies.removeAll();
    const wiped = await this.#change(() => wipe(this.#connection));
    if (wiped === null) return false;
    for (const { project } of this.#open.values()) project.leave();
    this.#open.clear();
    await this.#copies.removeAll();
    await this.#readList();
    return true;
  }

  /** Changes the list; other tabs hear of it. The ids that changed; `null`: it could not be done. */
  async #change(change: () => Promise<readonly string[]>): Promise<readonly string[] | null> {
    try {
      const changed = await change();
      await this.#readList();
      for (const project of changed) this.#tabs.tell({ kind: "written", project });
      return changed;
    } catch (error) {
      this.#turn(this.#connection.troubleOf(error));
      return null;
    }
  }

  async #close(): Promise<void> {
    this.#isClosed = true;
    this.#stopLooking();
    clearTimeout(this.#nextLook);
    const open = [...this.#open.values()];
    await Promise.all(open.map(({ project }) => project.kept()));
    await Promise.all(open.map(({ project }) => project.letGo()));
    this.#open.clear();
    this.#tabs.close();
    this.#copies.close();
    this.#listeners.clear();
    await this.#connection.close();
  }

  // ---- List

  /** Once, as soon as the database can be read. */
  #putBack(): Promise<void> {
    const puttingBack = this.#puttingBack ?? putBackLost(this.#connection, this.#copies);
    this.#puttingBack = puttingBack;
    puttingBack.catch(() => {
      if (this.#puttingBack === puttingBack) this.#puttingBack = null;
    });
    return puttingBack;
  }

  async #readList(): Promise<void> {
    try {
      await this.#putBack();
      this.#listed = await listProjects(this.#connection);
      this.#failures = 0;
      this.#turn(null);
    } catch (error) {
      this.#couldNotRead(this.#connection.troubleOf(error));
    }
  }

  /** A list that could not be read is not an empty one: it is tried again, ever less often. */
  #couldNotRead(trouble: SavingTrouble): void {
    if (trouble === "no-storage") this.#listed ??= [];
    else if (!this.#isClosed) {
      const wait = readAgainAfter[Math.min(this.#failures++, readAgainAfter.length - 1)];
      clearTimeout(this.#nextLook);
      this.#nextLook = setTimeout(() => void this.#readList(), wait);
    }
    this.#turn(trouble);
  }

  #lookAgain(): void {
    void this.#readList();
    for (const { project } of this.#open.values()) void project.catchUp();
  }

  #now(): StoreState {
    const open = [...this.#open.values()].map(({ project }) => project).filter(isBack);
    const own = new Map(open.map((project) => [project.id, project.summary]));
    const listed = (this.#listed ?? []).filter(isBack);
    const there = listed.map((summary) => own.get(summary.id) ?? summary);
    const known = new Set(listed.map(({ id }) => id));
    const unkept = open
      .filter(({ id, isUnkept }) => isUnkept && !known.has(id))
      .map(({ summary }) => summary);
    const projects = [...there.filter(({ removedAt }) => removedAt === null), ...unkept].sort(
      lastChangedFirst,
    );
    return {
      projects: this.#listed === null ? null : projects,
      removed: listed.filter(({ removedAt }) => removedAt !== null).sort(lastChangedFirst),
      trouble: this.#trouble,
      ...this.#device,
    };
  }

  #turn(trouble: SavingTrouble | null): void {
    this.#trouble = trouble;
    this.#publish();
  }

  #publish(): void {
    this.#state = null;
    for (const listener of [...this.#listeners]) listener();
  }

  // ---- Device

  async #askToPersist(): Promise<boolean> {
    const { device } = this.#surroundings;
    const persisted = (await device?.persist().catch(() => false)) ?? false;
    await this.#askDevice();
    return persisted;
  }

  async #askDevice(): Promise<void> {
    const { device } = this.#surroundings;
    if (device === null) return;
    const persisted = await device.persisted().catch(() => null);
    const { usage, quota } = await device.estimate().catch((): StorageEstimate => ({}));
    const space = usage === undefined || quota === undefined ? null : { used: usage, quota };
    this.#device = { persisted, space };
    this.#publish();
  }
}

async function folderOf(
  device: NonNullable<StoreSurroundings["device"]>,
): Promise<FileSystemDirectoryHandle> {
  if (device.getDirectory === undefined) throw new Error("no file system");
  return await device.getDirectory();
}

function hasAny(changed: readonly string[] | null): boolean {
  return changed !== null && changed.length > 0;
}

/** What earlier quilts left over lies in a document like those of the backs, under a name no back has. */
const shelfId = "shelf";

function isBack({ id, isGone = false }: { readonly id: string; readonly isGone?: boolean }): boolean {
  return id !== shelfId && !isGone;
}

/** In milliseconds. */
const readAgainAfter = [200, 500, 1_000, 2_000, 5_000];

/** Thirty days, in milliseconds. */
const keptAfterRemoval = 30 * 86_400_000;

function lastChangedFirst(a: ProjectSummary, b: ProjectSummary): number {
  return b.changedAt - a.changedAt || (a.id < b.id ? -1 : 1);
}

/** A tab that slept may have missed what the others said. */
function whenLookedAt(look: () => void): () => void {
  if (typeof document === "undefined") return () => {};
  const listener = () => {
    if (document.visibilityState === "visible") look();
  };
  document.addEventListener("visibilitychange", listener);
  addEventListener("pageshow", listener);
  return () => {
    document.removeEventListener("visibilitychange", listener);
    removeEventListener("pageshow", listener);
  };
}
