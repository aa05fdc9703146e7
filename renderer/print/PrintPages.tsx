import type { CSSProperties } from "react";
import { MOST_WORDS } from "../../core/paper/handover.ts";
import { Empty } from "../panels/Empty.tsx";
import { NotProbed } from "../panels/NotProbed.tsx";
import { Working } from "../panels/Working.tsx";
import { useApp } from "../state/AppContext.tsx";
import { notAsked } from "../state/openBench.ts";
import { foundNow } from "../state/printing.ts";
import { notProbedNow } from "../state/views.ts";
import type { PrintedPage } from "../workers/sheets.ts";

const NOT_ASKED = notAsked<readonly PrintedPage[]>();

/** The pages as they come out of the printer. A browser prints these very pages. */
export function PrintPages() {
  const { answer, isOld, trouble } = useApp(({ open }) => open?.pages ?? NOT_ASKED);
  const notProbed = useApp(notProbedNow);
  const isHandover = useApp(({ open }) => open?.printing.what === "handover" && foundNow(open) !== null);
  const paper = useApp((state) => state.settings.paper);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the pages are scrolled with the arrow keys
    <section className="print-pages" aria-label="Pages" tabIndex={0}>
      {trouble !== null && <p className="error">The pages could not be drawn: {trouble}</p>}
      {isOld && <Working words="Drawing the pages" />}
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
        <Page key={index} page={page} paper={paper} isOld={isOld} />
      ))}
    </section>
  );
}

/** Width of a page in the preview, pixels. */
const PREVIEW_WIDTH = 620;
const PIXELS_PER_MM = 96 / 25.4;

function Page({ page, paper, isOld }: { readonly page: PrintedPage; readonly paper: string; readonly isOld: boolean }) {
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
      dangerouslySetInnerHTML={{ __html: page.svg }}
    />
  );
}
