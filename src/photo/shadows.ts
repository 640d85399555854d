import { median } from "./lines.ts";

/**
 * A piece's own shadow runs along its sides, and light cloth ends in it unseen: where the light first changes is the
 * shadow's end, not the cloth's. But a shadow is soft, takes alike of all colors, and is darkest where the cloth ends.
 */

/** What is seen across a side: of each station linear light from inside to outside, three numbers each. */
export type Across = {
  readonly lights: readonly Float64Array[];
  /** In inches, from one sample to the next, and what the lens makes of an edge. */
  readonly step: number;
  readonly blur: number;
};

// In inches, inwards of where the side was seen, the places where cloth may end instead; a little outwards as well, so
// that one that is right is not at an end.
const apart = 0.012;
const outmost = 0.024;
const places = Array.from({ length: 20 }, (_, n) => n * apart - outmost);
const here = Math.round(outmost / apart);
// In inches: no shadow reaches further; what is nearer is also moved for what a lens makes of the edge.
const deepest = 0.17;
const hardly = 0.03;
// Of the floor's light: what a shadow takes where it is darkest. What seems to take more, or nothing, is a print.
const leastTaken = 0.06;
const mostTaken = 0.55;
// In inches: in coarser photos a shadow can't be told from what the lens makes of an edge.
const broadest = 0.024;
// How much less all misses, in squares of the noise, for a side to be moved.
const surely = 12;

/** How far inwards of where it was seen the side lies, in inches; 0 where no shadow is to be made out. */
export function underShadow(across: Across): number {
  if (across.blur > broadest) return 0;
  const guesses = guessesFor(across);
  const runs = runsOf(across.lights).map((run) => fitsOf(sharesOf(run, across.step), guesses));
  const misses = places.map((_, at) => runs.reduce((sum, fits) => sum + fits.missed(at), 0));
  const best = misses.indexOf(Math.min(...misses));
  if (runs.length === 0 || (misses[here] ?? 0) - (misses[best] ?? 0) < surely) return 0;
  const far = (places[best] ?? 0) + apart * bottomBeside(misses, best);
  return far > 0 && far < deepest && isShadow(runs, { best, least: far < hardly ? some : most }) ? far : 0;
}

// Of the runs along a side: so many must miss less there, for a little and for more. What only a few do is a print's.
const some = 0.5;
const most = 0.8;

function isShadow(runs: readonly Fits[], { best, least }: { best: number; least: number }): boolean {
  const taken = median(runs.map(({ takes }) => takes(best)));
  const agreeing = runs.filter(({ missed }) => missed(here) > missed(best) + 1);
  return taken > leastTaken && taken < mostTaken && agreeing.length >= least * runs.length;
}

/** Of a step, from the least of some values to the bottom of the parabola through it and both beside it. */
function bottomBeside(values: readonly number[], least: number): number {
  const [before, at, behind] = [values[least - 1], values[least] ?? 0, values[least + 1]];
  if (before === undefined || behind === undefined) return 0;
  return (0.5 * (before - behind)) / Math.max(1e-6, before - 2 * at + behind);
}

const runsAlong = 8;
// In stations.
const leastRun = 4;

/** Stations beside one another: a print, or the next patch of a block, misleads some of these and not all. */
function runsOf(lights: Across["lights"]): readonly Across["lights"][] {
  const count = Math.min(runsAlong, Math.floor(lights.length / leastRun));
  return Array.from({ length: count }, (_, n) =>
    lights.slice(Math.floor((n * lights.length) / count), Math.floor(((n + 1) * lights.length) / count)),
  );
}

/** One color along a run: its mean light as a share of the floor's outside, and how much each is to be believed. */
type Share = { readonly light: Float64Array; readonly weight: Float64Array };

// In inches outwards of the side: there the floor has its own light again.
const floorFrom = 0.16;
// Of the floor's light, and of the light itself: what stays unsure of a mean.
const leastNoise = 0.006;
const leastShare = 0.01;

function sharesOf(run: Across["lights"], step: number): readonly Share[] {
  return [0, 1, 2].map((channel) => {
    const shares = run.map((lights) => shareOf(lights, channel, step));
    const length = shares[0]?.length ?? 0;
    const light = new Float64Array(length);
    const weight = new Float64Array(length);
    for (let at = 0; at < length; at += 1) {
      const [mean, spread] = meanAt(shares, at);
      light[at] = mean;
      weight[at] = 1 / (spread + leastNoise ** 2 + (leastShare * mean) ** 2);
    }
    return { light, weight };
  });
}

function shareOf(lights: Float64Array, channel: number, step: number): Float64Array {
  const own = lights.filter((_, at) => at % 3 === channel);
  const floor = median([...own.subarray(Math.ceil(floorFrom / step + own.length / 2))]);
  return own.map((light) => light / Math.max(1e-3, floor));
}

/** And the square of how far that mean may stray. */
function meanAt(shares: readonly Float64Array[], at: number): readonly [number, number] {
  let sum = 0;
  let square = 0;
  for (const share of shares) {
    const value = share[at] ?? 0;
    sum += value;
    square += value * value;
  }
  const mean = sum / shares.length;
  return [mean, Math.max(0, square / shares.length - mean * mean) / Math.max(1, shares.length - 1)];
}

/** If cloth ended at a place and its shadow reached so far: of each sample, how much of it is cloth, and how deep in shadow. */
type Guess = {
  readonly cloth: Float64Array;
  readonly shadow: Float64Array;
  /** Further inside the cloth may have any color. */
  readonly from: number;
};

// In inches: how far shadows reach; inside, how much of the cloth is taken for one color; and all that is looked at there.
const reaches = [0.05, 0.075, 0.1, 0.135, 0.18];
const oneColour = 0.06;
const inside = 0.26;

/** For each place one of each reach. */
function guessesFor({ lights, step, blur }: Across): readonly (readonly Guess[])[] {
  const length = (lights[0]?.length ?? 0) / 3;
  const samples = Float64Array.from({ length }, (_, at) => (at + 0.5) * step - (length * step) / 2);
  return places.map((inwards) => {
    const outside = samples.map((at) => at + inwards);
    return reaches.map((reach) => guessAt(outside, { reach, blur }));
  });
}

function guessAt(outside: Float64Array, { reach, blur }: { reach: number; blur: number }): Guess {
  // A logistic curve is a blurred edge where its argument is 1.702 times the spreads.
  const cloth = outside.map((far) => 1 / (1 + Math.exp((1.702 * far) / blur)));
  const shadow = outside.map((far, n) => (1 - (cloth[n] ?? 0)) * fading(far / reach));
  return { cloth, shadow, from: outside.findIndex((far) => far >= -oneColour) };
}

function fading(far: number): number {
  const held = Math.max(0, Math.min(1, far));
  return 1 - held * held * (3 - 2 * held);
}

type Fit = { readonly misses: number; readonly takes: number };
/** Of each place: by how much more all is missed there than at the run's own best, and what its shadow would take. */
type Fits = { readonly missed: (place: number) => number; readonly takes: (place: number) => number };

// In squares of the noise: a single run, a single sample, must not outvote all others.
const mostOfRun = 60;
const mostOfSample = 60;

function fitsOf(shares: readonly Share[], guesses: readonly (readonly Guess[])[]): Fits {
  const fits = guesses.map((some) =>
    some
      .map((guess) => fitOf(shares, guess))
      .reduce((one, other) => (other.misses < one.misses ? other : one)),
  );
  const least = Math.min(...fits.map(({ misses }) => misses));
  return {
    missed: (place) => Math.min(mostOfRun, (fits[place]?.misses ?? least) - least),
    takes: (place) => fits[place]?.takes ?? 0,
  };
}

/** Least squares: a colour of the cloth in each channel, and what the shadow takes of all three alike. */
function fitOf(shares: readonly Share[], guess: Guess): Fit {
  const sums = shares.map((share) => sumsOf(share, guess));
  let over = 0;
  let under = 1e-9;
  for (const { cc, cs, cy, ss, sy } of sums) {
    over += (cs * cy) / cc - sy;
    under += ss - (cs * cs) / cc;
  }
  const takes = Math.max(0, Math.min(mostTaken, over / under));
  const colours = sums.map(({ cc, cs, cy }) => (cy + takes * cs) / cc);
  const misses = shares.reduce(
    (sum, share, at) => sum + missedBy(share, guess, { takes, colour: colours[at] ?? 0 }),
    unexplained(guess),
  );
  return { misses, takes };
}

type Sums = {
  readonly cc: number;
  readonly cs: number;
  readonly cy: number;
  readonly ss: number;
  readonly sy: number;
};

function sumsOf({ light, weight }: Share, { cloth, shadow, from }: Guess): Sums {
  let [cc, cs, cy, ss, sy] = [1e-9, 0, 0, 0, 0];
  for (let at = from; at < light.length; at += 1) {
    const c = cloth[at] ?? 0;
    const s = shadow[at] ?? 0;
    const y = (light[at] ?? 0) - 1 + c;
    const w = weight[at] ?? 0;
    cc += w * c * c;
    cs += w * c * s;
    cy += w * c * y;
    ss += w * s * s;
    sy += w * s * y;
  }
  return { cc, cs, cy, ss, sy };
}

function missedBy(
  { light, weight }: Share,
  { cloth, shadow, from }: Guess,
  { takes, colour }: { takes: number; colour: number },
): number {
  let misses = 0;
  for (let at = from; at < light.length; at += 1) {
    const c = cloth[at] ?? 0;
    const off = (light[at] ?? 0) - 1 + c - c * colour + takes * (shadow[at] ?? 0);
    misses += Math.min(mostOfSample, (weight[at] ?? 0) * off * off);
  }
  return misses;
}

/** Samples that may have any color count as if they were missed a little: else a place far outside would explain all. */
function unexplained({ cloth, from }: Guess): number {
  const first = Math.round(cloth.length / 2 - (inside * cloth.length) / (2 * look));
  return 6 * Math.max(0, from - first);
}

/** In inches: how far to both sides of a side a shadow is looked for. */
export const look = 0.3;
