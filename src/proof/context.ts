/** What a rule of proof reads, with everything of a zone gathered once. */
import type { Demands } from "../codes/demands.ts";
import type { Finding } from "../findings/finding.ts";
import type { Cladding, Face, Project } from "../project/schema/project.ts";
import type { Facade, FaceLayout, Joint, Piece, Vent, ZoneLayout, ZonePlane } from "../setout/facade.ts";
import type { LightInput } from "./light/input.ts";

export interface ProofInput {
  readonly project: Project;
  readonly facade: Facade;
  readonly demands: Demands;
  /** The sun kept from an earlier call, or a year of weather in place of clear skies. */
  readonly light?: LightInput | undefined;
}

/** A zone with what lies in it. */
export interface ZoneView<Kind extends Cladding = Cladding> {
  readonly where: { readonly face: string; readonly zone: string };
  readonly face: FaceLayout;
  readonly zone: ZoneLayout;
  readonly projectFace: Face;
  /** JSON Pointers into the project file. */
  readonly facePath: string;
  readonly claddingPath: string;
  readonly cladding: Kind;
  /** Absent where setting-out found no build-up. */
  readonly plane: ZonePlane | undefined;
  /** Sheets or boards. */
  readonly pieces: readonly Piece[];
  /** Returns of its openings, of its own cladding or another. */
  readonly returns: readonly Piece[];
  readonly battens: readonly Piece[];
  readonly joints: readonly Joint[];
  readonly vents: readonly Vent[];
}

/** What of a project a rule may read that judges each face by itself: nothing of any face. */
export type FacelessProject = Pick<
  Project,
  "site" | "roof" | "structure" | "buildUps" | "claddings" | "limits" | "figures" | "stock" | "pile"
>;

/** A rule that reads no more than this says of a face the same whatever the other faces are. */
export interface FaceContext {
  readonly project: FacelessProject;
  readonly demands: Demands;
  readonly zones: readonly ZoneView[];
}

export interface ProofContext extends ProofInput {
  readonly zones: readonly ZoneView[];
  /** A piece of the facade by its mark. */
  readonly pieceOf: (mark: string) => Piece | undefined;
}

export type ProofRule = (context: ProofContext) => Finding[];
export type FaceRule = (context: FaceContext) => Finding[];

export function proofContext(input: ProofInput): ProofContext {
  const pieces = new Map<string, Piece>();
  for (const face of input.facade.faces) for (const piece of face.pieces) pieces.set(piece.mark, piece);
  return { zones: zoneViews(input), pieceOf: (mark) => pieces.get(mark), ...input };
}

/** What zones are gathered from. */
export interface ZonesInput {
  readonly project: Pick<Project, "faces" | "claddings">;
  readonly facade: Pick<Facade, "faces" | "planes">;
}

export function zoneViews({ project, facade }: ZonesInput): ZoneView[] {
  const faces = new Map(project.faces.map((face, index) => [face.id, { face, path: `/faces/${index}` }]));
  const claddings = new Map(
    project.claddings.map((cladding, index) => [cladding.id, { cladding, path: `/claddings/${index}` }]),
  );
  const planes = new Map(facade.planes.map((plane) => [`${plane.face}\n${plane.zone}`, plane]));
  return facade.faces.flatMap((face) => {
    const own = faces.get(face.id);
    if (!own) return [];
    const pieces = byZone(face.pieces);
    const joints = byZone(face.joints);
    const vents = byZone(face.vents);
    return face.zones.flatMap((zone) => {
      const worn = claddings.get(zone.cladding);
      if (!worn) return [];
      const inZone = pieces.get(zone.id) ?? [];
      return [
        {
          where: { face: face.id, zone: zone.id },
          face,
          zone,
          projectFace: own.face,
          facePath: own.path,
          claddingPath: worn.path,
          cladding: worn.cladding,
          plane: planes.get(`${face.id}\n${zone.id}`),
          pieces: inZone.filter(({ kind }) => kind === "sheet" || kind === "board"),
          returns: inZone.filter(({ kind }) => kind === "return"),
          battens: inZone.filter(({ kind }) => kind === "batten" || kind === "counter-batten"),
          joints: joints.get(zone.id) ?? [],
          vents: vents.get(zone.id) ?? [],
        },
      ];
    });
  });
}

function byZone<Thing extends { readonly zone?: string }>(things: readonly Thing[]): Map<string, Thing[]> {
  const groups = new Map<string, Thing[]>();
  for (const thing of things) {
    if (thing.zone === undefined) continue;
    const group = groups.get(thing.zone);
    if (group) group.push(thing);
    else groups.set(thing.zone, [thing]);
  }
  return groups;
}

/** The zones clad with boards. */
export function boardZones({
  zones,
}: Pick<FaceContext, "zones">): ZoneView<Extract<Cladding, { kind: "boards" }>>[] {
  return zones.flatMap((view) =>
    view.cladding.kind === "boards" ? [{ ...view, cladding: view.cladding }] : [],
  );
}

/** The zones clad with sheets. */
export function sheetZones({
  zones,
}: Pick<FaceContext, "zones">): ZoneView<Extract<Cladding, { kind: "sheets" }>>[] {
  return zones.flatMap((view) =>
    view.cladding.kind === "sheets" ? [{ ...view, cladding: view.cladding }] : [],
  );
}
