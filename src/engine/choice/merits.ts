import { cutArea, type Job } from "../cloth/index.ts";
import { inches } from "../length/index.ts";
import { calmOf, type Plan } from "../plan/index.ts";

/** What of a plan the choice looks at. */
export type Offered = Pick<Plan, "style" | "layout" | "figures" | "buy" | "unused">;

/** What plans are weighed by. */
export type Merits = {
  /** Minutes of work, the middle of what is likely. */
  readonly work: number;
  /** Area of bought cloth. */
  readonly bought: number;
  /** Share of her leftovers that shows. */
  readonly used: number;
  /** Mean difference in value between neighbours; 0 where colours are not known. */
  readonly contrast: number;
};

export function meritsOf({ figures, buy }: Offered): Merits {
  const [least, most] = figures.minutes;
  return {
    work: (least + most) / 2,
    bought: buy.reduce((sum, { width, length }) => sum + width * length, 0),
    used: figures.covered,
    contrast: figures.contrast ?? 0,
  };
}

/** No worse in anything, and better in something. */
export function dominates(one: Merits, other: Merits): boolean {
  const gains = [
    other.work - one.work,
    other.bought - one.bought,
    one.used - other.used,
    one.contrast - other.contrast,
  ];
  return gains.every((gain) => gain >= 0) && gains.some((gain) => gain > 0);
}

const rounding = 1e-9;

/** At least three tenths less work for at most a tenth less of her leftovers. */
export function isLighter(one: Merits, other: Merits): boolean {
  return one.work - 0.7 * other.work <= rounding && other.used - one.used - 0.1 <= rounding;
}

/** Whether one of them is far less work than another and uses nearly as much. */
export function hasLight(merits: readonly Merits[]): boolean {
  return merits.some((one) => merits.some((other) => isLighter(one, other)));
}

/** Ten hours are as much to her as a third of her leftovers (common practice: she gives up cover before a weekend). */
const tenHours = 600;

/** How gladly she would sew it, for ranking alone: how much it uses, how calm it is, how soon it is done, her wishes. */
export function worthOf(plan: Offered, job: Job): number {
  const { work, used } = meritsOf(plan);
  const plainly = 3 * used + calmOf(job, plan.style) - work / tenHours;
  return plainly + job.wishes.reduce((sum, wish) => sum + wishedFor(wish, plan, job), contrastFor(plan, job));
}

function wishedFor(wish: Job["wishes"][number], plan: Offered, job: Job): number {
  const { work, bought } = meritsOf(plan);
  switch (wish) {
    case "sew-less":
      return -3 * (work / tenHours);
    case "use-small":
      return 3 * smallUsed(plan, job);
    case "buy-nothing":
      return bought === 0 ? 2 : (-4 * bought) / (job.back.width * job.back.height);
  }
}

function contrastFor(plan: Offered, { contrast }: Job): number {
  const share = Math.min(1, meritsOf(plan).contrast / 50);
  switch (contrast) {
    case "strong":
      return 4 * share;
    case "blend":
      return -4 * share;
    case "mixed":
      return 0;
  }
}

/** A small one is no larger than a square cut 5 in: what people call small bits (common practice). */
const small = inches(5) ** 2;

/** Share of her small ones that is in the plan, 0 to 1; 1 where she has none. */
export function smallUsed({ unused }: Pick<Offered, "unused">, job: Job): number {
  const left = new Map(unused.map(({ piece, count }) => [piece, count]));
  let [all, over] = [0, 0];
  for (const piece of job.pieces) {
    if (piece.kind === "crumbs" || piece.use === "keep-back" || piece.use === "give-away") continue;
    if (cutArea(piece) > small) continue;
    all += piece.count;
    over += left.get(piece.id) ?? 0;
  }
  return all === 0 ? 1 : (all - over) / all;
}
