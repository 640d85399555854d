/** Numbers that look random and are the same for the same seed, in Node and in every browser. */
export type Random = {
  /** From 0 up to, but not, 1. */
  next(): number;
  /** A whole number from 0 up to, but not, `count`. */
  below(count: number): number;
  chance(probability: number): boolean;
};

/** Mulberry32 (T. Ettinger, public domain): 32-bit integer arithmetic only, so every engine agrees. */
export function randomFrom(seed: number): Random {
  // In an array it stays a plain 32-bit number; a variable would become an object at each change.
  const states = new Int32Array([seed ^ 0x9e3779b9]);
  const next = () => {
    const state = ((states[0] as number) + 0x6d2b79f5) | 0;
    states[0] = state;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    below: (count) => Math.floor(next() * count),
    chance: (probability) => next() < probability,
  };
}
