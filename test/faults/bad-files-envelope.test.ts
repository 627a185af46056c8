/** Bad values in what the file says of weather, metals, heat and water. */
import { describe, it } from "vitest";
import { add, type BadFile, expectTold, replace } from "./bad-files-harness.ts";

const BAD: readonly BadFile[] = [
  {
    kind: "wind from past the compass",
    by: [replace("/site/climate/wind/fromDeg", 400)],
    code: "F006",
    path: "/site/climate/wind/fromDeg",
    value: "400",
    mend: "360",
  },
  {
    kind: "no wind at all",
    by: [replace("/site/climate/wind/meanMPerS", 0)],
    code: "F006",
    path: "/site/climate/wind/meanMPerS",
    value: "0",
    mend: "0",
  },
  {
    kind: "a sea at a distance under nothing",
    by: [replace("/site/exposure/seaKm", -1)],
    code: "F006",
    path: "/site/exposure/seaKm",
    value: "-1",
    mend: "0",
  },
  {
    kind: "air beyond the end of the table",
    by: [replace("/site/exposure/sulphurDioxideUgPerM3", 300)],
    code: "F006",
    path: "/site/exposure/sulphurDioxideUgPerM3",
    value: "300",
    mend: "250",
  },
  {
    kind: "a rule set that is not known",
    by: [replace("/limits/cavityRules", "canada-nbcc")],
    code: "F007",
    path: "/limits/cavityRules",
    value: "canada-nbcc",
    mend: "canada-nbc",
    edit: [replace("/limits/cavityRules", "canada-nbc")],
  },
  {
    kind: "vents left more than open",
    by: [replace("/limits/ventsLeftOpen/value", 80)],
    code: "F006",
    path: "/limits/ventsLeftOpen/value",
    value: "80",
    mend: "1",
  },
  {
    kind: "a metal that is not known",
    by: [replace("/stock/screws/0/metal", "stainless")],
    code: "F007",
    path: "/stock/screws/0/metal",
    value: "stainless",
    mend: "A4",
  },
  {
    kind: "insulation that conducts like metal",
    by: [replace("/buildUps/0/layers/0/conductivityWPerMK", 36)],
    code: "F006",
    path: "/buildUps/0/layers/0/conductivityWPerMK",
    value: "36",
    mend: "5",
  },
  {
    kind: "a lap of nothing",
    by: [add("/buildUps/0/layers/1/laps", { level: 0, upright: 150 })],
    code: "F006",
    path: "/buildUps/0/layers/1/laps/level",
    value: "0",
    mend: "0",
  },
  {
    kind: "a cover that is not known",
    by: [replace("/faces/1/splash/cover", "gravels")],
    code: "F007",
    path: "/faces/1/splash/cover",
    value: "gravels",
    mend: "gravel",
    edit: [replace("/faces/1/splash/cover", "gravel")],
  },
];

describe("weather, metals, heat and water", () => {
  it.each(BAD.map((bad) => [bad.kind, bad] as const))("%s", (_, bad) => expectTold(bad));
});
