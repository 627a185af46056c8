/** Meter readings of boards as they are fixed, corrected, and summed for each cladding. */
import { meterMoisture } from "../../equations/meter-moisture.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import type { EntryOf } from "../journal/entry.ts";

export interface CorrectedReading {
  readonly entry: EntryOf<"moisture">;
  /** Undefined where it cannot be said whose wood was read. */
  readonly cladding: string | undefined;
  /** Moisture content (%); undefined where `lacks` says what is missing. */
  readonly percent: number | undefined;
  readonly lacks: readonly ("temperature" | "calibration")[];
  /** Points of percent for the species; undefined where the meter's chart is not told: none are added then. */
  readonly points: number | undefined;
}

export interface FixingMoisture {
  readonly cladding: string;
  readonly count: number;
  readonly mean: number;
  readonly least: number;
  readonly most: number;
  /** Standard deviation of one reading; undefined of one alone. */
  readonly deviation: number | undefined;
}

export function correctedReadings(
  { project, facade }: { readonly project: Project; readonly facade: Facade },
  readings: readonly EntryOf<"moisture">[],
): CorrectedReading[] {
  const { moistureMeter: meter, claddings } = project;
  return readings.map((entry): CorrectedReading => {
    const { meterPercent, temperatureC, species } = entry.body;
    const cladding = claddingAt(facade, entry);
    const own = claddings.find(({ id }) => id === cladding);
    const wood = species ?? (own?.kind === "boards" ? own.species : undefined);
    const points = meter?.species?.find((one) => one.species === wood)?.points;
    const calibratedC = meter?.calibratedAtC;
    const percent =
      temperatureC === undefined || calibratedC === undefined
        ? undefined
        : meterMoisture({ meterPercent, calibratedC, woodC: temperatureC, speciesPoints: points ?? 0 });
    return {
      entry,
      cladding,
      percent,
      lacks: [
        ...(temperatureC === undefined ? (["temperature"] as const) : []),
        ...(calibratedC === undefined ? (["calibration"] as const) : []),
      ],
      points,
    };
  });
}

/** Of the piece that was read, or of the one board cladding of its face. */
function claddingAt(facade: Facade, { place }: EntryOf<"moisture">): string | undefined {
  const faces = place.face === undefined ? facade.faces : facade.faces.filter(({ id }) => id === place.face);
  if (place.piece !== undefined) {
    for (const { pieces, zones } of faces) {
      const piece = pieces.find(({ mark }) => mark === place.piece);
      if (piece) return piece.cladding ?? zones.find(({ id }) => id === piece.zone)?.cladding;
    }
    return undefined;
  }
  if (place.face === undefined) return undefined;
  const clad = new Set(
    faces.flatMap(({ pieces, zones }) =>
      pieces
        .filter(({ kind }) => kind === "board")
        .map(({ cladding, zone }) => cladding ?? zones.find(({ id }) => id === zone)?.cladding),
    ),
  );
  return clad.size === 1 ? [...clad][0] : undefined;
}

/** One for each cladding that was read, in the order of the project; readings that lack something are left out. */
export function fixingMoisture(project: Project, readings: readonly CorrectedReading[]): FixingMoisture[] {
  return project.claddings.flatMap(({ id }): FixingMoisture[] => {
    const values = readings.flatMap(({ cladding, percent }) =>
      cladding === id && percent !== undefined ? [percent] : [],
    );
    if (values.length === 0) return [];
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    return [
      {
        cladding: id,
        count: values.length,
        mean,
        least: Math.min(...values),
        most: Math.max(...values),
        deviation: values.length > 1 ? Math.sqrt(squares / (values.length - 1)) : undefined,
      },
    ];
  });
}
