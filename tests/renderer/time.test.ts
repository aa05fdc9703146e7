import { describe, expect, test } from "vitest";
import { clipLead } from "../../core/edit/commands/clipLead.ts";
import { layInstrument } from "../../core/edit/commands/layInstrument.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import type { Action, Command } from "../../renderer/state/action.ts";
import { isWorthKeeping, keepingOf } from "../../renderer/state/keeping.ts";
import { reduce } from "../../renderer/state/reduce.ts";
import type { AppState } from "../../renderer/state/state.ts";
import { traceNow } from "../../renderer/state/views.ts";
import { sample } from "../samples/onTheBench.ts";
import { openIn, stateAfter } from "./stage.ts";

const make = (command: Command): Action => ({ do: "make", command });
const SHAKY: readonly Action[] = [
  { do: "throw", control: "S1", position: "up" },
  make((bench) => layInstrument(bench, "voltmeter")),
  make((bench) => clipLead(bench, bench.clipped[0]!.id, "red", "X2-1")),
  make((bench) => plantFault(bench, "X3-1:backed-out~5")),
];
const start = stateAfter(sample("12-reversing-motor"), ...SHAKY);
const STEP: Action = { do: "pass-time" };
const steps = (count: number, from: AppState = start): AppState =>
  Array.from({ length: count }).reduce<AppState>((state) => reduce(state, STEP), from);
const next = reduce(start, { do: "pass-to-next" });
const meter = openIn(start).desk.bench.clipped[0]!.id;

describe("time for what comes and goes", () => {
  test("passes step by step, or to the next change at once", () => {
    expect(openIn(next).desk.bench.gone).toEqual(["X3-1:backed-out~5"]);
    expect(openIn(steps(openIn(next).time.steps)).desk.bench).toEqual(openIn(next).desk.bench);
  });

  test("is told to who listens only where a press let it pass", () => {
    expect(next.said).toMatch(/^X3-1 backed out of its place, comes and goes: away/);
    expect(steps(openIn(next).time.steps).said).toBe(start.said);
  });

  test("is neither undone nor kept, and takes no error away", () => {
    expect(openIn(next).desk.history).toBe(openIn(start).desk.history);
    expect(isWorthKeeping({ ...keepingOf(openIn(start)), open: openIn(next) })).toBe(false);
    const troubled = reduce(start, { do: "throw", control: "S99", position: "on" });
    expect(reduce(troubled, { do: "pass-to-next" }).notices).toEqual(troubled.notices);
    const undone = reduce(next, { do: "undo" });
    expect(openIn(undone).desk.bench.faults).toEqual([]);
  });

  test("leaves its mark in min and max of a meter, which are reset at once", () => {
    expect(traceNow(next, meter)!.least).toBeLessThan(0.1);
    expect(traceNow(next, meter)!.most).toBeGreaterThan(12);
    const reset = reduce(next, { do: "begin-trace", instrument: null });
    expect(traceNow(reset, meter)!.least).toBeGreaterThan(12);
  });

  test("stops and goes on", () => {
    const stopped = reduce(start, { do: "let-time-pass", isPassing: false });
    expect(openIn(stopped).time).toEqual({ steps: 0, isPassing: false });
    expect(openIn(reduce(stopped, { do: "let-time-pass", isPassing: true })).time.isPassing).toBe(true);
  });
});
