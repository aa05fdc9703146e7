import { describe, expect, test } from "vitest";
import type { FuseFamily } from "../../core/trade/fuses.ts";
import {
  bodyColour,
  coldOhms,
  FUSE_BODIES,
  FUSE_FAMILIES,
  HOT_RATIO,
  isFuseFamily,
  MAXI_40_DERATING,
} from "../../core/trade/fuses.ts";
import type { MeltSeconds } from "../../core/trade/meltWindow.ts";
import { fuseGates, holdsFor, meltWindow } from "../../core/trade/meltWindow.ts";

const seconds = (time: MeltSeconds) => (time === "never" ? Number.POSITIVE_INFINITY : time);
const every = FUSE_FAMILIES.flatMap((family) =>
  FUSE_BODIES[family].map((body): [FuseFamily, number] => [family, body.amps]),
);

describe.each(every)("%s %s A", (family, rated) => {
  test("its gates rise in share and fall in time", () => {
    const gates = fuseGates(family, rated);
    for (const [i, gate] of gates.entries()) {
      expect(seconds(gate.most)).toBeGreaterThan(gate.least);
      const before = gates[i - 1];
      if (!before) continue;
      expect(gate.share).toBeGreaterThan(before.share);
      expect(gate.least).toBeLessThan(before.least);
      expect(seconds(gate.most)).toBeLessThan(seconds(before.most));
    }
  });

  test("more amps never move either end of the window later", () => {
    let before = meltWindow(family, rated, 0);
    for (let share = 0; share < 9; share += 0.07) {
      const window = meltWindow(family, rated, rated * share);
      expect(window.least).toBeLessThanOrEqual(before.least);
      expect(seconds(window.most)).toBeLessThanOrEqual(seconds(before.most));
      expect(seconds(window.most)).toBeGreaterThan(window.least);
      before = window;
    }
  });

  test("it holds its rating, and its ohms are above 0", () => {
    expect(meltWindow(family, rated, rated)).toMatchObject({ least: 360_000, most: "never" });
    expect(coldOhms(family, rated).ohms).toBeGreaterThan(0);
  });
});

describe("windows", () => {
  test("between gates the window is as wide as both allow", () => {
    expect(meltWindow("regular", 10, 19)).toMatchObject({ least: 0.15, most: 50 });
    expect(meltWindow("regular", 10, 12)).toMatchObject({ least: 0.75, most: "never" });
    expect(meltWindow("maxi", 40, 100)).toMatchObject({ least: 0.2, most: 60 });
  });

  test("above the last gate nothing is sure but the end", () => {
    expect(meltWindow("regular", 40, 1000)).toMatchObject({ least: 0, most: 0.15 });
    expect(holdsFor("maxi", 50, 1000)).toBe(0);
  });

  test("the sign of the current does not matter", () => {
    expect(meltWindow("mini", 15, -40)).toEqual(meltWindow("mini", 15, 40));
  });

  test("the window says when it rests on memory", () => {
    expect(meltWindow("regular", 10, 20).source.standing).toBe("quoted");
    expect(meltWindow("regular", 10, 35).source.standing).toBe("memory");
    expect(meltWindow("mini", 10, 20).source.standing).toBe("memory");
    expect(meltWindow("regular", 15, 30).source.standing).toBe("derived");
    expect(meltWindow("maxi", 30, 60).source.standing).toBe("published");
  });
});

describe("bodies and ohms", () => {
  // thelingofpower.blogspot.com, Automotive fuses, October 2007
  test("mini runs from 2 to 30 A, regular from 1 to 40 A, maxi from 20 to 80 A", () => {
    const range = (family: FuseFamily) => {
      const amps = FUSE_BODIES[family].map((body) => body.amps);
      return [Math.min(...amps), Math.max(...amps)];
    };
    expect(FUSE_FAMILIES.map(range)).toEqual([
      [2, 30],
      [1, 40],
      [20, 80],
    ]);
  });

  test("a rating that a family lacks has no colour", () => {
    expect(bodyColour("mini", 40)).toBeNull();
    expect(bodyColour("regular", 12)).toBeNull();
  });

  test("a word is a family or not", () => {
    expect(isFuseFamily("maxi")).toBe(true);
    expect(isFuseFamily("glass")).toBe(false);
  });

  test("a bigger fuse of a family has fewer ohms, rows or not", () => {
    for (const family of FUSE_FAMILIES) {
      const ohms = FUSE_BODIES[family].map((body) => coldOhms(family, body.amps).ohms);
      for (const [i, each] of ohms.entries()) if (i > 0) expect(each).toBeLessThan(ohms[i - 1]!);
    }
  });

  test("ohms without a row are marked as no better than their neighbours", () => {
    expect(coldOhms("regular", 35).source.standing).toBe("memory");
    expect(coldOhms("maxi", 60).source.standing).toBe("derived");
    expect(coldOhms("regular", 40).source.standing).toBe("quoted");
  });

  // ATOF 287 and MAXI 299 sheets, quoted: 96 mV and 75 mV at 40 A
  test("hot ratios lead from cold ohms to the sheets' drops", () => {
    expect(40 * coldOhms("regular", 40).ohms * HOT_RATIO.regular.ratio).toBeCloseTo(0.096, 3);
    expect(40 * coldOhms("maxi", 40).ohms * HOT_RATIO.maxi.ratio).toBeCloseTo(0.075, 3);
  });

  // MAXI 299 sheet, quoted
  test("a maxi 40 A carries 30 A at 85 C", () => {
    expect(MAXI_40_DERATING.find((row) => row.celsius === 85)?.amps).toBe(30);
  });
});
