/** What can be done where one side of an opening is not as drawn: let the gap take it, trim, or make pieces again; each with what it costs. */
import { type FaceLaidAgain, layAgain } from "./lay-again.ts";
import type { Side } from "./measured.ts";
import type { AskedFace } from "./question.ts";

/** `absorb`: nothing is cut; `trim`: edges are cut back; `remake`: pieces are made again, or cut to another size for the first time. */
export type ChoiceKind = "absorb" | "trim" | "remake";

export interface SideChoice {
  readonly kind: ChoiceKind;
  /** Absent where it cannot be laid so. */
  readonly laid?: FaceLaidAgain;
}

export interface SideChoices {
  readonly opening: string;
  readonly side: Side;
  readonly drawn: number;
  readonly measured: number;
  /** Those that differ from one another, the one that cuts least first. */
  readonly choices: readonly SideChoice[];
}

/** @param opening of the face that is asked of; sides that are as drawn are left out */
export function choicesAt(asked: AskedFace, opening: string): SideChoices[] {
  const face = asked.face.id;
  const found = asked.measured.openings.find((one) => one.face === face && one.opening === opening);
  return (found?.sides ?? []).flatMap(({ side, drawn, measured }): SideChoices[] => {
    if (measured === undefined || measured === drawn) return [];
    const alone: AskedFace = {
      ...asked,
      measured: {
        openings: [{ face, opening, sides: [{ side, drawn, measured }], hasDiagonals: false }],
        ends: [],
      },
    };
    const absorbed = layAgain(alone, { may: "none" });
    const trimmed = layAgain(alone, { may: "trims" });
    const free = layAgain(alone);
    const choices: SideChoice[] = [choice("absorb", absorbed)];
    if (absorbed.kind !== "found") {
      choices.push(choice("trim", trimmed));
      if (!isSame(trimmed, free)) choices.push(choice("remake", free));
    }
    return [{ opening, side, drawn, measured, choices }];
  });
}

function choice(kind: ChoiceKind, laid: ReturnType<typeof layAgain>): SideChoice {
  return laid.kind === "found" ? { kind, laid } : { kind };
}

function isSame(a: ReturnType<typeof layAgain>, b: ReturnType<typeof layAgain>): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
