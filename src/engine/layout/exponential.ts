/**
 * e to the power of `x`, for `x` up to 0, by sums and products alone. Browsers and Node round `Math.exp` and `**`
 * differently in the last place, and one acceptance decided otherwise makes another plan.
 */
export function exponential(x: number): number {
  // Below this it is nothing that a random number could be compared with.
  if (x < -700) return 0;
  const halves = Math.round(x / ln2);
  return series(x - halves * ln2) * powerOfTwo(halves);
}

const ln2 = Math.LN2;

/** 1 + r + r²/2! + …, exact to the last place or two where r is no further from 0 than half of ln 2. */
function series(r: number): number {
  let sum = 1;
  for (let term = 16; term > 0; term -= 1) sum = 1 + (r / term) * sum;
  return sum;
}

/** Each halving is exact. */
function powerOfTwo(power: number): number {
  let value = 1;
  for (let left = power; left < 0; left += 1) value /= 2;
  return value;
}
