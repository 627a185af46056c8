/** The first plan of a facade, as a reader sees it before any better one is found. */
import type { CutOutcome } from "../../src/cutting/facade/cut-facade.ts";
import { facadePlans } from "../../src/cutting/facade/facade-plans.ts";
import type { Project } from "../../src/project/schema/project.ts";
import type { Facade } from "../../src/setout/facade.ts";

export function firstPlan(project: Project, facade: Facade): CutOutcome {
  const { value } = facadePlans(project, facade).next();
  return typeof value === "function" ? value() : value;
}
