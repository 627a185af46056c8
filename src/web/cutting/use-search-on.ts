/** The search for cheaper cuts of the design on the sheet, which an edit ends. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { Tried } from "../../cutting/facade/search-on.ts";
import type { Design } from "../../design.ts";
import type { Project } from "../../project/schema/project.ts";
import { startSearchOn } from "../work/search-on.ts";

export interface SearchingOn {
  readonly state: "idle" | "running" | "ended" | "broken";
  readonly tries: readonly Tried[];
  start(): void;
  stop(): void;
}

/** All that cuts hang on: the facade is set out from nothing else, and a board's picture changes no cut. */
function askedOf({ pile, ...rest }: Project): string {
  return JSON.stringify([
    rest,
    pile && { ...pile, boards: pile.boards.map(({ pictures: _, ...board }) => board) },
  ]);
}

const IDLE = { state: "idle", tries: [] } as const;

export function useSearchOn({ project, facade }: Design): SearchingOn {
  const [now, setNow] = useState<Pick<SearchingOn, "state" | "tries">>(IDLE);
  const running = useRef<{ readonly stop: () => void }>(undefined);
  const stop = useCallback(() => {
    running.current?.stop();
    running.current = undefined;
    setNow(({ tries }) => ({ state: "ended", tries }));
  }, []);
  const asked = useMemo(() => askedOf(project), [project]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was found for another project is of no use
  useEffect(
    () => () => {
      running.current?.stop();
      running.current = undefined;
      setNow(IDLE);
    },
    [asked],
  );
  const start = useCallback(() => {
    setNow({ state: "running", tries: [] });
    running.current = startSearchOn({ project, facade }, (reply) =>
      setNow(({ state, tries }) =>
        reply.kind === "tried"
          ? { state, tries: [...tries, reply.tried] }
          : { state: reply.broken ? "broken" : "ended", tries },
      ),
    );
  }, [project, facade]);
  return { ...now, start, stop };
}
