import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { ICON_SIZES, ICON_SVG, iconFile } from "../../electron/packaging/icons.ts";
import { chromiumProgram, ROOT } from "../window/machine.ts";

// Run by `npm run icons`: paints the program's icon in all its sizes. Look at them before you commit.
const executablePath = chromiumProgram();
if (executablePath === null) throw new Error("There is no Chromium on this machine: apt-get install chromium");
const browser = await chromium.launch({ executablePath, ...(process.getuid?.() === 0 && { args: ["--no-sandbox"] }) });
const svg = readFileSync(join(ROOT, ICON_SVG), "utf8");
for (const size of ICON_SIZES) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const style = `body { margin: 0; } svg { display: block; width: ${size}px; height: ${size}px; }`;
  await page.setContent(`<style>${style}</style>${svg}`);
  writeFileSync(join(ROOT, iconFile(size)), await page.screenshot({ omitBackground: true }));
  await page.close();
}
await browser.close();
