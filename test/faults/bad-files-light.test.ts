/** Bad values in what the file says of light: the ground, the eaves, the dose that the membrane stands. */
import { describe, it } from "vitest";
import { add, type BadFile, expectTold, replace } from "./bad-files-harness.ts";

const shares = (values: readonly number[]) => ({ values, basis: "given" });
const year = (share: number): number[] => new Array<number>(12).fill(share);

const BAD: readonly BadFile[] = [
  {
    kind: "ground that throws back more than it gets",
    by: [add("/site/climate/groundReflectance", shares([...year(0.2).slice(1), 1.2]))],
    code: "F006",
    path: "/site/climate/groundReflectance/values/11",
    value: "1.2",
    mend: "1",
  },
  {
    kind: "ultraviolet that the ground swallows twice",
    by: [add("/site/climate/groundUvReflectance", shares([-0.1, ...year(0.05).slice(1)]))],
    code: "F006",
    path: "/site/climate/groundUvReflectance/values/0",
    value: "-0.1",
    mend: "0",
  },
  {
    kind: "a membrane that stands no ultraviolet at all",
    by: [replace("/limits/membrane/maxUvPerYear/value", 0)],
    code: "F006",
    path: "/limits/membrane/maxUvPerYear/value",
    value: "0",
    mend: "0",
  },
  {
    kind: "eaves that do not stand out",
    by: [add("/faces/1/eaves", { depth: 0, y: 3100 })],
    code: "F006",
    path: "/faces/1/eaves/depth",
    value: "0",
    mend: "0",
  },
  {
    kind: "eaves under the wall's foot",
    by: [add("/faces/1/eaves", { depth: 600, y: -200 })],
    code: "F033",
    path: "/faces/1/eaves/y",
    value: "-200",
    valueFr: "-200",
    mend: "3010",
  },
];

describe("light", () => {
  it.each(BAD)("$kind", (bad) => {
    expectTold(bad);
  });
});
