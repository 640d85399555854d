/** Programs that must not compile. The type check reads this file: a line that does compile fails it. */

import type { Area, Cut, Finished, Length, Result } from "./index.ts";
import { area, cut, finished, inches, parseLength, share, sum, toCut, toFinished } from "./index.ts";

const size: Length = inches(4);
const shows: Finished = finished(size);
const toTheCutter: Cut = cut(size);
const surface: Area = area(size, size);

// A plain number is no length, cut or finished.
// @ts-expect-error
export const fromNumber: Length = 4;
// @ts-expect-error
export const cutFromNumber: Cut = 4;
// @ts-expect-error
export const finishedFromNumber: Finished = 4;

// Arithmetic on lengths gives a plain number: sums are made in length/, where they are checked.
// @ts-expect-error
export const added: Length = size + size;

// A finished size never goes to the cutter, nor a cut size into a layout.
// @ts-expect-error
export const cutTooSmall: Cut = shows;
// @ts-expect-error
export const shownTooLarge: Finished = toTheCutter;
// @ts-expect-error
export const seamsTwice: Cut = toCut(toTheCutter, inches(1, 4));
// @ts-expect-error
export const seamsTwiceLess: Finished = toFinished(shows, inches(1, 4));
// @ts-expect-error
export const nobodySaid: Cut = size;

// Sums and shares keep what they are made of.
// @ts-expect-error
export const mixed: Cut = sum([shows, shows]);
// @ts-expect-error
export const shared: Cut[] = share(shows, 3);

// A length is no area, an area no length.
// @ts-expect-error
export const flat: Length = surface;
// @ts-expect-error
export const thick: Area = size;

// What was read is a Result: nobody can forget that it may be no length.
// @ts-expect-error
export const unread: Length = parseLength("4", "in");
// @ts-expect-error
export const unit: Result<Length, unknown> = parseLength("4", "ft");

// And what must compile, so that the lines above are known to fail for their own reason.
export const right = [toCut(shows, inches(1, 4)), toTheCutter, cut(shows)] satisfies Cut[];
export const shownRight = [toFinished(toTheCutter, inches(1, 4)), ...share(shows, 3)] satisfies Finished[];
export const lengths: Length[] = [shows, toTheCutter];
