import { defineConfig } from "vite";

/** The command line as Node runs it: our sources and data in one place, libraries left in node_modules. */
export default defineConfig({
  cacheDir: ".cache/vite-cli",
  publicDir: false,
  json: { stringify: true },
  build: {
    ssr: "src/cli/main.ts",
    outDir: "dist/cli",
    emptyOutDir: true,
    target: "node20",
    sourcemap: true,
    reportCompressedSize: false,
    rolldownOptions: { output: { entryFileNames: "main.js", chunkFileNames: "chunks/[name].js" } },
  },
});
