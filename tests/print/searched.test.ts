import { expect, test } from "vitest";
import { sheetsFor } from "../../electron/print/sheets.ts";
import { sheetAsk } from "../../schemas/calls/print.ts";
import { sample } from "../samples/onTheBench.ts";

const HORN = sample("4-horn");
const complaint = HORN.checks[0]!.id;

test.each(["checklist", "branches", "proof", "handover"])(
  "%s goes by weights, and refuses one it cannot read",
  (what) => {
    const ask = sheetAsk.parse({ what, complaint, faults: ["K1:coil-open"], weigh: ["K1 often"] });
    const sheets = sheetsFor(HORN, ask, "a4");
    expect(sheets.ok ? "" : sheets.refusal.code).toBe("weight-spelling");
  },
);
