import { readCircuit } from "../../schemas/circuit.ts";
import { expect, type Program, story } from "./story.ts";

/** Where each part stands in the file that the program writes, in grid units. */
async function places(program: Program): Promise<Readonly<Record<string, readonly [number, number]>>> {
  const { bytes } = await program.saved(() => program.page.keyboard.press("Control+s"));
  const circuit = readCircuit(bytes);
  if (!circuit.ok) throw new Error(circuit.refusal.code);
  return Object.fromEntries(Object.entries(circuit.value.placement.parts).map(([id, { x, y }]) => [id, [x, y]]));
}

story("a part is moved by two clicks, where a drag would move it, and put back by Escape", async ({ program }) => {
  const { page } = program;
  await page.getByRole("button", { name: "New circuit" }).click();
  const drawing = page.getByRole("application");
  const { x, y, width, height } = (await drawing.boundingBox())!;
  const spot = (across: number, down: number) => ({ x: x + width * across, y: y + height * down });
  for (const [word, across] of [
    ["fuse", 0.4],
    ["lamp", 0.6],
  ] as const) {
    await page.getByRole("button", { name: "Add a part" }).click();
    await page.keyboard.type(word);
    await page.keyboard.press("Enter");
    const { x: left, y: top } = spot(across, 0.4);
    await page.mouse.click(left, top);
    await page.keyboard.press("Escape");
  }
  const before = await places(program);
  const click = async (across: number, down: number): Promise<void> => {
    const to = spot(across, down);
    await page.mouse.move(to.x, to.y);
    await page.mouse.click(to.x, to.y);
  };

  // A plain click chooses; the bar beside the tools then offers to move.
  await click(0.6, 0.4);
  const move = page
    .getByRole("toolbar", { name: "What is chosen" })
    .getByRole("button", { name: "Move by two clicks" });
  await move.click();
  await expect(move).toHaveAttribute("aria-pressed", "true");
  const hint = page.locator(".wire-hint");
  await expect(hint).toContainText("Click what is to move");
  await click(0.4, 0.4);
  await expect(hint).toContainText("Click where it goes");
  await page.keyboard.press("Escape");
  await expect(hint).toContainText("Click what is to move");
  await page.mouse.move(0, 0);
  expect(await places(program)).toEqual(before);

  await click(0.4, 0.4);
  await click(0.4, 0.7);
  const after = await places(program);
  expect(after.E1).toEqual(before.E1);
  expect(after.F1![0]).toBe(before.F1![0]);
  expect(after.F1![1]).toBeGreaterThan(before.F1![1] + 10);
  await expect(page.getByRole("button", { name: /^Undo: move/ })).toBeVisible();

  await page.getByRole("application").focus();
  await page.keyboard.press("Escape");
  await expect(hint).toHaveCount(0);
  await page.keyboard.press("Control+z");
  expect(await places(program)).toEqual(before);
});
