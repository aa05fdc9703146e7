import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import type { Plugin } from "vite";

/** Folders of the PDF reader with what it fetches by itself while it reads: decoders, tables, fonts, a colour profile. */
const FOLDERS = ["wasm", "cmaps", "standard_fonts", "iccs"];
/** What would run a document's own scripts: it is never asked for, so it is not there. */
const SCRIPTING = /quickjs/i;
/** The licences that lie beside them have no ending and go along as text. */
const LICENCE = /^LICENSE/;

/** Gives the built page the files that the PDF reader fetches by name, under `pdfjs/`. */
export function pdfFiles(): Plugin {
  const root = dirname(createRequire(import.meta.url).resolve("pdfjs-dist/package.json"));
  return {
    name: "pdf-files",
    apply: "build",
    generateBundle() {
      for (const folder of FOLDERS) {
        for (const name of readdirSync(join(root, folder)).filter((each) => !SCRIPTING.test(each))) {
          const fileName = `pdfjs/${folder}/${LICENCE.test(name) ? `${name}.txt` : name}`;
          this.emitFile({ type: "asset", fileName, source: readFileSync(join(root, folder, name)) });
        }
      }
    },
  };
}
