import type { Reading } from "./reading.ts";

/** Readings without those that were taken back, and without what took them back. */
export function standingReadings<One extends Pick<Reading, "id" | "takesBack">>(readings: readonly One[]): One[] {
  const gone = new Set(readings.flatMap(({ takesBack }) => takesBack ?? []));
  return readings.filter(({ id: of, takesBack }) => takesBack === null && !gone.has(of));
}
