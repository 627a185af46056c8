/** The project on the sheet: the served one first, then whatever is opened from disk; designed by the worker. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Designer } from "../work/designer.ts";
import type { DesignAnswer } from "../work/messages.ts";

export interface Sheeted {
  readonly name: string;
  readonly design: Design;
  /** Of reading and designing, what is to be settled first in front. */
  readonly findings: readonly Finding[];
}

/** Why a file is not on the sheet; the design before it stays. */
export type Refused =
  | { readonly kind: "refused"; readonly name: string; readonly findings: readonly Finding[] }
  | { readonly kind: "broken"; readonly name: string }
  | { readonly kind: "absent" };

export interface ProjectState {
  readonly sheeted?: Sheeted;
  readonly refused?: Refused;
  readonly busy: boolean;
  open(file: File): void;
  putAway(): void;
}

export interface ProjectSources {
  readonly designer: Designer;
  /** The served project, already on its way; undefined where there is none. */
  readonly first: Promise<DesignAnswer | undefined>;
}

export function useProject({ designer, first }: ProjectSources): ProjectState {
  const [sheeted, setSheeted] = useState<Sheeted>();
  const [refused, setRefused] = useState<Refused>();
  const [busy, setBusy] = useState(true);
  const latest = useRef(0);

  const show = useCallback(async (coming: Promise<DesignAnswer | undefined>) => {
    latest.current += 1;
    const turn = latest.current;
    setBusy(true);
    const answer = await coming;
    // A file opened meanwhile has taken this one's place.
    if (turn !== latest.current) return;
    setBusy(false);
    if (answer?.kind === "designed") {
      const { name, design, readFindings } = answer;
      setRefused(undefined);
      setSheeted({ name, design, findings: [...readFindings, ...design.findings] });
    } else if (answer?.kind === "refused") {
      setRefused({ kind: "refused", name: answer.name, findings: answer.findings });
    } else setRefused(answer ? { kind: "broken", name: answer.name } : { kind: "absent" });
  }, []);

  useEffect(() => {
    void show(first);
  }, [show, first]);

  const open = useCallback(
    (file: File) => {
      const coming = file.text().then(
        (text) => designer.design({ name: file.name, text }),
        () => undefined,
      );
      void show(coming);
    },
    [designer, show],
  );
  const putAway = useCallback(() => setRefused(undefined), []);
  return { busy, open, putAway, ...(sheeted ? { sheeted } : {}), ...(refused ? { refused } : {}) };
}
