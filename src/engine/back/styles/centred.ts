import { bestDepth, naturalDepth } from "../natural.ts";
import { type Site, steps, turned } from "../site.ts";
import { below, beside, cloth, pieced, type Sketch } from "../sketch.ts";

/**
 * Grown round an off-centre middle of 20 to 36 in: a plain round, a pieced round where the heap allows, and plain
 * to the edge, at least 8 in (trade-facts §15).
 */
export function centred(site: Site): Sketch {
  const target = site.target * 0.92;
  const small = middleOf(site, target * 0.4);
  const plain = middleRound(site);
  const round = roundDepth(site, small, plain, target - small.width * small.height);
  const core = round === 0 ? middleOf(site, target * 0.95) : grown(surrounded(small, plain, 1), round);
  return outer(site, core);
}

function middleOf(site: Site, area: number): Sketch {
  const most = Math.min(steps(site, 36), Math.round(Math.min(site.width, site.height) * 0.5));
  const least = steps(site, 8);
  const wide = Math.max(least, Math.min(most, Math.round(Math.sqrt(area) * 0.9)));
  const width = naturalDepth(turned(site), wide, { least, most, long: wide });
  const high = Math.round(area / width);
  const height = naturalDepth(site, high, { least, most: Math.round(most * 1.2), long: width });
  return pieced(width, height);
}

function middleRound(site: Site): number {
  return Math.max(site.smallest, steps(site, 3));
}

/** How deep a pieced round the rest of the heap makes; 0 when it is too little for one of 4 in, or does not fill one. */
function roundDepth(site: Site, middle: Sketch, plain: number, area: number): number {
  const half = middle.width + middle.height + 4 * plain;
  const wanted = Math.floor((Math.sqrt(half * half + 4 * area) - half) / 4);
  const room = Math.min(site.width - middle.width, site.height - middle.height) / 2 - plain - steps(site, 8);
  const [least, most] = [steps(site, 4), Math.min(steps(site, 12), Math.floor(room))];
  if (Math.min(wanted, most) < least) return 0;
  const { deep, full } = bestDepth(site, Math.min(wanted, most), {
    least,
    most,
    long: 2 * half + 4 * wanted,
  });
  return full >= fullEnough ? deep : 0;
}

const fullEnough = 0.5;

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
