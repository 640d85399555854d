/**
 * Fractions that a spreadsheet made dates of. It shows 1/2 as `2-Jan` (month first) or `1. Feb` (day first), 1/64 as
 * `Jan-64`, and with decimal commas even 2.5 as `02. Mai`. Month names in the tongues our readers' spreadsheets speak.
 */
const monthNames = [
  "jan january januar jän jänner janv janvier ene enero gen gennaio",
  "feb february februar febr févr février febrero febbraio",
  "mar march mär märz mrz mars marzo mrt maart",
  "apr april avr avril abr abril aprile",
  "may mai mayo mag maggio mei",
  "jun june juni juin junio giu giugno",
  "jul july juli juil juillet julio lug luglio",
  "aug august août ago agosto augustus",
  "sep sept september septembre septiembre set settembre",
  "oct october okt oktober octobre octubre ott ottobre",
  "nov november novembre noviembre",
  "dec december dez dezember déc décembre dic diciembre dicembre",
] as const;

const months = new Map(
  monthNames.flatMap((names, index) => names.split(" ").map((name) => [name, index + 1])),
);

/** Whether a word, in lower case, is the name of a month or its first letters. */
export function isMonthName(word: string): boolean {
  return months.has(word);
}

/** A date as its numbers; what the text leaves out is null. */
type WrittenDate = {
  readonly day: number | null;
  readonly month: number;
  readonly year: number | null;
  /** Written with full stops, as where 2.5 is a date. */
  readonly dotted: boolean;
};

/** `undefined`: no date. Else what it may have been before, or null when nothing likely fits. Takes lower case. */
export function fractionBehindDate(text: string): string | null | undefined {
  const date = readDate(text.replace(/[‐‑‒–—−]/g, "-"));
  return date && likelyFraction(date);
}

function readDate(text: string): WrittenDate | undefined {
  const date = namedDate(text) ?? numberedDate(text);
  return date && date.month >= 1 && date.month <= 12 && (date.day ?? 1) <= 31 ? date : undefined;
}

const dayThenMonth = /^(\d{1,2})([-./ ]{0,2})(\p{L}{3,10})\.?(?:[-./ ]{1,2}(\d{2}|\d{4}))?$/u;
const monthThenNumber = /^(\p{L}{3,10})\.?[-./ ]{0,2}(\d{4}|\d{1,2})$/u;

function namedDate(text: string): WrittenDate | undefined {
  const [, day, between, name, year] = dayThenMonth.exec(text) ?? [];
  const month = months.get(name ?? "");
  if (day !== undefined && month !== undefined) {
    return {
      day: Number(day),
      month,
      year: year ? Number(year) : null,
      dotted: between?.includes(".") ?? false,
    };
  }
  const [, first, number] = monthThenNumber.exec(text) ?? [];
  const firstMonth = months.get(first ?? "");
  if (firstMonth === undefined) return undefined;
  return monthAndNumber(firstMonth, Number(number));
}

// `Jan-02` is the second of January or January 2002: either way 1/2 was typed. Only years reach past 31.
function monthAndNumber(month: number, number: number): WrittenDate {
  return number > 31
    ? { day: 1, month, year: number, dotted: false }
    : { day: number, month, year: null, dotted: false };
}

const yearFirst = /^(\d{4})([-./])(\d{1,2})\2(\d{1,2})(?:[t ]\d{1,2}:\d{2}.*)?$/;
const yearLast = /^(\d{1,2})([-./]) ?(\d{1,2})\2 ?(\d{2}|\d{4})(?: \d{1,2}:\d{2}.*)?$/;
const noYear = /^(\d{1,2})\. ?(\d{1,2})\.$/;

function numberedDate(text: string): WrittenDate | undefined {
  const [, year, , month, day] = yearFirst.exec(text) ?? [];
  if (year !== undefined)
    return { day: Number(day), month: Number(month), year: Number(year), dotted: false };
  const [, first, sign, second, lastYear] = yearLast.exec(text) ?? [];
  if (lastYear !== undefined)
    return dayAndMonth(Number(first), Number(second), Number(lastYear), sign === ".");
  const [, dottedDay, dottedMonth] = noYear.exec(text) ?? [];
  if (dottedDay === undefined) return undefined;
  return dayAndMonth(Number(dottedDay), Number(dottedMonth), null, true);
}

// Either may come first; for the fraction behind it the order makes no difference, for its being a month it does.
function dayAndMonth(first: number, second: number, year: number | null, dotted: boolean): WrittenDate {
  return second > 12
    ? { day: second, month: first, year, dotted }
    : { day: first, month: second, year, dotted };
}

function likelyFraction({ day, month, year, dotted }: WrittenDate): string | null {
  const pairs: (readonly [number, number])[] =
    day === null ? [] : [[Math.min(day, month), Math.max(day, month)]];
  // A number that can be no day became a year, and the day the first: 1/64 is January 1964, 3/16 March 2016.
  if (day === 1 && year !== null) pairs.push([month, year % 100]);
  const onRuler = pairs.find(isRulerFraction);
  if (onRuler) return onRuler.join("/");
  if (dotted && day !== null) return `${day}.${month}`;
  return pairs.find(([over, under]) => over > 0 && over < under)?.join("/") ?? null;
}

function isRulerFraction([over, under]: readonly [number, number]): boolean {
  return over < under && over % 2 === 1 && [2, 4, 8, 16, 32, 64].includes(under);
}
