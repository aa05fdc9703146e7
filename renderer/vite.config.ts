import { join } from "node:path";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { pdfFiles } from "./pdfFiles.ts";
import { startChunks } from "./startChunk.ts";

const inHere = (name: string): string => join(import.meta.dirname, name);

/** The page that every host shows. No inline script and only relative addresses, so that a strict CSP lets it run. */
// biome-ignore lint/style/noDefaultExport: the builder takes it so
export default defineConfig({
  root: import.meta.dirname,
  base: "./",
  plugins: [react(), pdfFiles()],
  build: {
    outDir: "../out/renderer",
    emptyOutDir: true,
    target: "chrome140",
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    rolldownOptions: {
      input: ["index.html", "class.html"].map(inHere),
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: [{ name: startChunks({ start: inHere("main.tsx"), wall: inHere("class/main.tsx") }) }],
        },
      },
    },
  },
});
