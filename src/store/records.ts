import * as v from "valibot";
import * as Y from "yjs";
import { crc32 } from "../files/index.ts";
import type { StoredRecord } from "./database.ts";

/** Seals a write with the checksum of everything in it, so that neither bytes nor place can change unnoticed. */
export function sealed(record: Omit<StoredRecord, "sum">): StoredRecord {
  return { ...record, sum: sumOf(record) };
}

function sumOf({ project, seq, at, bytes }: Omit<StoredRecord, "sum">): number {
  return crc32(bytes, crc32(new TextEncoder().encode(JSON.stringify([project, seq, at]))));
}

const recordSchema = v.object({
  project: v.string(),
  seq: v.number(),
  at: v.number(),
  bytes: v.instance(Uint8Array),
  sum: v.number(),
});

/** Whether a record is as it was written. */
export function isWhole(record: unknown): record is StoredRecord {
  const read = v.safeParse(recordSchema, record);
  return read.success && read.output.sum === sumOf(read.output);
}

export type Replayed = {
  /** When the records that could not be used were written, where that is known. */
  readonly damaged: readonly (number | null)[];
};

/** Applies records in order, in one transaction. A damaged one is passed over; those after it may still be whole. */
export function replay(doc: Y.Doc, records: readonly unknown[], origin: unknown): Replayed {
  const damaged: (number | null)[] = [];
  Y.transact(
    doc,
    () => {
      for (const record of records) {
        if (!isWhole(record) || !applies(doc, record.bytes, origin)) damaged.push(momentOf(record));
      }
    },
    origin,
  );
  return { damaged };
}

function applies(doc: Y.Doc, bytes: Uint8Array, origin: unknown): boolean {
  try {
    Y.applyUpdate(doc, bytes, origin);
    return true;
  } catch {
    return false;
  }
}

function momentOf(record: unknown): number | null {
  const read = v.safeParse(v.object({ at: v.number() }), record);
  return read.success ? read.output.at : null;
}

/** Whether edits wait in vain for one that was lost. */
export function lacksEdits(doc: Y.Doc): boolean {
  return doc.store.pendingStructs !== null || doc.store.pendingDs !== null;
}

/** All records as one, or `null` where one of them is damaged or lacks another: then none may be given up. */
export function merged(records: readonly unknown[]): Uint8Array | null {
  const doc = new Y.Doc();
  const { damaged } = replay(doc, records, "merge");
  const bytes = damaged.length > 0 || lacksEdits(doc) ? null : Y.encodeStateAsUpdate(doc);
  doc.destroy();
  return bytes;
}
