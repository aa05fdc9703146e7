import PDFDocument from "pdfkit";
import type { Drawing, Weight } from "../../core/drawing/mark.ts";
import type { Paint, Pen } from "../../core/drawing/paint.ts";
import { paintsOf } from "../../core/drawing/paintMark.ts";
import { pathText } from "../../core/drawing/pathText.ts";
import { POINT_MM } from "../../core/drawing/scale.ts";
import { type Paper, type PrintPalette, placingOn } from "../../core/paper/placing.ts";
import { fontBytes, TYPE_FEATURES } from "./fonts.ts";
import { type Under, Unders } from "./under.ts";

/** How a PDF is made. */
export interface PdfOptions {
  readonly paper: Paper;
  readonly palette: PrintPalette;
  readonly title: string;
  /** Pictures under each of the sheets, the lowest first; none where absent. */
  readonly under?: readonly (readonly Under[])[];
  /** Written into the file as its day of making; the same sheets and options then give the same bytes. */
  readonly made: Date;
}

type Pdf = PDFKit.PDFDocument;

const WEIGHTS: readonly Weight[] = [400, 600, 700];
const POINTS_PER_MM = 1 / POINT_MM;

/** pdfkit hands the features on to the font as they are, though its types ask for a list. */
const FEATURES = TYPE_FEATURES as unknown as PDFKit.Mixins.OpenTypeFeatures[];

/**
 * The sheets as one PDF, a page each, centred on the paper. Type is set in the shipped font only, so that text can be
 * searched and copied. Refuses nothing: what does not fit the paper is made smaller.
 */
export async function pdfOf(sheets: readonly Drawing[], options: PdfOptions): Promise<Buffer> {
  const pdf = newDocument(options);
  const bytes = collected(pdf);
  for (const weight of WEIGHTS) pdf.registerFont(fontName(weight), fontBytes(weight));
  const unders = new Unders(pdf);
  for (const [index, sheet] of sheets.entries())
    drawSheet(pdf, sheet, options, () => unders.draw(options.under?.[index] ?? []));
  pdf.end();
  return bytes;
}

function newDocument({ title, made }: PdfOptions): Pdf {
  return new PDFDocument({
    autoFirstPage: false,
    // Left out, pdfkit would open Helvetica, a second family.
    font: "",
    pdfVersion: "1.7",
    lang: "en",
    displayTitle: true,
    info: { Title: title, Creator: "Wirefathom", Producer: "Wirefathom", CreationDate: made, ModDate: made },
  });
}

function collected(pdf: Pdf): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    pdf.on("data", (chunk: Buffer) => chunks.push(chunk));
    pdf.on("end", () => resolve(Buffer.concat(chunks)));
    pdf.on("error", reject);
  });
}

function fontName(weight: Weight): string {
  return `sheet-${weight}`;
}

function drawSheet(pdf: Pdf, sheet: Drawing, { paper, palette }: PdfOptions, drawUnder: () => void): void {
  const { pageWidth, pageHeight, left, top, scale } = placingOn(sheet, paper);
  pdf.addPage({ size: [pageWidth * POINTS_PER_MM, pageHeight * POINTS_PER_MM], margin: 0 });
  pdf.save();
  const size = scale * POINTS_PER_MM;
  pdf.transform(size, 0, 0, size, left * POINTS_PER_MM, top * POINTS_PER_MM);
  drawUnder();
  for (const mark of sheet.marks) for (const paint of paintsOf(mark, palette)) drawPaint(pdf, paint);
  pdf.restore();
}

function drawPaint(pdf: Pdf, paint: Paint): void {
  if (paint.paint === "words") {
    drawWords(pdf, paint);
    return;
  }
  const { fill, pen } = paint;
  if (!fill && !pen) return;
  pdf.path(pathText(paint));
  if (pen) takePen(pdf, pen);
  if (fill && pen) pdf.fillAndStroke(fill, pen.colour);
  else if (fill) pdf.fill(fill);
  else pdf.stroke();
}

function takePen(pdf: Pdf, pen: Pen): void {
  pdf.strokeColor(pen.colour).lineWidth(pen.width).lineCap(pen.cap);
  pdf.lineJoin(pen.cap === "round" ? "round" : "miter");
  if (pen.dash) pdf.dash([...pen.dash] as unknown as number, {});
  else pdf.undash();
}

function drawWords(pdf: Pdf, words: Extract<Paint, { paint: "words" }>): void {
  pdf.font(fontName(words.weight)).fontSize(words.size).fillColor(words.colour);
  const text = words.text.normalize("NFC").replace(/\p{Cc}/gu, " ");
  const width = pdf.widthOfString(text, { features: FEATURES });
  const back = { start: 0, middle: width / 2, end: width }[words.anchor];
  const { x, y } = words.at;
  if (words.turn !== 0) pdf.save().rotate(words.turn, { origin: [x, y] });
  pdf.text(text, x - back, y, { baseline: "alphabetic", lineBreak: false, features: FEATURES });
  if (words.turn !== 0) pdf.restore();
}
