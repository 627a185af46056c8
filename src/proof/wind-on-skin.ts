/** P045: how wind pulls and pushes on each zone, strip by strip. */
import { type Finding, finding } from "../findings/finding.ts";
import { intervalLength, overlaps } from "../geometry/interval.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { message } from "../text/message.ts";
import type { FaceContext } from "./context.ts";
import { innerEnd, netWind } from "./wind/bands.ts";
import { windStudies, type ZoneStudy } from "./wind/study.ts";
import { input, written } from "./working.ts";

export function windOnSkin(context: FaceContext): Finding[] {
  const relief = context.project.site.wind?.reliefPercent;
  return windStudies(context).flatMap((study) => [
    pressures(study),
    ...(relief
      ? [
          finding({
            code: "P045",
            outcome: "attention",
            where: { path: "/site/wind/reliefPercent", ...study.view.where },
            says: message("structure.wind.relief", { percent: relief.value }),
            hint: message("structure.wind.relief-evidence"),
            source: { kind: "document", document: relief.source },
          }),
        ]
      : []),
  ]);
}

function pressures({ view, wind, bands }: ZoneStudy): Finding {
  const { x } = polygonBounds(view.zone.region);
  const reached = bands.filter((band) => overlaps(band.x, x));
  const net = netWind(wind, bands, { x, areaM2: 0 });
  const { working } = wind;
  return finding({
    code: "P045",
    outcome: "pass",
    where: { path: "/site/wind", ...view.where },
    says: message(`structure.wind.${reached.length === 1 ? "even" : "strips"}`, {
      pull: net.pullPa,
      push: net.pushPa,
      width: intervalLength((reached[0] ?? bands[0] ?? { x }).x),
      strips: reached.map((band) =>
        message(`structure.strip.${band.strip.id}`, {
          from: band.x[0],
          to: band.x[1],
          pull: netWind(wind, [band], { x: band.x, areaM2: 0 }).pullPa,
        }),
      ),
    }),
    hint: message(innerEnd(view.face) ? "structure.wind.inner-corner" : "structure.wind.no-relief"),
    demand: net.pullPa,
    unit: "Pa",
    working: {
      formula: `${working.formula} · (Cp − Cpi)`,
      inputs: [
        ...working.inputs,
        input("Cp", { meaning: "pull-coefficient", value: net.pull, unit: "1", basis: "given" }),
      ],
      substituted: `${working.substituted}; · ${written(net.pull, 3)} − ${written(wind.inside[1], 3)} = −${written(net.pullPa)}`,
    },
    source: wind.source,
  });
}
