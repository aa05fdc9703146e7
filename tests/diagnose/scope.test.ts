import { describe, expect, it } from "vitest";
import type { Volts } from "../../core/base/units.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { NO_ORDER, probeOrder } from "../../core/diagnose/order.ts";
import { mayBeProbed } from "../../core/diagnose/scope.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";

const truck = sample("6-truck-trailer");
const check = truck.checks[0]!;

/** The truck, whose two batteries stand in series, with both of so many volts. */
function batteriesOf(volts: number): Circuit {
  const parts = truck.parts.map((part) =>
    part.kind === "battery" ? { ...part, settings: { ...part.settings, volts } } : part,
  );
  return { ...truck, parts };
}

function codeOf(circuit: Circuit): string {
  const probed = mayBeProbed(circuit);
  return probed.ok ? "may be probed" : probed.refusal.code;
}

describe("circuits into which no probe is led", () => {
  it.each(SAMPLE_NAMES)("%s may be probed", (name) => {
    expect(codeOf(sample(name))).toBe("may be probed");
  });

  it("refuses nominal volts above 60 and takes 60", () => {
    expect(codeOf({ ...truck, nominalVolts: 400 as Volts })).toBe("over-60-volts");
    expect(codeOf({ ...truck, nominalVolts: 60 as Volts })).toBe("may be probed");
  });

  it("refuses a source of its own above 60 V, and batteries in series that come to more", () => {
    expect(codeOf(batteriesOf(72))).toBe("over-60-volts");
    expect(codeOf(batteriesOf(40))).toBe("over-60-volts");
    expect(codeOf(batteriesOf(28))).toBe("may be probed");
  });

  it("gives such a circuit no rows and no suspects", () => {
    expect(probeOrder(batteriesOf(40), { check, word: "dead" })).toEqual(NO_ORDER);
    expect(probeOrder(truck, { check, word: "dead" }).steps.length).toBeGreaterThan(0);
  });
});
