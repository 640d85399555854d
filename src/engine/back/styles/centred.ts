import { type Site, steps } from "../site.ts";
import { below, beside, cloth, pieced, type Sketch } from "../sketch.ts";

/**
 * Grown round an off-centre middle of 20 to 36 in: a plain round, a pieced round where the heap allows, and plain
 * to the edge, at least 8 in (trade-facts §15).
 */
export function centred(site: Site): Sketch {
  const target = site.target * 0.92;
  const middle = middleOf(site, target);
  const plain = middleRound(site);
  const round = roundDepth(site, middle, plain, target - middle.width * middle.height);
  const core = round === 0 ? middle : grown(surrounded(middle, plain, 1), round);
  return outer(site, core);
}

function middleOf(site: Site, target: number): Sketch {
  const share = target > steps(site, 36) * steps(site, 24) ? 0.4 : 0.95;
  const most = Math.min(steps(site, 36), Math.round(Math.min(site.width, site.height) * 0.5));
  const side = Math.sqrt(target * share);
  const width = Math.max(steps(site, 8), Math.min(most, Math.round(side * 0.9)));
  const height = Math.max(
    steps(site, 8),
    Math.min(Math.round(most * 1.2), Math.round((target * share) / width)),
  );
  return pieced(width, height);
}

function middleRound(site: Site): number {
  return Math.max(site.smallest, steps(site, 3));
}

/** How deep a pieced round the rest of the heap makes; 0 when it is too little for one of 4 in. */
function roundDepth(site: Site, middle: Sketch, plain: number, area: number): number {
  const half = middle.width + middle.height + 4 * plain;
  const deep = Math.floor((Math.sqrt(half * half + 4 * area) - half) / 4);
  const room = Math.min(site.width - middle.width, site.height - middle.height) / 2 - plain - steps(site, 8);
  const round = Math.min(deep, steps(site, 12), Math.floor(room));
  return round >= Math.max(steps(site, 4), site.tall * 0.6) ? round : 0;
}

function surrounded(core: Sketch, deep: number, tone: number): Sketch {
  const side = () => cloth(deep, core.height, "spacer", tone);
  const middle = beside([side(), core, side()]);
  const end = () => cloth(middle.width, deep, "spacer", tone);
  return below([end(), middle, end()]);
}

function grown(core: Sketch, deep: number): Sketch {
  const middle = beside([pieced(deep, core.height), core, pieced(deep, core.height)]);
  return below([pieced(middle.width, deep), middle, pieced(middle.width, deep)]);
}

/** The rest in plain, more of it below and to the right, so that the middle sits off the centre. */
function outer(site: Site, core: Sketch): Sketch {
  const left = Math.round((site.width - core.width) * 0.4);
  const above = Math.round((site.height - core.height) * 0.4);
  const middle = beside([cloth(left, core.height), core, cloth(site.width - core.width - left, core.height)]);
  return below([cloth(site.width, above), middle, cloth(site.width, site.height - core.height - above)]);
}
