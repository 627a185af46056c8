/**
 * Brings older project files up to the present schema, one version at a time. A step sees the raw document, which may
 * be wrong in any way: it changes what it knows and leaves the rest, so that validation can tell what is amiss.
 */
import { isGroup } from "./pointer.ts";
import { SCHEMA_VERSION } from "./schema/version.ts";

type Group = Record<string, unknown>;
type Step = (document: Group) => Group;

/**
 * Version 0 wrote a board's gap as `gap: { min, max }`, where version 1 has `gapBand: [min, max]` as every other band,
 * and a face's `azimuth` without its unit, where version 1 has `azimuthDeg`.
 */
function fromVersion0(document: Group): Group {
  return {
    ...document,
    ...eachOf(document, "claddings", (cladding) => {
      const { gap } = cladding;
      return isGroup(gap)
        ? renamed(cladding, { from: "gap", to: "gapBand", value: [gap.min, gap.max] })
        : cladding;
    }),
    ...eachOf(document, "faces", (face) =>
      "azimuth" in face ? renamed(face, { from: "azimuth", to: "azimuthDeg", value: face.azimuth }) : face,
    ),
  };
}

/** The step at index n leads from version n to n + 1. */
const STEPS: readonly Step[] = [fromVersion0];

/** Versions that can be brought up. */
export const OLDER_VERSIONS: readonly number[] = STEPS.map((_, version) => version);

/** The document at the present version; `version` is one of `OLDER_VERSIONS`. */
export function migrate(document: Group, version: number): Group {
  const migrated = STEPS.slice(version).reduce((older, step) => step(older), document);
  return { ...migrated, schemaVersion: SCHEMA_VERSION };
}

function eachOf(document: Group, key: string, change: (entry: Group) => Group): Group {
  const list = document[key];
  if (!Array.isArray(list)) return {};
  return { [key]: list.map((entry: unknown) => (isGroup(entry) ? change(entry) : entry)) };
}

/** Renames a key in its place, so that the order of the file stays. */
function renamed(group: Group, { from, to, value }: { from: string; to: string; value: unknown }): Group {
  return Object.fromEntries(
    Object.entries(group).map(([key, old]) => (key === from ? [to, value] : [key, old])),
  );
}
