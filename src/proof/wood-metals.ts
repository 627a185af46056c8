/** P039: tannin and acids of a wood against the metal of the screws that hold its boards. */
import { BARE_OR_OILED, suits, woodAsks } from "../codes/metals.ts";
import { speciesNamed } from "../codes/species-named.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";

/** What people write of an oiled or bare face, in the two languages of the project file. */
const OILED = /\boil|\bhuil|\bbare|\bnu\b|\bnon traité/i;

export function woodMetals({ project, demands }: ProofContext): Finding[] {
  return project.claddings.flatMap((cladding, index) => {
    if (cladding.kind !== "boards") return [];
    const path = `/claddings/${index}`;
    const at = project.stock.screws.findIndex(({ id }) => id === cladding.screw);
    const metal = project.stock.screws[at]?.metal;
    if (metal === undefined) {
      return [
        finding({
          code: "P039",
          outcome: "cannot evaluate",
          where: { path: at < 0 ? `${path}/screw` : `/stock/screws/${at}/metal` },
          says: message("proof.tannin.no-metal", { screw: cladding.screw }),
          hint: message("proof.corrosion.enter-metal"),
          source: { kind: "common practice" },
        }),
      ];
    }
    const metalName = message(`proof.metal.${metal.replaceAll(" ", "-")}`);
    const woods = (demands.boards[cladding.id]?.woods ?? []).map((wood) => {
      const { asks, source } = woodAsks(wood.name);
      const suited = suits(metal, asks);
      const known = speciesNamed(wood.name);
      return finding({
        code: "P039",
        outcome: suited ? "pass" : "fail",
        where: { path },
        says: message(suited ? "proof.tannin.suits" : "proof.tannin.stains", {
          wood: known ? message(`catalogue.species.${known.id}`) : wood.name,
          metal: metalName,
        }),
        ...(suited ? {} : { hint: message("proof.tannin.stainless") }),
        source,
      });
    });
    // The guidance speaks of two woods by name: what it does not name is a pass that nobody has confirmed.
    const judged = woods.map((one) => (one.outcome === "pass" ? { ...one, provisional: true } : one));
    if (!OILED.test(cladding.finish ?? "bare") || metal === "A4") return judged;
    return [
      ...judged,
      finding({
        code: "P039",
        outcome: "attention",
        where: { path: `${path}/finish` },
        says: message("proof.tannin.oiled", { metal: metalName }),
        source: BARE_OR_OILED,
      }),
    ];
  });
}
