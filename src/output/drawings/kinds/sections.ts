/** Vertical sections of each zone, with its base, sill and head at a larger scale. */
import { polygonBounds } from "../../../geometry/polygon.ts";
import type { Face } from "../../../project/schema/project.ts";
import type { Scene } from "../../../scene/model.ts";
import type { DetailMark } from "../../../scene/views/detail-marks.ts";
import { heading } from "../../../scene/views/extent.ts";
import { withPlaceNames } from "../../../scene/views/place-name.ts";
import type { SectionProject } from "../../../scene/views/section-cut.ts";
import { verticalSection } from "../../../scene/views/vertical-section.ts";
import type { FaceLayout, ZoneLayout, ZonePlane } from "../../../setout/facade.ts";
import { type Message, message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { grouped, oneByOne } from "../grouped.ts";
import { ownFace, ownPlanes } from "../of-face.ts";
import { fittingView } from "../paper.ts";
import { elevationOf, type UprightCut, uprightCuts } from "../section-places.ts";

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
  const scenesOf = ({ zone, at: x, mark, scene: id }: UprightCut): Scene[] => {
    const at = { face: face.id, x };
    const parts = details(face, { zone, x, mark, section: id });
    const whole = fittingView(paper, (scale) => {
      const scene = verticalSection(facade, project, { ...at, details: parts, ...scale });
      return scene && withPlaceNames(scene, { section: [{ mark, on: elevationOf(face) }] });
    });
    const beside = parts.map(({ scene: of, y, title, mark: name }) => {
      const scene = verticalSection(facade, project, { ...at, id: of, y, title });
      return scene && withPlaceNames(scene, { detail: [{ mark: name, on: id }] });
    });
    return [whole, ...beside].filter((scene) => scene !== undefined);
  };
  return [...grouped(uprightCuts(face), ({ zone }) => zone.id)].flatMap(([zone, cuts]): Drawing[] => {
    const scenes = cuts.flatMap(scenesOf);
    return scenes.length === 0 ? [] : [{ name: `section-${face.id}-${zone}`, type, scenes, face: face.id }];
  });
}

/** Above and below an edge, as much as shows how the cladding ends there (mm). */
const BESIDE_EDGE = 250;

interface Detail extends DetailMark {
  readonly title: Message;
}

/** What each detail is of has one number in every section: none moves another. */
const NUMBERS = { base: 1, sill: 2, head: 3 } as const;

interface Edge {
  readonly of: keyof typeof NUMBERS;
  /** Height, mm. */
  readonly at: number;
  readonly title: Message;
}

interface Cut {
  readonly zone: ZoneLayout;
  readonly x: number;
  readonly mark: string;
  /** Id of the section that frames them. */
  readonly section: string;
}

/**
 * The details beside the whole section: the base, and sill and head where an opening is cut. A sill by the base is seen in the
 * detail of this; under a recess that begins there no wall is cut.
 */
function details(face: FaceLayout, { zone, x, mark, section }: Cut): Detail[] {
  const low = polygonBounds(zone.region).y[0];
  const cut = face.openings.find(({ region }) => x > region.x[0] && x < region.x[1]);
  const at = { face: heading(face.id), x };
  const base: Edge = { of: "base", at: low, title: message("drawing.title.detail-base", at) };
  return (cut ? [base, ...edgesOf(cut, at)] : [base])
    .filter(({ of, at: y }) => of !== "sill" || Math.abs(y - low) > BESIDE_EDGE / 2)
    .filter(({ of }) => of !== "base" || cut?.kind !== "recess" || cut.region.y[0] > low)
    .map(({ of, at: y, title }) => ({
      mark: `${mark}.${NUMBERS[of]}`,
      scene: `${section}-${of}`,
      y: [y - BESIDE_EDGE, y + BESIDE_EDGE],
      title,
    }));
}

function edgesOf(
  { id: opening, region }: FaceLayout["openings"][number],
  at: { face: string; x: number },
): Edge[] {
  return [
    { of: "sill", at: region.y[0], title: message("drawing.title.detail-sill", { ...at, opening }) },
    { of: "head", at: region.y[1], title: message("drawing.title.detail-head", { ...at, opening }) },
  ];
}
