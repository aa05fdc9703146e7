import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { netsOf } from "../../core/circuit/nets.ts";
import { sumOf, tidinessOf } from "../../core/circuit/tidiness.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { formatCircuit } from "../../schemas/formatCircuit.ts";
import { scattered } from "../scattered.ts";
import { expect, type Program, story } from "./story.ts";

const PAGE = "p1";
const SAMPLE = new URL("../../samples/4-horn.circuit.json", import.meta.url);

/** The circuit on the bench, as its file has it. */
async function onTheBench({ page, saved }: Program) {
  const { bytes } = await saved(() => page.keyboard.press("Control+s"));
  const read = readCircuit(bytes);
  if (!read.ok) throw new Error(`what was saved is no circuit: ${read.refusal.code}`);
  return read.value;
}

story("a page is scattered, arranged, undone, given up and arranged round a pin", async ({ program }) => {
  const sample = readCircuit(readFileSync(SAMPLE, "utf8"));
  if (!sample.ok) throw new Error("the sample is no circuit");
  const thrown = scattered(sample.value, PAGE, 7);
  const file = join(program.folder, "scattered.circuit.json");
  writeFileSync(file, formatCircuit(thrown));
  await program.restart(file);
  const { page } = program;
  await expect(page).toHaveTitle(new RegExp(thrown.title));
  const notes = page.getByRole("region", { name: "Notes" });
  const menu = page.getByRole("button", { name: /^More for page/ });

  await menu.click();
  await page.getByRole("button", { name: "Arrange the page" }).click();
  await expect(notes.getByText("Arranged.")).toBeVisible({ timeout: 60_000 });
  await expect(notes).toContainText(/\d+\scrossings? and \d+\sbends?, where there were/);
  const arranged = await onTheBench(program);
  expect(netsOf(arranged)).toEqual(netsOf(thrown));
  expect(sumOf(tidinessOf(arranged, PAGE))).toBeLessThan(sumOf(tidinessOf(thrown, PAGE)));

  await notes.getByRole("button", { name: "Undo" }).click();
  await expect(notes.getByText("Arranged.")).toBeHidden();
  expect((await onTheBench(program)).placement).toEqual(thrown.placement);

  await page.getByRole("application").focus();
  await page.keyboard.press("a");
  await expect(page.getByText(/Attempt \d of \d/)).toBeVisible();
  await page.getByRole("button", { name: "Cancel" }).click();
  await expect(page.getByText(/Attempt \d of \d/)).toBeHidden();
  expect((await onTheBench(program)).placement).toEqual(thrown.placement);

  await page.getByRole("application").focus();
  await page.keyboard.press("PageDown");
  const pin = page.getByRole("button", { name: "Stay where it is" });
  await pin.click();
  await expect(pin).toHaveAttribute("aria-pressed", "true");
  const before = await onTheBench(program);
  const [pinned, place] = Object.entries(before.placement.parts).find(([, each]) => each.pinned === true)!;
  await menu.click();
  await page.getByRole("button", { name: "Arrange the page" }).click();
  await expect(notes.getByText("Arranged.")).toBeVisible({ timeout: 60_000 });
  const after = await onTheBench(program);
  expect(after.placement.parts[pinned]).toEqual(place);
  expect(after.placement).not.toEqual(before.placement);
});
