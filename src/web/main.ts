/** Starts what takes longest first: the served design is on its way while the page is still read; the worker comes last. */
import "@fontsource/atkinson-hyperlegible-next/latin-400.css";
import "@fontsource/atkinson-hyperlegible-next/latin-600.css";
import "./sheet/sheet.css";
import "./drawing/drawing.css";
import "./notes/notes.css";
import "./build-up/build-up.css";
import "./cutting/cutting.css";
import "./figures/figures.css";
import "./order/order.css";
import "./variants/variants.css";
import "./edit/help/help.css";
import "./sheet/title-block.css";
import "./kept/kept.css";
import "./sheet/narrow.css";
import { fetchDesign } from "./work/api.ts";
import { createCutter } from "./work/cutter.ts";
import { createDesigner } from "./work/designer.ts";
import { createPlaneSearcher } from "./work/planes.ts";

/** The empty sheet is shown where the served design takes longer than this, milliseconds. */
const PATIENCE = 600;

const designer = createDesigner();
const first = fetchDesign();
const late = new Promise<undefined>((resolve) => setTimeout(resolve, PATIENCE, undefined));

async function show(root: HTMLElement): Promise<void> {
  const [{ showPage }, served] = await Promise.all([import("./page.tsx"), Promise.race([first, late])]);
  showPage(root, { designer, cutter: createCutter(), searcher: createPlaneSearcher(), first, served });
  const answer = await first;
  // The second frame from now has the drawing; the worker would take its core from it.
  requestAnimationFrame(() =>
    requestAnimationFrame(() =>
      requestIdleCallback(() => designer.warm(answer?.kind === "designed" ? answer : undefined)),
    ),
  );
}

const root = document.getElementById("root");
if (root) void show(root);
