/** What is used of a photo's EXIF (CIPA DC-008). */
export type Exif = { readonly focal35: number | null };

const searched = 1 << 20;
const mostEntries = 500;
const exifFolder = 0x8769;
const focalIn35mm = 0xa405;

/** The first EXIF in a file, wherever it lies; null where there is none, or it is spoilt. */
export function exifIn(view: DataView): Exif | null {
  const start = tiffIn(view);
  if (start === null) return null;
  try {
    const isLittle = view.getUint16(start) === 0x4949;
    const first = start + view.getUint32(start + 4, isLittle);
    const folder = entryIn(view, { at: first, isLittle, tag: exifFolder });
    const inner = folder === null ? null : start + view.getUint32(folder + 8, isLittle);
    const focal = inner === null ? null : entryIn(view, { at: inner, isLittle, tag: focalIn35mm });
    const millimetres = focal === null ? 0 : view.getUint16(focal + 8, isLittle);
    return { focal35: millimetres > 0 ? millimetres : null };
  } catch (error) {
    // It points beyond the end of the file.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Where its own header stands: after "Exif" and two zeros, in either order of bytes. */
function tiffIn(view: DataView): number | null {
  const last = Math.min(searched, view.byteLength) - 14;
  for (let at = 0; at < last; at += 1) {
    if (view.getUint32(at) !== 0x45786966 || view.getUint16(at + 4) !== 0) continue;
    const order = view.getUint32(at + 6);
    if (order === 0x49492a00 || order === 0x4d4d002a) return at + 6;
  }
  return null;
}

type Wanted = { readonly at: number; readonly isLittle: boolean; readonly tag: number };

function entryIn(view: DataView, { at, isLittle, tag }: Wanted): number | null {
  const count = Math.min(mostEntries, view.getUint16(at, isLittle));
  for (let n = 0; n < count; n += 1) {
    const entry = at + 2 + 12 * n;
    if (view.getUint16(entry, isLittle) === tag) return entry;
  }
  return null;
}
