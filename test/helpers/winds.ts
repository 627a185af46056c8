/** Sites whose wind is known, one for each structural code. */
import type { Project } from "../../src/project/schema/project.ts";
import type { StructureCode } from "../../src/project/schema/wind.ts";

type SiteInWind = Pick<Project["site"], "wind" | "windPressure1in50Pa">;

const given = <Value>(value: Value) => ({ value, basis: "given" as const });
const building = {
  roofHeight: 6000,
  plan: [8000, 10_000] as [number, number],
  topography: given(1),
};

export const WINDS: Readonly<Record<StructureCode, SiteInWind>> = {
  "canada-nbc-2020": {
    windPressure1in50Pa: given(440),
    wind: {
      ...building,
      code: "canada-nbc-2020",
      terrain: "open",
      importance: "normal",
      enclosure: "partially enclosed",
    },
  },
  "usa-asce-7-16": {
    wind: {
      ...building,
      code: "usa-asce-7-16",
      terrain: "C",
      enclosure: "enclosed",
      speedMPerS: given(51.4),
    },
  },
  "usa-asce-7-22": {
    wind: {
      ...building,
      code: "usa-asce-7-22",
      terrain: "B",
      enclosure: "enclosed",
      speedMPerS: given(51.4),
    },
  },
  "europe-en-1991-1-4": {
    wind: {
      ...building,
      code: "europe-en-1991-1-4",
      terrain: "III",
      enclosure: "enclosed",
      speedMPerS: given(22),
    },
  },
};
