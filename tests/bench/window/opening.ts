import { fileURLToPath } from "node:url";
import type { Browser, Page } from "@playwright/test";
import { build } from "rolldown";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import { sheetOf } from "../../../core/circuit/sheet.ts";
import type { Mark } from "../../../core/drawing/mark.ts";
import { boundsOfAll } from "../../../core/drawing/measure.ts";
import { millimetresOf } from "../../../core/drawing/scale.ts";
import { benchFor } from "../../../core/edit/bench.ts";
import { liveNow } from "../../../core/edit/liveNow.ts";
import { launch, still, WINDOW, watchedPage } from "./browser.ts";
import { SHEET } from "./throws.ts";
import { type ClickToDraw, eventsToMarks, traced } from "./trace.ts";

const ENTRY = fileURLToPath(new URL("page/once.js", import.meta.url));
/** The level of zoom at which the words of a page of 5,000 parts are set when all of it is in the window. */
const LEVEL = 0.1;
/** Room at the edges of the window, pixels. */
const MARGIN = 24;

/** The plain page as it is served. */
export async function onceScript(): Promise<string> {
  const { output } = await build({ input: ENTRY, write: false, output: { format: "iife", minify: true } });
  return output[0].code;
}

/** Clicks on something and gives what lies between that and the first frame with ink on the drawing's layer. */
export async function toFirstInk(browser: Browser, page: Page, target: string): Promise<ClickToDraw> {
  await page.hover(target);
  const trace = await traced(browser, page, async () => {
    await page.mouse.down();
    await page.mouse.up();
    await page.evaluate(`watched.inked(${SHEET})`);
    await still(page);
  });
  const [first] = eventsToMarks(trace, "click", `ink ${SHEET}`);
  if (!first) throw new Error("the trace shows no drawing after the click");
  return first;
}

/** Parses a circuit's JSON and draws the marks of its first picture once, in a browser that has done nothing else. */
export async function parsedAndDrawn(address: string, circuit: Circuit): Promise<ClickToDraw> {
  const browser = await launch();
  try {
    const page = await watchedPage(browser);
    await page.goto(address);
    const marks = firstMarks(circuit);
    await page.evaluate(`drawOnce(${JSON.stringify({ text: JSON.stringify(circuit), marks, ...viewOf(marks) })})`);
    await still(page);
    return await toFirstInk(browser, page, "#draw");
  } finally {
    await browser.close();
  }
}

/** The marks of the picture that the page shows first: all of the page, nothing thrown yet. */
function firstMarks(circuit: Circuit): readonly Mark[] {
  const { shown: live } = liveNow(benchFor(circuit));
  const sheet = sheetOf({ circuit, page: circuit.pages[0]!.id, live, framed: false, zoom: LEVEL });
  if (!sheet.ok) throw new Error(sheet.refusal.code);
  return sheet.value.marks;
}

/** All marks in the window, as large as they fit. */
function viewOf(marks: readonly Mark[]) {
  const { right, bottom } = boundsOfAll(marks)!;
  const scale = Math.min(
    (WINDOW.width - MARGIN) / millimetresOf(right),
    (WINDOW.height - MARGIN) / millimetresOf(bottom),
  );
  return { view: { scale, x: MARGIN / 2, y: MARGIN / 2 }, window: WINDOW };
}
