/** The search for cheaper cuts of the design on the sheet, which an edit ends. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Tried } from "../../cutting/facade/search-on.ts";
import type { Design } from "../../design.ts";
import { startSearchOn } from "../work/search-on.ts";

export interface SearchingOn {
  readonly state: "idle" | "running" | "ended" | "broken";
  readonly tries: readonly Tried[];
  start(): void;
  stop(): void;
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
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was found of another facade is of no use
  useEffect(
    () => () => {
      running.current?.stop();
      running.current = undefined;
      setNow(IDLE);
    },
    [facade],
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
