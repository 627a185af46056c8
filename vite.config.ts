import { createHash } from "node:crypto";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import manifest from "./package.json" with { type: "json" };

/** What the page asks for first is named in its head, so that it is on its way before any script has run. */
function firstAsked(): Plugin {
  return {
    name: "first-asked",
    transformIndexHtml: {
      order: "post",
      handler: (_html, { bundle = {}, filename }) => {
        const files = Object.values(bundle);
        const page = files.find(
          (file) => file.type === "chunk" && file.facadeModuleId?.endsWith("/page.tsx"),
        );
        const link = (attrs: Record<string, string | boolean>) => ({
          tag: "link",
          attrs: { ...attrs, crossorigin: true },
          injectTo: "head" as const,
        });
        const fonts = files
          .filter(({ fileName }) => fileName.endsWith(".woff2"))
          .map(({ fileName }) =>
            link({ rel: "preload", href: `/${fileName}`, as: "font", type: "font/woff2" }),
          );
        if (!filename.endsWith("index.html")) return fonts;
        return [
          ...(page?.type === "chunk" ? [page.fileName, ...page.imports] : []).map((fileName) =>
            link({ rel: "modulepreload", href: `/${fileName}` }),
          ),
          link({ rel: "preload", href: "/api/design", as: "fetch" }),
          ...fonts,
        ];
      },
    },
  };
}

/** What stands beside the site pages' scripts, as the browser asks for it. */
const SITE_BESIDE = ["site.html", "site.webmanifest", "site-icon.svg", "icon.svg"];

/** The site pages' worker is told what to put by: all that their own scripts lead to. */
function siteFiles(): Plugin {
  return {
    name: "site-files",
    enforce: "post",
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        const files = Object.values(bundle);
        const chunks = new Map(
          files.flatMap((file) => (file.type === "chunk" ? [[file.fileName, file]] : [])),
        );
        const found = new Set(
          files.map(({ fileName }) => fileName).filter((name) => name.endsWith(".woff2")),
        );
        const walk = (name: string): void => {
          const chunk = chunks.get(name);
          if (!chunk || found.has(name)) return;
          found.add(name);
          for (const css of chunk.viteMetadata?.importedCss ?? []) found.add(css);
          for (const next of [...chunk.imports, ...chunk.dynamicImports]) walk(next);
        };
        for (const chunk of chunks.values()) {
          if (chunk.facadeModuleId?.endsWith("/site.html")) walk(chunk.fileName);
        }
        const paths = [...SITE_BESIDE, ...[...found].sort()].map((name) => `/${name}`);
        const worker = files.find(({ fileName }) => fileName === SITE_WORKER);
        if (worker?.type !== "chunk") return;
        const build = createHash("sha256").update(paths.join()).digest("hex").slice(0, 16);
        worker.code = worker.code
          .replaceAll("SITE_FILES", JSON.stringify(paths))
          .replaceAll("SITE_BUILD", JSON.stringify(build));
      },
    },
  };
}

/** A worker's path bounds the pages that it serves: this one stands beside them, under one name. */
const SITE_WORKER = "site-worker.js";

/** The pages: the workbench and what it shares with the site. Built to dist/web, served by our own server. */
export default defineConfig({
  root: "src/web",
  cacheDir: "../../.cache/vite",
  plugins: [react(), firstAsked(), siteFiles()],
  json: { stringify: true },
  define: { "import.meta.env.OUTERLEAF_VERSION": JSON.stringify(manifest.version) },
  worker: { format: "es" },
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    target: "es2022",
    sourcemap: true,
    reportCompressedSize: false,
    rolldownOptions: {
      input: {
        index: "src/web/index.html",
        site: "src/web/site.html",
        "site-worker": "src/web/site/offline/site-worker.ts",
      },
      output: {
        entryFileNames: ({ name }) => (name === "site-worker" ? SITE_WORKER : "assets/[name]-[hash].js"),
      },
    },
  },
});
