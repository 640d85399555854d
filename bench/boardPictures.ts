import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import sharp from "sharp";
import type { Grey } from "./chessboard.ts";

const packageName = "opencv-doc";
const inPackage = join("usr", "share", "doc", packageName, "examples", "data");
const isPicture = /^left\d\d\.jpg(\.gz)?$/;

export type BoardPicture = { readonly name: string; readonly picture: Grey };

/**
 * The photographs of a chessboard in Debian's package of the vision library's examples: where it is installed, or else
 * downloaded by the system's own package manager for as long as they are read. Null where it can't be had.
 */
export async function packagedPictures(): Promise<readonly BoardPicture[] | null> {
  const installed = picturesIn(join("/", inPackage));
  return installed === null ? downloaded() : decoded(installed);
}

async function downloaded(): Promise<readonly BoardPicture[] | null> {
  const folder = mkdtempSync(join(tmpdir(), "verso-boards-"));
  try {
    const files = unpackedIn(folder) ? picturesIn(join(folder, inPackage)) : null;
    return files && (await decoded(files));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function unpackedIn(folder: string): boolean {
  const run = (program: string, args: readonly string[]) =>
    spawnSync(program, args, { cwd: folder, stdio: "ignore" }).status === 0;
  if (!run("apt-get", ["download", packageName])) return false;
  const file = readdirSync(folder).find((name) => name.endsWith(".deb"));
  return file !== undefined && run("dpkg-deb", ["-x", file, folder]);
}

function picturesIn(folder: string): readonly string[] | null {
  const files = existsSync(folder) ? readdirSync(folder).filter((name) => isPicture.test(name)) : [];
  return files.length === 0 ? null : files.sort().map((name) => join(folder, name));
}

function decoded(files: readonly string[]): Promise<readonly BoardPicture[]> {
  return Promise.all(
    files.map(async (file) => {
      const bytes = readFileSync(file);
      const { data, info } = await sharp(file.endsWith(".gz") ? gunzipSync(bytes) : bytes)
        .greyscale()
        .raw()
        .toBuffer({ resolveWithObject: true });
      const name = /left\d\d/.exec(file)?.[0] ?? file;
      return { name, picture: { width: info.width, height: info.height, bytes: data } };
    }),
  );
}
