/** National Building Code of Canada 2020, with the Canadian standard of engineering in wood as far as it is known here. */
import { catalogueWith } from "../../../catalogue/own-figures.ts";
import type { Project } from "../../../project/schema/project.ts";
import { codeValue } from "../../rule-value.ts";
import type { StructurePack, TimberDemand } from "../pack.ts";
import { product } from "../product.ts";
import { byGravity } from "../woods.ts";
import { canadaCombined, canadaHead, canadaShear, canadaWithdrawal } from "./screws.ts";
import { canadaWind } from "./wind.ts";

function canadaTimber(project: Project): TimberDemand {
  const { canada } = catalogueWith(project.figures)["code-packs"];
  const wet = project.limits.timberService === "dry" ? [] : [codeValue(canada.wetTimber)];
  return {
    bending: product(codeValue(canada.bendingResistance), codeValue(canada.duration), ...wet),
    fastening: product(codeValue(canada.withdrawalResistance), codeValue(canada.duration), ...wet),
    characteristic: undefined,
    lowest: { bending: codeValue(canada.lowestBending), modulus: codeValue(canada.lowestModulus) },
    unnamed: byGravity(codeValue(canada.unnamedGravity)),
    withdrawal: codeValue(canada.withdrawalCoefficient),
  };
}

export const CANADA: StructurePack = {
  codes: ["canada-nbc-2020"],
  woodBy: "gravity",
  wind: canadaWind,
  timber: canadaTimber,
  withdrawal: canadaWithdrawal,
  headThroughWood: canadaHead,
  shear: canadaShear,
  combined: canadaCombined,
  sagSpanOver: () => undefined,
};
