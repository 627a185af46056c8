/** Vertical sections of each zone, with its base, sill and head at a larger scale. */
import type { Interval } from "../../../geometry/interval.ts";
import { polygonBounds } from "../../../geometry/polygon.ts";
import type { Face } from "../../../project/schema/project.ts";
import { heading } from "../../../scene/views/extent.ts";
import type { SectionProject } from "../../../scene/views/section-cut.ts";
import { withSectionName } from "../../../scene/views/section-marks.ts";
import { sectionId, verticalSection } from "../../../scene/views/vertical-section.ts";
import type { FaceLayout, ZoneLayout, ZonePlane } from "../../../setout/facade.ts";
import { type Message, message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { oneByOne } from "../grouped.ts";
import { ownFace, ownPlanes } from "../of-face.ts";
import { fittingView } from "../paper.ts";
import { elevationOf, uprightCuts } from "../section-places.ts";

export function sectionSheets(facts: KindFacts): Iterable<Drawing> {
  const { project, facade } = facts.design;
  const { structure, claddings, stock } = project;
  const shared = { structure, claddings, screws: stock.screws, paper: facts.paper };
  return oneByOne(facade.faces, (face) =>
    facts.memo.recall(sectionsOf, {
      face,
      own: ownFace(facts, face),
      planes: ownPlanes(facts, face),
      ...shared,
    }),
  );
}

interface From extends Pick<KindFacts, "paper">, Pick<SectionProject, "structure" | "claddings"> {
  readonly face: FaceLayout;
  readonly own: Face | undefined;
  readonly planes: readonly ZonePlane[];
  readonly screws: SectionProject["stock"]["screws"];
}

function sectionsOf({ face, own, planes, structure, claddings, screws, paper }: From): Drawing[] {
  const type = message("drawing.document-type.section");
  const facade = { faces: [face], planes };
  const project = { structure, claddings, stock: { screws }, faces: own ? [own] : [] };
  return uprightCuts(face).flatMap(({ zone, at: x, mark }): Drawing[] => {
    const at = { face: face.id, x };
    const whole = fittingView(paper, (scale) => {
      const scene = verticalSection(facade, project, { ...at, ...scale });
      return scene && withSectionName(scene, { mark, elevation: elevationOf(face) });
    });
    const beside = details(face, zone, x).map((of) => verticalSection(facade, project, { ...at, ...of }));
    const scenes = [whole, ...beside].filter((scene) => scene !== undefined);
    return scenes.length === 0
      ? []
      : [{ name: `section-${face.id}-${zone.id}`, type, scenes, face: face.id }];
  });
}

/** Above and below an edge, as much as shows how the cladding ends there (mm). */
const BESIDE_EDGE = 250;

/** The details beside the whole section: the base, and sill and head where an opening is cut. */
function details(
  face: FaceLayout,
  zone: ZoneLayout,
  x: number,
): { id: string; y: Interval; title: Message }[] {
  const low = polygonBounds(zone.region).y[0];
  const cut = face.openings.find(({ region }) => x > region.x[0] && x < region.x[1]);
  const at = { face: heading(face.id), x };
  const edges = [
    { of: "base", at: low, title: message("drawing.title.detail-base", at) },
    ...(cut
      ? [
          {
            of: "sill",
            at: cut.region.y[0],
            title: message("drawing.title.detail-sill", { ...at, opening: cut.id }),
          },
          {
            of: "head",
            at: cut.region.y[1],
            title: message("drawing.title.detail-head", { ...at, opening: cut.id }),
          },
        ]
      : []),
  ];
  return edges
    .filter((edge, i) => edges.findIndex((other) => other.at === edge.at) === i)
    .map(({ of, at: y, title }) => ({
      id: `${sectionId(face.id, x)}-${of}`,
      y: [y - BESIDE_EDGE, y + BESIDE_EDGE],
      title,
    }));
}
