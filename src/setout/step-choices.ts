/**
 * What would bring neighbouring zones that stand apart into one plane: the first combinations of the plane search that
 * hold once the whole project is set out with them, some with the lap of a corner turned; or why none does. Searching
 * and setting out again take longer than a design may, so `setOut` does not call this; docs/decisions/0007 says who does.
 */
import type { Demands } from "../codes/demands.ts";
import { type Choice, type Finding, finding } from "../findings/finding.ts";
import type { Project } from "../project/schema/project.ts";
import type { Message } from "../text/message.ts";
import type { Facade } from "./facade.ts";
import { type PassingCombination, planeGroups, searchPlanes } from "./plane-search/index.ts";
import { turnedLaps } from "./step-laps.ts";
import { choiceSaid, noneSaid } from "./step-said.ts";
import { stepTrials, type Trial } from "./step-trials.ts";

/** Enough to choose from; the plane search itself tells all. */
const MOST_OFFERED = 3;
/** The ranks of a group that are set out. */
const MOST_TRIED = 8;
/** How often the whole project is set out, and how many faces in all, unless that is too few for one finding. */
const MOST_SET_OUTS = 48;
const MOST_FACES_SET_OUT = 300;
/** A row of many houses shares its build-ups: its first groups of zones tell what there is to tell. */
const MOST_GROUPS = 8;

export interface StepChoicesRequest {
  readonly project: Project;
  readonly demands: Demands;
  /** Set out from both. */
  readonly facade: Facade;
}

/** Findings of the facade on steps that fail, each with the same finding that says what mends it, or that nothing does. */
export function stepChoices(request: StepChoicesRequest): ReadonlyMap<Finding, Finding> {
  const { project, facade } = request;
  const failing = facade.findings.filter(({ code, outcome }) => code === "S007" && outcome === "fail");
  const offered = new Map<Finding, Finding>();
  if (failing.length === 0) return offered;
  const inReach = Math.floor(MOST_FACES_SET_OUT / facade.faces.length);
  const tryOut = stepTrials(request, Math.min(MOST_SET_OUTS, Math.max(MOST_OFFERED, inReach)));
  for (const zones of planeGroups(project).filter(apart(failing)).slice(0, MOST_GROUPS)) {
    const result = searchPlanes({ ...request, zones, show: { passing: MOST_TRIED, failing: 1 } });
    const tries: Tried[] = [];
    const straight: Choice[] = [];
    for (const one of result.passing) {
      if (straight.length === MOST_OFFERED) break;
      const upsets = tryOut(one.edit);
      tries.push({ one, upsets });
      if (upsets?.length === 0) straight.push({ says: choiceSaid(project, one), edit: one.edit });
    }
    const choices = straight.length > 0 ? straight : withLaps(project, tries, tryOut);
    const settled = mended(choices) ?? refused(project, result, tries);
    if (!settled) continue;
    for (const found of failing.filter((one) => apart([one])(zones)))
      offered.set(found, finding({ ...found, ...settled }));
  }
  return offered;
}

interface Tried {
  readonly one: PassingCombination;
  readonly upsets: Trial;
}

type Settled = Pick<Finding, "hint" | "edit" | "choices">;

function mended(choices: readonly Choice[]): Settled | undefined {
  const [first] = choices;
  return first?.edit && { hint: first.says, edit: first.edit, choices };
}

/** Combinations that upset no more than the edges of sheets, each with one corner's lap turned. */
function withLaps(
  project: Project,
  tries: readonly Tried[],
  tryOut: ReturnType<typeof stepTrials>,
): Choice[] {
  const choices: Choice[] = [];
  for (const { one, upsets = [] } of tries) {
    for (const lap of turnedLaps(project, upsets)) {
      if (choices.length === MOST_OFFERED) return choices;
      const edit = [...one.edit, ...lap.edit];
      if (tryOut(edit)?.length === 0) choices.push({ says: choiceSaid(project, one, [lap.says]), edit });
    }
  }
  return choices;
}

function refused(
  project: Project,
  result: ReturnType<typeof searchPlanes>,
  tries: readonly Tried[],
): Settled | undefined {
  const set = tries.flatMap(({ upsets }) => (upsets ? [upsets] : []));
  const upsets: Message | undefined = set[0]?.[0]?.says;
  const hint = noneSaid(project, { result, tried: set.length, ...(upsets && { upsets }) });
  return hint && { hint };
}

/** Whether a group of zones has the place of one of the findings. */
function apart(findings: readonly Finding[]): (zones: ReturnType<typeof planeGroups>[number]) => boolean {
  return (zones) =>
    zones.some(({ face, zone }) => findings.some(({ where }) => where.face === face && where.zone === zone));
}
