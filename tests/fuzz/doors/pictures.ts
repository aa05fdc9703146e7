import { ok, refuse } from "../../../core/base/outcome.ts";
import { pictureOf } from "../../../electron/store/pictureFile.ts";
import { jpegHead, png } from "../../electron/pictureFiles.ts";
import { CMYK_JPEG, scannedPdf } from "../../window/scans.ts";
import type { Door } from "../door.ts";
import { bytesOf } from "../mutate.ts";

/** A WebP of one sort: the head of RIFF, then a chunk (RFC 9649). */
function webp(chunk: string, body: readonly number[]): Buffer {
  const head = Buffer.from("RIFF\0\0\0\0WEBP", "latin1");
  const length = Buffer.alloc(4);
  length.writeUInt32LE(body.length);
  return Buffer.concat([head, Buffer.from(chunk, "latin1"), length, Buffer.from(body)]);
}

/** A PDF that says what these lines say, with a trailer; readers find objects without a table. */
function pdfOf(...objects: readonly string[]): Buffer {
  const written = objects.map((text, index) => `${index + 1} 0 obj\n${text}\nendobj\n`).join("");
  return Buffer.from(`%PDF-1.7\n${written}trailer\n<< /Root 1 0 R >>\n%%EOF\n`);
}

/** A page with a script and things to launch, one that is huge, and one that is its own parent. */
export const HOSTILE_PDFS: Readonly<Record<string, Buffer>> = {
  script: pdfOf(
    "<< /Type /Catalog /Pages 2 0 R /OpenAction << /S /JavaScript /JS (app.alert(1); while(true){}) >> >>",
    "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
    "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 200] /AA << /O << /S /Launch /F (calc.exe) >> >> >>",
  ),
  link: pdfOf(
    "<< /Type /Catalog /Pages 2 0 R /OpenAction << /S /URI /URI (http://wirefathom.example/) >> >>",
    "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
    "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 200] /Annots [<< /Type /Annot /Subtype /Link /Rect [0 0 200 200] /A << /S /URI /URI (javascript:alert(1)) >> >>] >>",
  ),
  huge: pdfOf(
    "<< /Type /Catalog /Pages 2 0 R >>",
    "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
    "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 999999999 999999999] >>",
  ),
  circle: pdfOf("<< /Type /Catalog /Pages 2 0 R >>", "<< /Type /Pages /Kids [2 0 R] /Count 99999999 >>"),
  many: pdfOf("<< /Type /Catalog /Pages 2 0 R >>", "<< /Type /Pages /Kids [] /Count 2147483647 >>"),
};

type Reader = typeof import("pdfjs-dist");
let reader: Promise<Reader> | null = null;

/** The reader of PDFs in its form for programs without a page. */
function pdfReader(): Promise<Reader> {
  // A name that the compiler does not follow: this form has no types of its own.
  const path = "pdfjs-dist/legacy/build/pdf.mjs";
  reader ??= import(path) as Promise<Reader>;
  return reader;
}

/** Reads a PDF as the page does: how many pages, the first one's size, and what is to be painted on it. */
async function readPdf(bytes: Uint8Array): Promise<unknown> {
  const { getDocument } = await pdfReader();
  const loading = getDocument({ data: Uint8Array.from(bytes), useWasm: false, verbosity: 0, stopAtErrors: false });
  try {
    const document = await loading.promise;
    const page = await document.getPage(1);
    page.getViewport({ scale: 1 });
    await page.getOperatorList();
    return ok(document.numPages);
  } catch {
    // The page refuses it with one word, whatever the reader says.
    return refuse("pdf-damaged");
  } finally {
    await loading.destroy();
  }
}

/** Pictures and printed pages. */
export const PICTURE_DOORS: readonly Door[] = [
  {
    name: "picture",
    kind: "bytes",
    seeds: async () => [
      png(30, 20),
      jpegHead(640, 480, 6),
      jpegHead(640, 480, 3, true),
      CMYK_JPEG,
      webp("VP8X", [0, 0, 0, 0, 99, 0, 0, 99, 0, 0]),
      webp("VP8L", [0x2f, 99, 0, 25, 0]),
      webp("VP8 ", [0, 0, 0, 0x9d, 1, 0x2a, 100, 0, 100, 0]),
      Buffer.from("GIF89a\u0064\u0000\u0064\u0000", "latin1"),
      Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
    ],
    open: (input) => pictureOf(bytesOf(input)),
    share: 14,
    mostMs: 1_000,
  },
  {
    name: "printed page as PDF",
    kind: "bytes",
    seeds: async () => [scannedPdf(), ...Object.values(HOSTILE_PDFS)],
    open: (input) => readPdf(bytesOf(input)),
    share: 2,
    mostMs: 10_000,
  },
];
