/** Gives her a file, the way the browser gives files. */
export function saveFile(bytes: Uint8Array, name: string, type = "application/zip"): void {
  const address = URL.createObjectURL(new Blob([bytes.slice()], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // Some browsers begin to read only after this turn.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** A title as the name of a file: without what some system forbids in one. */
export function fileNameFor(title: string): string {
  const name = title
    .replace(/[\p{Cc}\p{Cf}<>:"/\\|?*]+/gu, " ")
    .replace(/\s+/g, " ")
    .trim()
    .replace(/^\.+|\.+$/g, "");
  return `${name === "" ? "Verso" : [...name].slice(0, 80).join("")}.verso`;
}
