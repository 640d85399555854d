import { defaultSettings, fabricOf, plainId, readColour, settingOff } from "../../../engine/cloth/index.ts";
import { type Drawing, drawPlainBack } from "../../../engine/drawing/index.ts";
import { checkProject, type Project, sizeOfProject } from "../../../files/index.ts";

/** The back of a project before anything is planned on it; null while its size is not known. */
export function plainBackOf(project: Project): Drawing | null {
  const { top, back } = sizeOfProject(project);
  const { settings } = project;
  if (back === null) return null;
  const usual = defaultSettings[settings.unit];
  return drawPlainBack({
    unit: settings.unit,
    seam: settings.seam?.value ?? usual.seam,
    plainSeam: settings.plainSeam?.value ?? usual.plainSeam,
    back,
    top,
    fabric: fabricOf(plainId, "", plainColourOf(project)),
  });
}

/** The same where nothing is planned yet: there is no cloth in it. */
export function outlineOf(drawing: Drawing | null): Drawing | null {
  return drawing && { ...drawing, shapes: [], seams: [], fabrics: [] };
}

/** Of the cloth she would buy, as `#rrggbb`: hers, or what sets her leftovers off. */
export function plainColourOf(project: Project): string {
  const { job } = checkProject(project);
  const plain = job?.fabrics.find(({ id }) => id === job.plain);
  const colour = project.plain.colour || (plain?.colour ?? "");
  return readColour(colour)?.hex ?? settingOff([], []);
}
