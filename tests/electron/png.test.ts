import { describe, expect, it } from "vitest";
import { paintingBrowsers, pngOfSvg } from "../../electron/print/png.ts";
import { codeOf } from "../edit/given.ts";

const SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="5mm" viewBox="0 0 10 5"/>';

describe("a picture without a window", () => {
  it("is refused in a sentence of its own where no browser is there, or one paints nothing", async () => {
    expect(codeOf(await pngOfSvg(SVG, 2, []))).toBe("png-no-browser");
    expect(codeOf(await pngOfSvg(SVG, 2, ["/no/such/browser", process.execPath]))).toBe("png-no-browser");
  });

  it.each(["linux", "darwin", "win32"])("has a browser to look for on %s", (platform) => {
    expect(paintingBrowsers(platform).length).toBeGreaterThan(1);
  });
});
