import { mkdirSync, writeFileSync } from "node:fs";
import { PICTURES } from "./pictures.ts";

/** Writes the golden pictures anew: `npm run shapes`. */
const folder = new URL("./golden/", import.meta.url);
mkdirSync(folder, { recursive: true });
for (const { file, svg } of PICTURES) writeFileSync(new URL(file, folder), svg());
