import { openSample } from "./acts.ts";
import { expect, story } from "./story.ts";

/** Width and height of a PNG, pixels. */
function pngSize(bytes: Buffer): readonly [number, number] {
  expect(bytes.subarray(1, 4).toString()).toBe("PNG");
  return [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
}

story("drawing, picture, moving picture and lists go out as files", { tag: "@both" }, async ({ program }) => {
  const { page } = program;
  await openSample(page, "two unlike lamps");
  await page.keyboard.press("Control+p");
  await page.getByRole("button", { name: "Export a page, pictures or lists" }).click();
  const exported = (name: string) =>
    program.saved(() => page.getByRole("button", { name: new RegExp(`^${name}`) }).click());

  const svg = await exported("Drawing, SVG");
  expect(svg.name).toMatch(/\.svg$/);
  expect(svg.bytes.toString("utf8")).toContain("data:font/woff2;base64,");
  // A4 across at 96 pixels to the inch, doubled.
  expect(pngSize((await exported("Picture, PNG")).bytes)).toEqual([2245, 1587]);
  const { name, bytes } = await exported("Moving picture, GIF");
  expect(name).toMatch(/\.gif$/);
  expect(bytes.subarray(0, 6).toString()).toBe("GIF89a");
  // A graphic control extension stands before each frame: one for each scene.
  expect(bytes.toString("latin1").split("!\u00F9\u0004")).toHaveLength(1 + 4);
  expect((await exported("Wire list, CSV")).bytes.toString("utf8")).toMatch(/^Wire,From,To,.*\r\nW1,G1\.\+,F1\.1,RD,/);
  expect((await exported("Net list, text")).bytes.toString("utf8")).toContain(
    "E1.2 SP2.1 SP2.2 SP2.3 E2.1 S2.2  (W6 W7 W10)",
  );
  await page.keyboard.press("Escape");
  await expect(page.getByRole("application")).toBeFocused();
});
