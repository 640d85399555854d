import type { DisplayUnit } from "../engine/length/index.ts";
import type { Project, ThreeMeasures } from "./project-types.ts";

const notMeasured: ThreeMeasures = [null, null, null];

/** A project in which nothing is said yet. */
export function newProject(about: {
  readonly title: string;
  /** Milliseconds since 1970, UTC. */
  readonly createdAt: number;
  readonly unit?: DisplayUnit;
}): Project {
  return {
    title: about.title,
    createdAt: about.createdAt,
    sample: false,
    settings: {
      unit: about.unit ?? "in",
      step: null,
      seam: null,
      plainSeam: null,
      floor: null,
      clothWidth: null,
    },
    size: {
      from: "top",
      topWidths: notMeasured,
      topHeights: notMeasured,
      method: "frame",
      extra: null,
      asksExtra: null,
      asksWidth: null,
      asksHeight: null,
      backWidth: null,
      backHeight: null,
    },
    topPhoto: null,
    photos: [],
    time: "weekend",
    plain: { name: "", colour: "" },
    heap: { cutting: "clean", reserveBinding: false, reserveLabel: false, shelved: null },
    leftovers: [],
    rough: [],
    wishes: { style: null, seed: 1, amount: "usual", asked: [], contrast: null, stays: null, byHand: null },
    plan: null,
    ticked: new Set(),
  };
}
