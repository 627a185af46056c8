import { lazy, memo, type ReactNode, Suspense } from "react";
import type { Design } from "../../design.ts";
import { useWords } from "../words.ts";
import type { PickDetailProps } from "./PickDetail.tsx";

export interface DetailBandProps extends Omit<PickDetailProps, "design"> {
  /** In place of the section and its facts, for parts of the job that show something else. */
  readonly own: ReactNode;
  readonly design: Design | undefined;
}

/** It brings the section and the fields with it, which the elevation need not wait for. */
const PickDetail = lazy(async () => ({ default: (await import("./PickDetail.tsx")).PickDetail }));

/** Under the drawing: the section and the facts of what is picked, or what the chosen part of the job holds. */
export const DetailBand = memo(function DetailBand({ own, design, ...rest }: DetailBandProps) {
  const { w } = useWords();
  return (
    <section className="detail-band" aria-label={w("page.detail")}>
      <Suspense fallback={<p className="empty">{w("page.busy")}</p>}>
        {own ?? (design && <PickDetail {...rest} design={design} />)}
      </Suspense>
    </section>
  );
});
