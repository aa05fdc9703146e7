import { pathToFileURL } from "node:url";
import AxeBuilder from "@axe-core/playwright";
import { type Browser, expect, type Page } from "@playwright/test";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { liveOf } from "../../core/live/live.ts";
import { wireWords } from "../../renderer/words/live.ts";

/** A page that was opened from the disk. */
export interface Opened {
  readonly page: Page;
  /** What it asked for, and what went wrong. */
  readonly asked: readonly string[];
  readonly faults: readonly string[];
}

/** Opens a page from the disk, in a browser of its own that has no network. */
export async function fromDisk(browser: Browser, file: string, phone = false): Promise<Opened> {
  const viewport = phone ? { width: 390, height: 844 } : { width: 1280, height: 800 };
  const context = await browser.newContext({ offline: true, viewport });
  const page = await context.newPage();
  const [asked, faults]: [string[], string[]] = [[], []];
  page.on("request", (request) => request.url().startsWith("data:") || asked.push(request.url()));
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("console", (said) => said.type() === "error" && faults.push(said.text()));
  await page.goto(pathToFileURL(file).href);
  await page.locator(".sheet svg").first().waitFor();
  return { page, asked, faults };
}

/** What the page says of every wire in its list, by id. */
async function wiresSaid(page: Page): Promise<Readonly<Record<string, string>>> {
  const rows = page.getByRole("region", { name: "Wires" }).locator("tbody tr");
  const texts = await rows.evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent)));
  return Object.fromEntries(texts.map((cells) => [cells[0], cells[3]]));
}

/** The page says of the wires it lists what the core finds in this condition. */
export async function expectSolved(page: Page, circuit: Circuit, condition: Condition): Promise<void> {
  const live = liveOf(circuit, condition);
  const said = await wiresSaid(page);
  expect(Object.keys(said).length).toBeGreaterThan(5);
  for (const [wire, words] of Object.entries(said)) expect(words, wire).toBe(wireWords(live.wires.get(wire)));
}

/** What the checker for accessibility finds in a page, one line each. */
export const findings = async (page: Page): Promise<readonly string[]> =>
  (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html}`);
