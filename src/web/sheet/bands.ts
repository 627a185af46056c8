/**
 * What the parts of the job show under the drawing, and the walk round them, each loaded when it is first asked for; those that
 * show what the site told, while the page rests.
 */
import { lazy } from "react";

export const BuildUpBand = lazy(async () => ({
  default: (await import("../build-up/BuildUpBand.tsx")).BuildUpBand,
}));

export const CuttingBand = lazy(async () => ({
  default: (await import("../cutting/CuttingBand.tsx")).CuttingBand,
}));

export const OfferedDialog = lazy(async () => ({
  default: (await import("../kept/OfferedDialog.tsx")).OfferedDialog,
}));

export const OlderBanner = lazy(async () => ({
  default: (await import("../kept/OlderBanner.tsx")).OlderBanner,
}));

export const OrderBand = lazy(async () => ({ default: (await import("../order/OrderBand.tsx")).OrderBand }));

export const ProofBand = lazy(async () => ({ default: (await import("../notes/ProofBand.tsx")).ProofBand }));

export const SectionDrawing = lazy(async () => ({
  default: (await import("../drawing/SectionDrawing.tsx")).SectionDrawing,
}));

export const SheetsBand = lazy(async () => ({
  default: (await import("../drawings/SheetsBand.tsx")).SheetsBand,
}));

const siteBand = () => import("../progress/SiteBand.tsx");
const surveyBand = () => import("../survey/SurveyBand.tsx");
const upkeepBand = () => import("../upkeep/UpkeepBand.tsx");

export const SiteBand = lazy(async () => ({ default: (await siteBand()).SiteBand }));
export const SurveyBand = lazy(async () => ({ default: (await surveyBand()).SurveyBand }));
export const UpkeepBand = lazy(async () => ({ default: (await upkeepBand()).UpkeepBand }));

export const Walk = lazy(async () => ({ default: (await import("../walk/Walk.tsx")).Walk }));

/** Loads what shows the site's news, with the news; one that cannot be loaded now is asked for again when it is wanted. */
export function loadSiteBands(): void {
  for (const load of [siteBand, surveyBand, upkeepBand]) void load().catch(() => undefined);
}
