/**
 * The markers' codes: dictionary ARUCO MIP_36h12, six rows of six cells from the top left, 1 is white. Any two differ
 * in at least 12 cells however they are turned, so that neither a print nor a shadow makes one of another.
 * Source: Garrido-Jurado, Muñoz-Salinas, Madrid-Cuevas, Medina-Carnicer, Pattern Recognition 51, 2016; the numbers as
 * in OpenCV's predefined dictionary DICT_ARUCO_MIP_36h12.
 */
const codes: ReadonlyMap<number, string> = new Map([
  [0, "110100 101011 011000 111010 000010 011101"],
  [1, "011000 000000 000100 010011 010011 100101"],
  [2, "000100 100000 011011 111011 111001 110010"],
  [3, "111111 111000 101011 010110 110010 110100"],
  [10, "111010 101100 001010 111110 011101 101101"],
  [11, "000110 101111 011000 010101 110001 000100"],
  [12, "101101 001000 101001 001001 111100 100111"],
  [13, "001011 100100 111000 010010 100000 111011"],
  [14, "011110 001011 000111 110010 111110 101000"],
  [15, "001001 111101 001101 001111 010101 111110"],
  [16, "100010 010010 001000 101111 111111 110001"],
  [17, "010011 000001 011001 101001 010000 000110"],
]);

/** Cells along one side of a marker: six of its code between two of its black frame. */
export const cellsAlongMarker = 8;

/** Of every marker there is, in the order of the pages. */
export const markerIds: readonly number[] = [...codes.keys()];

/** Whether a marker's cell is black, `row` and `column` from 0 at the top left of its frame. */
export function isBlack(id: number, row: number, column: number): boolean {
  const inside = (at: number) => at > 0 && at < cellsAlongMarker - 1;
  if (!inside(row) || !inside(column)) return true;
  return codes.get(id)?.split(" ")[row - 1]?.[column - 1] === "0";
}
