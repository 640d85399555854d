import { describe, expect, it } from "vitest";
import { pricesFor, pricesInRoom } from "./prices.ts";

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
    const { trimArea, stripEnd, ...others } = pricesInRoom(usual, areas.leftovers / areas.room);
    expect(trimArea > usual.trimArea).toBe(dearer);
    expect(stripEnd > usual.stripEnd).toBe(dearer);
    expect({ ...usual, ...others }).toEqual(usual);
  });
});
