/** The page: inks, then the sheet. */
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { adoptInks } from "./drawing/inks.ts";
import { Workbench, type WorkbenchProps } from "./sheet/Workbench.tsx";

export function showPage(root: HTMLElement, props: WorkbenchProps): void {
  adoptInks();
  createRoot(root).render(
    <StrictMode>
      <Workbench {...props} />
    </StrictMode>,
  );
}
