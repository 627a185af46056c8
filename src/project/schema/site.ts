/** The place: climate, code family, programme. */
import * as z from "zod";
import { basis, figure, length, months, note } from "./values.ts";
import { wind } from "./wind.ts";

const monthly = z.looseObject({ values: months, basis, source: z.string().optional() });

const monthlyShare = monthly.extend({ values: z.array(z.number().min(0).max(1)).length(12) });

const climate = z.looseObject({
  meanTempC: monthly.optional(),
  meanRelativeHumidityPercent: monthly.optional(),
  precipitationMm: monthly.optional(),
  /** Rain alone, without snow. */
  rainfallMm: monthly.optional(),
  /** Mean of the year, and where it mostly comes from, degrees clockwise from north. */
  wind: z
    .looseObject({
      meanMPerS: z.number().positive().max(40),
      fromDeg: z.number().min(0).max(360),
      basis,
      source: z.string().optional(),
    })
    .optional(),
  snowDepthMm: monthly.optional(),
  /** Shares of light, and of ultraviolet, that the ground before the walls throws back; from the snow where absent. */
  groundReflectance: monthlyShare.optional(),
  groundUvReflectance: monthlyShare.optional(),
  extremeTempC: z
    .looseObject({ values: z.tuple([z.number(), z.number()]), basis, source: z.string().optional() })
    .optional(),
});

/** What eats metal: distances in kilometres, air in micrograms a cubic metre. */
const exposure = z.looseObject({
  note,
  seaKm: z.number().nonnegative(),
  /** Nearest road that is salted in winter; absent where there is none. */
  saltedRoadKm: z.number().nonnegative().optional(),
  /** Up to the end of the published table. */
  sulphurDioxideUgPerM3: z.number().min(0).max(250),
  basis,
  source: z.string().optional(),
});

export const site = z.looseObject({
  note,
  place: z.string().min(1),
  latitudeDeg: z.number().min(-90).max(90),
  longitudeDeg: z.number().min(-180).max(180),
  jurisdiction: z
    .enum([
      "canada",
      "united-states",
      "germany",
      "austria",
      "switzerland",
      "united-kingdom",
      "france",
      "sweden",
      "new-zealand",
      "other",
    ])
    .describe("Which family of published rules is shown first."),
  setting: z.string().optional(),
  climate: climate.optional(),
  exposure: exposure.optional(),
  /** Whether the place lies where wildfires drive embers. */
  wildfire: z.boolean().optional(),
  windPressure1in50Pa: figure.optional(),
  wind: wind.optional(),
  /** Weeks from the membrane's fixing to its covering, as planned. */
  weeksUncovered: z.number().nonnegative().optional(),
});

/** Roof edges that end the cladding. */
export const roof = z.looseObject({
  note,
  kind: z.string().min(1),
  /** The vent left between the cladding's top and the soffit. */
  topVentGap: length.optional(),
});
