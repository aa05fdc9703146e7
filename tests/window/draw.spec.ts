import { readCircuit } from "../../schemas/circuit.ts";
import { place, take } from "./byKeys.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

const WIRES = [
  { from: "G1.+", to: "F1.2", typed: "rd", colour: "RD" },
  { from: "F1.1", to: "S1.1", typed: "rdye", colour: "RD/YE" },
  { from: "S1.2", to: "E1.1", typed: "RD/BK", colour: "RD/BK" },
  { from: "E1.2", to: "GP1.stud", typed: "bn", colour: "BN" },
  { from: "G1.-", to: "GP2.stud", typed: "bk", colour: "BK" },
] as const;

story(
  "a circuit is drawn from nothing by keys alone, lives, is undone, and outlasts a restart",
  { tag: "@both" },
  async ({ program }) => {
    const { page } = program;
    await page.getByRole("button", { name: "New circuit" }).focus();
    await page.keyboard.press("Enter");
    await expect(page.getByText("Nothing is drawn on this page yet")).toBeVisible();
    await place(page, "battery", -30, 10);
    await place(page, "fuse", -30, -10);
    await place(page, "switch", 0, -10);
    await place(page, "lamp", 30, 5);
    await place(page, "ground", 30, 25);
    await place(page, "ground", -30, 25);

    await page.getByRole("application").focus();
    await page.keyboard.press("l");
    for (const [index, { from, to, typed }] of WIRES.entries()) {
      await take(page, from);
      await take(page, to);
      await expect(page.getByRole("group", { name: `Wire W${index + 1}` })).toBeVisible();
      await page.keyboard.type(typed);
      await page.keyboard.press("Enter");
      await page.keyboard.press("Escape");
    }
    await page.keyboard.press("Escape");
    const on = page.locator('[data-position="on"]').first();
    await on.click();
    await openView(page, "List");
    await expect(page.locator(".row", { has: page.getByText("E1", { exact: true }) }).first()).toContainText("on");

    const { bytes } = await program.saved(() => page.keyboard.press("Control+s"));
    const circuit = readCircuit(bytes);
    const wires = circuit.ok ? circuit.value.wires.map(({ from, to, colour }) => ({ from, to, colour })) : [];
    expect(wires).toEqual(WIRES.map(({ from, to, colour }) => ({ from, to, colour })));

    // The switch and the last colour are taken back, and come again.
    await page.getByRole("application").focus();
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+z");
    await expect(page.getByRole("button", { name: /^Redo: colour/ })).toBeVisible();
    await page.keyboard.press("Control+y");
    await page.keyboard.press("Control+y");
    await expect(on).toHaveAttribute("aria-pressed", "true");

    await page.waitForTimeout(1_000);
    await program.restart();
    await expect(program.page.locator('[data-position="on"]').first()).toHaveAttribute("aria-pressed", "true");
    await expect(program.page.getByRole("button", { name: /^Undo: / })).toBeVisible();
  },
);
