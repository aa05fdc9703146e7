import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { problemsOf } from "../../core/circuit/check.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { netsOf } from "../../core/circuit/nets.ts";
import { sheetArea } from "../../core/circuit/sheetArea.ts";
import { sheetPage } from "../../core/circuit/sheetPage.ts";
import { overlaps } from "../../core/circuit/sheetRoom.ts";
import { compareTidiness, tidinessOf } from "../../core/circuit/tidiness.ts";
import { partsToArrange } from "../../core/edit/arranging.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { arrangeParts } from "../../core/edit/commands/arrangeParts.ts";
import { pinParts } from "../../core/edit/commands/pinParts.ts";
import { apply } from "../../core/edit/edit.ts";
import { liveOf } from "../../core/live/live.ts";
import { arranged } from "../../renderer/arrange/arrange.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { after, expectSame, expectSound, got } from "../edit/given.ts";
import { draftingHere, scattered } from "./drafting.ts";

const SAMPLES = new URL("../../samples/", import.meta.url);
const PAGES = readdirSync(SAMPLES)
  .filter((name) => name.endsWith(".circuit.json"))
  .flatMap((name) => {
    const circuit = got(readCircuit(readFileSync(new URL(name, SAMPLES))));
    return circuit.pages.map(({ id }) => ({ name: name.split(".")[0]!, page: id, circuit }));
  });
const SEED = 7;

function outlines(circuit: Circuit, page: string) {
  return sheetPage(circuit, page, "iec").parts.map(({ part, placed, rest }) => ({
    id: part.id,
    box: placed(rest).outline,
  }));
}

describe.each(PAGES)("$name $page, scattered and arranged", ({ name, page, circuit }) => {
  test("is the same circuit, drawn better, on the page, and pinned parts stayed", { timeout: 120_000 }, async () => {
    const first = outlines(circuit, page)[0]!.id;
    const pinned = after(benchFor(circuit), pinParts(benchFor(circuit), [first], true));
    const bench = benchFor(scattered(pinned.circuit, page, SEED));
    const parts = got(partsToArrange(bench.circuit, page, "page", []));
    expect(parts).not.toContain(first);
    const attempts: number[] = [];
    const attempt = await arranged(draftingHere(), { bench, page, parts }, (number) => attempts.push(number));
    expect(attempts).toEqual([1, 2, 3]);
    const edit = got(arrangeParts(bench, attempt!.places));
    const { bench: next, inverse } = got(apply(bench, edit));
    expectSound(next);
    expectSame(got(apply(next, inverse)).bench, bench);

    const { drawing } = sheetArea(circuit.pages.find(({ id }) => id === page)!);
    const boxes = outlines(next.circuit, page);
    for (const [index, { id, box }] of boxes.entries()) {
      if (id === first) continue;
      expect(box.left >= drawing.left && box.right <= drawing.right, id).toBe(true);
      expect(box.top >= drawing.top && box.bottom <= drawing.bottom, id).toBe(true);
      for (const other of boxes.slice(0, index)) expect(overlaps(box, other.box), `${id} ${other.id}`).toBe(false);
    }
    expect(next.circuit.placement.parts[first]).toEqual(bench.circuit.placement.parts[first]);

    expect(problemsOf(next.circuit)).toEqual(problemsOf(circuit));
    expect(netsOf(next.circuit)).toEqual(netsOf(circuit));
    for (const { condition } of circuit.checks) {
      const [now, was] = [liveOf(next.circuit, condition), liveOf(circuit, condition)];
      expect([...now.points]).toEqual([...was.points]);
      expect([...now.parts]).toEqual([...was.parts]);
    }

    const [hand, thrown, tidy] = [circuit, bench.circuit, next.circuit].map((each) => tidinessOf(each, page));
    expect(tidy).toEqual(attempt!.compared.after);
    expect(compareTidiness(tidy!, thrown!)).toBeLessThan(0);
    console.info(name, page, JSON.stringify({ hand, thrown, tidy }));
  });
});
