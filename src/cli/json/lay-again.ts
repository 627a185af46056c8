/** A layout in its published shape. */
import type { Finding } from "../../findings/finding.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { Waiver } from "../../project/waivers.ts";
import type { SideChoices } from "../../site/as-built/choices.ts";
import type { CannotLay, FaceLaidAgain, GapAfter } from "../../site/as-built/lay-again.ts";
import type { LayAgainJson } from "../shapes/lay-again.ts";

export interface LayAgainFacts {
  readonly title: string;
  readonly faces: readonly {
    readonly laid: FaceLaidAgain | CannotLay;
    readonly choices: readonly SideChoices[];
  }[];
  readonly findings: readonly Finding[];
  /** Failing with the layout taken, and not before. */
  readonly fresh: readonly Finding[];
  readonly waivers?: readonly Waiver[] | undefined;
}

export function layAgainJson({ faces }: LayAgainFacts): Pick<LayAgainJson, "schemaVersion" | "faces"> {
  return {
    schemaVersion: 1,
    faces: faces.map(({ laid, choices }) => {
      const found = laid.kind === "found" ? laid : undefined;
      return {
        face: laid.face,
        possible: laid.kind === "found",
        ...(found && { cost: found.cost, least: found.least, share: found.share }),
        pieces: (found?.pieces ?? []).map(({ mark, come, fate, before, after, from }) => ({
          mark,
          come,
          fate,
          before: rectJson(before),
          after: rectJson(after),
          ...(from?.stock !== undefined && { stock: from.stock }),
          ...(from?.price !== undefined && { price: from.price }),
        })),
        gaps: (found?.gaps ?? []).map(gapJson),
        standing: (found?.standing ?? []).map(gapJson),
        choices: choices.map(({ opening, side, drawn, measured, choices: each }) => ({
          opening,
          side,
          drawn,
          measured,
          choices: each.map(({ kind, laid: one }) => ({
            kind,
            possible: one !== undefined,
            ...(one && { cost: one.cost }),
            marks: (one?.pieces ?? []).map(({ mark }) => mark),
          })),
        })),
      };
    }),
  };
}

function rectJson({ x, y }: Rect) {
  return { x: [x[0], x[1]] as [number, number], y: [y[0], y[1]] as [number, number] };
}

function gapJson({ marks, band, ...rest }: GapAfter) {
  return { ...rest, marks: [...marks], band: [band[0], band[1]] as [number, number] };
}
