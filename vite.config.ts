import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";

/** What the page asks for first is named in its head, so that it is on its way before any script has run. */
function firstAsked(): Plugin {
  return {
    name: "first-asked",
    transformIndexHtml: {
      order: "post",
      handler: (_html, { bundle = {} }) => {
        const files = Object.values(bundle);
        const page = files.find(
          (file) => file.type === "chunk" && file.facadeModuleId?.endsWith("/page.tsx"),
        );
        const fonts = files.filter(({ fileName }) => fileName.endsWith(".woff2"));
        const link = (attrs: Record<string, string | boolean>) => ({
          tag: "link",
          attrs: { ...attrs, crossorigin: true },
          injectTo: "head" as const,
        });
        return [
          ...(page?.type === "chunk" ? [page.fileName, ...page.imports] : []).map((fileName) =>
            link({ rel: "modulepreload", href: `/${fileName}` }),
          ),
          link({ rel: "preload", href: "/api/design", as: "fetch" }),
          ...fonts.map(({ fileName }) =>
            link({ rel: "preload", href: `/${fileName}`, as: "font", type: "font/woff2" }),
          ),
        ];
      },
    },
  };
}

/** The pages: the workbench and what it shares with the site. Built to dist/web, served by our own server. */
export default defineConfig({
  root: "src/web",
  cacheDir: "../../.cache/vite",
  plugins: [react(), firstAsked()],
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
