import { describe, expect, it } from "vitest";
import { madeJob } from "../../../test/made/cloth.ts";
import { pricesAllOver, pricesFor, pricesInRoom } from "./prices.ts";
import { stockOf } from "./stock.ts";
import { twigsFor } from "./twig.ts";

const usual = pricesFor([]);

describe("prices", () => {
  // Room and leftovers in any unit of area.
  const cases = [
    { room: 100, leftovers: 130, dearerTrims: false, lighterBits: false },
    { room: 100, leftovers: 110, dearerTrims: false, lighterBits: false },
    { room: 100, leftovers: 109, dearerTrims: false, lighterBits: true },
    { room: 100, leftovers: 100, dearerTrims: false, lighterBits: true },
    { room: 109, leftovers: 100, dearerTrims: false, lighterBits: true },
    { room: 110, leftovers: 100, dearerTrims: true, lighterBits: false },
    { room: 125, leftovers: 100, dearerTrims: true, lighterBits: false },
  ];
  it.each(cases)("with room $room for $leftovers", ({ dearerTrims, lighterBits, room, leftovers }) => {
    const prices = pricesAllOver(usual, { share: leftovers / room, pieces: 60 });
    const { bit, trimArea, trimPiece, stripEnd, clothSide, ...others } = prices;
    expect(trimArea > usual.trimArea).toBe(dearerTrims);
    expect(trimPiece > usual.trimPiece).toBe(dearerTrims);
    expect(stripEnd > usual.stripEnd).toBe(dearerTrims);
    expect(clothSide > usual.clothSide).toBe(dearerTrims);
    expect(bit < usual.bit).toBe(lighterBits);
    expect({ ...usual, ...others }).toEqual(usual);
  });

  it("a few pieces that are just enough have the usual prices", () => {
    expect(pricesAllOver(usual, { share: 1, pieces: 20 })).toEqual(usual);
  });

  it("of plain cloth in plenty of room: a large cell with a small one costs less than two alike", () => {
    const mill = twigsFor({ ...stockOf(madeJob([])), prices: pricesInRoom(usual) });
    const alike = 2 * mill.costOfCloth(80, 80);
    const apart = mill.costOfCloth(80, 140) + mill.costOfCloth(80, 20);
    expect(apart).toBeLessThan(alike);
  });
});
