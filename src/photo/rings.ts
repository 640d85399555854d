import { toNumber } from "../engine/length/index.ts";
import type { Lying } from "./calibrate.ts";
import { type FloorPicture, pixelOn } from "./floorPicture.ts";
import type { Place } from "./types.ts";

// Round a card: from so far off its paper, to so far, in inches.
const ringFrom = 0.2;
const ringTo = 0.8;

/** 1 on the paper of cards and sheets and close to it, and what is not seen. */
export function coveredBy(picture: FloorPicture, lying: readonly Lying[]): Uint8Array {
  const covered = picture.seen.map((seen) => 1 - seen);
  for (const one of lying)
    onPaper(picture, one, ringFrom, (at) => {
      covered[at] = 1;
    });
  return covered;
}

/** Round each card, the pixels of the floor picture where floor must lie bare. */
export function ringsRound(
  picture: FloorPicture,
  lying: readonly Lying[],
  covered: Uint8Array,
): readonly (readonly number[])[] {
  return lying.map((one) => {
    const ring: number[] = [];
    onPaper(picture, one, ringTo, (at) => {
      if (covered[at] === 0) ring.push(at);
    });
    return ring;
  });
}

// In inches: so far round a place that she says is bare.
const bareRound = 1;

/** Round a place of the floor picture, the pixels where floor lies bare if it does there. */
export function ringRound(picture: FloorPicture, [x, y]: Place, covered: Uint8Array): readonly number[] {
  const reach = bareRound * picture.perInch;
  const ring: number[] = [];
  const [right, bottom] = [Math.min(picture.width - 1, x + reach), Math.min(picture.height - 1, y + reach)];
  for (let row = Math.max(0, Math.floor(y - reach)); row <= bottom; row += 1)
    for (let column = Math.max(0, Math.floor(x - reach)); column <= right; column += 1) {
      const at = row * picture.width + column;
      if (Math.hypot(column - x, row - y) <= reach && covered[at] === 0) ring.push(at);
    }
  return ring;
}

/** Calls for each pixel on the paper or no further than `more` from it. */
function onPaper(
  picture: FloorPicture,
  { target, at, turned }: Lying,
  more: number,
  found: (at: number) => void,
): void {
  const across = toNumber(target.reach.across, "in") + more;
  const down = toNumber(target.reach.down, "in") + more;
  const reach = Math.hypot(across, down) * picture.perInch;
  const [x, y] = pixelOn(picture, at);
  const [right, bottom] = [Math.min(picture.width - 1, x + reach), Math.min(picture.height - 1, y + reach)];
  const [cosine, sine] = [Math.cos(turned) / picture.perInch, Math.sin(turned) / picture.perInch];
  for (let row = Math.max(0, Math.floor(y - reach)); row <= bottom; row += 1)
    for (let column = Math.max(0, Math.floor(x - reach)); column <= right; column += 1) {
      const u = cosine * (column - x) + sine * (row - y);
      const v = cosine * (row - y) - sine * (column - x);
      if (Math.abs(u) <= across && Math.abs(v) <= down) found(row * picture.width + column);
    }
}
