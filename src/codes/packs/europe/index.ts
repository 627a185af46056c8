/** EN 1991-1-4 and EN 1995-1-1 with their recommended values. */
import { catalogueWith } from "../../../catalogue/own-figures.ts";
import { enCombined } from "../../../equations/screws/en-combined.ts";
import type { Project } from "../../../project/schema/project.ts";
import { codeValue } from "../../rule-value.ts";
import type { StructurePack, TimberDemand } from "../pack.ts";
import { product } from "../product.ts";
import { byDensity } from "../woods.ts";
import { europeHead, europeShear, europeWithdrawal } from "./screws.ts";
import { europeWind } from "./wind.ts";

function europeTimber(project: Project): TimberDemand {
  const { europe } = catalogueWith(project.figures)["code-packs"];
  const duration = codeValue(project.limits.timberService === "dry" ? europe.shortDry : europe.shortWet);
  const safety = codeValue(europe.timberSafety);
  const design = product(duration, { ...safety, value: 1 / safety.value });
  return {
    bending: design,
    fastening: design,
    characteristic: design,
    lowest: { bending: codeValue(europe.lowestBending), modulus: codeValue(europe.lowestModulus) },
    unnamed: byDensity(codeValue(europe.unnamedDensity)),
    withdrawal: undefined,
  };
}

export const EUROPE: StructurePack = {
  codes: ["europe-en-1991-1-4"],
  woodBy: "density",
  wind: europeWind,
  timber: europeTimber,
  withdrawal: europeWithdrawal,
  headThroughWood: europeHead,
  shear: europeShear,
  combined: enCombined,
  sagSpanOver: () => undefined,
};
