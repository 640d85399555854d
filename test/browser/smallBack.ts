import { createHash } from "node:crypto";
import type { Page } from "@playwright/test";
import type { Style } from "../../src/engine/back/index.ts";
import type { Job } from "../../src/engine/cloth/index.ts";
import { leavesOf, type PlacedLeaf, partnersOf } from "../../src/engine/layout/index.ts";
import { inches } from "../../src/engine/length/index.ts";
import { makePlan, type Plan } from "../../src/engine/plan/index.ts";
import {
  checkProject,
  hashOfJob,
  type KeptPlan,
  lengthAsMeasured,
  newProject,
  type Project,
  readTableRows,
  writePlan,
  writeProject,
} from "../../src/files/index.ts";
import { expect } from "./verso.ts";

// A cushion's back of a few leftovers, dark beside pale and unwashed beside washed.
const leftovers = `kind,width,height,count,fabric,colour,washed
square,5,5,6,clay pot,#b5694b,yes
strip,2 1/2,30,3,ink,#2b3a4f,yes
rectangle,6 1/2,10,2,moss,#6f7d4f,no
block,6 1/2,6 1/2,3,stars,#d9b38c,yes
square,4 1/2,4 1/2,6,milk,#f4efe2,yes
`;

const measure = (count: number) => [lengthAsMeasured(inches(count), "in"), null, null] as const;

/** Pictures of the cloth by the rows' places in the list, from 0, and of the top. */
export type Pictured = { readonly rows?: ReadonlyMap<number, Buffer>; readonly top?: Buffer };

function smallBack(style: Style | null, { rows: cloth = new Map(), top }: Pictured = {}): Project {
  const project = newProject({ title: "Small back", createdAt: 0 });
  const { rows } = readTableRows(new TextEncoder().encode(leftovers), "in");
  return {
    ...project,
    leftovers: rows.map((row, index) => ({
      ...row,
      id: `leftover-${index + 1}`,
      ...pictureIn(cloth.get(index)),
    })),
    topPhoto: top === undefined ? null : { picture: sumOf(top), colours: [] },
    wishes: { ...project.wishes, style },
    size: { ...project.size, topWidths: measure(24), topHeights: measure(28), method: "machine" as const },
  };
}

function pictureIn(picture: Buffer | undefined) {
  return picture === undefined ? {} : { picture: sumOf(picture) };
}

function sumOf(bytes: Buffer): string {
  return createHash("sha256").update(bytes).digest("hex");
}

function jobOf(project: Project): Job {
  const { job } = checkProject(project);
  if (job === null) throw new Error("the small back can be planned");
  return job;
}

const effort = 1000;
const seeds = Array.from({ length: 12 }, (_, index) => index + 1);
const kept = new Map<Style, KeptPlan>();

/** The plan she keeps of the small back, the same on every machine; made once in each process. */
function keptPlanFor(style: Style): KeptPlan {
  const known = kept.get(style);
  if (known !== undefined) return known;
  const job = jobOf(smallBack(style));
  for (const seed of seeds) {
    const plan = makePlan(job, { style, seed, effort });
    if (!canBeTakenInHand(plan, job)) continue;
    const made = { text: writePlan(plan), job: hashOfJob(job), style, seed, effort, keptAt: 0 };
    kept.set(style, made);
    return made;
  }
  throw new Error(`no ${style} of the small back has in it what the tests take in hand`);
}

/** There is milk, and ink; in a cross there are stars too, and all milk can change places with some clay pot. */
function canBeTakenInHand({ layout, style }: Plan, job: Job): boolean {
  const cells = leavesOf(layout, job);
  const of = (fabric: string) =>
    cells.filter(({ node }) => node.kind === "piece" && fabricOf(node.piece, job) === fabric);
  const milk = of("milk");
  if (milk.length === 0 || of("ink").length === 0) return false;
  const pots = new Set(of("clay-pot").map(keyOf));
  const canChange = (cell: PlacedLeaf) =>
    partnersOf(cell, layout, job).some((other) => pots.has(keyOf(other)));
  return style !== "cross" || (of("stars").length > 0 && milk.every(canChange));
}

function keyOf({ path }: PlacedLeaf): string {
  return path.join(" ");
}

function fabricOf(piece: string, { pieces }: Job): string | undefined {
  return pieces.find(({ id }) => id === piece)?.fabric;
}

export const drawing = (page: Page) =>
  page.getByRole("img", { name: /^Drawing of the back seen from behind/ });

/**
 * Opens the small back from its file, at its Plan page, where a plan of `style` is searched for and drawn; null: she has
 * chosen none.
 */
export async function openSmallBack(page: Page, style: Style | null = "cross"): Promise<void> {
  await open(page, smallBack(style));
  await expect(drawing(page)).toBeVisible({ timeout: 30_000 });
}

type Kept = { readonly style?: Style; readonly step?: "plan" | "sew"; readonly pictures?: Pictured };

/**
 * Opens it with a plan that she keeps, at its Plan page or another. It is the same plan on every machine, and nothing
 * about it changes by itself; the other plans are searched for where `test` lets the solver work.
 */
export async function openKeptBack(page: Page, kept: Kept = {}): Promise<void> {
  const { style = "cross", step = "plan", pictures = {} } = kept;
  const [project, plan] = [smallBack(style, pictures), keptPlanFor(style)];
  const wishes = { ...project.wishes, seed: plan.seed };
  await open(page, { ...project, plan, wishes }, step, pictures);
  if (step === "plan") await expect(drawing(page)).toBeVisible();
}

async function open(page: Page, project: Project, step = "plan", pictures: Pictured = {}): Promise<void> {
  const all = [...(pictures.rows ?? new Map()).values(), ...(pictures.top ? [pictures.top] : [])];
  const byId = all.map((picture) => [sumOf(picture), new Uint8Array(picture)] as const);
  await page.goto("./");
  await page.locator("input[type=file]").setInputFiles({
    name: "small.verso",
    mimeType: "application/zip",
    buffer: Buffer.from(writeProject(project, 0, new Map(byId))),
  });
  await page.waitForURL(/#\/[^/]+\/[a-z]+$/);
  await page.goto(page.url().replace(/[a-z]+$/, step));
}

/** Opens it without a plan and stops the search: what is drawn is whatever was found until then. */
export async function openStoppedBack(page: Page, style: Style = "cross"): Promise<void> {
  await openSmallBack(page, style);
  await page.getByRole("button", { name: "Stop here" }).click();
  await expect(page.getByText("Stopped. This is the best so far.")).toBeVisible();
}

/** Until the plans are offered among which she can choose. */
export async function offered(page: Page): Promise<void> {
  await expect(page.getByText("Looking for plans that differ…")).toBeHidden({ timeout: 90_000 });
}

/** Until nothing better is looked for. */
export async function settled(page: Page): Promise<void> {
  await expect(page.getByText("This is the best that was found.")).toBeVisible({ timeout: 60_000 });
}
