import { describe, expect, test } from "vitest";
import { liveOf } from "../../core/live/live.ts";
import { followed } from "../../renderer/canvas/following.ts";
import type { Thing } from "../../renderer/state/state.ts";
import { VENTS } from "../edit/given.ts";

const live = liveOf(VENTS);
const step = (selection: Thing | null, way: "onward" | "back") => followed({ circuit: VENTS, live, selection }, way);

describe("following a wire", () => {
  test("goes along a wire, through a part and over to another page, and tells it", () => {
    const passed: string[] = [];
    let at: Thing | null = { is: "part", id: "G1" };
    for (let steps = 0; at && steps < 40; steps++) {
      const next = step(at, "onward");
      if (next) passed.push(next.said);
      at = next?.to ?? null;
    }
    expect(passed.some((said) => /along W\d+ \S+/.test(said))).toBe(true);
    expect(passed.some((said) => /through F\d/.test(said))).toBe(true);
    expect(passed.filter((said) => said.includes("over to page")).length).toBeGreaterThan(0);
    expect(passed.at(-1)).toMatch(/^Nothing farther towards the return from /);
  });

  test("a page link leads over both ways", () => {
    expect(step({ is: "point", id: "L1.1" }, "onward")).toEqual({
      to: { is: "point", id: "L3.1" },
      said: `Towards the return, by the page link Vent feed, over to page\u00A02 ${VENTS.pages[1]!.title}: L3.1.`,
    });
    expect(step({ is: "part", id: "L3" }, "back")?.to).toEqual({ is: "point", id: "L1.1" });
  });

  test("a wire is followed to the end that lies that way; from nothing there is no step", () => {
    const { id, from, to } = VENTS.wires.find(({ id }) => id === "W1")!;
    const [on, back] = [step({ is: "wire", id }, "onward")?.to?.id, step({ is: "wire", id }, "back")?.to?.id];
    expect([on, back].sort()).toEqual([from, to].sort());
    expect(step(null, "onward")).toBeNull();
  });
});
