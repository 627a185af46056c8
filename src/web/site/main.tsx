/** Starts the site pages: what was held at the last visit is shown at once, and what the server has now follows. */
import "@fontsource/atkinson-hyperlegible-next/latin-400.css";
import "@fontsource/atkinson-hyperlegible-next/latin-600.css";
import "./site.css";
import "./texts.ts";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { adoptInks } from "../drawing/inks.ts";
import { heldDesign } from "./held.ts";
import { SitePage } from "./SitePage.tsx";

const root = document.getElementById("root");
if (root) {
  // Read while the first frame is made.
  const held = heldDesign();
  adoptInks();
  createRoot(root).render(
    <StrictMode>
      <SitePage first={held} />
    </StrictMode>,
  );
}
// Without a certificate that the phone trusts a browser runs no such worker: the pages then need the network to open.
void navigator.serviceWorker?.register("/site-worker.js", { scope: "/site" }).catch(() => undefined);
