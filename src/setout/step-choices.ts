/**
 * What would bring neighbouring zones that stand apart into one plane: the first combinations of the plane search that
 * hold once the whole project is set out with them. Searching and setting out again take longer than a design may, so
 * `setOut` does not call this; docs/decisions/0007 says who does.
 */
import { type Demands, demandsOf } from "../codes/demands.ts";
import { type Choice, type Finding, finding } from "../findings/finding.ts";
import { checkProject } from "../project/check.ts";
import { applyPatch } from "../project/edit.ts";
import type { BuildUp, Project } from "../project/schema/project.ts";
import { type Message, message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import type { Facade } from "./facade.ts";
import { type PassingCombination, planeGroups, searchPlanes } from "./plane-search/index.ts";
import { setOut } from "./set-out.ts";

/** Enough to choose from; the plane search itself tells all. */
const MOST_OFFERED = 3;
/** The ranks of a group that are set out. */
const MOST_TRIED = 8;
/** How often the whole project is set out, and how many faces in all, unless that is too few for one finding. */
const MOST_SET_OUTS = 24;
const MOST_FACES_SET_OUT = 300;
/** A row of many houses shares its build-ups: its first groups of zones tell what there is to tell. */
const MOST_GROUPS = 8;

export interface StepChoicesRequest {
  readonly project: Project;
  readonly demands: Demands;
  /** Set out from both. */
  readonly facade: Facade;
}

/** Findings of the facade on steps that fail, each with the same finding that offers its choices; none where all meet. */
export function stepChoices(request: StepChoicesRequest): ReadonlyMap<Finding, Finding> {
  const { project, facade } = request;
  const failing = facade.findings.filter(({ code, outcome }) => code === "S007" && outcome === "fail");
  const offered = new Map<Finding, Finding>();
  if (failing.length === 0) return offered;
  const holds = trials(request);
  for (const zones of planeGroups(project).filter(apart(failing)).slice(0, MOST_GROUPS)) {
    const { passing } = searchPlanes({ ...request, zones, show: { passing: MOST_TRIED, failing: 0 } });
    const choices: Choice[] = [];
    for (const one of passing) {
      if (choices.length < MOST_OFFERED && holds(one))
        choices.push({ says: choiceSaid(project, one), edit: one.edit });
    }
    const [first] = choices;
    if (!first?.edit) continue;
    for (const found of failing.filter((one) => apart([one])(zones)))
      offered.set(found, finding({ ...found, hint: first.says, edit: first.edit, choices }));
  }
  return offered;
}

/** Whether a group of zones has the place of one of the findings. */
function apart(findings: readonly Finding[]): (zones: ReturnType<typeof planeGroups>[number]) => boolean {
  return (zones) =>
    zones.some(({ face, zone }) => findings.some(({ where }) => where.face === face && where.zone === zone));
}

/**
 * Whether a combination holds: the edited project can be read, the zones meet, and no finding of setting-out is worse
 * than it was. The search keeps its own rules; boards and sheets that move can still upset an edge distance.
 */
function trials({ project, facade }: StepChoicesRequest): (one: PassingCombination) => boolean {
  const before = worstByPlace(facade.findings);
  const known = new Map<string, boolean>();
  const inReach = Math.floor(MOST_FACES_SET_OUT / facade.faces.length);
  const most = Math.min(MOST_SET_OUTS, Math.max(MOST_OFFERED, inReach));
  const attempt = ({ edit }: PassingCombination): boolean => {
    const patched = applyPatch(project, edit);
    if (!patched.ok) return false;
    const edited = patched.document as Project;
    const file = { name: project.title, document: edited };
    if (checkProject(file, edited).some(({ outcome }) => outcome === "fail")) return false;
    const after = setOut(edited, demandsOf(edited));
    return [...worstByPlace(after.findings)].every(([place, { worst, blocking }]) => {
      const was = before.get(place) ?? NOT_FOUND_BEFORE;
      return worst <= was.worst && blocking <= was.blocking;
    });
  };
  return (one) => {
    const key = JSON.stringify(one.edit);
    const held = known.get(key);
    if (held !== undefined) return held;
    if (known.size >= most) return false;
    const result = attempt(one);
    known.set(key, result);
    return result;
  };
}

interface Worst {
  readonly worst: number;
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
const NOT_FOUND_BEFORE: Worst = { worst: SEVERITY.attention, blocking: 0 };

/** A deeper cavity asks more of the slot under the roof, which is what it was: that is no harm done by the choice. */
const ROOF_EDGE: Finding["code"] = "S025";

/** The worst outcome of each rule at each place, and how many there are that block. */
function worstByPlace(findings: readonly Finding[]): Map<string, Worst> {
  const places = new Map<string, Worst>();
  for (const { code, outcome, where } of findings) {
    if (code === ROOF_EDGE) continue;
    const { face, zone = "", opening = "", path = "" } = where;
    const place = [code, ...(face === undefined ? [path] : [face, zone, opening])].join(" ");
    const { worst, blocking } = places.get(place) ?? { worst: 0, blocking: 0 };
    const severity = SEVERITY[outcome];
    const blocks = severity > SEVERITY.attention;
    places.set(place, { worst: Math.max(worst, severity), blocking: blocking + Number(blocks) });
  }
  return places;
}

/** What other battens and packers bring along; the other looks a combination deserves, the wall deserves as it stands. */
const BROUGHT_ALONG: readonly string[] = ["soft-packers", "narrower-batten"];

/** What is built otherwise than it stands, and what then deserves a look. */
function choiceSaid(project: Project, { buildUps, claddings, attention }: PassingCombination): Message {
  const stacks = buildUps.flatMap((plan) => {
    const present = project.buildUps.find(({ id }) => id === plan.buildUp);
    return present ? stackSaid(present, plan) : [];
  });
  const screws = claddings.flatMap(({ cladding, screw }) => {
    const changed = project.claddings.some((one) => one.id === cladding && one.screw !== screw);
    return changed ? [message("planes.choice.cladding", { cladding, screw })] : [];
  });
  const changes = [...stacks, ...screws].reduce((first, second) =>
    message("planes.choice.and", { first, second }),
  );
  const rules = [...new Set(attention.map(({ rule }) => rule))]
    .filter((rule) => BROUGHT_ALONG.includes(rule))
    .map((rule) => message(`planes.rule.${rule}`));
  return rules.length === 0
    ? message("planes.choice", { changes })
    : message("planes.choice.look", { changes, rules });
}

function stackSaid(present: BuildUp, plan: PassingCombination["buildUps"][number]): Message[] {
  const { buildUp, battens, packers, battenScrew, railScrew } = plan;
  const packing = snap(packers.reduce((sum, one) => sum + one, 0));
  const stood = {
    battens: present.layers.flatMap((layer) => ("stock" in layer ? [layer.stock] : [])),
    packing: snap(
      present.layers.reduce((sum, layer) => (layer.kind === "packer" ? sum + layer.thickness : sum), 0),
    ),
  };
  const screws = [
    ...(battenScrew === present.battenScrew ? [] : [battenScrew]),
    ...(railScrew === undefined || railScrew === present.railScrew ? [] : [railScrew]),
  ];
  const same = battens.join() === stood.battens.join() && packing === stood.packing;
  if (same && screws.length === 0) return [];
  const stack =
    packing === 0
      ? message("planes.choice.stack", { buildUp, battens })
      : message("planes.choice.packed", { buildUp, battens, packing });
  return [screws.length === 0 ? stack : message("planes.choice.screws", { stack, screws })];
}
