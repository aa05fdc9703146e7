import { GlobalWorkerOptions, getDocument, type PDFDocumentProxy, type PDFPageProxy } from "pdfjs-dist";
import workerAddress from "pdfjs-dist/build/pdf.worker.min.mjs?url";
import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { encoded, whiteCanvas } from "./encoded.ts";
import type { Source } from "./source.ts";

GlobalWorkerOptions.workerSrc = workerAddress;

/** Points of a PDF to the inch, and dots to the inch that a page is drawn with. */
const POINTS = 72;
const DOTS = 200;
const MM_PER_INCH = 25.4;
/** A page that would have more pixels is drawn coarser: A2 at 200 dots an inch has 15.5 million. */
const MOST_PIXELS = 16_000_000;

/** Where the reader fetches its decoders, tables and fonts. A relative address would be taken from its worker's place. */
function folder(name: string): string {
  return new URL(`pdfjs/${name}/`, document.baseURI).href;
}

/** The pages of a PDF. Refuses `pdf-locked` where it asks for a password, and `pdf-damaged`. */
export async function pdfSource(name: string, bytes: Uint8Array): Promise<Outcome<Source>> {
  const loading = getDocument({
    data: bytes,
    wasmUrl: folder("wasm"),
    cMapUrl: folder("cmaps"),
    cMapPacked: true,
    standardFontDataUrl: folder("standard_fonts"),
    iccUrl: folder("iccs"),
    // The page's policy allows no wasm; the reader has the same decoders in plain script.
    useWasm: false,
    stopAtErrors: false,
    verbosity: 0,
  });
  try {
    const pdf = await loading.promise;
    return ok(sourceFrom(name, pdf, () => void loading.destroy()));
  } catch (error) {
    void loading.destroy();
    const isLocked = error instanceof Error && error.name === "PasswordException";
    return refuse(isLocked ? "pdf-locked" : "pdf-damaged");
  }
}

function sourceFrom(name: string, pdf: PDFDocumentProxy, close: () => void): Source {
  return {
    name,
    pages: pdf.numPages,
    sizeOf: async (number) => {
      const { width, height } = (await pdf.getPage(number)).getViewport({ scale: MM_PER_INCH / POINTS });
      return [width, height];
    },
    paint: async (number, canvas, most) => {
      const page = await pdf.getPage(number);
      const { width, height } = page.getViewport({ scale: 1 });
      const viewport = page.getViewport({ scale: most / Math.max(width, height) });
      canvas.width = Math.max(1, Math.floor(viewport.width));
      canvas.height = Math.max(1, Math.floor(viewport.height));
      await page.render({ canvas, viewport }).promise;
      page.cleanup();
    },
    picture: async (number, gone) => {
      try {
        const page = await pdf.getPage(number);
        const canvas = await drawn(page, gone);
        page.cleanup();
        return ok({
          bytes: await encoded(canvas),
          note: isBlank(canvas) ? refuse("pdf-blank", { page: number }).refusal : null,
        });
      } catch (error) {
        if (gone.aborted) throw error;
        return refuse("pdf-page", { page: number });
      }
    },
    close,
  };
}

async function drawn(page: PDFPageProxy, gone: AbortSignal): Promise<HTMLCanvasElement> {
  const viewport = page.getViewport({ scale: scaleFor(page.getViewport({ scale: 1 })) });
  const [canvas] = whiteCanvas(Math.max(1, Math.floor(viewport.width)), Math.max(1, Math.floor(viewport.height)));
  const task = page.render({ canvas, viewport });
  const cancel = (): void => task.cancel();
  gone.addEventListener("abort", cancel);
  await task.promise.finally(() => gone.removeEventListener("abort", cancel));
  return canvas;
}

/** Pixels for each point of a page of this size in points. */
function scaleFor({ width, height }: { readonly width: number; readonly height: number }): number {
  return Math.min(
    DOTS / POINTS,
    Math.sqrt(MOST_PIXELS / (width * height)),
    LIMITS.pictureSide / Math.max(width, height),
  );
}

const SAMPLE = 200;
const NEARLY_WHITE = 250;

/** Whether nothing at all was drawn: a scan that could not be decoded leaves white paper and says nothing. */
function isBlank(canvas: HTMLCanvasElement): boolean {
  const [small, context] = whiteCanvas(SAMPLE, SAMPLE);
  context.imageSmoothingQuality = "high";
  context.drawImage(canvas, 0, 0, SAMPLE, SAMPLE);
  return context.getImageData(0, 0, small.width, small.height).data.every((value) => value >= NEARLY_WHITE);
}
