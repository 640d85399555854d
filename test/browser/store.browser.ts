import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { type Browser, type BrowserContext, chromium, type Page } from "@playwright/test";
import { findTestBrowser, noBrowser } from "../../scripts/browser.mjs";
import { testAlone } from "./alone.ts";
import { expect } from "./verso.ts";

const test = testAlone("store");

/** Browsers that live and what they write to, so that neither outlives a test that fails. */
const living = new Set<ChildProcess>();
const profiles: string[] = [];

const rounds = Number(process.env.VERSO_KILLS ?? 20);

test(`killed ${rounds} times at any moment, every edit that was said to be kept is there, whole`, async ({
  alone,
}) => {
  test.setTimeout(60_000 + rounds * 10_000);
  const profile = mkdtempSync(join(tmpdir(), "verso-killed-"));
  profiles.push(profile);
  const written: Round[] = [];
  for (let round = 0; round < rounds; round++) {
    written.push(await untilKilled(profile, alone.address, { round, before: written.at(-1) }));
  }
  const last = await BrowserToKill.start(profile, alone.address);
  // The older ones too: what was safe once stays so, whatever was killed later.
  for (const round of written) await expectKept(last.page, round);
  await last.kill();
  const edits = written.reduce((sum, { kept }) => sum + kept.size, 0);
  expect(edits, "edits kept in all").toBeGreaterThan(rounds);
  test.info().annotations.push({ type: "kept", description: `${edits} edits in ${rounds} rounds` });
});

test("where the browser finds its database damaged and deletes it, everything is put back", async ({
  alone,
}) => {
  const profile = mkdtempSync(join(tmpdir(), "verso-killed-"));
  profiles.push(profile);
  const round = await untilKilled(profile, alone.address, { round: 0, before: undefined });
  spoilDatabase(profile);
  const browser = await BrowserToKill.start(profile, alone.address);
  await expectKept(browser.page, round);
  await browser.kill();
  expect(round.kept.size, "edits kept").toBeGreaterThan(0);
  expect(wasDeleted(profile), "the browser deleted its database").toBe(true);
});

/** The beginning of what was written last: so a record looks that was broken off, once more is written behind it. */
function spoilDatabase(profile: string): void {
  const folder = databaseIn(profile);
  for (const name of readdirSync(folder).filter((file) => file.endsWith(".log"))) {
    const bytes = readFileSync(join(folder, name));
    bytes[0] = (bytes[0] ?? 0) ^ 0xff;
    writeFileSync(join(folder, name), bytes);
  }
}

/** The browser's own account of how it last came to its database. */
function wasDeleted(profile: string): boolean {
  return readFileSync(join(databaseIn(profile), "LOG"), "utf8").includes("since it was missing");
}

function databaseIn(profile: string): string {
  const folder = join(profile, "Default", "IndexedDB");
  const [name = ""] = readdirSync(folder).filter((one) => one.endsWith(".leveldb"));
  return join(folder, name);
}

// Not in the test itself: what runs out of time never comes to its end.
test.afterEach(async () => {
  await Promise.all([...living].map(ended));
  for (const profile of profiles.splice(0)) rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
});

/** `one 17`: the edits of a tab that were said to be kept, and those whose rows were taken away again. */
type Round = { readonly id: string; readonly kept: ReadonlySet<string>; readonly gone: ReadonlySet<string> };

/** Looks at what the last round left, then writes from two tabs at once until the browser is killed. */
async function untilKilled(
  profile: string,
  address: string,
  { round, before }: { readonly round: number; readonly before: Round | undefined },
): Promise<Round> {
  const browser = await BrowserToKill.start(profile, address);
  if (before !== undefined) await expectKept(browser.page, before);
  const id = await browser.page.evaluate((title) => window.store.create(title), `Round ${round}`);
  const said = { kept: new Set<string>(), gone: new Set<string>() };
  const other = await browser.anotherTab();
  for (const [tab, page] of [["one", browser.page] as const, ["other", other] as const]) {
    page.on("console", (message) => {
      const [of, word, name, edit] = message.text().split(" ");
      if (of === id && (word === "kept" || word === "gone")) said[word].add(`${name} ${edit}`);
    });
    // It never ends by itself, and dies with the browser.
    page.evaluate(([of, name]) => window.store.write(of, name), [id, tab] as const).catch(() => {});
  }
  await expect.poll(() => said.kept.size, { intervals: [10] }).toBeGreaterThan(0);
  await wait(Math.random() * 900);
  await browser.kill();
  return { id, kept: new Set(said.kept), gone: new Set(said.gone) };
}

async function expectKept(page: Page, { id, kept, gone }: Round): Promise<void> {
  const { lines, problems } = await page.evaluate((project) => window.store.lines(project), id);
  expect(problems).toEqual([]);
  const there = new Set(lines);
  expect(lines, "no row twice").toHaveLength(there.size);
  const torn = lines.filter((line) => !there.has(otherHalf(line)));
  expect(torn, "edits of which half is there").toEqual([]);
  const lost = [...kept].filter((edit) => !there.has(`${edit} left`) && !mayBeGone(edit));
  expect(lost, "edits that were kept and are lost").toEqual([]);
  const back = [...gone].filter((edit) => there.has(`${edit} left`));
  expect(back, "rows that were taken away and are back").toEqual([]);
}

function otherHalf(line: string): string {
  return line.endsWith("left") ? line.replace("left", "right") : line.replace("right", "left");
}

/** Its removal may be kept although the browser was killed before it could say so. */
function mayBeGone(edit: string): boolean {
  return edit.endsWith("4");
}

/** A browser with a profile that outlives it. */
class BrowserToKill {
  readonly page: Page;
  readonly #process: ChildProcess;
  readonly #browser: Browser;
  readonly #address: string;

  private constructor(process: ChildProcess, browser: Browser, page: Page, address: string) {
    this.#process = process;
    this.#browser = browser;
    this.page = page;
    this.#address = address;
  }

  /** Now and then a browser that died hard comes up and takes no connection; then another one is started. */
  static async start(profile: string, address: string): Promise<BrowserToKill> {
    for (let attempt = 0; attempt < 4; attempt++) {
      const process = await started(profile);
      const found = await opened(profile, address);
      if (found !== null) return new BrowserToKill(process, found.browser, found.page, address);
      await ended(process);
    }
    throw new Error("the browser does not start");
  }

  async anotherTab(): Promise<Page> {
    return await newPage(this.page.context(), this.#address);
  }

  async kill(): Promise<void> {
    await ended(this.#process);
    await this.#browser.close().catch(() => {});
  }
}

async function started(profile: string): Promise<ChildProcess> {
  const path = await findTestBrowser();
  if (path === undefined) throw new Error(noBrowser);
  rmSync(portFileIn(profile), { force: true });
  const child = spawn(path, [...flags, `--user-data-dir=${profile}`], { stdio: "ignore", detached: true });
  living.add(child);
  child.once("exit", () => living.delete(child));
  return child;
}

/** All processes of a browser at once, as when the battery is taken out. */
async function ended(child: ChildProcess): Promise<void> {
  if (child.pid === undefined || !living.has(child)) return;
  const end = new Promise((resolve) => child.once("exit", resolve));
  process.kill(-child.pid, "SIGKILL");
  await end;
}

/** Its first page; `null`: it does not answer. */
async function opened(profile: string, address: string): Promise<{ browser: Browser; page: Page } | null> {
  try {
    const port = await portIn(portFileIn(profile));
    const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`, { timeout: 15_000 });
    const [context] = browser.contexts();
    return context === undefined ? null : { browser, page: await newPage(context, address) };
  } catch {
    return null;
  }
}

async function newPage(context: BrowserContext, address: string): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  await page.goto(address);
  return page;
}

function portFileIn(profile: string): string {
  return join(profile, "DevToolsActivePort");
}

async function portIn(file: string): Promise<string> {
  for (let attempt = 0; attempt < 400; attempt++) {
    const [port] = existsSync(file) ? readFileSync(file, "utf8").split("\n") : [];
    if (port !== undefined && port !== "") return port;
    await wait(50);
  }
  throw new Error("the browser names no port");
}

const flags = [
  "--headless",
  ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // Two tabs are written in at once; neither may sleep because the other is in front.
  "--disable-backgrounding-occluded-windows",
  "--disable-renderer-backgrounding",
  "--remote-debugging-port=0",
];

test("where there is no room left, it is said, nothing earlier is lost and a file can be saved", async ({
  page,
  alone,
}) => {
  const session = await page.context().newCDPSession(page);
  const { origin } = new URL(alone.address);
  // Before the first write: a browser remembers for a while how much room there was.
  await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 3_000_000 });
  await page.goto(alone.address);
  const id = await page.evaluate(() => window.store.create("Full"));

  const full = await page.evaluate((project) => window.store.fill(project), id);
  expect(full).toMatchObject({ why: "full" });
  test.info().annotations.push({ type: "said after", description: `${Math.round(full.after)} ms` });
  expect(full.kept).toBeGreaterThan(5);
  const exported = await page.evaluate((project) => window.store.exported(project), id);
  expect(exported).toEqual(Array.from({ length: full.kept + 1 }, (_, edit) => `filler ${edit}`));

  const other = await page.context().newPage();
  await other.goto(alone.address);
  const seen = await other.evaluate((project) => window.store.lines(project), id);
  expect(seen.problems).toEqual([]);
  expect(seen.lines).toEqual(Array.from({ length: full.kept }, (_, edit) => `filler ${edit}`));

  await session.send("Storage.overrideQuotaForOrigin", { origin });
  expect(await page.evaluate((project) => window.store.saveAgain(project), id)).toBe(true);
  const all = await other.evaluate((project) => window.store.lines(project), id);
  expect(all.lines).toHaveLength(full.kept + 1);
});
