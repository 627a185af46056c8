/** Starts what takes longest first: the worker and the project file are on their way while the page is still read. */
import "@fontsource/atkinson-hyperlegible-next/latin-400.css";
import "@fontsource/atkinson-hyperlegible-next/latin-600.css";
import "./sheet/sheet.css";
import "./drawing/drawing.css";
import "./notes/notes.css";
import "./sheet/title-block.css";
import "./sheet/narrow.css";
import { fetchProject } from "./work/api.ts";
import { startDesigner } from "./work/designer.ts";

const designer = startDesigner();
const first = fetchProject().then((file) => file && designer.design(file));

const root = document.getElementById("root");
if (root) void import("./page.tsx").then(({ showPage }) => showPage(root, { designer, first }));
