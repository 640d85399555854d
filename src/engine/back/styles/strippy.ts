import { type Site, steps } from "../site.ts";
import { below, cloth, row, type Sketch } from "../sketch.ts";

/** Full-width strips, uneven, calm and busy in turn: two or three pieced ones between plain ones (trade-facts §15). */
export function strippy(site: Site): Sketch {
  const rows = rowCount(site);
  const depths = rowDepths(site, rows);
  const plain = plainDepths(site, site.height - sum(depths), rows + 1);
  const parts: Sketch[] = [];
  for (let at = 0; at <= rows; at++) {
    parts.push(cloth(site.width, plain[at] as number, "plain", at % 2));
    if (at < rows) parts.push(row(site, depths[at] as number));
  }
  return below(parts);
}

function rowCount(site: Site): number {
  const long = site.width - 2 * site.ringX;
  const least = site.height > steps(site, 60) ? 2 : 1;
  const usual = Math.max(steps(site, 11), site.tall);
  const room = Math.max(1, Math.floor((site.height * 0.62) / usual));
  return Math.max(Math.min(least, room), Math.min(3, room, Math.floor((site.target * 0.9) / long / usual)));
}

function rowDepths(site: Site, rows: number): number[] {
  const long = site.width - 2 * site.ringX;
  const most = Math.min(steps(site, 18), Math.round((site.height * 0.62) / rows));
  const each = Math.max(2 * site.smallest, Math.min(most, Math.round((site.target * 0.9) / long / rows)));
  const uneven = [1.12, 0.88, 1];
  return Array.from({ length: rows }, (_, at) =>
    natural(site, Math.round(each * (uneven[at % 3] as number))),
  );
}

// A row a little deeper or shallower than the largest pieces would leave slivers along them.
function natural(site: Site, deep: number): number {
  return deep < site.tall + steps(site, 2.5) ? site.tall : deep;
}

/** Uneven: the deepest at the foot, none so deep that one width of cloth can't give it if that can be helped. */
function plainDepths(site: Site, total: number, count: number): number[] {
  const weights = [0.8, 0.65, 1.2, 0.9].slice(0, count);
  weights[count - 1] = 1.3;
  const whole = sum(weights);
  const depths = weights.map((weight) => Math.min(site.widest, Math.round((total * weight) / whole)));
  depths[0] = (depths[0] as number) + total - sum(depths);
  return depths;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}
