/** How high cladding stays over what rain splashes up from, by the cover at the foot of the wall. */
import { clearance } from "../catalogue/clearances.ts";
import { catalogueWith } from "../catalogue/own-figures.ts";
import type { Face, Project } from "../project/schema/project.ts";
import { ownFirst, type RuleValue, ruleValue } from "./rule-value.ts";

/** A gravel strip narrower than this takes nothing off the splash: German facade handbook. */
export const GRAVEL_STRIP_MM = 200;

type Splash = NonNullable<Face["splash"]>;

/** Rules for this cover alone (mm); the plain rule on ground holds beside them. */
export function splashRules(project: Pick<Project, "site" | "figures">, splash: Splash): RuleValue[] {
  const catalogue = catalogueWith(project.figures);
  const { cover, width = 0 } = splash;
  const strip = cover === "gravel" && width >= GRAVEL_STRIP_MM;
  const asked = [
    ...(cover === "deck"
      ? []
      : [{ jurisdiction: "germany", kind: strip ? "ground-gravel-strip" : "ground" } as const]),
    ...(cover === "paving" ? [{ jurisdiction: "new-zealand", kind: "ground-paved" } as const] : []),
    ...(cover === "lawn" || cover === "soil" || cover === "gravel"
      ? [{ jurisdiction: "new-zealand", kind: "ground-unpaved" } as const]
      : []),
    ...(cover === "deck"
      ? [
          { jurisdiction: "usa", kind: "deck" } as const,
          { jurisdiction: "new-zealand", kind: "deck" } as const,
        ]
      : []),
  ];
  return ownFirst(
    asked.flatMap(({ jurisdiction, kind }) => {
      const figure = clearance({ jurisdiction, kind }, catalogue)?.figures[0];
      return figure ? [ruleValue(figure, { id: `${jurisdiction}-${kind}`, jurisdiction, project })] : [];
    }),
  );
}
