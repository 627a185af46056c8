/** Variants of the project that are kept beside the one on the sheet: weighed by a worker, and there again after a reload. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { message } from "../../text/message.ts";
import { present } from "../edit/history.ts";
import type { ProjectState } from "../sheet/use-project.ts";
import { createCutter } from "../work/cutter.ts";
import { ASIDE, freeName, type SetAside, setAside, setAsideOf } from "../work/keep.ts";
import type { Weighed } from "./figures.ts";

export interface Variant extends SetAside {
  /** Undefined until it is weighed. */
  readonly weighed: Weighed | undefined;
}

export interface Variants {
  readonly kept: readonly Variant[];
  keep(): void;
  drop(name: string): void;
  /** Puts a variant on the sheet, as an edit that can be taken back. */
  put(name: string): void;
}

export function useVariants({ sheeted, edit }: Pick<ProjectState, "sheeted" | "edit">): Variants {
  const [kept, setKept] = useState<readonly Variant[]>([]);
  const cutter = useMemo(createCutter, []);
  const latest = useRef({ sheeted, kept });
  latest.current = { sheeted, kept };
  const file = sheeted?.name;
  const load = sheeted?.load;

  // biome-ignore lint/correctness/useExhaustiveDependencies: a file opened again shows what is kept of it now
  useEffect(() => {
    setKept([]);
    if (file === undefined) return;
    let left = false;
    const read = (): void =>
      void setAsideOf(file).then((held) => {
        if (!left) setKept(held.map((one) => ({ ...one, weighed: undefined })));
      });
    read();
    ASIDE.addEventListener("added", read);
    return () => {
      left = true;
      ASIDE.removeEventListener("added", read);
    };
  }, [file, load]);

  const change = useCallback((next: readonly Variant[]): void => {
    setKept(next);
    const name = latest.current.sheeted?.name;
    if (name !== undefined)
      void setAside(
        name,
        next.map(({ weighed: _, ...own }) => own),
      );
  }, []);
  const keep = useCallback((): void => {
    const { sheeted: now, kept: before } = latest.current;
    if (!now) return;
    const { document, says } = present(now.history);
    if (before.some((one) => one.document === document)) return;
    change([...before, { name: freeName(before), document, says, weighed: undefined }]);
  }, [change]);
  const drop = useCallback(
    (name: string): void => change(latest.current.kept.filter((one) => one.name !== name)),
    [change],
  );
  const put = useCallback(
    (name: string): void => {
      const variant = latest.current.kept.find((one) => one.name === name);
      if (!variant) return;
      edit({
        operations: [{ op: "replace", path: "", value: variant.document }],
        says: message("page.edit.variant", { name }),
      });
    },
    [edit],
  );

  // One after the other: a cutter that is asked twice answers with the later.
  const unweighed = kept.find(({ weighed }) => weighed === undefined);
  useEffect(() => {
    if (!unweighed || file === undefined) return;
    let left = false;
    void cutter.cut({ name: file, document: unweighed.document, withDesign: true }).then((cut) => {
      if (left || !cut?.designed) return;
      const weighed: Weighed = { ...cut.designed, takeoff: cut.takeoff };
      setKept((before) => before.map((one) => (one.name === unweighed.name ? { ...one, weighed } : one)));
    });
    return () => {
      left = true;
    };
  }, [cutter, file, unweighed]);
  return useMemo(() => ({ kept, keep, drop, put }), [kept, keep, drop, put]);
}
