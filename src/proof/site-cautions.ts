/** P019: what always holds on such a site, one line a subject. Local rules and licensed practice come first. */
import { type Finding, finding } from "../findings/finding.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";

/** What people write of the material and the finish, in the two languages of the project file. */
const CEMENT = /cement|ciment/i;
const CHARRED = /\bchar|\bbrûl|\bbrul/i;
const OILED = /\boil|\bhuil/i;

export function siteCautions({ project, zones, demands }: ProofContext): Finding[] {
  const cautions: { subject: string; path: string }[] = [];
  project.claddings.forEach((cladding, index) => {
    const path = `/claddings/${index}`;
    if (cladding.kind === "sheets" && CEMENT.test(cladding.material)) {
      cautions.push({ subject: "silica-dust", path: `${path}/material` });
    }
    const finish = cladding.kind === "boards" ? (cladding.finish ?? "") : "";
    if (CHARRED.test(finish)) cautions.push({ subject: "flame", path: `${path}/finish` });
    if (OILED.test(finish)) cautions.push({ subject: "oily-rags", path: `${path}/finish` });
  });
  const high = zones.find(({ pieces, face }) => {
    const ground = Math.min(...face.ground.map(([, y]) => y));
    return pieces.some(({ outline }) => polygonBounds(outline).y[1] - ground > demands.fallHeightMm);
  });
  if (high) cautions.push({ subject: "heights", path: high.facePath });
  const once = cautions.filter(
    (one, index) => cautions.findIndex(({ subject }) => subject === one.subject) === index,
  );
  return once.map(({ subject, path }) =>
    finding({
      code: "P019",
      outcome: "attention",
      where: { path },
      says: message(`proof.caution.${subject}`, { height: demands.fallHeightMm }),
      hint: message("proof.caution.local-rules"),
      source: { kind: "common practice" },
    }),
  );
}
