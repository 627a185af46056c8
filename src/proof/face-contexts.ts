/** What the rules of one face are given, face by face in the order of the faces. */
import type { FaceContext, FacelessProject, ZoneView } from "./context.ts";

export function faceContexts({ project, demands, zones }: FaceContext): FaceContext[] {
  const own = facelessProject(project);
  return byFace(zones).map((views) => ({ project: own, demands, zones: views }));
}

/** Nothing but what the rules may read, so that the memo's key holds all of it. */
export function facelessProject(project: FacelessProject): FacelessProject {
  const { site, roof, structure, buildUps, claddings, limits, figures, stock, pile } = project;
  return {
    site,
    ...(roof && { roof }),
    structure,
    buildUps,
    claddings,
    limits,
    ...(figures && { figures }),
    stock,
    ...(pile && { pile }),
  };
}

function byFace(zones: readonly ZoneView[]): ZoneView[][] {
  const faces: ZoneView[][] = [];
  for (const view of zones) {
    const last = faces.at(-1);
    if (last?.[0]?.face === view.face) last.push(view);
    else faces.push([view]);
  }
  return faces;
}
