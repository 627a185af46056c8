/** What the rules of wind share of a zone: its strips and its members, worked out once for all rules that judge the same face. */
import type { StructureDemand, WindDemand } from "../../codes/packs/index.ts";
import { type Interval, overlaps } from "../../geometry/interval.ts";
import type { FaceContext, ZoneView } from "../context.ts";
import { knownWind, type NetWind, netWind, type WindBand, windBands } from "./bands.ts";
import { type Member, type Members, membersOf } from "./members.ts";

export interface ZoneStudy extends Members {
  readonly view: ZoneView;
  readonly structure: StructureDemand;
  readonly wind: WindDemand;
  readonly bands: readonly WindBand[];
  /** A soffit: what it weighs pulls at its screws. */
  readonly lies: boolean;
  /** The wind at screws, by the strips that their member reaches into. */
  readonly atScrews: Map<string, NetWind>;
}

/** A context lives as long as one proof of a face. */
const STUDIES = new WeakMap<FaceContext, readonly ZoneStudy[]>();

/** The zones of a face under the chosen code's wind; none where that is not known, which P054 says. */
export function windStudies(context: FaceContext): readonly ZoneStudy[] {
  const known = STUDIES.get(context);
  if (known) return known;
  const { structure } = context.demands;
  const wind = knownWind(structure);
  const studies =
    structure.known && wind
      ? context.zones.map((view): ZoneStudy => {
          const bands = windBands(view.face, wind);
          const lies = view.face.azimuthDeg === undefined;
          return { view, structure, wind, bands, lies, atScrews: new Map(), ...membersOf(view) };
        })
      : [];
  STUDIES.set(context, studies);
  return studies;
}

const MM2_PER_M2 = 1e6;

/** The net wind on a member, by its longest span and what it gathers across it, a third of the span at least. */
export function windOn({ wind, bands }: ZoneStudy, member: Member): NetWind {
  const span = longestSpan(member);
  const areaM2 = (span * Math.max(member.gathers, span / 3)) / MM2_PER_M2;
  return netWind(wind, bands, { x: member.box.x, areaM2 });
}

/** The net wind at a screw: an area so small that the coefficient stays as it begins. */
export function windAt({ wind, bands, atScrews }: ZoneStudy, x: Interval): NetWind {
  const key = bands.map((band) => (overlaps(band.x, x) ? "x" : "-")).join("");
  const net = atScrews.get(key) ?? netWind(wind, bands, { x, areaM2: 0 });
  atScrews.set(key, net);
  return net;
}

function longestSpan({ supports, box, along }: Member): number {
  const [first, last] = [supports[0], supports.at(-1)];
  if (!first || !last) return 0;
  let longest = Math.max(0, first.at - box[along][0], box[along][1] - last.at);
  for (let i = 1; i < supports.length; i++)
    longest = Math.max(longest, (supports[i]?.at ?? 0) - (supports[i - 1]?.at ?? 0));
  return longest;
}
