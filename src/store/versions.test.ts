import fc from "fast-check";
import { expect, test } from "vitest";
import { versionsToDrop } from "./versions.ts";

const minute = 60_000;
const day = 1_440 * minute;
const version = (at: number, name: string | null = null) => ({ project: "p", id: `${at}`, name, at });

function kept(versions: readonly ReturnType<typeof version>[]): readonly number[] {
  const dropped = new Set(versionsToDrop(versions));
  return versions.filter((one) => !dropped.has(one)).map(({ at }) => at);
}

test("the last twelve stay, and the last of each day before them", () => {
  const ofDays = [1, 2, 3].flatMap((d) => [0, 10, 20].map((m) => version(d * day + m * minute)));
  const today = Array.from({ length: 12 }, (_, index) => version(9 * day + index * 10 * minute));
  expect(kept([...ofDays, ...today])).toEqual([
    ...[1, 2, 3].map((d) => d * day + 20 * minute),
    ...today.map(({ at }) => at),
  ]);
});

test("those she named stay among any number of others; all together they are bounded; the newest always stays", () => {
  const versions = fc.uniqueArray(fc.nat(400 * 1_440), { minLength: 1, maxLength: 400 }).chain((minutes) => {
    return fc.record({
      all: fc.constant(minutes.map((one) => one * minute)),
      named: fc.subarray(
        minutes.map((one) => one * minute),
        { maxLength: Math.min(20, minutes.length) },
      ),
    });
  });
  fc.assert(
    fc.property(versions, ({ all, named }) => {
      const staying = kept(all.map((at) => version(at, named.includes(at) ? "hers" : null)));
      expect(staying).toEqual(expect.arrayContaining([...named]));
      expect(staying.length - named.length).toBeLessThanOrEqual(36);
      expect(staying).toContain(Math.max(...all));
    }),
  );
});
