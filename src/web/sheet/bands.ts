/** What the parts of the job show under the drawing, and the walk round them, each loaded when it is first asked for. */
import { lazy } from "react";

export const BuildUpBand = lazy(async () => ({
  default: (await import("../build-up/BuildUpBand.tsx")).BuildUpBand,
}));

export const CuttingBand = lazy(async () => ({
  default: (await import("../cutting/CuttingBand.tsx")).CuttingBand,
}));

export const OrderBand = lazy(async () => ({ default: (await import("../order/OrderBand.tsx")).OrderBand }));

export const ProofBand = lazy(async () => ({ default: (await import("../notes/ProofBand.tsx")).ProofBand }));

export const SectionDrawing = lazy(async () => ({
  default: (await import("../drawing/SectionDrawing.tsx")).SectionDrawing,
}));

export const SheetsBand = lazy(async () => ({
  default: (await import("../drawings/SheetsBand.tsx")).SheetsBand,
}));

export const SiteBand = lazy(async () => ({
  default: (await import("../progress/SiteBand.tsx")).SiteBand,
}));

export const SurveyBand = lazy(async () => ({
  default: (await import("../survey/SurveyBand.tsx")).SurveyBand,
}));

export const UpkeepBand = lazy(async () => ({
  default: (await import("../upkeep/UpkeepBand.tsx")).UpkeepBand,
}));

export const Walk = lazy(async () => ({ default: (await import("../walk/Walk.tsx")).Walk }));
