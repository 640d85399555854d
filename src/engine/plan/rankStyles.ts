import { piecedArea, type Style, siteOf, styles } from "../back/index.ts";
import type { Job } from "../cloth/index.ts";

/**
 * The styles, the one that suits this heap and her time best first. A style suits when it uses most of the heap and
 * is quick to sew; how calm it looks decides between equals. `all-over` comes last, since few people want it.
 */
export function rankStyles(job: Job): readonly Style[] {
  const ranked = known.get(job) ?? rank(job);
  known.set(job, ranked);
  return ranked;
}

// Asked again and again while a choice is being made, and each style is sketched for it.
const known = new WeakMap<Job, readonly Style[]>();

function rank(job: Job): readonly Style[] {
  const site = siteOf(job);
  const score = new Map(styles.map((style) => [style, scoreOf(job, style, site)]));
  const of = (style: Style) => score.get(style) ?? 0;
  return [...styles].sort((one, other) => of(other) - of(one));
}

function scoreOf(job: Job, style: Style, site: ReturnType<typeof siteOf>): number {
  if (style === "all-over") return -10;
  const used = site.target === 0 ? 0 : Math.min(1, piecedArea(job, style) / site.target);
  return used * 3 + calmAt(style, site);
}

/** How gladly a practised quilter would choose the style for this heap, whatever comes of it; a share of a point. */
export function calmOf(job: Job, style: Style): number {
  return calmAt(style, siteOf(job));
}

function calmAt(style: Style, site: ReturnType<typeof siteOf>): number {
  const blocks = site.blocks.reduce((sum, block) => sum + block.count, 0);
  return calm(style, blocks, site.target / (site.width * site.height));
}

/** How gladly a practised quilter would choose the style for such a heap (common practice). */
function calm(style: Style, blocks: number, share: number): number {
  switch (style) {
    case "insert-down":
      return share < 0.22 ? 0.6 : 0.1;
    case "insert-across":
      return share < 0.22 ? 0.5 : 0;
    case "cross":
      return share < 0.35 ? 0.4 : 0.1;
    case "strippy":
      return 0.45;
    case "chunks":
      return share > 0.25 ? 0.4 : 0;
    case "block-line":
      return blocks >= 4 ? 0.9 : -1;
    case "centred":
      return 0.25;
    case "squares":
      return blocks >= 4 ? 0.4 : 0.2;
    case "all-over":
      return 0;
  }
}
