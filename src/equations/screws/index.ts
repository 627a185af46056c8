/** What screws hold: along, across and both at once. */
import type { Equation } from "../equation.ts";
import { CSA_SCREW_WITHDRAWAL } from "./csa-screw-withdrawal.ts";
import { EN_COMBINED } from "./en-combined.ts";
import { EN_EMBEDMENT } from "./en-embedment.ts";
import { EN_HEAD_PULL_THROUGH } from "./en-head-pull-through.ts";
import { EN_HEAD_STRENGTH } from "./en-head-strength.ts";
import { EN_SCREW_SHEAR } from "./en-screw-shear.ts";
import { EN_SCREW_WITHDRAWAL } from "./en-screw-withdrawal.ts";
import { EN_YIELD_MOMENT } from "./en-yield-moment.ts";
import { NDS_BEARING_STRENGTH } from "./nds-bearing-strength.ts";
import { NDS_COMBINED } from "./nds-combined.ts";
import { NDS_HEAD_PULL_THROUGH } from "./nds-head-pull-through.ts";
import { NDS_LAG_WITHDRAWAL } from "./nds-lag-withdrawal.ts";
import { NDS_LATERAL } from "./nds-lateral.ts";
import { NDS_NAIL_WITHDRAWAL } from "./nds-nail-withdrawal.ts";
import { NDS_SCREW_WITHDRAWAL } from "./nds-screw-withdrawal.ts";

export const SCREWS_EQUATIONS: readonly Equation[] = [
  EN_COMBINED,
  EN_EMBEDMENT,
  EN_HEAD_PULL_THROUGH,
  EN_HEAD_STRENGTH,
  EN_SCREW_SHEAR,
  EN_SCREW_WITHDRAWAL,
  EN_YIELD_MOMENT,
  NDS_BEARING_STRENGTH,
  NDS_COMBINED,
  NDS_HEAD_PULL_THROUGH,
  NDS_LAG_WITHDRAWAL,
  NDS_LATERAL,
  NDS_NAIL_WITHDRAWAL,
  NDS_SCREW_WITHDRAWAL,
  CSA_SCREW_WITHDRAWAL,
];
