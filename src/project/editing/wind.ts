/** The structural code of the project and the wind that it is reckoned with, each value as it is typed. */
import { message } from "../../text/message.ts";
import { pointerOf } from "../pointer.ts";
import type { Project } from "../schema/project.ts";
import type { StructureCode } from "../schema/wind.ts";
import type { Change, Source } from "./change.ts";

type SiteWind = NonNullable<Project["site"]["wind"]>;

/** A value with where it was read. */
export interface Sourced {
  readonly value: number;
  readonly source: string;
}

const saysWind = message("project.edit.wind");

/** Chooses the code; what else is known of the wind stays, though another code may not read it. */
export function setWindCode({ project }: Source, code: StructureCode): Change {
  return {
    operations: [
      project.site.wind
        ? { op: "replace", path: "/site/wind/code", value: code }
        : { op: "add", path: "/site/wind", value: { code } },
    ],
    says: message("project.edit.wind-code"),
  };
}

/** The hourly pressure that Canadian codes print (Pa). */
export function setHourlyPressure({ project }: Source, { value, source }: Sourced): Change {
  const before = project.site.windPressure1in50Pa;
  return {
    operations: [
      {
        op: "add",
        path: "/site/windPressure1in50Pa",
        value: { ...before, value, basis: "given", source },
      },
    ],
    says: saysWind,
  };
}

type Figured = "speedMPerS" | "topography" | "reliefPercent";

/** A figure of the wind with its source; undefined before a code is chosen. */
export function setWindFigure(
  { project }: Source,
  field: Figured,
  { value, source }: Sourced,
): Change | undefined {
  const { wind } = project.site;
  if (!wind) return undefined;
  const path = pointerOf(["site", "wind", field]);
  return {
    operations: [{ op: "add", path, value: { ...wind[field], value, basis: "given", source } }],
    says: saysWind,
  };
}

/** Takes the relief for open joints off again; undefined where there is none. */
export function removeRelief({ project }: Source): Change | undefined {
  if (!project.site.wind?.reliefPercent) return undefined;
  return { operations: [{ op: "remove", path: "/site/wind/reliefPercent" }], says: saysWind };
}

type Worded = Pick<SiteWind, "terrain" | "importance" | "enclosure">;

export function setWindWord<Field extends keyof Worded>(
  { project }: Source,
  field: Field,
  word: NonNullable<Worded[Field]>,
): Change | undefined {
  if (!project.site.wind) return undefined;
  return { operations: [{ op: "add", path: `/site/wind/${field}`, value: word }], says: saysWind };
}

/** Height of the roof (mm). */
export function setRoofHeight({ project }: Source, mm: number): Change | undefined {
  if (!project.site.wind) return undefined;
  return { operations: [{ op: "add", path: "/site/wind/roofHeight", value: mm }], says: saysWind };
}

/** One side of the building’s plan (mm); the other stays, or is as long where none was known. */
export function setPlanSide({ project }: Source, side: 0 | 1, mm: number): Change | undefined {
  const { wind } = project.site;
  if (!wind) return undefined;
  const plan = [...(wind.plan ?? [mm, mm])];
  plan[side] = mm;
  return { operations: [{ op: "add", path: "/site/wind/plan", value: plan }], says: saysWind };
}
