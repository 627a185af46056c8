/** ASCE 7 of 2016 and of 2022, with the National Design Specification of 2018, on the level of allowable stress. */
import { catalogueWith } from "../../../catalogue/own-figures.ts";
import { ndsCombined } from "../../../equations/screws/nds-combined.ts";
import type { Project } from "../../../project/schema/project.ts";
import { codeValue } from "../../rule-value.ts";
import type { StructurePack, TimberDemand } from "../pack.ts";
import { product } from "../product.ts";
import { byGravity } from "../woods.ts";
import { unitedStatesHead, unitedStatesShear, unitedStatesWithdrawal } from "./screws.ts";
import { unitedStatesWind } from "./wind.ts";

function unitedStatesTimber(project: Project): TimberDemand {
  const { unitedStates: code } = catalogueWith(project.figures)["code-packs"];
  const dry = project.limits.timberService === "dry";
  const duration = codeValue(code.duration);
  return {
    bending: dry ? duration : product(duration, codeValue(code.wetBending)),
    fastening: dry ? duration : product(duration, codeValue(code.wetTimber)),
    characteristic: undefined,
    lowest: { bending: codeValue(code.lowestBending), modulus: codeValue(code.lowestModulus) },
    unnamed: byGravity(codeValue(code.unnamedGravity)),
    withdrawal: undefined,
  };
}

export const UNITED_STATES: StructurePack = {
  codes: ["usa-asce-7-16", "usa-asce-7-22"],
  woodBy: "gravity",
  wind: unitedStatesWind,
  timber: unitedStatesTimber,
  withdrawal: unitedStatesWithdrawal,
  headThroughWood: unitedStatesHead,
  shear: unitedStatesShear,
  combined: ndsCombined,
  sagSpanOver: (project) => codeValue(catalogueWith(project.figures)["code-packs"].unitedStates.sagSpanOver),
};
