// CRC-32 as in zip and PNG: ITU-T V.42, polynomial 0xEDB88320 (reflected). Against damage, not against malice.
const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

/** The checksum of these bytes, 0 … 2³² − 1; `before`: of what stands in front of them. */
export function crc32(bytes: Uint8Array, before = 0): number {
  let rest = ~before;
  for (const byte of bytes) rest = (rest >>> 8) ^ (table[(rest ^ byte) & 0xff] ?? 0);
  return ~rest >>> 0;
}

/** As it stands in a file: eight digits, `0` to `f`. */
export function crc32Text(bytes: Uint8Array): string {
  return crc32(bytes).toString(16).padStart(8, "0");
}
