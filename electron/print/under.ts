import type { Share } from "../../core/base/units.ts";
import type { Bounds } from "../../core/drawing/measure.ts";
import type { Quad } from "../../core/drawing/projection.ts";

/** A picture that is printed under a sheet. */
export interface Under {
  /** Its file, a PNG or a JPEG; the same bytes under several sheets are embedded once. */
  readonly bytes: Uint8Array;
  /** Where the corners of the whole picture lie on the sheet, millimetres: a rectangle, or one set askew. */
  readonly corners: Quad;
  /** What of the sheet it may cover, millimetres: it is cut off by each of these. */
  readonly within: readonly Quad[];
  readonly strength: Share;
}

/** Draws pictures under sheets of one PDF, whose unit is the millimetre of the sheet by then. */
export class Unders {
  readonly #pdf: PDFKit.PDFDocument;
  /** Pictures as the addresses by which pdfkit knows what it has embedded. */
  readonly #addresses = new Map<Uint8Array, string>();

  constructor(pdf: PDFKit.PDFDocument) {
    this.#pdf = pdf;
  }

  /** Draws them one over the other. */
  draw(unders: readonly Under[]): void {
    const pdf = this.#pdf;
    for (const { bytes, corners, within, strength } of unders) {
      const [[x, y], [acrossX, acrossY], , [downX, downY]] = corners;
      pdf.save();
      for (const quad of within) pdf.polygon(...quad.map(([left, top]) => [left, top] as [number, number])).clip();
      pdf.opacity(strength);
      pdf.transform(acrossX - x, acrossY - y, downX - x, downY - y, x, y);
      pdf.image(this.#addressOf(bytes), 0, 0, { width: 1, height: 1 });
      pdf.restore();
    }
  }

  #addressOf(bytes: Uint8Array): string {
    const known = this.#addresses.get(bytes);
    if (known !== undefined) return known;
    const words = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("base64");
    // Which kind it is, pdfkit sees by its head.
    const address = `data:image/*;base64,${words}`;
    this.#addresses.set(bytes, address);
    return address;
  }
}

/** A box as the four corners that cut a picture off. */
export function cornersOf({ left, top, right, bottom }: Bounds): Quad {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}
