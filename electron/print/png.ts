import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { Share } from "../../core/base/units.ts";
import { pictureHead } from "../../schemas/pictureHead.ts";

/** Pixels to the millimetre of a picture of one times: the screen's 96 to the inch. */
const PIXELS_PER_MM = 96 / 25.4;
/** Longest side of a picture, pixels: what every browser paints. */
const MOST_PIXELS = 16_000;
/** A browser that has not painted by then never will, ms. */
const MOST_MS = 60_000;

/** Browsers that paint a page without a window, by the names under which a platform has them. */
export function paintingBrowsers(platform: string): readonly string[] {
  switch (platform) {
    case "win32":
      return [
        "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
        "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
      ];
    case "darwin":
      return [
        "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
        "/Applications/Chromium.app/Contents/MacOS/Chromium",
        "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
      ];
    default:
      return ["chromium", "chromium-browser", "google-chrome", "microsoft-edge"];
  }
}

/**
 * An SVG, its fonts in it, as the bytes of a PNG of so many times the size of a screen; less where that would be more than a
 * browser paints. It is painted by the first of these browsers that is there, so that it looks as in the window. Refuses
 * `png-no-browser` where none is, or none paints.
 */
export async function pngOfSvg(svg: string, times: Share, browsers: readonly string[]): Promise<Outcome<Uint8Array>> {
  const [, wide = "1", high = "1"] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
  const scale = Math.min(times * PIXELS_PER_MM, MOST_PIXELS / Math.max(Number(wide), Number(high)));
  const [width, height] = [Math.round(Number(wide) * scale), Math.round(Number(high) * scale)];
  const folder = await mkdtemp(join(tmpdir(), "wirefathom-png-"));
  try {
    const [page, out] = [join(folder, "page.html"), join(folder, "page.png")];
    const style = `html, body { margin: 0; overflow: hidden; } svg { display: block; width: ${width}px; height: ${height}px; }`;
    await writeFile(page, `<!doctype html><meta charset="utf-8"><style>${style}</style>${svg}`);
    const words = [
      "--headless",
      "--disable-gpu",
      "--hide-scrollbars",
      "--force-device-scale-factor=1",
      "--no-first-run",
      // The page is our own; as root, Chromium starts in no other way.
      ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
      `--user-data-dir=${join(folder, "profile")}`,
      `--window-size=${width},${height}`,
      `--screenshot=${out}`,
      pathToFileURL(page).href,
    ];
    for (const browser of browsers) {
      const painted = await paintedBy(browser, words, out);
      const head = painted && pictureHead(painted);
      if (painted && head?.ok && head.value.widthPx === width && head.value.heightPx === height) return ok(painted);
    }
    return refuse("png-no-browser");
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 3 });
  }
}

/** What a browser painted; null where it is not there or painted nothing. */
async function paintedBy(browser: string, words: readonly string[], out: string): Promise<Uint8Array | null> {
  await new Promise<void>((ended) => {
    execFile(browser, [...words], { timeout: MOST_MS }, () => ended());
  });
  return readFile(out).catch(() => null);
}
