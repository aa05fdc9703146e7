import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import { app, becomeReady } from "./app.ts";
import { startChromium } from "./chromium.ts";
import { connectDevtools } from "./devtools.ts";
import { carryScheme } from "./scheme.ts";
import { stage, standin } from "./stage.ts";

// Run in the place of Electron's program, with its words: a folder with the program, then the program's own words.
if (process.argv[1] === import.meta.filename) process.argv.splice(1, 1);
stage.root = resolve(process.argv[1]!);
for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, () => app.quit());

const chromium = startChromium(process.env.STANDIN_CHROMIUM ?? "chromium");
const { main } = JSON.parse(readFileSync(join(stage.root, "package.json"), "utf8")) as { readonly main: string };
createRequire(import.meta.url)(join(stage.root, main));

const [address] = await Promise.all([chromium, carryScheme()]);
const devtools = await connectDevtools(address);
const { product } = await devtools.send<{ readonly product: string }>("Browser.getVersion");
standin.chromium = product.replace(/^.*\//, "");
stage.devtools.resolve(devtools);
becomeReady();
