import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "@playwright/test";
import { freshFolder } from "../room.ts";
import { launch, still, watchedPage } from "./browser.ts";
import { type ColdStart, coldStart } from "./coldStart.ts";
import { gridCircuit } from "./gridCircuit.ts";
import { buildOnce, startHost } from "./host.ts";
import { type Large, openLarge } from "./large.ts";
import { type Dragged, drag, type Moved, pan, zoom } from "./moves.ts";
import { type Clicked, redrawBare, throwInStrip } from "./throws.ts";
import { serveYardsticks, showBare, type Yardsticks } from "./yardstick.ts";

const SIZES = [500, 2_000];

/** What the window came to with one circuit, in milliseconds. */
export interface WindowRow {
  readonly wires: number;
  /** By the clock, from asking for the page to the drawing on it. */
  readonly openMs: number;
  /** One branch switched, and the key, which recolours every row. */
  readonly branch: Clicked;
  readonly key: Clicked;
  /** The same wires as plain lines on one konva layer, drawn again. */
  readonly bare: Clicked;
  readonly pan: Moved;
  readonly zoom: Moved;
  /** A lamp near the corner, carried with its wires and put down. */
  readonly drag: Dragged;
}

/** Everything measured in the browser. */
export interface WindowFigures {
  readonly rows: readonly WindowRow[];
  readonly large: Large;
  readonly start: ColdStart;
}

/** Measures the built page as a browser shows it, and plain pages beside it, in one browser without a GPU. */
export async function measureWindow(): Promise<WindowFigures> {
  await buildOnce();
  const yardsticks = await serveYardsticks();
  try {
    const rows: WindowRow[] = [];
    for (const size of SIZES) rows.push(await withCircuit(size, yardsticks));
    return { rows, large: await openLarge(yardsticks.once), start: await coldStart(yardsticks.empty) };
  } finally {
    yardsticks.stop();
  }
}

async function withCircuit(size: number, yardsticks: Yardsticks): Promise<WindowRow> {
  const circuit = gridCircuit(size);
  const folder = freshFolder();
  const file = join(folder.path, "grid.circuit.json");
  writeFileSync(file, JSON.stringify(circuit));
  const host = await startHost(file);
  const browser = await launch();
  try {
    const opened = await measureBench(browser, host.address);
    const bare = await watchedPage(browser);
    await bare.goto(yardsticks.bare);
    await showBare(bare, circuit, opened.canvas.width, opened.canvas.height);
    return { wires: circuit.wires.length, ...opened.figures, bare: await redrawBare(browser, bare) };
  } finally {
    await browser.close();
    await host.stop();
    folder.remove();
  }
}

async function measureBench(browser: Browser, address: string) {
  const page = await watchedPage(browser);
  const begun = performance.now();
  await page.goto(address);
  const canvas = (await page.locator(".sheet-canvas").boundingBox())!;
  await page.evaluate("new Promise(requestAnimationFrame)");
  const openMs = performance.now() - begun;
  await still(page);
  const key = await throwInStrip(browser, page, "S0");
  // With the key on, a branch is powered when it is switched.
  await page.locator('[data-position="on"]').first().click();
  const branch = await throwInStrip(browser, page, "S1");
  const moves = {
    pan: await pan(browser, page),
    zoom: await zoom(browser, page),
    drag: await drag(browser, page, "E1"),
  };
  const figures = { openMs, branch, key, ...moves };
  await page.close({ runBeforeUnload: false });
  return { figures, canvas };
}
