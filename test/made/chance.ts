/** Even numbers from 0 to 1 by a linear congruence (Numerical Recipes' constants). */
export function evenly(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Normal numbers (Box and Muller 1958). */
export function normals(seed: number): () => number {
  const next = evenly(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** From -1 to 1, smooth over a length of 1, the same for the same place. */
export function waves(x: number, y: number, seed: number): number {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const [across, down] = [eased(x - left), eased(y - top)];
  const upper = lattice(left, top, seed) * (1 - across) + lattice(left + 1, top, seed) * across;
  const lower = lattice(left, top + 1, seed) * (1 - across) + lattice(left + 1, top + 1, seed) * across;
  return upper * (1 - down) + lower * down;
}

function eased(share: number): number {
  return share * share * (3 - 2 * share);
}

/** A whole number's own value from -1 to 1 (mixing of MurmurHash3). */
export function lattice(x: number, y: number, seed: number): number {
  let mixed = Math.imul(x, 0x27d4eb2d) ^ Math.imul(y, 0x165667b1) ^ Math.imul(seed, 0x1b873593);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 31 - 1;
}
