/** Starts what takes longest first: the served design is on its way while the page is still read; the worker comes last. */
import "@fontsource/atkinson-hyperlegible-next/latin-400.css";
import "@fontsource/atkinson-hyperlegible-next/latin-600.css";
import "./sheet/sheet.css";
import "./drawing/drawing.css";
import "./notes/notes.css";
import "./build-up/build-up.css";
import "./cutting/cutting.css";
import "./order/order.css";
import "./variants/variants.css";
import "./sheet/title-block.css";
import "./kept/kept.css";
import "./sheet/narrow.css";
import { fetchDesign } from "./work/api.ts";
import { createCutter } from "./work/cutter.ts";
import { createDesigner } from "./work/designer.ts";
import { createPlaneSearcher } from "./work/planes.ts";

const designer = createDesigner();
const first = fetchDesign();
void first.then((answer) =>
  requestIdleCallback(() => designer.warm(answer?.kind === "designed" ? answer : undefined)),
);

const root = document.getElementById("root");
if (root)
  void import("./page.tsx").then(({ showPage }) =>
    showPage(root, { designer, cutter: createCutter(), searcher: createPlaneSearcher(), first }),
  );
