import { describe, expect, it } from "vitest";
import { madeJob } from "../../../test/made/cloth.ts";
import { pricesFor, pricesInRoom } from "./prices.ts";
import { stockOf } from "./stock.ts";
import { twigsFor } from "./twig.ts";

const usual = pricesFor([]);

describe("prices", () => {
  // Room and leftovers in any unit of area.
  const cases = [
    { room: 100, leftovers: 130, dearer: false },
    { room: 100, leftovers: 100, dearer: false },
    { room: 109, leftovers: 100, dearer: false },
    { room: 110, leftovers: 100, dearer: true },
    { room: 125, leftovers: 100, dearer: true },
  ];
  it.each(cases)("of a trim with room $room for $leftovers: dearer $dearer", ({ dearer, ...areas }) => {
    const { trimArea, trimPiece, stripEnd, clothSide, ...others } = pricesInRoom(
      usual,
      areas.leftovers / areas.room,
    );
    expect(trimArea > usual.trimArea).toBe(dearer);
    expect(trimPiece > usual.trimPiece).toBe(dearer);
    expect(stripEnd > usual.stripEnd).toBe(dearer);
    expect(clothSide > usual.clothSide).toBe(dearer);
    expect({ ...usual, ...others }).toEqual(usual);
  });

  it("of plain cloth in plenty of room: a large cell with a small one costs less than two alike", () => {
    const mill = twigsFor({ ...stockOf(madeJob([])), prices: pricesInRoom(usual, 0.8) });
    const alike = 2 * mill.costOfCloth(80, 80);
    const apart = mill.costOfCloth(80, 140) + mill.costOfCloth(80, 20);
    expect(apart).toBeLessThan(alike);
  });
});
