import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { TAKE_HOME, takeHomePage, takeHomeParts } from "../../electron/print/takeHome.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { ROOT } from "./machine.ts";
import { expect, story } from "./story.ts";
import { findings, fromDisk } from "./takehome.ts";

story(
  "hostile words in a circuit stay words on its take-home page, and lamps flash there no faster than they may",
  async ({ browser }, about) => {
    const hostile = '</script><img src=x onerror="window.hurt=1"><script>window.hurt=1</script>\u202Eevil';
    const parts = await takeHomeParts(join(ROOT, TAKE_HOME));
    const sample = readCircuit(readFileSync(join(ROOT, "samples", "6-truck-trailer.circuit.json")));
    if (!parts.ok || !sample.ok) throw new Error("there is nothing to make a page of");
    const circuit: Circuit = {
      ...sample.value,
      title: hostile,
      pages: sample.value.pages.map((page) => ({ ...page, title: hostile })),
      parts: sample.value.parts.map((part) => ({ ...part, label: hostile })),
      scenes: [{ label: hostile, condition: { set: { S1: "on", S2: "left" } }, caption: hostile }],
      cautions: [hostile],
    };
    const file = about.outputPath("hostile.html");
    writeFileSync(file, takeHomePage(circuit, parts.value));
    const { page, asked, faults } = await fromDisk(browser, file, true);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(hostile);
    expect(await page.evaluate(() => [document.images.length, document.scripts.length, "hurt" in window])).toEqual([
      0,
      0,
      false,
    ]);

    // A flash is two drawings shown in turn: counted over three seconds.
    const flashes = await page.evaluate(async () => {
      const lit = document.querySelector(".sheet svg")!;
      let rises = 0;
      new MutationObserver(() => {
        if (!lit.hasAttribute("hidden")) rises += 1;
      }).observe(lit, { attributes: true, attributeFilter: ["hidden"] });
      await new Promise((done) => setTimeout(done, 3_000));
      return rises;
    });
    expect(flashes).toBeGreaterThan(2);
    expect(flashes).toBeLessThanOrEqual(9);
    await page.getByRole("button", { name: "Hold flashing still" }).click();
    await expect(page.locator(".sheet svg").first()).toBeVisible();
    expect(await findings(page)).toEqual([]);
    await page.getByRole("button", { name: "Dark" }).click();
    expect(await findings(page)).toEqual([]);
    expect(asked).toEqual([pathToFileURL(file).href]);
    expect(faults).toEqual([]);
    await page.context().close();
  },
);
