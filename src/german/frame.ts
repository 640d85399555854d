import type { FrameWords, NotSavedWhy } from "../words/index.ts";

export const frame: FrameWords = {
  app: "Verso",
  home: "Verso, deine Rückseiten",
  projects: "Übersicht",
  size: "Maße",
  leftovers: "Reste",
  plan: "Plan",
  sew: "Nähen",
  photo: "Aus Fotos",
  settings: "Einstellungen",
  titleOfNew: "Neue Rückseite",
  pageTitle: (page, project) => [page, ...(project === null ? [] : [project]), "Verso"].join(" · "),
  skip: "Direkt zur Seite",
  stepsOfTheJob: "Arbeitsschritte",
  undo: "Rückgängig",
  redo: "Wiederholen",

  notSaved: "NICHT GESPEICHERT",
  notSavedWhy,
  saveFileNow: "Jetzt als Datei speichern",
  tryAgain: "Noch einmal versuchen",
  loadAnew: "Seite neu laden",
  readOnly: "Diese Rückseite stammt aus einem neueren Verso. Du kannst sie ansehen und als Datei speichern.",
  gone: "Diese Rückseite wurde in einem anderen Tab gelöscht. Du kannst sie noch als Datei speichern.",
  someMissing:
    "Ein Teil dieser Rückseite ließ sich nicht lesen. Alles andere ist da. Sieh sie durch, bevor du schneidest.",

  updateReady: "Ein neueres Verso ist bereit.",
  updateNow: "Jetzt verwenden",
  updateLater: "Später",

  copyOutside:
    "Seit diese Rückseite zuletzt außerhalb dieses Browsers gespeichert wurde, hat sich viel geändert. Eine eigene Datei ist sicherer.",
  keptApart:
    "Auf diesem Gerät haben ein Browser-Tab und die App auf dem Startbildschirm getrennte Rückseiten. Bleib bei einem von beiden, oder nimm eine Rückseite als Datei mit.",
  understood: "In Ordnung",

  wentWrong: "Diese Seite ist stehen geblieben.",
  wentWrongWhat:
    "Was du vorher eingetragen hast, ist noch da. Speichere zur Sicherheit eine Datei, dann öffne die Seite noch einmal.",
  pageNotHere: "Diese Seite ließ sich nicht holen.",
  pageNotHereWhat:
    "Vielleicht bist du offline, oder Verso wurde inzwischen erneuert. Lade sie neu, wenn du wieder online bist.",
  noSuchProject: "Diese Rückseite gibt es auf diesem Gerät nicht.",
  noSuchProjectWhat: "Vielleicht wurde sie gelöscht, oder sie liegt in einem anderen Browser.",
  notReadable: "Diese Rückseite lässt sich gerade nicht lesen.",
  notReadableWhat,
  opening: "Wird geöffnet…",
  toProjects: "Zu deinen Rückseiten",
};

function notSavedWhy(why: NotSavedWhy): string {
  switch (why) {
    case "full":
      return "Auf diesem Gerät ist kein Platz mehr. Was vorher da war, ist sicher. Speichere eine Datei, dann schaff Platz.";
    case "no-storage":
      return "Dieser Browser behält hier nichts, wie in einem privaten Fenster. Speichere eine Datei, bevor du gehst.";
    case "newer-tab":
      return "In einem anderen Tab ist ein neueres Verso offen. Speichere eine Datei, dann lade diese Seite neu.";
    case "failed":
      return "Die letzten Änderungen ließen sich auf diesem Gerät nicht behalten. Speichere zur Sicherheit eine Datei.";
  }
}

function notReadableWhat(why: NotSavedWhy): string {
  switch (why) {
    case "no-storage":
      return "Dieser Browser behält hier nichts, wie in einem privaten Fenster. Öffne Verso in dem Fenster, das du vorher benutzt hast.";
    case "newer-tab":
      return "In einem anderen Tab ist ein neueres Verso offen. Schließ jenen Tab oder diesen, dann versuch es noch einmal.";
    case "full":
    case "failed":
      return "Der Browser gibt nicht heraus, was er behält. Von deinen Sachen wurde nichts geändert. Warte einen Moment, dann versuch es noch einmal.";
  }
}
