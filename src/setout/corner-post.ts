/**
 * Corner posts in front of the cladding's end battens. A post belongs to the face on its left: it stands on that face's
 * last batten, on the wall or, where the neighbour's insulation leaves room for backing, past it.
 */
import { type Finding, finding } from "../findings/finding.ts";
import { common, type Interval, intervalLength } from "../geometry/interval.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { rectOutline } from "../geometry/rect.ts";
import { intersect } from "../geometry/region.ts";
import { message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import { BATTEN_JOINT_MM } from "./batten-lengths.ts";
import type { DraftBatten } from "./battens.ts";
import { LEAST_POST_MM } from "./corner-backing.ts";
import { type CornerPost, faceLength } from "./corners.ts";
import { type BattenWish, type DraftPiece, wholePiece } from "./draft.ts";
import { NO_HOLES, type Piece, SQUARE_ENDS } from "./facade.ts";
import { postFixer } from "./fixings.ts";
import { reachedTo, type ZoneGround } from "./ground-plan.ts";
import { letter, markOf } from "./marks.ts";
import { massOf } from "./masses.ts";
import { battenStock } from "./resolve.ts";
import { usableWidth } from "./sheets/screw-line.ts";
import type { ZoneTask } from "./zone-layout-task.ts";

/** Screws of a post stand no farther apart than those of a batten (common practice). */
const SPACING_MM = 600;
const FROM_END_MM = 50;

/** The post past the zone's right end, if one stands there. */
function postOf({ ground, ends }: ZoneTask): CornerPost | undefined {
  return ends.right.post && ground.bounds.x[1] === ends.right.x ? ends.right.post : undefined;
}

/** The ground that the zone's battens and closures reach over: up to the outer edge of its post. */
export function underPost(task: ZoneTask): ZoneGround {
  const post = postOf(task);
  return post ? reachedTo(task.ground, post.x[1]) : task.ground;
}

/** The batten that the post is screwed to: past the wall where backing can stand there, else at the wall's end. */
export function postWishes(task: ZoneTask): BattenWish[] {
  if (!postOf(task)) return [];
  const { project, plane, ground, ends } = task;
  const stock = plane.layers.find(({ kind }) => kind === "batten")?.stock ?? "";
  const { width } = battenStock(project, stock);
  const wall = faceLength(ground.face);
  const { neighbourInsulation, neighbourCavityZ } = ends.right;
  const x: Interval =
    neighbourInsulation >= LEAST_POST_MM
      ? [wall, snap(wall + Math.min(width, neighbourCavityZ))]
      : [snap(wall - width), wall];
  return [{ x, reason: "post" }];
}

/** The post's lengths with their screws, and a finding where no batten lies behind it. */
export function cornerPost(
  task: ZoneTask,
  battens: readonly DraftBatten[],
): { readonly pieces: readonly Piece[]; readonly findings: readonly Finding[] } {
  const post = postOf(task);
  if (!post) return { pieces: [], findings: [] };
  const { project, ground } = task;
  const fix = postFixer(task, post);
  const pieces = drafts(task, post).map((draft): Piece => {
    const points = screwsOf(draft, battens);
    return wholePiece(draft, {
      massKg: massOf(project, draft),
      supports: [...new Set(points.map(({ batten }) => batten.mark))],
      removeBefore: [],
      fixings: points.map(fix),
    });
  });
  const loose = pieces.filter(({ fixings }) => fixings.length < 2).map(({ mark }) => mark);
  const where = { face: ground.face.id, zone: ground.zone.id };
  return {
    pieces,
    findings: loose.length > 0 ? [unheld({ marks: loose, ...where }, post)] : [],
  };
}

function drafts({ project, ground }: ZoneTask, post: CornerPost): DraftPiece[] {
  const stock = battenStock(project, post.stock);
  const reached = reachedTo(ground, post.x[1]);
  const under = intersect(reached.region, rectOutline({ x: post.x, y: reached.bounds.y }));
  return under
    .flatMap(({ outline: whole }) =>
      breakToLength(polygonBounds(whole).y, Math.max(...stock.lengths)).flatMap((y) =>
        intersect(whole, rectOutline({ x: post.x, y })),
      ),
    )
    .map(({ outline }, i): DraftPiece => {
      const { y } = polygonBounds(outline);
      return {
        mark: markOf({ face: ground.face, zone: ground.zone.id, kind: "post", number: `1${letter(i)}` }),
        kind: "post",
        face: ground.face.id,
        zone: ground.zone.id,
        outline,
        holes: NO_HOLES,
        z: post.z,
        ends: SQUARE_ENDS,
        grain: "y",
        material: post.material,
        stock: post.stock,
        cut: { length: snap(y[1] - y[0]), width: stock.width, thickness: stock.thickness },
        why: { rule: message("setout.why.post") },
      };
    });
}

/** In equal lengths: a post has a batten behind it all the way. */
function breakToLength(y: Interval, longest: number): Interval[] {
  const parts = Math.ceil((intervalLength(y) + BATTEN_JOINT_MM) / (longest + BATTEN_JOINT_MM) - 1e-9);
  const pitch = (intervalLength(y) + BATTEN_JOINT_MM) / parts;
  return Array.from({ length: parts }, (_, i): Interval => {
    const from = i === 0 ? y[0] : snap(y[0] + i * pitch);
    const to = i === parts - 1 ? y[1] : snap(snap(y[0] + (i + 1) * pitch) - BATTEN_JOINT_MM);
    return [from, to];
  });
}

interface Point {
  readonly x: number;
  readonly y: number;
  readonly batten: DraftBatten;
}

/** Screws up the middle of what the post and a batten share, even between its ends. */
function screwsOf({ outline }: DraftPiece, battens: readonly DraftBatten[]): Point[] {
  const box = polygonBounds(outline);
  return battens.flatMap((batten): Point[] => {
    const x = common(usableWidth(batten.x), usableWidth(box.x));
    const y = common(batten.y, box.y);
    if (!x || !y || intervalLength(y) < 2 * FROM_END_MM) return [];
    const [first, last] = [y[0] + FROM_END_MM, y[1] - FROM_END_MM];
    const spans = Math.max(1, Math.ceil((last - first) / SPACING_MM - 1e-9));
    return Array.from({ length: spans + 1 }, (_, i) => ({
      x: snap((x[0] + x[1]) / 2),
      y: snap(first + ((last - first) * i) / spans),
      batten,
    }));
  });
}

type Where = { readonly face: string; readonly zone: string; readonly marks: readonly string[] };

function unheld(where: Where, { x }: CornerPost): Finding {
  return finding({
    code: "S008",
    outcome: "fail",
    where,
    says: message("setout.post.unheld", { width: snap(x[1] - x[0]) }),
    hint: message("setout.post.unheld.hint"),
    source: { kind: "common practice" },
  });
}
