import type { FileProblem, OtherFile, RowFault, TableProblem } from "../files/index.ts";
import type { Voice } from "../words/index.ts";
import { lengthProblem } from "./lengthProblems.ts";
import { quoted } from "./measures.ts";
import { columnNames, kindName } from "./names.ts";

/** Columns by the headings that are read: these are the same in every language. */
export function tableProblem(problem: TableProblem, voice: Voice): string {
  if (!("row" in problem)) return fileProblem(problem, voice);
  const field = "field" in problem ? `, ${columnNames[problem.field]}` : "";
  return `Zeile ${problem.row}${field}: ${rowProblem(problem, voice)}`;
}

function fileProblem(problem: FileProblem, voice: Voice): string {
  switch (problem.kind) {
    case "empty-file":
      return "Diese Tabelle ist leer. Schreib in die erste Zeile die Überschriften kind, width und height, dann in jede Zeile einen Rest.";
    case "not-a-table":
      return `${otherFiles[problem.looksLike]} Öffne es in seinem Programm, und speichere die Reste als Tabelle (CSV).`;
    case "file-too-large":
      return `Diese Datei hat ${megabytes(problem.bytes, voice)}, mehr als die ${megabytes(problem.most, voice)}, die eine Tabelle mit Resten haben darf. Speichere nur die Reste als Tabelle.`;
    case "too-many-rows":
      return `Diese Tabelle hat mehr als ${voice.number(problem.most)} Zeilen. Teile sie, und plane mit dem Teil, den du verwenden willst.`;
    case "no-kind-column":
      return `Keine Spalte hat die Überschrift kind. ${headingsAre(problem.headings, voice)} Schreib in die erste Zeile die Überschriften kind, width und height.`;
    case "no-size-columns":
      return `Keine Spalte gibt ein Maß an. ${headingsAre(problem.headings, voice)} Ergänze Spalten mit den Überschriften width und height, oder area für Schnipsel.`;
    case "column-twice":
      return `Zwei Spalten haben die Überschrift ${quoted(problem.field)}. Behalte eine davon, oder gib der anderen eine eigene Überschrift.`;
    case "no-rows":
      return "Diese Tabelle hat Überschriften und nichts darunter. Schreib in jede Zeile einen Rest.";
  }
}

const otherFiles: { readonly [O in OtherFile]: string } = {
  spreadsheet: "Das ist eine Datei der Tabellenkalkulation selbst, noch keine einfache Tabelle.",
  zip: "Das ist eine Zip-Datei, keine Tabelle.",
  picture: "Das ist ein Bild, keine Tabelle.",
  pdf: "Das ist ein PDF, keine Tabelle.",
  "something-else": "Das lässt sich nicht als Tabelle lesen.",
};

function megabytes(bytes: number, voice: Voice): string {
  return `${voice.number(Math.ceil(bytes / 100_000) / 10)} MB`;
}

function headingsAre(headings: readonly string[], voice: Voice): string {
  if (headings.length === 0) return "Die erste Zeile hat keine Überschriften.";
  const shown = headings.slice(0, 6).map(quoted);
  const more = headings.length > shown.length ? ["andere"] : [];
  return `In der ersten Zeile steht ${voice.list([...shown, ...more])}.`;
}

export function rowProblem(problem: RowFault, voice: Voice): string {
  switch (problem.kind) {
    case "too-many-cells":
      return `diese Zeile hat ${voice.count(problem.cells, "Feld", "Felder")} unter ${voice.count(problem.headings, "Überschrift", "Überschriften")}. Vielleicht hat ein Komma in einer Zahl oder einem Namen sie geteilt: Setz dieses Feld in Anführungszeichen.`;
    case "stray-quote":
      return `ein Anführungszeichen ist nicht geschlossen oder steht mitten im Feld, in ${quoted(problem.text)}. Schließ es, oder nimm es weg.`;
    case "no-kind":
      return "hier steht nichts. Schreib, was es ist, etwa „strip“, „square“, „block“ oder „length“.";
    case "column-missing":
      return `die Tabelle hat keine solche Spalte, und ${needers(problem, voice)}. Ergänze die Spalte.`;
    case "not-a-size":
      return lengthProblem(
        problem.problem,
        problem.field === "area" || problem.field === "weight" ? problem.field : "size",
      );
    case "not-a-count":
      return `${quoted(problem.text)} lässt sich nicht als Anzahl lesen. Schreib sie in Ziffern, etwa 12.`;
    case "unknown-word":
      return `${quoted(problem.text)} ist kein Wort für diese Spalte. Schreib ${voice.either(problem.known)}.`;
    case "unreadable-letter":
      return `${quoted(problem.text)} hat einen Buchstaben, der beim Speichern verloren ging. Schreib es noch einmal, und speichere die Tabelle als UTF-8.`;
    case "too-long":
      return `dieses Feld hat ${voice.number(problem.length)} Zeichen, und ${voice.number(problem.most)} ist das Höchste. Kürze es.`;
  }
}

function needers(problem: Extract<RowFault, { readonly kind: "column-missing" }>, voice: Voice): string {
  const kind = kindName(problem.pieceKind, 2, voice);
  return problem.rows === 1
    ? `${kind} brauchen sie`
    : `${kind} brauchen sie (zusammen ${voice.count(problem.rows, "Zeile", "Zeilen")})`;
}
