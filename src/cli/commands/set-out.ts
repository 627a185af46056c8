/** `outerleaf set-out`: the whole facade with every piece, joint, screw and control line. */
import { byWeight } from "../../findings/finding.ts";
import { setOutJson } from "../../output/json/set-out.ts";
import { countLine, printFindings, unsettled } from "../../output/report/findings.ts";
import type { Facade, FaceLayout, PieceKind } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { type Reader, say, sayLength } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import { designed } from "../designed.ts";
import { exitOf } from "../exit.ts";
import type { Job } from "../job.ts";
import { openProject } from "../open-project.ts";
import { table } from "../print/table.ts";

export async function command(job: Job): Promise<Answer> {
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { project, reader } = opened;
  job.progress(message("cli.doing.design"));
  const { demands, facade } = designed(project);
  const findings = [...facade.findings].sort(byWeight);
  const options = { reader, waivers: project.waivers };
  return {
    exit: exitOf(findings, project.waivers),
    json: job.options.json ? setOutJson({ project, demands, facade }, reader) : undefined,
    text: [
      say(message("cli.set-out.title", { title: project.title }), reader),
      "",
      facesTable(facade, reader),
      "",
      ...rodLines(facade, reader),
      ...planeLines(facade, reader),
      "",
      printFindings(unsettled(findings), options) + countLine(findings, options),
      "",
    ].join("\n"),
  };
}

const COUNTED: readonly PieceKind[] = ["sheet", "board", "batten", "backing", "closure"];

function facesTable({ faces }: Facade, reader: Reader): string {
  const word = (key: string): string => say(message(key), reader);
  const head = [
    word("term.face"),
    ...COUNTED.map((kind) => word(`term.${kind}`)),
    word("cli.set-out.screws"),
  ];
  const rows = faces.map((face) => [
    face.id,
    ...COUNTED.map((kind) => String(face.pieces.filter((piece) => piece.kind === kind).length)),
    String(screws(face)),
  ]);
  return table([head, ...rows], { right: head.map((_, at) => at).slice(1) });
}

function screws({ pieces }: FaceLayout): number {
  return pieces.reduce((sum, { fixings }) => sum + fixings.length, 0);
}

function rodLines({ rods }: Facade, reader: Reader): string[] {
  return rods.flatMap(({ id, segments }) =>
    segments.map(({ segment, from, to, gap, courses }) =>
      say(
        message("cli.set-out.rod", {
          rod: id,
          segment,
          from,
          to,
          gap,
          courses: courses.map(({ width }) => sayLength(width, reader)).join(" "),
        }),
        reader,
      ),
    ),
  );
}

function planeLines({ planes }: Facade, reader: Reader): string[] {
  return planes.map(({ face, zone, faceZ, cavity }) =>
    say(message("cli.set-out.plane", { face, zone, plane: faceZ, cavity }), reader),
  );
}
