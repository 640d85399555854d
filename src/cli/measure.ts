import { toNumber } from "../engine/length/index.ts";
import { type MeasuredFile, measurePhoto, writePieces, writePiecesTable } from "../photo/index.ts";
import { type CommandProblem, photoWords } from "../words/index.ts";
import { type MeasureCommand, standardStream } from "./commands.ts";
import { numberedFiles, type Output, outputProblems, readInput, writeOutputs } from "./files.ts";
import { overlayFor } from "./overlays.ts";
import { type Decoded, decodePhoto, loadVision } from "./photos.ts";
import { type ExitStatus, refuse, type Terminal } from "./terminal.ts";

/** Finds and measures the pieces in photos, and writes them where she wants them. */
export async function runMeasure(command: MeasureCommand, terminal: Terminal): Promise<ExitStatus> {
  const words = terminal.words("in");
  const refuseAll = (problems: readonly CommandProblem[]) =>
    refuse(
      terminal,
      problems.map((problem) => words.problem(problem)),
    );
  const early = placeProblems(command, terminal.folder);
  if (early.length > 0) return refuseAll(early);
  const { photos, problems } = await decodeAll(command.photos, terminal.folder);
  if (problems.length > 0) return refuseAll(problems);
  const vision = await loadVision();
  const printed =
    command.bar === null ? 1 : toNumber(command.bar.measured, "in") / toNumber(command.bar.meant, "in");
  const files = photos.map(({ file, photo, focal35 }) => ({
    file,
    measured: measurePhoto(photo, vision, { printed, focal35 }),
  }));
  const without = files.filter(({ measured }) => measured.residual === null);
  if (without.length > 0) return refuseAll(without.map(({ file }) => ({ kind: "no-cards-found", file })));
  const pictures = command.overlay === null ? [] : numberedFiles(command.overlay, files.length);
  const overlays = await Promise.all(
    files.map((file, at) => {
      const [name, photo] = [pictures[at], photos[at]?.photo];
      return name !== undefined && photo ? overlayFor(name, photo, file) : null;
    }),
  );
  return deliver(files, { command, overlays: overlays.filter((output) => output !== null) }, terminal);
}

function placeProblems(
  { photos, json, csv, overlay }: MeasureCommand,
  folder: string,
): readonly CommandProblem[] {
  const pictures = overlay === null ? [] : numberedFiles(overlay, photos.length);
  const places = [json, csv, ...pictures].filter((file) => file !== null);
  const found = photos.flatMap((photo) => outputProblems(places, photo, folder));
  return found
    .map((problem) =>
      problem.kind === "would-overwrite-leftovers"
        ? { ...problem, kind: "would-overwrite-photo" as const }
        : problem,
    )
    .filter((problem, at, all) => all.findIndex((other) => other.kind === problem.kind) === at);
}

type AllDecoded = {
  readonly photos: readonly (Decoded & { readonly file: string })[];
  readonly problems: readonly CommandProblem[];
};

/** All are looked at before any is measured, so that she hears of all that can't be used. */
async function decodeAll(files: readonly string[], folder: string): Promise<AllDecoded> {
  const photos: (Decoded & { file: string })[] = [];
  const problems: CommandProblem[] = [];
  for (const file of files) {
    const input = await readInput(file, folder);
    const decoded = input.ok ? await decodePhoto(input.value, file) : input;
    if (decoded.ok) photos.push({ file, ...decoded.value });
    else problems.push(decoded.error);
  }
  return { photos, problems };
}

type Delivery = { readonly command: MeasureCommand; readonly overlays: readonly Output[] };

function deliver(
  files: readonly MeasuredFile[],
  { command: { json, csv }, overlays }: Delivery,
  terminal: Terminal,
): ExitStatus {
  const texts = photoWords(terminal.words("in").words.locale);
  const outputs: Output[] = [
    ...(json === null ? [] : [{ file: json, content: writePieces(files) }]),
    ...(csv === null ? [] : [{ file: csv, content: writePiecesTable(files, texts.table) }]),
    ...overlays,
  ];
  const toFiles = outputs.filter(({ file }) => file !== standardStream);
  const words = terminal.words("in");
  const problems = writeOutputs(toFiles, terminal.folder);
  if (problems.length > 0)
    return refuse(
      terminal,
      problems.map((problem) => words.problem(problem)),
    );
  for (const { file, measured } of files)
    for (const warning of measured.warnings) terminal.complain(words.inFile(file, texts.warning(warning)));
  const document = outputs.find(({ file }) => file === standardStream);
  if (document !== undefined) {
    terminal.deliver(document.content);
    return 0;
  }
  for (const { file, measured } of files) terminal.say(texts.found(file, measured));
  if (toFiles.length > 0) terminal.say(`\n${words.filesWritten(toFiles.map(({ file }) => file))}`);
  return 0;
}
