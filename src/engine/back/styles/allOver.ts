import type { Site } from "../site.ts";
import { pieced, ringed, type Sketch } from "../sketch.ts";

/** Every leftover, freely, inside the ring that will be cut away. */
export function allOver(site: Site): Sketch {
  return ringed(site, pieced(site.width - 2 * site.ringX, site.height - 2 * site.ringY));
}
