import { type PlanDocument, type Project, svgOfDrawing } from "../../../files/index.ts";
import type { TakeAway, TakeAwayTexts } from "../../../words/index.ts";
import { drawingOfPlan } from "../../parts/drawing/drawnPlan.ts";
import { tableOf } from "../leftovers/tableOut.ts";

export const types: { readonly [T in TakeAway]: string } = {
  png: "image/png",
  svg: "image/svg+xml",
  json: "application/json",
  table: "text/csv",
};

type Taken = { readonly project: Project; readonly plan: PlanDocument; readonly texts: TakeAwayTexts };

/** The file in one of its forms. `null`: this browser can't make it. */
export async function bytesOf(form: TakeAway, { project, plan, texts }: Taken): Promise<Uint8Array | null> {
  switch (form) {
    case "png":
      return await pictureOf(svgOf(plan, texts));
    case "svg":
      return new TextEncoder().encode(svgOf(plan, texts));
    case "json":
      // The very text that was kept: nothing is written anew, and nothing is rounded.
      return new TextEncoder().encode(project.plan?.text ?? "");
    case "table":
      return tableOf(project);
  }
}

function svgOf(plan: PlanDocument, texts: TakeAwayTexts): string {
  const drawing = drawingOfPlan(plan);
  return svgOfDrawing(drawing, { words: texts.picture(plan, drawing.ruler.length) });
}

/** As fine as a sheet of paper shows it, and no larger than every browser can draw. Pixels. */
const longerSide = 3000;

async function pictureOf(svg: string): Promise<Uint8Array | null> {
  const address = URL.createObjectURL(new Blob([svg], { type: types.svg }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    return await drawn(image);
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(address);
  }
}

async function drawn(image: HTMLImageElement): Promise<Uint8Array | null> {
  const scale = longerSide / Math.max(image.width, image.height);
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(image.width * scale);
  canvas.height = Math.round(image.height * scale);
  canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, types.png));
  return blob === null ? null : new Uint8Array(await blob.arrayBuffer());
}
