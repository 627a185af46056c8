/**
 * What is looked at, cleaned and renewed on each face, how often and why, and when next. Intervals of the project go before usual ones; a
 * finish lasts the shorter the more sun its face takes, between the years that are published for its kind.
 */
import { serviceLife } from "../../catalogue/finishes.ts";
import type { Demands } from "../../codes/demands.ts";
import type { Basis, Source } from "../../findings/finding.ts";
import type { BoardCladding, Project } from "../../project/schema/project.ts";
import { UPKEEP_TASKS, type UpkeepTask } from "../../project/schema/upkeep.ts";
import type { Facade, FaceLayout } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import { monthsLater } from "./dates.ts";
import { sunShares } from "./sun.ts";

/** Months between, common practice. */
const USUAL: Readonly<Record<Exclude<UpkeepTask, "finish">, number>> = {
  look: 12,
  joints: 12,
  wash: 24,
  wear: 12,
};
const MONTHS = 12;

export interface UpkeepLine {
  readonly task: UpkeepTask;
  readonly face: string;
  /** Whose finish is renewed. */
  readonly cladding?: string;
  /** Undefined where nothing tells how often; `why` says what is missing. */
  readonly months: number | undefined;
  readonly basis: Basis;
  readonly why: Message;
  readonly source: Source;
  /** Days, ISO 8601. */
  readonly last?: string;
  /** Absent where how often, or since when, is not known. */
  readonly next?: string;
}

/** Something that was done; on all faces where none is named. */
export interface UpkeepDone {
  readonly task: UpkeepTask;
  readonly face?: string | undefined;
  /** ISO 8601. */
  readonly day: string;
}

export interface UpkeepFacts {
  readonly project: Project;
  readonly demands: Demands;
  readonly facade: Facade;
  readonly done?: readonly UpkeepDone[];
}

type HowOften = Pick<UpkeepLine, "months" | "basis" | "why" | "source">;

/** A line for each task of each face, face by face. */
export function upkeepSchedule(facts: UpkeepFacts): UpkeepLine[] {
  const shares = sunShares(facts.project, facts.demands);
  return facts.facade.faces.flatMap((face) =>
    UPKEEP_TASKS.flatMap((task): UpkeepLine[] => {
      if (task === "finish") return finishLines(face, { facts, shares });
      if (task === "wear" && !wears(face)) return [];
      const usual: HowOften = {
        months: USUAL[task],
        basis: "typical",
        why: message(`upkeep.why.${task}`),
        source: { kind: "common practice" },
      };
      return [dated({ task, face: face.id, ...(given(facts.project, task, face.id) ?? usual) }, facts)];
    }),
  );
}

/** Boards that stand over ground wear from below; those overhead do not. */
function wears({ frame, pieces }: FaceLayout): boolean {
  return frame.level === undefined && pieces.some(({ kind }) => kind === "board");
}

function finishLines(
  face: FaceLayout,
  { facts, shares }: { facts: UpkeepFacts; shares: ReadonlyMap<string, number> | undefined },
): UpkeepLine[] {
  const { project } = facts;
  const ids = new Set(face.zones.map(({ cladding }) => cladding));
  return project.claddings.flatMap((cladding): UpkeepLine[] => {
    if (cladding.kind !== "boards" || cladding.finish === undefined || !ids.has(cladding.id)) return [];
    // What looks down takes no sun to speak of.
    const share = shares && (face.frame.level === undefined ? shares.get(face.id) : 0);
    const often = given(project, "finish", face.id) ?? lifeOf(cladding, share);
    return [dated({ task: "finish", face: face.id, cladding: cladding.id, ...often }, facts)];
  });
}

function lifeOf({ id, finishKind }: BoardCladding, share: number | undefined): HowOften {
  const found = finishKind && serviceLife(finishKind);
  if (!found) {
    return {
      months: undefined,
      basis: "typical",
      why: message("upkeep.why.no-kind", { cladding: id }),
      source: { kind: "your project" },
    };
  }
  const { value, source } = found.life;
  const most = value.max ?? value.min ?? 0;
  const least = value.min ?? most;
  const years = share === undefined ? least : most - share * (most - least);
  const values = { least, most, percent: Math.round((share ?? 1) * 100) };
  return {
    months: Math.max(1, Math.round(years * MONTHS)),
    basis: "typical",
    why: message(share === undefined ? "upkeep.why.life" : "upkeep.why.life-in-sun", values),
    source: { kind: "document", document: source },
  };
}

function given({ upkeep }: Project, task: UpkeepTask, face: string): HowOften | undefined {
  const said = upkeep?.every?.filter((one) => one.task === task) ?? [];
  const own = said.find((one) => one.face === face) ?? said.find((one) => one.face === undefined);
  return (
    own && {
      months: own.months,
      basis: "given",
      why: message("upkeep.why.given"),
      source: { kind: "your project" },
    }
  );
}

function dated(
  line: Omit<UpkeepLine, "last" | "next">,
  { project: { upkeep }, done = [] }: UpkeepFacts,
): UpkeepLine {
  const last = done
    .filter(({ task, face }) => task === line.task && (face === undefined || face === line.face))
    .map(({ day }) => day)
    .sort()
    .at(-1);
  const from = last ?? upkeep?.since;
  return {
    ...line,
    ...(last !== undefined && { last }),
    ...(from !== undefined && line.months !== undefined && { next: monthsLater(from, line.months) }),
  };
}
