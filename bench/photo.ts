// What is measured in photographs whose truth is known: npm run bench:photo, or npm run bench:photo -- FOLDER
import { createRequire } from "node:module";
import { parseArgs } from "node:util";
import { type MeasuredPhoto, measurePhoto, type Vision } from "../src/photo/index.ts";
import { reportingSeeds, roomSeeds, tuningSeeds } from "../test/made/photographs.ts";
import { say } from "./options.ts";
import { type PhotoRow, rowOf } from "./photoRow.ts";
import { inFolder, type Known, rendered } from "./photoTruth.ts";
import { isMeasured, writeRaw } from "./raw.ts";
import { photoFigures } from "./report/photo.ts";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    tuning: { type: "boolean", default: false },
    rooms: { type: "boolean", default: false },
    only: { type: "string" },
    kept: { type: "string" },
    because: { type: "string" },
  },
});
const [folder] = positionals;
const name = folder === undefined ? "photo-rendered" : "photo-folder";
const isReporting = !values.tuning && !values.rooms && values.only === undefined;
if (isReporting && isMeasured(name) && values.because === undefined)
  throw new Error(`these photographs were measured before: say --because "what has changed"`);

const load = createRequire(import.meta.url);
const vision: Vision = await load("@techstark/opencv-js");
const rows: PhotoRow[] = [];
for (const known of asked()) {
  rows.push(await measured(known));
  say(lineOf(rows.at(-1)));
}
for (const { what, reached } of photoFigures(rows)) say(`${what}: ${reached}`);
if (isReporting)
  writeRaw(
    {
      name,
      bench: name,
      command: folder === undefined ? "npm run bench:photo" : "npm run bench:photo -- FOLDER",
      options: {},
    },
    rows,
    values.because ?? null,
  );

function asked(): readonly Known[] {
  const seeds = values.rooms ? roomSeeds : values.tuning ? tuningSeeds : reportingSeeds;
  const all = folder === undefined ? rendered(seeds, values.kept ?? null) : inFolder(folder);
  const only = values.only?.split(",");
  return all.filter(({ name }) => only === undefined || only.includes(name));
}

async function measured(known: Known): Promise<PhotoRow> {
  const photo = await known.photo();
  const began = process.cpuUsage();
  const found: MeasuredPhoto = measurePhoto(photo, vision, { printed: 1 });
  const { user, system } = process.cpuUsage(began);
  return rowOf(known, found, (user + system) / 1e6);
}

function lineOf(row: PhotoRow | undefined): string {
  if (row === undefined) return "";
  const { pieces, wrong } = row;
  const found = pieces.filter(({ found }) => found !== null);
  const marked = [...found.map(({ found }) => found?.check ?? []), ...wrong.map(({ check }) => check)];
  const missed = pieces.filter(({ found }) => found === null);
  return [
    `${row.name} ${row.group}, ${row.floor}: ${row.markersFound} of ${row.markers} markers, residual ${row.residual?.toFixed(2)} px, ` +
      `${found.length} of ${pieces.length} pieces, ${wrong.length} false, ${marked.filter((check) => check.length > 0).length} marked ` +
      `${row.warnings.join(" ")}; ${row.seconds.toFixed(1)} s`,
    ...missed.map(({ type, print, contrast }) => `  missed: ${type} ${print} at ${contrast.toFixed(1)}`),
    ...wrong.map(
      ({ kind, size, at, check }) =>
        `  false: ${kind} ${size.map((n) => n.toFixed(1)).join(" × ")} at ${at.map(Math.round)} ${check.join(" ")}`,
    ),
    ...(values.only === undefined
      ? []
      : found.map(
          ({ type, print, contrast, found }) =>
            `  ${type} ${print} ${contrast.toFixed(1)}: ${found?.kind} off ${found?.off.map((n) => n.toFixed(3))} colour ${found?.colour.toFixed(1)} ${found?.check.join(" ")}`,
        )),
  ].join("\n");
}
