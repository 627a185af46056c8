/**
 * The set-out facade: plain values that proof, cutting, drawings and exchange read. Positions are in the face frame
 * (x right seen from outside, y up from the datum, z outward from the sheathing's outer face), millimetres on the
 * 1/8000 mm grid.
 */
import type { Finding } from "../findings/finding.ts";
import type { FaceFrame } from "../geometry/frame.ts";
import type { Interval } from "../geometry/interval.ts";
import type { Point } from "../geometry/point.ts";
import type { Polygon } from "../geometry/polygon.ts";
import type { Rect } from "../geometry/rect.ts";
import type { Message } from "../text/message.ts";

export type PieceKind =
  | "sheet"
  | "board"
  | "batten"
  | "counter-batten"
  | "rail"
  | "post"
  | "backing"
  | "packer"
  | "closure"
  | "flashing"
  | "gasket"
  | "sleeve"
  | "membrane"
  | "return";

/** Why a piece or joint is where it is. */
export interface Why {
  /** Id of the control line that it answers to. */
  readonly line?: string;
  readonly rule: Message;
  /** What was considered and cost more. */
  readonly runnerUp?: Message;
}

/** How a piece ends: square, or cut at an angle through its thickness (degrees off square, longer at the outer face). */
export interface PieceEnd {
  readonly cut: "square" | "mitre";
  readonly angleDeg: number;
}

export interface Fixing {
  readonly x: number;
  readonly y: number;
  /** `fixed`: hole to the shank; `sliding`: enlarged hole; `plain`: a board's or batten's screw. */
  readonly kind: "fixed" | "sliding" | "plain";
  /** Screw id of the stock. */
  readonly screw: string;
  /** Diameter drilled through the piece (mm). */
  readonly hole: number;
  /** Mark of the piece or id of the solid that holds the point. */
  readonly into: string;
  /** What the screw passes on its way, outermost first, with thickness (mm). */
  readonly through: readonly { readonly what: string; readonly thickness: number }[];
  /** Length of the screw in `into` (mm). */
  readonly bite: number;
  /** Driven along the wall, into the side of an opening: the depth of its axis, and where its point goes. */
  readonly side?: { readonly z: number; readonly towards: "left" | "right" | "up" };
}

/** A hole drilled at an inner corner before the saw runs into it. */
export interface Relief {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

/** How a batten or rail ends. */
export interface BattenEnd {
  readonly end: "lower" | "upper" | "left" | "right";
  /** `butt`: another length goes on; `tee`: on, or up to, a member that runs across it; `stopped`: short of what stands there. */
  readonly shape: "butt" | "tee" | "stopped";
  /** `length`: a joint of lengths; `free`: nothing stands before it. */
  readonly at:
    | "length"
    | "base"
    | "top"
    | "head"
    | "sill"
    | "jamb"
    | "duct"
    | "rake"
    | "corner"
    | "junction"
    | "free";
  /** Mark of the piece, or id of the opening or duct, before it. */
  readonly meets?: string;
  /** Left open before that, for water and air (mm); to the zone's edge where it meets no piece. */
  readonly gap: number;
  /** What its last screw holds in: mark of a piece or id of a solid. */
  readonly bearsOn?: string;
  /** Of that screw (mm). */
  readonly screwFromEnd?: number;
}

export interface Piece {
  /** Stable name: an edit elsewhere never changes it. */
  readonly mark: string;
  readonly kind: PieceKind;
  readonly face: string;
  readonly zone?: string;
  /** Id of the cladding that it is cut from, where that is not its zone's. */
  readonly cladding?: string;
  /** Course of boards from the base, numbered by segment: 203 is the third course of the second segment. */
  readonly course?: number;
  /** At the outer face, counter-clockwise. */
  readonly outline: Polygon;
  /** Openings within the outline (ducts), clockwise. */
  readonly holes: readonly Polygon[];
  /** At inner corners of a notched sheet; absent where there are none. They are not taken off the outline. */
  readonly reliefs?: readonly Relief[];
  readonly z: Interval;
  readonly ends: { readonly left: PieceEnd; readonly right: PieceEnd };
  /** Of a batten or rail, the lower or left one first. */
  readonly endings?: readonly BattenEnd[];
  /** Bent metal: its section as points of z and y (mm), from the upstand to the drip. */
  readonly profile?: readonly Point[];
  /** Turned up at the ends of bent metal, over its outline, the left one first: where along the face, and its own outline as points of z and y (mm). */
  readonly dams?: readonly { readonly x: number; readonly outline: Polygon }[];
  /** Bent metal that stands upright: its section as points of x and z (mm), over its outer corners. */
  readonly planProfile?: readonly Point[];
  /** Slope of a board's top edge, falling outward (degrees). */
  readonly bevelDeg?: number;
  /** Direction that must be kept when it is cut. */
  readonly grain?: "x" | "y";
  readonly material: string;
  /** Id of the stock that it is cut from. */
  readonly stock?: string;
  /** Size before shaping: along the grain or upright, and across (mm). */
  readonly cut: { readonly length: number; readonly width: number; readonly thickness: number };
  readonly lot?: string;
  readonly massKg: number;
  readonly why: Why;
  /** Marks of the pieces that carry it. */
  readonly supports: readonly string[];
  /** Marks of the pieces to take off before it. */
  readonly removeBefore: readonly string[];
  readonly fixings: readonly Fixing[];
}

export type JointKind = "course gap" | "butt" | "sheet joint" | "junction" | "corner" | "edge";

/** The open strip between pieces, or between a piece and an opening. */
export interface Joint {
  readonly kind: JointKind;
  readonly face: string;
  readonly zone?: string;
  readonly region: Polygon;
  readonly holes: readonly Polygon[];
  /** Across the strip (mm). */
  readonly width: number;
  /** `x`: the strip runs along x, its width is in y. */
  readonly along: "x" | "y";
  /** Control line that it answers to. */
  readonly line?: string;
  /** Of joints between sheets. */
  readonly why?: Why;
}

export interface Clearance {
  readonly kind: "jamb" | "head" | "sill" | "penetration";
  readonly of: string;
  readonly region: Polygon;
}

export interface ControlLine {
  readonly id: string;
  readonly face: string;
  readonly direction: "horizontal" | "vertical";
  readonly at: number;
  /** A soffit has a front and a back where a wall has a base and a top. */
  readonly kind:
    | "base"
    | "sill"
    | "head"
    | "own"
    | "top"
    | "corner"
    | "jamb"
    | "junction"
    | "rake"
    | "front"
    | "back";
  /** Opening or zone that asks for it, or the id of a line of the project's own. */
  readonly of?: string;
  /** Primary lines end rod segments; secondary lines are met by order. */
  readonly rank: "primary" | "secondary";
}

export type SolidKind =
  | "stud"
  | "joist"
  | "trimmer"
  | "rim"
  | "bottom plate"
  | "top plates"
  | "header"
  | "beam"
  | "backing";

/** Timber behind the sheathing that a screw can hold in. */
export interface Solid {
  readonly id: string;
  readonly kind: SolidKind;
  readonly region: Polygon;
  readonly z: Interval;
}

export interface RodCourse {
  readonly number: number;
  readonly from: number;
  readonly to: number;
  readonly width: number;
}

export interface RodSegmentResult {
  readonly segment: string;
  readonly from: number;
  readonly to: number;
  readonly endGaps: { readonly start: boolean; readonly end: boolean };
  readonly gap: number;
  readonly courses: readonly RodCourse[];
}

export interface RodResult {
  readonly id: string;
  readonly zones: readonly { readonly face: string; readonly zone: string }[];
  readonly segments: readonly RodSegmentResult[];
  readonly missedLines: readonly { readonly line: string; readonly offBy: number }[];
  /** Ducts for which another rod was passed over that would leave slivers beside them. */
  readonly clearOf?: readonly string[];
}

/** A layer of a build-up with its place. */
export interface PlacedLayer {
  readonly kind: "membrane" | "insulation" | "packer" | "batten" | "rail" | "gasket" | "cladding";
  readonly z: Interval;
  readonly stock?: string;
  readonly material?: string;
}

export interface ZonePlane {
  readonly face: string;
  readonly zone: string;
  readonly layers: readonly PlacedLayer[];
  /** Outer plane of the cladding. */
  readonly faceZ: number;
  /** Back of the cladding. */
  readonly backZ: number;
  /** Clear depth between the membrane (or what lies outermost behind the battens) and the cladding. */
  readonly cavity: number;
}

/** Two zones that meet in one plane. */
export interface PlaneStep {
  readonly face: string;
  readonly zones: readonly [left: string, right: string];
  /** Right plane less left plane (mm). */
  readonly step: number;
  /** Packers of the stock, summed, that close it behind the lower zone; undefined when none do. */
  readonly closedBy?: { readonly zone: string; readonly packers: readonly number[] };
}

/** An open end of the cavity and what closes it against animals. */
export interface Vent {
  readonly face: string;
  readonly zone: string;
  readonly position: "base" | "top" | "under opening" | "over opening";
  readonly x: Interval;
  readonly y: number;
  readonly closure: string;
  /** Free area per metre before and after the mesh (cm²/m). */
  readonly grossCm2PerM: number;
  readonly netCm2PerM: number;
}

export interface ZoneLayout {
  readonly id: string;
  readonly cladding: string;
  readonly buildUp: string;
  /** What is filled by pieces, joints, openings and clearances, reaching round corners. */
  readonly region: Polygon;
}

export type EndMeets = "free" | "external" | "internal";

export interface FaceLayout {
  readonly id: string;
  /** What the marks of its pieces begin with. */
  readonly code: string;
  readonly frame: FaceFrame;
  /** None of a soffit. */
  readonly azimuthDeg?: number;
  /** How its ends meet other faces of the file in plan: `free` where none is known. None of a soffit. */
  readonly meets?: { readonly left: EndMeets; readonly right: EndMeets };
  readonly outline: Polygon;
  readonly ground: Polygon;
  readonly openings: readonly { readonly id: string; readonly kind: string; readonly region: Rect }[];
  readonly zones: readonly ZoneLayout[];
  readonly clearances: readonly Clearance[];
  readonly solids: readonly Solid[];
  readonly pieces: readonly Piece[];
  readonly joints: readonly Joint[];
  readonly controlLines: readonly ControlLine[];
  readonly vents: readonly Vent[];
}

export interface Facade {
  readonly faces: readonly FaceLayout[];
  readonly rods: readonly RodResult[];
  readonly planes: readonly ZonePlane[];
  readonly steps: readonly PlaneStep[];
  readonly findings: readonly Finding[];
}

export const SQUARE: PieceEnd = { cut: "square", angleDeg: 0 };
export const SQUARE_ENDS: Piece["ends"] = { left: SQUARE, right: SQUARE };
/** One empty list for all pieces without holes. */
export const NO_HOLES: readonly Polygon[] = [];
