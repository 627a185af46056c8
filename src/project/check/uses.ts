/** Claddings, screws and widths put to a use that suits them. */
import type { Finding } from "../../findings/finding.ts";
import { type Message, message } from "../../text/message.ts";
import type { Path } from "../pointer.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { Cladding, Project, Screw } from "../schema/project.ts";

export function useProblems(file: SourceFile, project: Project): Finding[] {
  return [...rodProblems(file, project), ...screwProblems(file, project), ...widthProblems(file, project)];
}

type Laying = Cladding["kind"] | "upright";

function layingOf(cladding: Cladding): Laying {
  return cladding.kind === "boards" && cladding.direction === "vertical" ? "upright" : cladding.kind;
}

/** Every zone of level boards hangs on one rod, and rods carry boards alone. */
function rodProblems(file: SourceFile, { faces, claddings, rods = [] }: Project): Finding[] {
  const kindOf = new Map(claddings.map((cladding) => [cladding.id, layingOf(cladding)]));
  const kinds = new Map<string, Laying | undefined>(
    faces.flatMap((face) =>
      face.zones.map((zone) => [`${face.id} ${zone.id}`, kindOf.get(zone.cladding)] as const),
    ),
  );
  const onRod = new Map<string, string>();
  const told = (path: Path, says: Message, hint: Message): Finding =>
    problem(file, { code: "F020", path, says, hint });
  const onRods = rods.flatMap((rod, i) =>
    rod.zones.flatMap(({ face, zone }, j) => {
      const key = `${face} ${zone}`;
      const path = ["rods", i, "zones", j];
      const earlier = onRod.get(key);
      onRod.set(key, rod.id);
      if (earlier !== undefined) {
        const says = message("project.zone-on-two-rods", { face, zone, rod: earlier });
        return [told(path, says, message("project.hint.one-rod"))];
      }
      if (kinds.get(key) === "upright") {
        const says = message("project.upright-on-rod", { face, zone, rod: rod.id });
        return [told(path, says, message("project.hint.upright-on-rod"))];
      }
      if (kinds.get(key) !== "sheets") return [];
      const says = message("project.sheets-on-rod", { face, zone, rod: rod.id });
      return [told(path, says, message("project.hint.sheets-on-rod"))];
    }),
  );
  const offRods = faces.flatMap((face, i) =>
    face.zones.flatMap((zone, j) => {
      if (kinds.get(`${face.id} ${zone.id}`) !== "boards" || onRod.has(`${face.id} ${zone.id}`)) return [];
      const says = message("project.boards-off-rod", { face: face.id, zone: zone.id });
      const hint = message("project.hint.boards-off-rod", { face: face.id, zone: zone.id });
      return [told(["faces", i, "zones", j], says, hint)];
    }),
  );
  return [...onRods, ...offRods];
}

function screwProblems(file: SourceFile, { buildUps, claddings, stock }: Project): Finding[] {
  const byId = new Map(stock.screws.map((screw) => [screw.id, screw]));
  const asked: { path: Path; screw: Screw | undefined; use: Screw["use"] }[] = [
    ...buildUps.map(({ battenScrew }, i) => ({
      path: ["buildUps", i, "battenScrew"],
      screw: byId.get(battenScrew),
      use: "batten" as const,
    })),
    ...buildUps.flatMap(({ railScrew }, i) =>
      railScrew === undefined
        ? []
        : [{ path: ["buildUps", i, "railScrew"], screw: byId.get(railScrew), use: "batten" as const }],
    ),
    ...claddings.map(({ screw, kind }, i) => ({
      path: ["claddings", i, "screw"],
      screw: byId.get(screw),
      use: kind === "boards" ? ("board" as const) : ("sheet" as const),
    })),
  ];
  return asked.flatMap(({ path, screw, use }) => {
    if (screw === undefined || screw.use === use) return [];
    const words = stock.screws.filter((one) => one.use === use).map(({ id }) => id);
    const says = message("project.screw-use", { use, is: screw.use });
    const hint =
      words.length === 0 ? message("project.hint.none-there") : message("project.hint.words", { words });
    return [problem(file, { code: "F020", path, says, hint })];
  });
}

function widthProblems(file: SourceFile, { claddings }: Project): Finding[] {
  return claddings.flatMap((cladding, i) => {
    if (cladding.kind !== "boards") return [];
    return cladding.widths.flatMap((width, j) => {
      if (cladding.widths.indexOf(width) === j) return [];
      const says = message("project.width-twice", { width });
      return [
        problem(file, {
          code: "F032",
          path: ["claddings", i, "widths", j],
          says,
          hint: message("project.hint.width-twice"),
          edit: [{ op: "remove", path: `/claddings/${i}/widths/${j}` }],
        }),
      ];
    });
  });
}
