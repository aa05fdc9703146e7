import { join } from "node:path";
import type { Page } from "@playwright/test";
import { launch, WINDOW } from "../bench/window/browser.ts";
import { buildOnce, startInspected } from "../bench/window/host.ts";
import { lotsOf } from "../lots.ts";
import { ROOT } from "../window/machine.ts";
import { type Grown, growthOf, type Seen } from "./flat.ts";
import { inspect } from "./inspected.ts";
import { type Done, nothingDone, workedRound } from "./round.ts";
import { watchPage } from "./watch.ts";

const SEED = 20_261_126;
/** Circuits of the library that is worked in: printed pages long and short, motors, lights and relays. */
const CIRCUITS = ["1-roof-vents", "2-exterior-lights", "4-horn"];
/** Enough to tell something of what must not grow at all. */
const FEWEST_ROUNDS = 8;
/** What is saved and swept a moment later is over by then, milliseconds. */
const REST_MS = 800;
/** Fewer than a handful of these come and go by themselves. */
const SLACK = { "page listeners": 10, "page documents": 1, "host handles": 3, "host files": 3, "page heap MB": 1 };

/** What a soak came to. */
export interface Soaked {
  readonly minutes: number;
  readonly rounds: number;
  readonly done: Done;
  readonly looks: readonly Seen[];
  readonly grown: readonly Grown[];
}

/**
 * Works in the built page over the loopback host for some minutes without a pause, a few rounds at least, and looks after each
 * what page and host hold.
 */
export async function soak(minutes: number, tell: (line: string) => void): Promise<Soaked> {
  await buildOnce();
  const host = await startInspected();
  const inspector = await inspect(host);
  const browser = await launch();
  try {
    const page = await browser.newPage({ viewport: WINDOW });
    page.setDefaultTimeout(60_000);
    const faults: string[] = [];
    page.on("pageerror", (error) => void faults.push(error.message));
    await page.goto(host.address);
    await broughtIn(page);
    const look = await watchPage(page);
    const lots = lotsOf(SEED);
    const done = nothingDone();
    const looks: Seen[] = [];
    const until = performance.now() + minutes * 60_000;
    for (let round = 0; round < FEWEST_ROUNDS || performance.now() < until; round++) {
      await workedRound(page, round, lots, done);
      await page.waitForTimeout(REST_MS);
      looks.push({ ...named("page", await look()), ...named("host", await inspector.look()) });
      tell(`round ${round + 1}: ${wordsOf(looks.at(-1)!)}`);
      if (faults.length > 0) throw new Error(faults.join("\n"));
    }
    return { minutes, rounds: looks.length, done, looks, grown: growthOf(looks, SLACK) };
  } finally {
    inspector.close();
    await browser.close();
    await host.stop();
  }
}

/** Circuits of the library's own: a sample that was only tried goes again when it is left. */
async function broughtIn(page: Page): Promise<void> {
  await page.locator(".tile").first().waitFor();
  for (const name of CIRCUITS) {
    const [chooser] = await Promise.all([page.waitForEvent("filechooser"), page.keyboard.press("Control+o")]);
    await chooser.setFiles(join(ROOT, "samples", `${name}.circuit.json`));
    await page.getByRole("application").waitFor();
    await page.keyboard.press("Control+w");
    await page.locator(".entry-open", { hasText: /\S/ }).first().waitFor();
  }
}

const NAMES: Readonly<Record<string, string>> = { heapMb: "heap MB", rssMb: "memory MB" };

function named(whose: string, holds: object): Seen {
  return Object.fromEntries(Object.entries(holds).map(([name, value]) => [`${whose} ${NAMES[name] ?? name}`, value]));
}

function wordsOf(seen: Seen): string {
  return Object.entries(seen)
    .map(([name, value]) => `${name} ${value === null ? "?" : Math.round(value * 10) / 10}`)
    .join(", ");
}
