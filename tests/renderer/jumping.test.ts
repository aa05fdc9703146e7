import { describe, expect, test } from "vitest";
import { setUpWith } from "../../core/edit/commands/setUpWith.ts";
import type { Action } from "../../renderer/state/action.ts";
import { unbroken } from "../../renderer/words/figures.ts";
import { answerTo } from "../../renderer/workers/answer.ts";
import { VENTS } from "../edit/given.ts";
import { openIn, stateAfter } from "./stage.ts";

const IN_VIEW: Action = { do: "open-panel", panel: "shares" };
const PICK: Action = { do: "set-jumper", jumper: { picking: "from" } };
const pin = (id: string): Action => ({ do: "choose", thing: { is: "point", id } });

describe("a jumper between two points", () => {
  test("is picked on the drawing, one pin after the other; a part is no pin", () => {
    const state = stateAfter(
      VENTS,
      IN_VIEW,
      PICK,
      { do: "choose", thing: { is: "part", id: "S5" } },
      pin("X5-6"),
      pin("X5-4"),
      pin("X5-2"),
    );
    expect(openIn(state).jumper).toMatchObject({ from: "X5-6", to: "X5-4", picking: null });
    expect(openIn(state).chosen?.id).toBe("X5-2");
  });

  test("takes nothing while another view is open", () => {
    const state = stateAfter(VENTS, PICK, { do: "open-panel", panel: "list" }, pin("X5-6"));
    expect(openIn(state).jumper.from).toBe("");
  });

  test("is answered with what flows, and says what is no point", () => {
    const asked = { ask: "jumper", to: "battery -", fuseAmps: 5, condition: {}, faults: [] } as const;
    const check = answerTo(VENTS, { ...asked, from: "battery +" });
    expect(check).toMatchObject({ ok: true, value: { melts: { target: "", rating: 5 } } });
    const wrong = answerTo(VENTS, { ...asked, from: "X99-1" });
    expect(wrong).toMatchObject({ ok: false });
  });
});

test("what is shown takes the place of what was shown before, in one step", () => {
  const shown = (faults: readonly string[]): Action => ({
    do: "make",
    command: (bench) => setUpWith(bench, { set: { S1: "on" } }, faults),
  });
  const state = stateAfter(VENTS, shown(["GP2:off"]), shown(["W13:open"]));
  expect(openIn(state).desk.bench.faults).toEqual([{ target: "W13", mode: "open" }]);
  const undone = stateAfter(VENTS, shown(["GP2:off"]), shown(["W13:open"]), { do: "undo" }, { do: "undo" });
  expect(openIn(undone).desk.bench).toMatchObject({ faults: [], condition: {} });
});

test("no number parts from its unit", () => {
  expect(unbroken("181 A, 259 % of the 70 A of its 2.5 mm² in 0.1 s")).toBe(
    "181\u00A0A, 259\u00A0% of the 70\u00A0A of its 2.5\u00A0mm² in 0.1\u00A0s",
  );
  expect(unbroken("E1 and 3 more, step 5 shows")).toBe("E1 and 3 more, step 5 shows");
});
