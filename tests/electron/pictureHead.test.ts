import { createCanvas } from "@napi-rs/canvas";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pictureHead, pictureRefusal } from "../../schemas/pictureHead.ts";
import { code, value } from "./library.ts";
import { jpegHead, png, pngHeadOnly } from "./pictureFiles.ts";

const SIGNATURE = Buffer.from("RIFF\u0004\u0000\u0000\u0000WEBP", "latin1");

describe("the head of a picture", () => {
  it.each(["image/png", "image/jpeg", "image/webp"] as const)("of a real %s tells its size", (mime) => {
    const canvas = createCanvas(123, 77);
    canvas.getContext("2d").fillRect(10, 10, 50, 20);
    const bytes = mime === "image/png" ? canvas.toBuffer(mime) : canvas.toBuffer(mime, 80);
    expect(value(pictureHead(bytes))).toEqual({ mime, widthPx: 123, heightPx: 77, orientation: 1 });
  });

  it("of a JPEG tells how it is to be turned, in either order of bytes", () => {
    expect(value(pictureHead(jpegHead(40, 30, 6)))).toMatchObject({ widthPx: 40, heightPx: 30, orientation: 6 });
    expect(value(pictureHead(jpegHead(40, 30, 8, true)))).toMatchObject({ orientation: 8 });
    expect(value(pictureHead(jpegHead(40, 30, 9)))).toMatchObject({ orientation: 1 });
  });

  it.each([
    ["nothing", Buffer.alloc(0), "picture-empty"],
    ["text", Buffer.from("hello"), "picture-kind"],
    ["a PDF", Buffer.from("%PDF-1.7"), "picture-kind"],
    ["a GIF", Buffer.from("GIF89a"), "picture-kind"],
    ["a TIFF", Buffer.from("II*\0"), "picture-kind"],
    ["a photograph of a telephone", Buffer.from("\0\0\0\u0018ftypheic"), "picture-kind"],
    ["JPEG 2000", Buffer.from([0, 0, 0, 12, 0x6a, 0x50, 0x20, 0x20]), "picture-kind"],
    ["a PNG without its first chunk", png(4, 4).subarray(0, 12), "picture-damaged"],
    ["a PNG of no width", pngHeadOnly(0, 4), "picture-damaged"],
    ["a JPEG without a frame", Buffer.from([0xff, 0xd8, 0xff, 0xda, 0, 2]), "picture-damaged"],
    ["a JPEG that is cut off", jpegHead(40, 30).subarray(0, 60), "picture-damaged"],
    ["a JPEG without markers", Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 2, 1, 1, 1, 1]), "picture-damaged"],
    ["a WebP without chunks", SIGNATURE, "picture-damaged"],
    ["a recording", Buffer.from("RIFF    WAVE"), "picture-kind"],
  ])("%s is refused", (_, bytes, expected) => expect(code(pictureHead(bytes))).toBe(expected));

  it("of any bytes is told or refused, never an exception", () => {
    const starts = [png(3, 3), jpegHead(9, 9, 3), SIGNATURE];
    const bytes = fc
      .tuple(fc.constantFrom(...starts), fc.nat(90), fc.uint8Array({ maxLength: 40 }))
      .map(([start, at, put]) => Buffer.concat([start.subarray(0, at), put, start.subarray(at + put.length)]));
    fc.assert(
      fc.property(bytes, (file) => {
        const head = pictureHead(file);
        expect(head.ok || head.refusal.code.startsWith("picture-")).toBe(true);
      }),
      { seed: 5, numRuns: 2_000 },
    );
  });
});

it.each([
  [4_000, 6_000, 24_000_000, null],
  [4_001, 6_000, 1, "picture-pixels"],
  [12_001, 10, 1, "picture-side"],
  [10, 10, 24_000_001, "picture-bytes"],
])("a picture of %i x %i in %i bytes", (widthPx, heightPx, bytes, expected) =>
  expect(pictureRefusal({ widthPx, heightPx }, bytes)?.code ?? null).toBe(expected),
);
