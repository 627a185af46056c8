/**
 * Puts an edit that mends a step into the project and sets the whole wall out with it, to see what becomes worse. The
 * search keeps its own rules; boards and sheets that move can still upset an edge distance.
 */
import { demandsOf } from "../codes/demands.ts";
import type { Finding, PatchOperation } from "../findings/finding.ts";
import { checkProject } from "../project/check.ts";
import { applyPatch } from "../project/edit.ts";
import type { Project } from "../project/schema/project.ts";
import type { Facade } from "./facade.ts";
import { setOut } from "./set-out.ts";

/** What is worse than it was, empty where the edit holds; undefined where it cannot be tried, or not any more. */
export type Trial = readonly Finding[] | undefined;

/**
 * Tries edits, each once.
 * @param most how often the whole project may be set out
 */
export function stepTrials(
  { project, facade }: { readonly project: Project; readonly facade: Facade },
  most: number,
): (edit: readonly PatchOperation[]) => Trial {
  const before = byPlace(facade.findings);
  const known = new Map<string, Trial>();
  const attempt = (edit: readonly PatchOperation[]): Trial => {
    const patched = applyPatch(project, edit);
    if (!patched.ok) return undefined;
    const edited = patched.document as Project;
    const file = { name: project.title, document: edited };
    const refused = checkProject(file, edited).filter(({ outcome }) => outcome === "fail");
    if (refused.length > 0) return refused;
    const after = setOut(edited, demandsOf(edited));
    return [...byPlace(after.findings)].flatMap(([place, { worst, severity, blocking }]) => {
      const was = before.get(place) ?? NOT_FOUND_BEFORE;
      return severity <= was.severity && blocking <= was.blocking ? [] : [worst];
    });
  };
  return (edit) => {
    const key = JSON.stringify(edit);
    if (known.has(key)) return known.get(key);
    if (known.size >= most) return undefined;
    const trial = attempt(edit);
    known.set(key, trial);
    return trial;
  };
}

interface AtPlace {
  readonly worst: Finding;
  readonly severity: number;
  readonly blocking: number;
}

const SEVERITY: Readonly<Record<Finding["outcome"], number>> = {
  "not applicable": 0,
  pass: 0,
  attention: 1,
  "cannot evaluate": 2,
  fail: 3,
};

/** What appears anew may deserve attention, which the choice says, and no more. */
const NOT_FOUND_BEFORE = { severity: SEVERITY.attention, blocking: 0 } as const;

/** A deeper cavity asks more of the slot under the roof, which is what it was: that is no harm done by the choice. */
const ROOF_EDGE: Finding["code"] = "S025";

/** The worst finding of each rule at each place, and how many there are that block. */
function byPlace(findings: readonly Finding[]): Map<string, AtPlace> {
  const places = new Map<string, AtPlace>();
  for (const one of findings) {
    const { code, outcome, where } = one;
    if (code === ROOF_EDGE) continue;
    const { face, zone = "", opening = "", path = "" } = where;
    const place = [code, ...(face === undefined ? [path] : [face, zone, opening])].join(" ");
    const severity = SEVERITY[outcome];
    const blocks = Number(severity > SEVERITY.attention);
    const known = places.get(place);
    if (!known) places.set(place, { worst: one, severity, blocking: blocks });
    else {
      const { worst, blocking } = known;
      const worse = severity > known.severity;
      places.set(place, {
        worst: worse ? one : worst,
        severity: Math.max(known.severity, severity),
        blocking: blocking + blocks,
      });
    }
  }
  return places;
}
