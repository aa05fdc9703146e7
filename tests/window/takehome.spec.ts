import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { readCircuit } from "../../schemas/circuit.ts";
import { openSample } from "./acts.ts";
import { expect, story } from "./story.ts";
import { expectSolved, fromDisk } from "./takehome.ts";
import { openView } from "./views.ts";

/** Most bytes of the page of sample 1. */
const MOST_BYTES = 600_000;

story(
  "a circuit goes home as one page that is switched without a network, by mouse and by keyboard",
  async ({ program, browser }) => {
    const { page: bench, folder } = program;
    const title = await openSample(bench, "Roof vents");
    await openView(bench, "Condition");
    const { name, bytes } = await program.saved(() => bench.getByRole("button", { name: /^Take-home page/ }).click());
    expect(name).toBe(`${title}.html`);
    expect(bytes.length).toBeLessThanOrEqual(MOST_BYTES);
    const file = join(folder, name);
    writeFileSync(file, bytes);
    const text = bytes.toString("utf8");
    const read = readCircuit(/id="circuit">(.*?)<\/script>/s.exec(text)![1]!);
    if (!read.ok) throw new Error(read.refusal.code);
    const circuit = read.value;

    const { page, asked, faults } = await fromDisk(browser, file);
    await page.getByRole("tab", { name: "2 Roof vents" }).click();
    await page.getByText("Every wire and part of this page in words").click();
    await expectSolved(page, circuit, {});

    // By keyboard alone: the key on, then the middle switch held open.
    await page.getByRole("group", { name: "Key" }).getByRole("button", { name: "On" }).focus();
    await page.keyboard.press("Enter");
    await expect(page.getByRole("status")).toContainText("Key on.");
    await page.getByRole("group", { name: "S5" }).getByRole("button", { name: "Open" }).focus();
    await page.keyboard.press("Space");
    await expect(page.getByRole("status")).toContainText("M3 runs forward");
    await expectSolved(page, circuit, { set: { S1: "on", S5: "open" } });

    // By mouse on the drawing: pressed where its blade lies, the switch springs back.
    const blade = await page.locator(".throws line").evaluateAll((lines) => {
      const drawn = document.querySelector('.sheet [data-of="S5"]')!.getBoundingClientRect();
      const middles = lines.map((line) => {
        const { x, y, width, height } = line.getBoundingClientRect();
        return { x: x + width / 2, y: y + height / 2 };
      });
      return middles.find(({ x, y }) => x > drawn.left && x < drawn.right && y > drawn.top && y < drawn.bottom);
    });
    await page.mouse.click(blade!.x, blade!.y);
    await expect(page.getByRole("status")).toContainText("S5 ");
    const now = await page.getByRole("group", { name: "S5" }).locator('[aria-pressed="true"]').textContent();
    const position = (now ?? "").replace(/\W/g, "").toLowerCase();
    expect(position).not.toBe("open");
    await expectSolved(page, circuit, { set: { S1: "on", ...(position !== "rest" && { S5: position }) } });

    await page.getByRole("button", { name: "All at rest" }).click();
    await page.getByRole("button", { name: `3 ${circuit.scenes[2]!.label}`, exact: true }).click();
    await expectSolved(page, circuit, circuit.scenes[2]!.condition);
    await page.getByRole("button", { name: "Only what changed" }).click();
    await expect(page.locator('.sheet [data-of="M3"]:not([opacity])').first()).toBeVisible();
    await expect(page.locator('.sheet [data-of="M1"][opacity]').first()).toBeAttached();

    expect(asked).toEqual([pathToFileURL(file).href]);
    expect(faults).toEqual([]);
    await page.context().close();
  },
);
