import { describe, expect, test } from "vitest";
import type { Suspect } from "../../core/diagnose/step.ts";
import { parseFault } from "../../core/live/fault.ts";
import { proveWords } from "../../core/paper/proveWords.ts";
import { got } from "../edit/given.ts";
import { sample } from "../samples/onTheBench.ts";

function proven(name: string, text: string): string {
  const circuit = sample(name);
  const fault = got(parseFault(circuit, text));
  const suspect: Suspect = { id: text, faults: [fault], title: "", repairGroup: "", probability: 1, notes: [] };
  return proveWords(circuit, suspect);
}

describe("what proves a suspect", () => {
  // What a proof shows follows from the fault: a motor that its mechanism holds runs off it, a seized one does not.
  test.each([
    ["1-roof-vents", "M1:seized", /must stay still/],
    ["1-roof-vents", "M1:jammed", /off its mechanism.* must run/],
    ["8-wiper", "M1:jammed", /off its mechanism.* must run/],
    ["1-roof-vents", "M1:worn=2", /must stay weak/],
    ["1-roof-vents", "M1:shorted", /fuse, like for like: it must hold/],
    ["4-horn", "W15:open", /jumper W15 end to end/],
    ["4-horn", "W15:short-to-ground", /take W15 off at both ends/],
    ["1-roof-vents", "S3:stuck-closed-4-1", /must stop/],
    ["4-horn", "K1:coil-open", /swap in a like K1/],
  ])("%s %s", (name, fault, words) => {
    expect(proven(name, fault)).toMatch(words);
  });
});
