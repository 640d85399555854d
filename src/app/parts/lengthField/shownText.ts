import {
  type DisplayUnit,
  type Length,
  type LengthProblem,
  parseLength,
} from "../../../engine/length/index.ts";
import { type Measured, readMeasuredLength } from "../../../files/index.ts";

/**
 * What stands in the field: her own text. What she wrote without a unit while another was in use gets that unit, so
 * that 60 stays 60 in when she goes over to centimetres.
 */
export function shownText(measured: Measured<Length> | null, unit: DisplayUnit): string {
  if (measured === null) return "";
  const { text, unit: written, value } = measured;
  if (written === unit || value === null) return text;
  const now = parseLength(text, unit);
  return now.ok && now.value === value ? text : `${text.trim()} ${written}`;
}

/** Why a text is no length; null where it is one, or there is none. */
export function problemIn(measured: Measured<Length> | null): LengthProblem | null {
  if (measured === null || measured.value !== null) return null;
  const read = readMeasuredLength(measured.text, measured.unit);
  return read.ok ? null : read.error;
}

/** The readings she may have meant, to choose from; none where the text says nothing of the kind. */
export function readingsOf(problem: LengthProblem): readonly string[] {
  if (problem.kind === "ambiguous") return problem.readings;
  return problem.kind === "date" && problem.fraction !== null ? [problem.fraction] : [];
}
