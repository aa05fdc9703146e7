import { createCanvas } from "@napi-rs/canvas";
import { expect, test } from "vitest";
import type { Underlay } from "../../core/circuit/circuit.ts";
import type { Drawing } from "../../core/drawing/mark.ts";
import { rectangle } from "../../core/drawing/projection.ts";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { pdfOf } from "../../electron/print/pdf.ts";
import { isPrintable } from "../../electron/print/printable.ts";
import { cornersOf, type Under } from "../../electron/print/under.ts";
import { plainUnders, readyUnders } from "../../electron/print/undersOf.ts";
import type { PictureFile } from "../../electron/store/pictureFile.ts";
import { sheetAsk } from "../../schemas/calls/print.ts";
import { PHOTO, printedOn, SHEET } from "../circuit/printed.ts";
import { SMALL } from "../edit/given.ts";
import { png } from "../electron/pictureFiles.ts";

const across: Drawing = { width: gridUnitsOf(297), height: gridUnitsOf(210), marks: [] };
const options = { paper: "a4", palette: "black", title: "Under", made: new Date(0) } as const;
const box = cornersOf({ left: 10, top: 20, right: 280, bottom: 150 });
const ask = sheetAsk.parse({ what: "sheet" });

function jpeg(): Buffer {
  const canvas = createCanvas(40, 30);
  canvas.getContext("2d").fillRect(5, 5, 20, 10);
  return canvas.toBuffer("image/jpeg", 90);
}

function under(bytes: Uint8Array, strength = 0.3): Under {
  return { bytes, corners: rectangle(0, 0, 297, 210), within: [box], strength };
}

test.each(["a4", "letter"] as const)(
  "a picture under several sheets is in the PDF once, pale and cut off, on %s",
  async (paper) => {
    const bytes = jpeg();
    const sheets = [across, across, across];
    const plain = await pdfOf(sheets, { ...options, paper });
    const pdf = await pdfOf(sheets, { ...options, paper, under: [[under(bytes)], [under(bytes)], []] });
    const text = pdf.toString("latin1");
    expect(text.match(/\/Subtype \/Image/g)?.length).toBe(1);
    expect(text).toMatch(/\/ca 0\.3\b/);
    expect(pdf.length - plain.length).toBeLessThan(bytes.length + 2_000);
  },
);

test("printed pages are taken as their files are; what only the window can make ready is told", () => {
  const file = (of: Underlay, bytes: Uint8Array): PictureFile => ({ picture: of.image, bytes });
  const files = [file(SHEET, png(4, 3)), file(PHOTO, jpeg())];
  const plain = plainUnders(printedOn(SMALL), ask, files);
  expect(plain.leftOut).toEqual([]);
  expect(plain.under[0]).toMatchObject([{ strength: 0.3 }, { strength: 0.2, corners: PHOTO.corners }]);

  const half = { left: 0, top: 0, right: SHEET.image.widthPx / 2, bottom: SHEET.image.heightPx };
  const cut = plainUnders(printedOn(SMALL, { cut: cornersOf(half) }), ask, files).under[0]![0]!;
  // Half of it fills the page, so that the whole reaches as far again to the right, where it is cut off.
  expect(cut.corners[1]![0]).toBeCloseTo(2 * 297, 6);
  expect(cut.within[1]).toEqual(SHEET.corners);

  const askew = {
    cut: [
      [0, 0],
      [2_000, 100],
      [2_339, 1_600],
      [50, 1_654],
    ],
  } as const;
  const told = (sheet: Partial<Underlay>, given = files): readonly unknown[] =>
    plainUnders(printedOn(SMALL, sheet), ask, given).leftOut.map(({ code }) => code);
  expect(told(askew)).toEqual(["under-photo"]);
  expect(told({ image: { ...SHEET.image, mime: "image/webp" } })).toEqual(["under-webp"]);
  expect(told({}, [])).toEqual(["under-missing", "under-missing"]);
  expect(told({ isHidden: true }, files.slice(1))).toEqual([]);
});

test("a picture that is damaged inside is left out and told, whatever its head says", () => {
  const [whole, drawn] = [jpeg(), createCanvas(20, 10).toBuffer("image/png")];
  expect([whole, drawn].map(isPrintable)).toEqual([true, true]);
  // A fill byte before the frame is legal, yet more than the PDF library reads.
  const filled = Buffer.concat([whole.subarray(0, 2), Buffer.from([0xff]), whole.subarray(2)]);
  const torn = Buffer.from(drawn);
  torn.fill(0xaa, torn.indexOf("IDAT") + 4, torn.indexOf("IDAT") + 12);
  expect([filled, torn, whole.subarray(0, 20), drawn.subarray(0, 40)].map(isPrintable)).toEqual([
    false,
    false,
    false,
    false,
  ]);
  const left = plainUnders(printedOn(SMALL), ask, [{ picture: SHEET.image, bytes: torn }]).leftOut;
  expect(left[0]).toMatchObject({ code: "under-damaged" });
});

test("what the window sends lies under its own page, and is a JPEG", () => {
  const circuit = printedOn(SMALL);
  const [page] = circuit.pages;
  const ready = readyUnders(circuit, ask, [{ page: page!.id, jpeg: jpeg() }]);
  expect(ready.ok && ready.value.map((unders) => unders.length)).toEqual(
    circuit.pages.map((_, at) => (at === 0 ? 1 : 0)),
  );
  const code = (bytes: Uint8Array): string | null => {
    const outcome = readyUnders(circuit, ask, [{ page: page!.id, jpeg: bytes }]);
    return outcome.ok ? null : outcome.refusal.code;
  };
  expect([code(png(4, 3)), code(Buffer.from("II*\0")), code(Buffer.alloc(0))]).toEqual([
    "picture-damaged",
    "picture-kind",
    "picture-empty",
  ]);
});
