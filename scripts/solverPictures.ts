// Draws the pictures in docs/solver from a search as it runs: npm run pictures:solver
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { denseHeaps, denseTable } from "../bench/heaps.ts";
import { denseJob } from "../bench/job.ts";
import { Cooling } from "../src/engine/layout/cooling.ts";
import { type Search, startSearch } from "../src/engine/layout/search.ts";
import { stockOf } from "../src/engine/layout/stock.ts";
import type { Twig } from "../src/engine/layout/twig.ts";
import { onTheRuler } from "../src/engine/plan/onTheRuler.ts";

type Cell = { readonly x: number; readonly y: number; readonly width: number; readonly height: number } & {
  /** Which leftover; null is plain cloth. */
  readonly lot: number | null;
};

const folder = fileURLToPath(new URL("../docs/solver", import.meta.url));
const pixels = 0.6;
const margin = 12;
const moves = [0, 100, 1000, 20_000];

mkdirSync(folder, { recursive: true });
drawStages();
drawMove();
drawRounds();

function begin(): Search {
  const heap = denseHeaps([1]).find(({ name }) => name === "n60_r1_s1");
  if (heap === undefined) throw new Error("the heap of 60 is missing");
  const job = onTheRuler(denseJob(heap.back, denseTable(heap.name, "cut")));
  const side = (length: number) => (length - 2 * job.seam) / job.step;
  const space = { width: side(job.back.width), height: side(job.back.height), allows: () => true };
  return startSearch(stockOf(job), [space], { seed: 3, effort: 1e6, mostLeaves: 1e6 });
}

function drawStages(): void {
  const search = begin();
  const parts = moves.map((until, at) => {
    search.step(until - search.moves);
    const left = margin + at * (widthOf(search) + 2 * margin);
    const title = until === 0 ? "first filling" : `${until.toLocaleString("en-US")} moves`;
    return panel(cellsOf(bestOf(search)), { left, title: `${title}: ${coveredIn(search)} %` });
  });
  write("stages.svg", parts, search, moves.length);
}

/** A move that made the whole better, large enough to be seen. */
function drawMove(): void {
  const search = begin();
  search.step(20);
  let before = bestOf(search);
  for (;;) {
    search.step(1);
    const after = bestOf(search);
    if (after === before) continue;
    const [old, fresh] = [cellsOf(before), cellsOf(after)];
    const out = old.filter((cell) => !fresh.some((other) => isSame(cell, other)));
    const share = areaOf(out) / areaOf(old);
    if (share > 0.05 && share < 0.25 && out.length < old.length / 2) {
      const stays = old.filter((cell) => !out.includes(cell));
      const right = 3 * margin + widthOf(search);
      const parts = [
        panel(old, { left: margin, title: "before", faded: stays }),
        panel(stays, { left: right, title: "parts are taken out", faded: stays }),
        panel(fresh, {
          left: 2 * right - margin,
          title: "and filled again",
          faded: fresh.filter((cell) => stays.some((other) => isSame(cell, other))),
        }),
      ];
      write("move.svg", parts, search, 3);
      return;
    }
    before = after;
  }
}

/** How warm it is, and what the best layout costs, move by move. */
function drawRounds(): void {
  const search = begin();
  const cooling = new Cooling(60);
  const [wide, high, all] = [720, 180, 6000];
  const warm: string[] = [];
  const cost: string[] = [];
  const first = search.bestCost;
  for (let at = 0; at < all; at += 1) {
    const x = (margin + (at / all) * wide).toFixed(1);
    if (at % 12 === 0) {
      warm.push(`${x},${(margin + high - (cooling.temperature / 6) * high).toFixed(1)}`);
      cost.push(`${x},${(margin + high - ((search.bestCost / first - 0.4) / 0.6) * high).toFixed(1)}`);
    }
    search.step(1);
    cooling.next();
  }
  const lines = [
    `<polyline points="${warm.join(" ")}" fill="none" stroke="#b5694b" stroke-width="1.5"/>`,
    `<polyline points="${cost.join(" ")}" fill="none" stroke="#33445a" stroke-width="2"/>`,
    text(margin + 6, margin + high + 16, "0 moves"),
    text(margin + wide - 70, margin + high + 16, "6,000 moves"),
  ];
  writeFileSync(`${folder}/rounds.svg`, svg(wide + 2 * margin, high + 3 * margin, lines));
}

function bestOf({ best: [twig] }: Search): Twig {
  if (twig === undefined) throw new Error("the search has no space");
  return twig;
}

function widthOf(search: Search): number {
  return bestOf(search).width * pixels;
}

function coveredIn(search: Search): string {
  const cells = cellsOf(bestOf(search));
  return ((100 * areaOf(cells.filter(({ lot }) => lot !== null))) / areaOf(cells)).toFixed(1);
}

function areaOf(cells: readonly Cell[]): number {
  return cells.reduce((sum, { width, height }) => sum + width * height, 0);
}

function cellsOf(twig: Twig, x = 0, y = 0): Cell[] {
  const { width, height } = twig;
  if (twig.kind === "leaf") return [{ x, y, width, height, lot: twig.face?.lot.index ?? null }];
  let along = 0;
  return twig.parts.flatMap((part) => {
    const cells = twig.beside ? cellsOf(part, x + along, y) : cellsOf(part, x, y + along);
    along += twig.beside ? part.width : part.height;
    return cells;
  });
}

function isSame(one: Cell, other: Cell): boolean {
  return (
    one.x === other.x &&
    one.y === other.y &&
    one.width === other.width &&
    one.height === other.height &&
    one.lot === other.lot
  );
}

type Panel = { readonly left: number; readonly title: string; readonly faded?: readonly Cell[] };

function panel(cells: readonly Cell[], { left, title, faded = [] }: Panel): string {
  const rects = cells.map((cell) => {
    const { x, y, width, height, lot } = cell;
    const at = `x="${(left + x * pixels).toFixed(1)}" y="${(30 + y * pixels).toFixed(1)}"`;
    const size = `width="${(width * pixels).toFixed(1)}" height="${(height * pixels).toFixed(1)}"`;
    const fill = lot === null ? "#ffffff" : cloth(lot);
    return `<rect ${at} ${size} fill="${fill}" stroke="#3a362f" stroke-width="0.8"${faded.includes(cell) ? ' opacity="0.28"' : ""}/>`;
  });
  return [text(left, 20, title), ...rects].join("\n");
}

/** A muted colour for each leftover; the golden angle keeps neighbours in the list apart. */
function cloth(lot: number): string {
  const lightness = 45 + ((lot * 17) % 30);
  return `hsl(${Math.round((lot * 137.5) % 360)} 32% ${lightness}%)`;
}

function text(x: number, y: number, words: string): string {
  return `<text x="${x.toFixed(0)}" y="${y.toFixed(0)}" font-family="sans-serif" font-size="13" fill="#3a362f">${words}</text>`;
}

function write(name: string, parts: readonly string[], search: Search, panels: number): void {
  const width = panels * (widthOf(search) + 2 * margin);
  const height = 30 + bestOf(search).height * pixels + margin;
  writeFileSync(`${folder}/${name}`, svg(width, height, parts));
}

function svg(width: number, height: number, parts: readonly string[]): string {
  const size = `width="${width.toFixed(0)}" height="${height.toFixed(0)}" viewBox="0 0 ${width.toFixed(0)} ${height.toFixed(0)}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}>\n<rect width="100%" height="100%" fill="#fbf8f1"/>\n${parts.join("\n")}\n</svg>\n`;
}
