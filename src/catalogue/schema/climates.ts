/** `data/climates.json`: monthly normals of places, and the moisture content wood keeps outdoors. */
import * as z from "zod";
import { figureSchema, idSchema, monthlySchema, rangeSchema } from "./figure.ts";

const climateSchema = z.strictObject({
  id: idSchema,
  country: z.string().regex(/^[A-Z]{2}$/),
  latitude: figureSchema,
  /** East is positive. */
  longitude: figureSchema,
  meanTemperature: monthlySchema,
  extremeTemperature: rangeSchema,
  precipitation: monthlySchema,
  rainfall: monthlySchema,
  snowDepth: monthlySchema,
  relativeHumidity: monthlySchema,
  windSpeed: figureSchema,
  /** Degrees from north, clockwise. */
  windFrom: figureSchema,
});
const outdoorMoistureSchema = z.strictObject({ id: idSchema, country: z.string(), moisture: monthlySchema });
const outdoorMoistureSpanSchema = z.strictObject({
  id: idSchema,
  country: z.string(),
  period: z.enum(["november-june", "july-october", "summer", "winter"]),
  moisture: rangeSchema,
});

export const climatesFileSchema = z.strictObject({
  climates: z.array(climateSchema),
  outdoorMoisture: z.array(outdoorMoistureSchema),
  outdoorMoistureSpans: z.array(outdoorMoistureSpanSchema),
  /** Yearly driving-rain index from which a place is moderately or severely exposed. */
  drivenRain: z.strictObject({ moderate: figureSchema, severe: figureSchema }),
});
export type ClimatesFile = z.infer<typeof climatesFileSchema>;
export type Climate = z.infer<typeof climateSchema>;
export type OutdoorMoisture = z.infer<typeof outdoorMoistureSchema>;
export type OutdoorMoistureSpan = z.infer<typeof outdoorMoistureSpanSchema>;
