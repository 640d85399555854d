import { widthsNeeded } from "../back/index.ts";
import { inches, type Length, length, subtract, times } from "../length/index.ts";

/** Hanging sleeve: a strip sewn to a tube. */
export type Sleeve = {
  /** Width the strip is cut to. */
  readonly strip: Length;
  /** What the tube measures laid flat. */
  readonly tube: Length;
  /** One tube, or two beside each other on a wide quilt. */
  readonly tubes: number;
  /** What each tube is cut to along; hems still to be taken. */
  readonly each: Length;
  /** Cloth for all of it at the given usable width. */
  readonly cloth: Length;
};

/** Shows ask for a 4 in sleeve, which is a strip of 8 1/2 in. */
export const usualSleeveStrip = inches(17, 2);
/** From here on shows ask for a sleeve. */
export const sleeveFrom = inches(60);
/** Above this width the sleeve is made in two, so that a rod can be held in the middle. */
export const widestTube = inches(90);

const seam = inches(1, 4);

/** What a strip of this width gives, sewn with a 1/4 in seam and laid flat. */
export function tubeOf(strip: Length): Length {
  return length(Math.floor((strip - 2 * seam) / 2));
}

/** A sleeve an inch shorter than the quilt is wide: a guild's rule, 2019 and 2023. */
export function sleeveFor(quiltWidth: Length, clothWidth: Length, strip: Length = usualSleeveStrip): Sleeve {
  const whole = subtract(quiltWidth, inches(1));
  const tubes = quiltWidth > widestTube ? 2 : 1;
  const each = length(Math.floor(whole / tubes));
  const strips = widthsNeeded(each, clothWidth, seam) * tubes;
  return { strip, tube: tubeOf(strip), tubes, each, cloth: times(strip, strips) };
}
