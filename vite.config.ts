import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

/** The pages: the workbench and what it shares with the site. Built to dist/web, served by our own server. */
export default defineConfig({
  root: "src/web",
  cacheDir: "../../.cache/vite",
  plugins: [react()],
  json: { stringify: true },
  worker: { format: "es" },
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    target: "es2022",
    sourcemap: true,
    reportCompressedSize: false,
  },
});
