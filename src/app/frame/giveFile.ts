import { saveFile } from "./saveFile.ts";

/** Whether the device has a share sheet that takes files like this one. */
export function canShare(name: string, type: string): boolean {
  const file = new File([new Uint8Array(1)], name, { type });
  return typeof navigator.canShare === "function" && navigator.canShare({ files: [file] });
}

/** A file of hers through the share sheet, where there is one that takes it; else as the browser gives files. */
export async function giveFile(bytes: Uint8Array, name: string, type: string): Promise<void> {
  if (!canShare(name, type)) return saveFile(bytes, name, type);
  try {
    await navigator.share({ files: [new File([bytes.slice()], name, { type })] });
  } catch (error) {
    // She thought better of it: that is no reason to save it after all.
    if (!(error instanceof DOMException && error.name === "AbortError")) saveFile(bytes, name, type);
  }
}
