import { describe, expect, test } from "vitest";
import * as ampacity from "../../core/trade/ampacity.ts";
import * as battery from "../../core/trade/battery.ts";
import * as cautions from "../../core/trade/cautions.ts";
import * as colours from "../../core/trade/colours.ts";
import * as diodes from "../../core/trade/diodes.ts";
import type { FuseFamily } from "../../core/trade/fuses.ts";
import * as fuses from "../../core/trade/fuses.ts";
import * as gauge from "../../core/trade/gauge.ts";
import * as instruments from "../../core/trade/instruments.ts";
import * as lamps from "../../core/trade/lamps.ts";
import * as limits from "../../core/trade/limits.ts";
import * as melt from "../../core/trade/meltWindow.ts";
import * as motors from "../../core/trade/motors.ts";
import * as relays from "../../core/trade/relays.ts";
import type { Source } from "../../core/trade/source.ts";
import { derived, MEMORY, PRACTICE, published, STANDINGS, weakest } from "../../core/trade/source.ts";
import * as terminals from "../../core/trade/terminals.ts";
import * as wire from "../../core/trade/wire.ts";

const FILES = {
  ampacity,
  battery,
  cautions,
  colours,
  diodes,
  fuses,
  gauge,
  instruments,
  lamps,
  limits,
  meltWindow: ["mini", "regular", "maxi"].map((family) => melt.fuseGates(family as FuseFamily, 40)),
  motors,
  relays,
  terminals,
  wire,
};

/** Every source found anywhere in a value. */
function sourcesIn(value: unknown): readonly Source[] {
  if (typeof value !== "object" || value === null) return [];
  if ("standing" in value) return [value as Source];
  return Object.values(value).flatMap(sourcesIn);
}

describe.each(Object.entries(FILES))("%s", (_name, exports) => {
  const sources = Object.values(exports).flatMap(sourcesIn);

  test("names at least one source", () => expect(sources.length).toBeGreaterThan(0));

  test("every source has a known standing and a document", () => {
    for (const source of sources) {
      expect(STANDINGS).toContain(source.standing);
      expect(source.document.trim()).not.toBe("");
    }
  });

  test("a figure from memory or practice does not pass for a document's", () => {
    for (const source of sources.filter((each) => each.standing === "memory")) expect(source).toEqual(MEMORY);
    for (const source of sources.filter((each) => each.standing === "practice")) expect(source).toEqual(PRACTICE);
  });
});

test("the weakest source decides", () => {
  expect(weakest(published("a"), MEMORY, derived("b"))).toBe(MEMORY);
  expect(weakest(published("a"), derived("b")).document).toBe("b");
});
