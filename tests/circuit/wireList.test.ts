import { describe, expect, test } from "vitest";
import { SHEET_WORDS } from "../../core/base/words/sheet.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { inkBoxes, overlaps } from "../../core/circuit/sheetRoom.ts";
import { boundsOf } from "../../core/drawing/measure.ts";
import { liveOf } from "../../core/live/live.ts";
import { placingOn } from "../../core/paper/placing.ts";
import { PAGES, textsIn } from "./sheetMarks.ts";

const PAPERS = ["a4", "letter"] as const;

describe.each(PAGES)("colours on the printed sheet of %s", (_, circuit, page) => {
  test.each(PAPERS)("are there for every wire that is drawn, beside it or in the list: %s", (paper) => {
    for (const live of [null, liveOf(circuit)]) {
      const request = { circuit, page, ...(live && { live }) };
      const plain = sheetOf(request);
      if (!plain.ok) throw new Error(plain.refusal.code);
      const sheet = sheetOf({ ...request, printScale: placingOn(plain.value, paper).scale });
      if (!sheet.ok) throw new Error(sheet.refusal.code);
      const { marks } = sheet.value;
      const drawn = new Set(marks.flatMap((mark) => ("of" in mark && mark.of !== undefined ? [mark.of] : [])));
      const texts = textsIn(marks);
      const bare = circuit.wires.filter(
        ({ id, colour }) => drawn.has(id) && colour && !texts.some((mark) => mark.of === id && mark.text === colour),
      );
      expect(bare.map(({ id }) => id)).toEqual([]);
      const head = marks.findIndex((mark) => mark.mark === "text" && mark.text === SHEET_WORDS.withoutRoom);
      const [others, list] = head < 0 ? [marks, []] : [marks.slice(0, head), marks.slice(head)];
      const ink = others.flatMap(inkBoxes);
      expect(list.filter((mark) => ink.some((box) => overlaps(boundsOf(mark), box)))).toEqual([]);
    }
  });
});

test("the list is on paper alone: on a screen the pointer tells", () => {
  const [, circuit, page] = PAGES.find(([name]) => name.startsWith("1-roof-vents") && name.endsWith("p2"))!;
  const listed = (zoom?: number) => {
    const sheet = sheetOf({ circuit, page, printScale: 0.68, ...(zoom !== undefined && { zoom }) });
    return sheet.ok && textsIn(sheet.value.marks).some(({ text }) => text === SHEET_WORDS.withoutRoom);
  };
  expect(listed()).toBe(true);
  expect(listed(0.7)).toBe(false);
});
