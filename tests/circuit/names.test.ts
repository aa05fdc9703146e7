import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { placeSymbol } from "../../core/circuit/placeSymbol.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { restPose } from "../../core/circuit/sheetPose.ts";
import { boundsOf, gapBetween } from "../../core/drawing/measure.ts";
import { placingOn } from "../../core/paper/placing.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { viewOf } from "../../core/parts/view.ts";
import { PAGES, textsIn } from "./sheetMarks.ts";

/** Outlines of the parts of a page at rest. */
function outlines(circuit: Circuit, page: string, look: "iec" | "na") {
  return circuit.parts.flatMap((part) => {
    const place = circuit.placement.parts[part.id];
    const kind = kindOf(part.kind);
    if (place?.page !== page || !kind) return [];
    const view = viewOf(kind, part, circuit.nominalVolts);
    return [{ id: part.id, outline: placeSymbol(kind.symbol(view, restPose(kind, view), look), place).outline }];
  });
}

describe.each(PAGES)("names on %s", (_, circuit, page) => {
  test.each(["iec", "na"] as const)("stand nearer to their own part than to any other, in %s symbols", (look) => {
    const all = outlines(circuit, page, look);
    for (const paper of ["a4", "letter"] as const) {
      const plain = sheetOf({ circuit, page, look });
      if (!plain.ok) throw new Error(plain.refusal.code);
      const sheet = sheetOf({ circuit, page, look, printScale: placingOn(plain.value, paper).scale });
      if (!sheet.ok) throw new Error(sheet.refusal.code);
      const wrong = textsIn(sheet.value.marks).flatMap((mark) => {
        const own = all.find(({ id }) => id === mark.text);
        if (!own) return [];
        const away = gapBetween(boundsOf(mark), own.outline);
        return all.flatMap(({ id, outline }) =>
          id !== own.id && gapBetween(boundsOf(mark), outline) <= away ? [`${own.id} by ${id}`] : [],
        );
      });
      expect(wrong).toEqual([]);
    }
  });
});
