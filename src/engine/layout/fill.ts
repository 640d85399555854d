import type { Filling } from "./filling.ts";
import { layer } from "./strategies/layer.ts";
import { single } from "./strategies/single.ts";
import { split } from "./strategies/split.ts";
import type { Twig } from "./twig.ts";

/** Gives `filling` its `fill`: a single piece where one fits, else a split of a large region, else the best row. */
export function withFill(filling: Omit<Filling, "fill">, blockArea: number): Filling {
  const whole: Filling = {
    ...filling,
    fill: (width, height) => fillRegion(whole, width, height, blockArea),
  };
  return whole;
}

function fillRegion(filling: Filling, width: number, height: number, blockArea: number): Twig {
  const { random, stock, twigs } = filling;
  if (filling.faces.length === 0) return twigs.cloth(width, height);
  const one = single(filling, width, height);
  if (one !== null) return one;
  if (Math.min(width, height) < stock.smallest) return twigs.cloth(width, height);
  if (width * height > blockArea * (0.5 + random.next())) {
    const halves = split(filling, width, height);
    if (halves !== null) return halves;
  }
  return better(filling, width, height) ?? twigs.cloth(width, height);
}

// A row that costs more than the cloth it saves is no row.
function better(filling: Filling, width: number, height: number): Twig | null {
  const { pool, twigs } = filling;
  const mark = pool.mark();
  const before = pool.cost;
  const row = layer(filling, width, height);
  if (row === null) return null;
  if (row.cost + pool.cost - before <= twigs.costOfCloth(width, height)) return row;
  pool.undo(mark);
  return null;
}
