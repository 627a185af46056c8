/** The sheet as a tree for the keyboard: faces, then openings, lines and zones, then pieces and joints. */
import type { Design } from "../../design.ts";
import { faceById } from "../../project/lookup.ts";
import { heading } from "../../scene/views/extent.ts";
import type { FaceLayout, PieceKind } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import { jointId } from "./joint-id.ts";
import { type Pick, pickKey, pickName, zoneIdOf } from "./pick.ts";

export interface TreeNode {
  readonly key: string;
  readonly pick: Pick;
  readonly label: Message | string;
  readonly level: number;
  /** Place among its brothers, from 1, and how many they are. */
  readonly place: number;
  readonly of: number;
  readonly parent?: string;
  readonly hasChildren: boolean;
}

const ORDER: readonly PieceKind[] = [
  "sheet",
  "board",
  "post",
  "return",
  "flashing",
  "closure",
  "batten",
  "counter-batten",
  "rail",
  "backing",
];

interface Draft {
  readonly pick: Pick;
  readonly label: Message | string;
  readonly children: () => readonly Draft[];
}

/** The rows that are to be seen: children only of what is open. */
export function visibleTree(design: Design, open: ReadonlySet<string>): TreeNode[] {
  const rows: TreeNode[] = [];
  const walk = (drafts: readonly Draft[], { level, parent }: { level: number; parent?: string }): void => {
    drafts.forEach((draft, i) => {
      const key = pickKey(draft.pick);
      const children = draft.children();
      rows.push({
        key,
        pick: draft.pick,
        label: draft.label,
        level,
        place: i + 1,
        of: drafts.length,
        hasChildren: children.length > 0,
        ...(parent === undefined ? {} : { parent }),
      });
      if (open.has(key)) walk(children, { level: level + 1, parent: key });
    });
  };
  walk(
    design.facade.faces.map((face) => faceDraft(design, face)),
    { level: 1 },
  );
  return rows;
}

/** The rows to open so that a pick can be seen. */
export function ancestors(design: Design, pick: Pick): string[] {
  if (pick.kind === "face") return [];
  const face = pickKey({ kind: "face", face: pick.face });
  const zone = pick.kind === "piece" || pick.kind === "joint" ? zoneIdOf(design, pick) : undefined;
  return zone === undefined ? [face] : [face, pickKey({ kind: "zone", face: pick.face, id: zone })];
}

function leaf(design: Design, pick: Pick): Draft {
  return { pick, label: pickName(design, pick), children: () => [] };
}

function faceDraft(design: Design, face: FaceLayout): Draft {
  return {
    pick: { kind: "face", face: face.id },
    label:
      face.azimuthDeg === undefined
        ? message("page.tree.soffit", { face: heading(face.id) })
        : message("page.tree.face", { face: heading(face.id), azimuth: face.azimuthDeg }),
    children: () => [
      ...face.openings.map(
        ({ id, kind }): Draft => ({
          pick: { kind: "opening", face: face.id, id },
          label: message("page.tree.opening", { id, kind }),
          children: () => [],
        }),
      ),
      ...(faceById(design.project, face.id)?.penetrations ?? []).map(
        ({ id, kind }): Draft => ({
          pick: { kind: "penetration", face: face.id, id },
          label: `${id} · ${kind}`,
          children: () => [],
        }),
      ),
      ...(faceById(design.project, face.id)?.lines ?? []).map(
        ({ id }): Draft => ({
          pick: { kind: "line", face: face.id, id },
          label: message("page.tree.line", { id }),
          children: () => [],
        }),
      ),
      ...face.zones.map(({ id }) => zoneDraft(design, { face, id })),
      // What reaches past every zone, such as a flashing that no zone asked for.
      ...face.pieces
        .filter(({ zone }) => zone === undefined)
        .map(({ mark }) => leaf(design, { kind: "piece", face: face.id, id: mark })),
    ],
  };
}

function zoneDraft(design: Design, { face, id }: { face: FaceLayout; id: string }): Draft {
  return {
    pick: { kind: "zone", face: face.id, id },
    label: message("page.tree.zone", { id }),
    children: () => [
      ...ORDER.flatMap((kind) => face.pieces.filter((piece) => piece.kind === kind && piece.zone === id)).map(
        ({ mark }) => leaf(design, { kind: "piece", face: face.id, id: mark }),
      ),
      ...face.joints.flatMap((joint, i) =>
        joint.zone === id ? [leaf(design, { kind: "joint", face: face.id, id: jointId(face, i) })] : [],
      ),
    ],
  };
}
