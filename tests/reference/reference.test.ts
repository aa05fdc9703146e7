import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { lotsOf } from "../lots.ts";
import { compareAll, type Trial, type Verdict } from "./compare.ts";
import { harness } from "./harness.ts";
import { everyCondition, randomCondition, randomFaults } from "./trials.ts";

const SAMPLES = new URL("../../samples/", import.meta.url);

function expectAgreement({ disagreements, nodes, faint }: Verdict, leastNodes: number): void {
  expect(disagreements.slice(0, 20)).toEqual([]);
  expect(nodes).toBeGreaterThan(leastNodes);
  expect(faint / nodes).toBeLessThan(0.03);
}

/** A harness at rest, in a condition, with faults, and with other faults in another condition. */
function trialsOf(seed: number, size: number): readonly Trial[] {
  const circuit = harness(seed, size, { nominalVolts: seed % 4 === 0 ? 24 : 12 });
  const lots = lotsOf(seed + 100_000);
  const thrown = randomCondition(circuit, lots);
  return [
    { circuit, condition: {}, faults: [] },
    { circuit, condition: thrown, faults: [] },
    { circuit, condition: thrown, faults: randomFaults(circuit, lots) },
    { circuit, condition: randomCondition(circuit, lots), faults: randomFaults(circuit, lots) },
  ];
}

/** Sizes spread evenly over the powers of ten. */
function sizeOf(seed: number, least: number, most: number): number {
  return Math.round(lotsOf(seed + 200_000).spread(least, most));
}

// The reference: ngspice, a general circuit simulator, at the tightest tolerances that it meets.

test("node volts of 300 harnesses of 50 to 250 nodes agree with the reference, at rest, thrown and faulty", async () => {
  const trials = Array.from({ length: 300 }, (_, seed) => trialsOf(seed, sizeOf(seed, 50, 250))).flat();
  expectAgreement(await compareAll(trials), 90_000);
});

test("node volts of 100 harnesses of 250 to 1,000 nodes agree with the reference, at rest, thrown and faulty", async () => {
  const trials = Array.from({ length: 100 }, (_, index) =>
    trialsOf(1000 + index, sizeOf(1000 + index, 250, 1000)),
  ).flat();
  expectAgreement(await compareAll(trials), 120_000);
});

const samples = readdirSync(SAMPLES, { recursive: true, encoding: "utf8" }).filter((name) =>
  name.endsWith(".circuit.json"),
);

test("there are samples to hold against the reference", () => expect(samples.length).toBeGreaterThan(0));

test.each(samples)("node volts of %s agree with the reference in every position, check and scene", async (name) => {
  const circuit = readSample(name);
  const trials = everyCondition(circuit).map((condition) => ({ circuit, condition, faults: [] }));
  expectAgreement(await compareAll(trials), circuit.parts.length);
});

function readSample(name: string): Circuit {
  const read = readCircuit(readFileSync(new URL(name, SAMPLES), "utf8"));
  if (!read.ok) throw new Error(`${name}: ${read.refusal.code}`);
  return read.value;
}
