import type { CSSProperties } from "react";
import type { Page as CircuitPage } from "../../core/circuit/circuit.ts";
import { drawingBoxMm } from "../../core/circuit/sheetArea.ts";
import type { Bounds } from "../../core/drawing/measure.ts";
import { MOST_WORDS } from "../../core/paper/handover.ts";
import { Empty } from "../panels/Empty.tsx";
import { NotProbed } from "../panels/NotProbed.tsx";
import { Working } from "../panels/Working.tsx";
import { useApp } from "../state/AppContext.tsx";
import { notAsked } from "../state/openBench.ts";
import { foundNow } from "../state/printing.ts";
import { circuitNow, notProbedNow } from "../state/views.ts";
import type { PrintedPage } from "../workers/sheets.ts";
import { pagesPrinted, type UnderPages } from "./useUnderPages.ts";

const NOT_ASKED = notAsked<readonly PrintedPage[]>();

/** The pages as they come out of the printer. A browser prints these very pages. */
export function PrintPages({ under }: { readonly under: UnderPages }) {
  const { answer, isOld, trouble } = useApp(({ open }) => open?.pages ?? NOT_ASKED);
  const notProbed = useApp(notProbedNow);
  const isHandover = useApp(({ open }) => open?.printing.what === "handover" && foundNow(open) !== null);
  const paper = useApp((state) => state.settings.paper);
  const circuit = useApp(circuitNow);
  const page = useApp(({ open }) => open?.printing.page ?? null);
  const drawn = circuit ? pagesPrinted(circuit, page) : [];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the pages are scrolled with the arrow keys
    <section className="print-pages" aria-label="Pages" tabIndex={0}>
      {trouble !== null && <p className="error">The pages could not be drawn: {trouble}</p>}
      {(isOld || under.isWorking) && <Working words="Drawing the pages" />}
      {answer?.length === 0 && !isOld && notProbed !== null && <NotProbed why={notProbed} />}
      {answer?.length === 0 && !isOld && isHandover && (
        <Empty title="Too many words for one page">
          A handover page holds {MOST_WORDS} words. Say less of what was told and done; nothing of it is lost.
        </Empty>
      )}
      {answer?.length === 0 && !isOld && notProbed === null && !isHandover && (
        <Empty title="Nothing to print here yet">
          A checklist needs a check that fails; choose it under Probe order. A branch needs a load with a check in which
          it works, a table a connector.
        </Empty>
      )}
      {answer?.map((page, index) => (
        <Page
          key={index}
          page={page}
          paper={paper}
          isOld={isOld || under.isWorking}
          under={underOf(drawn[index], under)}
        />
      ))}
    </section>
  );
}

/** Width of a page in the preview, pixels. */
const PREVIEW_WIDTH = 620;
const PIXELS_PER_MM = 96 / 25.4;

/** The printed pages under a page: their picture, and the room for the drawing that it fills, millimetres of the page. */
interface Below {
  readonly address: string;
  readonly box: Bounds;
}

function underOf(drawn: CircuitPage | undefined, { pages }: UnderPages): Below | null {
  const ready = drawn && pages.get(drawn.id);
  return ready ? { address: ready.address, box: drawingBoxMm(drawn) } : null;
}

interface Previewed {
  readonly page: PrintedPage;
  readonly paper: string;
  readonly isOld: boolean;
  readonly under: Below | null;
}

function Page({ page, paper, isOld, under }: Previewed) {
  const { pageWidth, pageHeight, left, top, scale } = page.placing;
  const shape = pageWidth > pageHeight ? "across" : "upright";
  const style = {
    "--page-width": `${pageWidth}mm`,
    "--page-height": `${pageHeight}mm`,
    "--left": `${left}mm`,
    "--top": `${top}mm`,
    "--sheet-scale": scale,
    "--preview": PREVIEW_WIDTH / (pageWidth * PIXELS_PER_MM),
  } as CSSProperties;
  return (
    <figure
      className={`print-page is-${paper}-${shape}${isOld ? " is-old" : ""}`}
      style={style}
      aria-label={page.title}
    >
      {under && <Under {...under} placing={page.placing} />}
      <div className="print-sheet" dangerouslySetInnerHTML={{ __html: page.svg }} />
    </figure>
  );
}

function Under({ address, box, placing }: Below & Pick<PrintedPage, "placing">) {
  const { left, top, scale } = placing;
  const style = {
    left: `${left + scale * box.left}mm`,
    top: `${top + scale * box.top}mm`,
    width: `${scale * (box.right - box.left)}mm`,
    height: `${scale * (box.bottom - box.top)}mm`,
  };
  return <img className="print-under" src={address} alt="The printed page under the drawing" style={style} />;
}
