import { naturalDepth } from "../natural.ts";
import { centreLine } from "../plainParts.ts";
import { type Site, steps, turned } from "../site.ts";
import { below, beside, cloth, pieced, row, type Sketch } from "../sketch.ts";

/**
 * A pieced row across and one down, both off the middle, between four plain parts. The halves of the row down are
 * set off from each other by 6 in or more, so that nobody has to match them; with little to piece it is a T.
 */
export function cross(site: Site): Sketch {
  const deep = armDepth(site);
  const above = offCentre(site, site.height, deep, 0.36);
  const under = site.height - above - deep;
  const left = offCentre(turned(site), site.width, deep, 0.34);
  const shift = Math.max(steps(site, 6), Math.round(site.width * 0.12));
  const lower = armed(site, deep, under, { left: left + shift, capAbove: 0, capUnder: site.ringY });
  const upper = isT(site)
    ? cloth(site.width, above)
    : armed(site, deep, above, { left, capAbove: site.ringY, capUnder: 0 });
  return below([upper, row(site, deep), lower]);
}

type Arm = { readonly left: number; readonly capAbove: number; readonly capUnder: number };

function armed(site: Site, deep: number, height: number, { left, capAbove, capUnder }: Arm): Sketch {
  const arm = below([
    cloth(deep, capAbove, "spacer"),
    pieced(deep, height - capAbove - capUnder),
    cloth(deep, capUnder, "spacer"),
  ]);
  return beside([cloth(left, height), arm, cloth(site.width - left - deep, height)]);
}

function isT(site: Site): boolean {
  return site.target < site.width * site.height * 0.14;
}

function armDepth(site: Site): number {
  const long = site.width + (isT(site) ? site.height * 0.6 : site.height);
  const wanted = Math.round((site.target * 0.92) / long);
  const most = Math.min(steps(site, 14), Math.round(Math.min(site.width, site.height) * 0.22));
  return naturalDepth(site, Math.max(wanted, Math.min(most, site.tall)), {
    least: 2 * site.smallest,
    most,
    long,
  });
}

/** Where a row of this depth begins so that its middle is near `share`, its seams off the centre line. */
function offCentre(site: Site, long: number, deep: number, share: number): number {
  let at = Math.round(long * share - deep / 2);
  while (centreLine(site, [at, at + deep]) > 0 && at > long * 0.15) at--;
  return at;
}
