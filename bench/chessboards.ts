// Photographs of a chessboard that others took, through a lens that bends much: what the cards' geometry makes of lengths
// on it. They come with a package of Debian and lie nowhere in this project.
import { packagedPictures } from "./boardPictures.ts";
import { type BoardRow, boardRow } from "./boardRow.ts";
import { isAsked, readOptions, say } from "./options.ts";
import { isMeasured, writeRaw } from "./raw.ts";
import { boardFigures } from "./report/chessboards.ts";

const options = readOptions({ seconds: "0" });
if (options.only === null && isMeasured("chessboards") && options.because === null)
  throw new Error(`these photographs were measured before: say --because "what has changed"`);
const pictures = await packagedPictures();
if (pictures === null) {
  say(
    "Nothing was measured: Debian's package opencv-doc, whose photographs left01.jpg to left14.jpg this needs, is not",
  );
  say("installed here, and `apt-get download opencv-doc` could not fetch it.");
  process.exitCode = 1;
} else {
  const asked = pictures.filter(({ name }) => isAsked(name, options));
  const rows = asked.map(({ name, picture }) => measured(boardRow(name, picture)));
  for (const { what, reached } of boardFigures(rows)) say(`${what}: ${reached}`);
  const run = {
    name: "chessboards",
    bench: "chessboards",
    command: "npm run bench:chessboards",
    options: {},
  };
  if (options.only === null) writeRaw(run, rows, options.because);
}

function measured(row: BoardRow): BoardRow {
  const { name, found, residual, k1, focal } = row;
  say(found ? `${name}: residual ${residual} px, k1 ${k1}, focal length ${focal} px` : `${name}: no board`);
  return row;
}
