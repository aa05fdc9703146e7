import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { unpackCircuit } from "../../electron/pack/pack.ts";
import { png } from "../electron/pictureFiles.ts";
import { begin, boxOf, give, RED } from "./paperInSight.ts";
import { pdf } from "./printedFiles.ts";
import { CMYK_JPEG, scannedPdf } from "./scans.ts";
import { expect, story } from "./story.ts";

/** Pixels that a picture is brought down to. */
const MOST_KEPT = 16_000_000;

story(
  "a scan in JPEG 2000, a picture for the press, 100 megapixels and 500 pages are read within bounds",
  async ({ program, host }) => {
    story.skip(host !== "loopback", "files are read by the page, which is the same in both hosts");
    const { page, folder } = program;
    const file = (name: string, bytes: Buffer): string => {
      const path = join(folder, name);
      writeFileSync(path, bytes);
      return path;
    };
    await begin(page);
    for (const [name, bytes] of [
      ["scan.pdf", scannedPdf()],
      ["press.jpg", CMYK_JPEG],
    ] as const) {
      const dialog = await give(page, file(name, bytes));
      await dialog.getByRole("button", { name: "Bring in 1 page" }).click();
      await expect.poll(async () => (await boxOf(page, RED)).count, name).toBeGreaterThan(1_000);
      await page.keyboard.press("Control+z");
      await expect(page.getByText("No printed page lies under this page")).toBeVisible();
    }

    const many = await give(page, file("manual.pdf", await pdf(500)));
    await many.getByRole("textbox").fill("1-500");
    await expect(many.getByText("At most 40 pages can be brought in at once, not 500.")).toBeVisible();
    await many.getByRole("textbox").fill("499");
    await many.getByRole("button", { name: "Bring in 1 page" }).click();
    await expect(page.getByRole("textbox", { name: "Title of manual.pdf, page 499" })).toBeVisible();

    const large = await give(page, file("large.png", png(11_600, 8_700)));
    await large.getByRole("button", { name: "Bring in 1 page" }).click();
    await expect(page.getByRole("textbox", { name: "Title of large.png" })).toBeVisible({ timeout: 30_000 });
    const { bytes } = await program.saved(() => page.keyboard.press("Control+s"));
    const packed = unpackCircuit(bytes);
    const kept = packed.ok ? packed.value.pictures.map(({ picture: { widthPx, heightPx } }) => widthPx * heightPx) : [];
    expect(kept).toHaveLength(2);
    expect(Math.max(...kept)).toBeLessThanOrEqual(MOST_KEPT);
    expect(Math.max(...kept)).toBeGreaterThan(MOST_KEPT / 2);
  },
);
