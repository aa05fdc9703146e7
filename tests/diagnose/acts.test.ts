import { describe, expect, it } from "vitest";
import { readEntry } from "../../core/diagnose/entry.ts";
import { feedingOf } from "../../core/diagnose/feeding.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import { type Reading, readingOf } from "../../core/diagnose/reading.ts";
import { readingFits } from "../../core/diagnose/readingFits.ts";
import { parseReading, readingText } from "../../core/diagnose/readingText.ts";
import { readWith } from "../../core/diagnose/reads.ts";
import { repairsOf } from "../../core/diagnose/repairs.ts";
import type { Step, Suspect } from "../../core/diagnose/step.ts";
import { parseFault } from "../../core/live/fault.ts";
import { sample } from "../samples/onTheBench.ts";
import { probesOf } from "./simulate.ts";

const vents = sample("1-roof-vents");
const horn = sample("4-horn");

function shown(circuit: typeof vents, fault: string, text: string): string | null {
  const reading = parseReading(circuit, text);
  const planted = fault === "" ? null : parseFault(circuit, fault);
  if (!reading.ok || planted?.ok === false) throw new Error(`not spelled right: ${text}, ${fault}`);
  return readWith(circuit, planted ? [planted.value] : [], null, reading.value).shows.word;
}

describe("a load fed by itself", () => {
  it("is fed where its plug parts it from all else: the half of the joint on its own side", () => {
    expect(feedingOf(vents)("M3")).toEqual({ load: "M3", plug: "X32", plus: "X32-1b", minus: "X32-2b" });
  });

  it("is not fed where it has no plug, or is no load", () => {
    for (const id of ["F4", "S5", "U1"]) expect(feedingOf(vents)(id)).toBeNull();
  });

  it.each([
    ["", "works"],
    ["M3:open", "dead"],
    ["M3:seized", "dead"],
    ["M3:jammed", "dead"],
    ["M3:shorted", "melts the fuse"],
    ["W18:open", "dead"],
    // All that lies before the plug is past it.
    ["W13:open", "works"],
    ["X5-4:backed-out", "works"],
    ["S5:stuck-open-4-6", "works"],
  ])("with %s: %s", (fault, word) => {
    expect(shown(vents, fault, "M3 fed direct @ : works")).toBe(word);
  });

  it("turns again off its mechanism where that held it, and not where it is seized itself", () => {
    expect(shown(vents, "M3:jammed", "M3 fed loose @ : works")).toBe("works");
    expect(shown(vents, "M3:seized", "M3 fed loose @ : works")).toBe("dead");
  });
});

describe("a like relay put in", () => {
  const at = "K1 like relay @ S1=pressed : helps";
  const control = Object.keys(horn.checks[0]!.condition.set ?? {})[0]!;
  const position = horn.checks[0]!.condition.set![control]!;
  const text = at.replace("S1=pressed", `${control}=${position}`);

  it("helps where the relay was at fault, and only there", () => {
    expect(shown(horn, "K1:coil-open", text)).toBe("helps");
    expect(shown(horn, "", text)).toBe("no change");
    expect(shown(horn, "H1:open", text)).toBe("no change");
  });
});

describe("an act among the rows", () => {
  const check = horn.checks[0]!;
  const complaint = { check, word: "dead" } as const;
  const order = probeOrder(horn, complaint);
  const act = order.steps.find(({ instrument }) => instrument === "like relay")!;

  it("is offered for the relay that is suspected, and says what each answer leaves", () => {
    expect(act.point).toBe("K1");
    const helps = act.outcomes.find(({ word }) => word === "helps")!;
    expect(helps.leaves.every(({ faults }) => faults.every(({ target }) => target === "K1"))).toBe(true);
    expect(act.outcomes.find(({ word }) => word === "no change")!.leaves.length).toBeGreaterThan(10);
  });

  it("that helps makes the relay the first suspect", () => {
    const entry = readEntry("helps", act, order.steps, 12);
    if (!entry.ok) throw new Error(entry.refusal.code);
    const { point, black, instrument, lampTo, settings } = act;
    const probe = { red: point, black, instrument, lampTo, condition: settings[0]!.condition };
    const reading: Reading = readingOf(probe, entry.value[0]!.shows[0]!);
    const after = probeOrder(horn, complaint, { readings: [reading] });
    const share = (suspects: readonly Suspect[]): number =>
      suspects
        .filter(({ faults }) => faults[0]?.target === "K1")
        .reduce((sum, { probability }) => sum + probability, 0);
    expect(repairsOf(after.suspects)[0]!.repair).toMatch(/^K1\|/);
    expect(share(after.suspects)).toBeGreaterThan(8 * share(order.suspects));
  });

  it("takes its own words and no others", () => {
    const code = (typed: string): string => {
      const entry = readEntry(typed, act, order.steps, 12);
      return entry.ok ? entry.value[0]!.shows[0]!.word! : entry.refusal.code;
    };
    expect([code("helps"), code("no"), code("ok"), code("11.9"), code("bright")]).toEqual([
      "helps",
      "no change",
      "helps",
      "reading-value",
      "reading-value",
    ]);
  });

  it("parts the motor that is seized from the one that is held, and warns of what it minds no more when fed", () => {
    const check = vents.checks.find(({ id }) => id === "middle-open-own")!;
    const dead = { check, word: "dead" } as const;
    const seized = parseFault(vents, "M3:seized");
    if (!seized.ok) throw new Error(seized.refusal.code);
    const readings: Reading[] = [];
    const rows: Step[] = [];
    for (let left = 0; left < 8; left++) {
      const row = probeOrder(vents, dead, { readings }).steps[0];
      if (!row) break;
      rows.push(row);
      for (const probe of probesOf(row))
        readings.push(readingOf(probe, readWith(vents, [seized.value], check.condition, probe).shows));
    }
    const fed = rows.find(({ instrument }) => instrument === "fed loose")!;
    expect(fed.cautions.join(" ")).toContain("no end stop and no pinch protection");
    expect(probeOrder(vents, dead, { readings }).suspects[0]!.id).toBe("M3:seized");
  });
});

describe("the spelling of an act", () => {
  it.each(["M3 fed direct @ apart:X32 : works", "M3 fed loose @ apart:X32 : dead", "K1 like relay @ S1=on : helps"])(
    "%s comes back the same",
    (text) => {
      const reading = parseReading(vents, text);
      if (!reading.ok) throw new Error(reading.refusal.code);
      expect(readingText(vents, reading.value)).toBe(text);
    },
  );

  it.each(["G1 fed direct @ : works", "S5 like relay @ : helps"])("%s is refused: it cannot be done", (text) => {
    const reading = parseReading(vents, text);
    expect(reading.ok ? "" : reading.refusal.code).toBe("reading-act");
  });

  it("fits no circuit in which the load lost its plug", () => {
    const reading = parseReading(vents, "M3 fed direct @ apart:X32 : works");
    if (!reading.ok) throw new Error(reading.refusal.code);
    expect(readingFits(vents, reading.value)).toBe(true);
    const without = { ...vents, reach: { ...vents.reach, M3: { doNotProbe: "on an airbag's circuit" } } };
    expect(readingFits(without, reading.value)).toBe(false);
  });
});
