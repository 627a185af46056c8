/** A survey as text: the planes side by side, then the packing of the first crossing by crossing, batten by batten. */
import type { Project } from "../../project/schema/project.ts";
import { packingCost } from "../../site/survey/cost.ts";
import type { CornerStep } from "../../site/survey/joined.ts";
import { type Packing, type SurveyedFace, usualPacking } from "../../site/survey/packing.ts";
import { message } from "../../text/message.ts";
import { type Reader, say, sayLength, sayNumber } from "../../text/say.ts";
import { table } from "./table.ts";

export function printPack(
  { face, spots, nearest, band, twist, packings }: SurveyedFace,
  project: Priced,
  reader: Reader,
): string {
  const tell = (key: string, values = {}): string => say(message(`cli.pack.${key}`, values), reader);
  const usual = usualPacking(packings);
  return [
    tell("face", { face, count: spots.length }),
    ...(twist === undefined ? [] : [tell("twist", { by: twist })]),
    ...(nearest ? [tell("nearest", { most: nearest.most })] : []),
    ...(band ? [tell("smallest", { half: band.half })] : []),
    "",
    ...(packings.length > 0
      ? [planes(packings, project, reader), ...lacking(packings, project, reader), ""]
      : []),
    ...(usual
      ? [tell("crossings", { plane: message(`survey.plane.${usual.kind}`) }), crossings(usual, reader), ""]
      : []),
  ].join("\n");
}

/** One line a corner: how far the own planes of its faces would stand apart there. */
export function printCorners(corners: readonly CornerStep[], reader: Reader): string {
  return corners.map((corner) => say(message("survey.corner", { ...corner }), reader)).join("\n");
}

type Priced = Pick<Project, "packingWork"> & { readonly stock: Pick<Project["stock"], "currency"> };

/** The figures of the file that time and price would take. */
function lacking(packings: readonly Packing[], project: Priced, reader: Reader): string[] {
  const paths = [...new Set(packings.flatMap((one) => packingCost(one, project).lacks))];
  return paths.length === 0 ? [] : [say(message("survey.cost.lacks", { paths }), reader)];
}

function planes(packings: readonly Packing[], project: Priced, reader: Reader): string {
  const word = (key: string): string => say(message(key), reader);
  const head = [
    ...["plane", "sum", "most", "packers", "planed", "lean"].map((key) => word(`cli.pack.${key}`)),
    ...["count", "minutes", "price"].map((key) => word(`survey.cost.${key}`)),
  ];
  const costs = packings.map((one) => packingCost(one, project));
  const figure = (value: number | undefined, decimals: number): string =>
    value === undefined ? "?" : sayNumber(value, decimals, reader);
  const rows = packings.map(({ kind, plane, sum, most, packers, crossings: all }, i) => [
    word(`survey.plane.${kind}`),
    sayLength(sum, reader, 1),
    sayLength(most, reader, 1),
    packers.map(({ thickness, count }) => `${count} × ${sayLength(thickness, reader)}`).join(", "),
    all.flatMap(({ planeOff }) => (planeOff > 0 ? [sayLength(planeOff, reader, 1)] : [])).join(", "),
    `${sayNumber(plane.alongPerM, 1, reader)} / ${sayNumber(plane.upPerM, 1, reader)}`,
    String(costs[i]?.packers ?? ""),
    figure(costs[i]?.minutes, 0),
    costs[i]?.price === undefined ? "?" : `${figure(costs[i]?.price, 2)} ${project.stock.currency}`,
  ]);
  return table([head, ...rows], { indent: 2, right: [1, 2, 6, 7, 8] });
}

/** One line a batten: height and packers of each of its screws, from the base up. */
function crossings({ crossings: all }: Packing, reader: Reader): string {
  const battens = [...new Set(all.map(({ batten }) => batten))];
  const rows = battens.map((batten) => {
    const own = all.filter((one) => one.batten === batten);
    return [
      batten,
      own
        .map(({ y, packers }) => {
          const sum = packers.length === 0 ? "0" : packers.map((one) => sayLength(one, reader)).join("+");
          return `${sayLength(y, reader)}: ${sum}`;
        })
        .join("   "),
    ];
  });
  return table(rows, { indent: 2 });
}
