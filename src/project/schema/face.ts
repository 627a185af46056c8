/** Faces with what lies on them. Positions are in the face frame: x right seen from outside, y up from the datum. */
import * as z from "zod";
import { clear, id, length, lengthFigure, note, point, size, span } from "./values.ts";

/** The boarded or sheeted underside of a recess; it follows the recess and the faces that line it. */
const soffit = z.looseObject({
  note,
  /** Starts the marks of its pieces; made of the face's code and the opening's id where absent. */
  code: z
    .string()
    .regex(/^[A-Z][A-Z0-9]{0,5}$/)
    .optional(),
  cladding: id,
  buildUp: id,
  /** They run from the front to the back; the first and the last stand `firstAt` from the recess's jambs. */
  joists: z.looseObject({ width: size, depth: size, spacing: size, firstAt: clear }),
  /** Open joint to the cladding of the sides and the back. */
  gap: size.optional(),
});

/** Returns that line an opening's jambs and head, from the cladding's back to the frame. */
const reveal = z.looseObject({
  note,
  /** What they are cut from; the cladding round the opening where absent. */
  cladding: id.optional(),
  /** Open joint between them and the frame; 5 mm where absent. */
  gap: clear.optional(),
});

export const opening = z.looseObject({
  id,
  note,
  kind: z.enum(["window", "door", "recess", "other"]),
  x: span,
  y: span,
  /** No cladding under it: the clearance runs down to the base. */
  toBase: z.boolean().optional(),
  /** A recess: how far it goes in from the sheathing, and what clads it. */
  depth: size.optional(),
  within: z.string().optional(),
  /** A recess: the faces of this file that line its sides and back. */
  linedBy: z.array(id).optional(),
  soffit: soffit.optional(),
  /** How far the frame stands out from the sheathing; less than nothing where it is set back into the wall. */
  frameProjection: length.optional(),
  /** A window or door set deep: what lines it. */
  reveal: reveal.optional(),
  /** Its own clearances in place of the building's. */
  clearance: z.looseObject({ jamb: clear, head: clear, sill: clear }).optional(),
});

const penetration = z.looseObject({
  id,
  note,
  kind: z.string().min(1),
  x: length,
  y: length,
  diameter: size,
  clearance: lengthFigure.optional(),
});

/** Where the joints of a sheet zone must lie, and where they may not; kept through every re-layout. */
const zoneJoints = z.looseObject({
  note,
  /** x: middles of upright joints. y: lines that level joints lie on, each the upper edge of the sheet below. */
  pinned: z.looseObject({ x: z.array(length).optional(), y: z.array(length).optional() }).optional(),
  /** Bands that no joint may touch. */
  forbidden: z.looseObject({ x: z.array(span).optional(), y: z.array(span).optional() }).optional(),
});

const zone = z.looseObject({
  id,
  note,
  cladding: id,
  buildUp: id,
  /** From and to along the face; the ends of the face reach round its corners. */
  x: z.tuple([z.union([z.literal("left end"), length]), z.union([z.literal("right end"), length])]),
  /** From and to in height; the whole outline where absent. */
  y: span.optional(),
  /** Sheets. stacked: each column by itself; grid: level joints run through; offset: neighbours' level joints keep apart. */
  pattern: z.enum(["stacked", "grid", "offset"]).optional(),
  joints: zoneJoints.optional(),
  /** Boards from a pile. What comes from as few lots and grades as it allows: the face, which is usual; each course by itself; nothing. */
  alike: z.enum(["face", "course", "any"]).optional(),
});

export const face = z.looseObject({
  id,
  note,
  /** Starts the marks of the face's pieces; the id in capitals where absent. */
  code: z
    .string()
    .regex(/^[A-Z][A-Z0-9]{0,5}$/)
    .optional(),
  /** Compass direction of the outward normal, degrees clockwise from north. */
  azimuthDeg: z.number().min(0).max(360),
  /** The sheathing's outer line in plan from the left end to the right end, seen from outside. */
  plan: z.looseObject({ from: point, to: point }),
  /** What is to be clad, counter-clockwise or clockwise; x runs from 0 to the length of the plan line. */
  outline: z.array(point).min(3),
  /** Ground along the face as points from left to right. */
  ground: z.array(point).min(2),
  toBoundary: size.optional(),
  /** What rain splashes up from at the foot of the wall, and how far it reaches out. */
  splash: z
    .looseObject({
      note,
      cover: z.enum(["gravel", "paving", "lawn", "soil", "deck"]),
      width: size.optional(),
    })
    .optional(),
  frameProjection: clear.optional(),
  /** What shades the whole face from above: its lower outer edge stands `depth` out from the sheathing, at height y. */
  eaves: z.looseObject({ note, depth: size, y: length }).optional(),
  openings: z.array(opening),
  penetrations: z.array(penetration).optional(),
  /** Level lines of your own, to which courses and sheets are set out as to sills and heads: each the upper edge of what lies under it. */
  lines: z.array(z.looseObject({ id, note, y: length })).optional(),
  zones: z.array(zone).min(1),
});

/**
 * An upright post of the battens' stock on the left face's battens: its width seen on the left face, its thickness out
 * from the battens. What is thicker than the cladding stands proud of it, and as much of the right face's.
 */
const post = z.looseObject({
  note,
  stock: id,
  /** Species id of the catalogue, or a word of your own, as for a metal section. */
  material: z.string().min(1),
  screw: id,
});

export const corner = z.looseObject({
  note,
  /** The face whose right end meets the other's left end. */
  left: id,
  right: id,
  kind: z.enum(["open mitre", "lapped", "post"]),
  /** Lapped: the face that runs through. */
  lead: id.optional(),
  /** Post: what both claddings stop short of by the gap. */
  post: post.optional(),
  gap: size,
});

export const rod = z.looseObject({
  id,
  note,
  zones: z.array(z.looseObject({ face: id, zone: id })).min(1),
  /** Faces whose opening lines end the segments; other faces' lines are met by the order of the widths. */
  leads: z.array(id).min(1),
  /** How far below a line a course may end and still meet it. */
  lineTolerance: clear,
  /** One board ripped to a width of its own in a segment; segments count from the base, 1 the lowest, as course numbers do. */
  rips: z.array(z.looseObject({ note, segment: z.int().min(1), width: size })).optional(),
});
