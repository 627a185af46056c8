/** P032: how high the base stands over what rain splashes up from. */
import { GRAVEL_STRIP_MM, splashRules } from "../codes/splash.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import { type BaseHeight, baseHeight } from "./base-height.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { rulesAsking } from "./rules-asking.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

export function splashHeight(context: FaceContext): Finding[] {
  return context.zones.flatMap((view) => {
    const base = baseHeight(view);
    return base ? [judged(context, view, base)] : [];
  });
}

function judged({ project }: FaceContext, view: ZoneView, { heightMm, mark }: BaseHeight): Finding {
  const where = { path: `${view.facePath}/splash`, marks: [mark], ...view.where };
  const { splash } = view.projectFace;
  if (!splash) {
    return finding({
      code: "P032",
      outcome: "cannot evaluate",
      where,
      says: message("proof.splash.no-cover"),
      hint: message("proof.splash.enter"),
      source: { kind: "common practice" },
    });
  }
  const rules = splashRules(project, splash);
  const asking = rules.filter(({ value }) => !holds("at least", { demand: heightMm, limit: value }));
  const governing = greatest(asking.length > 0 ? asking : rules, ({ value }) => value);
  const limit = governing?.value ?? 0;
  const clear = asking.length === 0;
  return finding({
    code: "P032",
    outcome: clear ? "pass" : "attention",
    where,
    says: message(clear ? "proof.splash.clear" : "proof.splash.low", {
      height: heightMm,
      cover: message(`proof.cover.${splash.cover}`),
      rules: rulesAsking(clear ? rules : asking, "mm"),
    }),
    ...(clear ? {} : { hint: message("proof.splash.raise", { strip: GRAVEL_STRIP_MM }) }),
    ...compared("at least", { demand: heightMm, limit, unit: "mm" }),
    working: {
      formula: "h ≥ h_s",
      inputs: [
        input("h", { meaning: "base-height", value: heightMm, unit: "mm", basis: "derived" }),
        input("h_s", {
          meaning: "splash-height",
          value: limit,
          unit: "mm",
          basis: governing?.basis ?? "typical",
        }),
      ],
      substituted: `${written(heightMm)} ${clear ? "≥" : "<"} ${limit}`,
    },
    ...(governing ? { source: governing.source } : {}),
  });
}
