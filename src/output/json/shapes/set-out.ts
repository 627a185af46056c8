/** The published shape of `outerleaf set-out --json`. Lengths in mm; positions in the face frame unless told. */
import * as z from "zod";
import { findingsShape } from "./finding.ts";

const point = z.array(z.number()).length(2).describe("[x, y]");
const polygon = z.array(point).min(3);
const span = z.array(z.number()).length(2).describe("[from, to]");
const end = z.object({
  cut: z.enum(["square", "mitre"]),
  angleDeg: z.number().describe("Off square, through the thickness."),
});

const fixing = z.object({
  x: z.number(),
  y: z.number(),
  kind: z.enum(["fixed", "sliding", "plain"]),
  screw: z.string(),
  hole: z.number().describe("Diameter drilled through the piece."),
  into: z.string().describe("Mark of the piece or id of the solid that holds the point."),
  through: z.array(z.object({ what: z.string(), thickness: z.number() })).describe("Outermost first."),
  bite: z.number().describe("Length of the screw in `into`."),
  side: z
    .object({ z: z.number(), towards: z.enum(["left", "right", "up"]) })
    .optional()
    .describe(
      "Driven along the wall into the side of an opening: depth of its axis, and where its point goes.",
    ),
});

const battenEnd = z.object({
  end: z.enum(["lower", "upper", "left", "right"]),
  shape: z
    .enum(["butt", "tee", "stopped"])
    .describe(
      "A tee ends on, or up to, a member that runs across it; a stopped one short of what stands there.",
    ),
  at: z.enum(["length", "base", "top", "head", "sill", "jamb", "duct", "rake", "corner", "junction", "free"]),
  meets: z.string().optional().describe("Mark of the piece, or id of the opening or duct, before it."),
  gap: z.number().describe("Left open before that, for water and air."),
  bearsOn: z.string().optional().describe("What its last screw holds in."),
  screwFromEnd: z.number().optional(),
});

const piece = z.object({
  mark: z.string(),
  kind: z.enum([
    "sheet",
    "board",
    "batten",
    "counter-batten",
    "rail",
    "post",
    "backing",
    "packer",
    "closure",
    "flashing",
    "gasket",
    "sleeve",
    "membrane",
    "return",
  ]),
  zone: z.string().optional(),
  cladding: z.string().optional().describe("What it is cut from, where that is not its zone's."),
  course: z.number().int().optional().describe("203 is the third course of the second segment."),
  outline: polygon.describe("At the outer face, counter-clockwise."),
  holes: z.array(polygon),
  /** Round holes drilled at the inner corners of a notch. */
  reliefs: z.array(z.object({ x: z.number(), y: z.number(), diameter: z.number() })).optional(),
  endings: z.array(battenEnd).optional().describe("Of a batten or rail, the lower or left end first."),
  /** Bent metal: its section as points of z and y. */
  profile: polygon.optional(),
  dams: z
    .array(z.object({ x: z.number(), outline: polygon }))
    .optional()
    .describe(
      "Turned up at the ends of bent metal: where along the face, and its outline as points of z and y.",
    ),
  /** Bent metal that stands upright: its section as points of x and z. */
  planProfile: polygon.optional(),
  z: span,
  ends: z.object({ left: end, right: end }),
  bevel: z.number().optional().describe("Slope of the top edge, falling outward, degrees."),
  grain: z.enum(["x", "y"]).optional(),
  material: z.string(),
  stock: z.string().optional(),
  cut: z.object({ length: z.number(), width: z.number(), thickness: z.number() }),
  lot: z.string().optional(),
  massKg: z.number(),
  why: z.object({ line: z.string().optional(), rule: z.string(), runnerUp: z.string().optional() }),
  supports: z.array(z.string()).describe("Marks of the pieces that carry it."),
  removeBefore: z.array(z.string()).describe("Marks of the pieces to take off before it."),
  fixings: z.array(fixing),
});

const joint = z.object({
  kind: z.enum(["course gap", "butt", "sheet joint", "junction", "corner", "edge"]),
  zone: z.string().optional(),
  between: z.array(z.string()).describe("Marks of the pieces and ids of the openings along the strip."),
  region: polygon,
  width: z.number().describe("Across the strip."),
  along: z.enum(["x", "y"]),
  line: z.string().optional(),
});

const rod = z.object({
  id: z.string(),
  segment: z.string(),
  from: z.number(),
  to: z.number(),
  endGaps: z
    .object({ start: z.boolean(), end: z.boolean() })
    .describe("Whether a gap lies inside the segment at that end."),
  gap: z.number(),
  gapDriest: z.number().optional().describe("In the driest month, beside the segment's widest board."),
  gapWettest: z.number().optional().describe("In the wettest month, beside the segment's widest board."),
  courses: z.array(z.number()).describe("Widths from the start."),
});

const face = z.object({
  id: z.string(),
  code: z.string().describe("What the marks of its pieces begin with."),
  frame: z.object({
    origin: point.describe("Left end of the sheathing in the building's plan."),
    along: point,
    outward: point,
    level: z
      .number()
      .optional()
      .describe(
        "Soffits alone: the height that z runs down from; y then runs into the building, against `outward`.",
      ),
  }),
  azimuthDeg: z.number().optional().describe("None of a soffit."),
  outline: polygon,
  ground: z.array(point),
  openings: z.array(z.object({ id: z.string(), kind: z.string(), region: polygon })),
  zones: z.array(z.object({ id: z.string(), cladding: z.string(), buildUp: z.string(), region: polygon })),
  clearances: z.array(
    z.object({ kind: z.enum(["jamb", "head", "sill", "penetration"]), of: z.string(), region: polygon }),
  ),
  solids: z.array(z.object({ id: z.string(), kind: z.string(), region: polygon, z: span })),
  pieces: z.array(piece),
  joints: z.array(joint),
  controlLines: z.array(
    z.object({
      id: z.string(),
      direction: z.enum(["horizontal", "vertical"]),
      at: z.number(),
      kind: z.enum([
        "base",
        "sill",
        "head",
        "own",
        "top",
        "corner",
        "jamb",
        "junction",
        "rake",
        "front",
        "back",
      ]),
      of: z.string().optional(),
      rank: z.enum(["primary", "secondary"]),
    }),
  ),
  vents: z.array(
    z.object({
      x: span,
      y: z.number(),
      zone: z.string(),
      position: z.enum(["base", "top", "under opening", "over opening"]),
      closure: z.string(),
      grossCm2PerM: z.number(),
      netCm2PerM: z.number(),
    }),
  ),
  rods: z.array(rod),
});

const plane = z.object({
  face: z.string(),
  zone: z.string(),
  layers: z.array(
    z.object({ kind: z.string(), z: span, stock: z.string().optional(), material: z.string().optional() }),
  ),
  faceZ: z.number().describe("Outer plane of the cladding."),
  backZ: z.number().describe("Back of the cladding."),
  cavity: z.number(),
  step: z.number().describe("How far this plane stands out from that of `stepFrom`; 0 without a neighbour."),
  stepFrom: z.string().optional().describe("The zone on the left that it meets."),
  closedBy: z
    .object({ zone: z.string(), packers: z.array(z.number()) })
    .optional()
    .describe("Packers of the stock, behind which zone, that close the step."),
});

export const shape = z.object({
  schemaVersion: z.literal(1),
  faces: z.array(face),
  planes: z.array(plane),
  findings: findingsShape,
});

export type SetOutJson = z.output<typeof shape>;
export type FaceJson = SetOutJson["faces"][number];
