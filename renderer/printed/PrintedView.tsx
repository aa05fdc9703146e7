import type { Circuit, Page } from "../../core/circuit/circuit.ts";
import { underlaysOf } from "../../core/circuit/underlays.ts";
import { Empty } from "../panels/Empty.tsx";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { counted } from "../words/figures.ts";
import { AdjustCard } from "./AdjustCard.tsx";
import { choosePrinted } from "./choosePrinted.ts";
import { PrintedRow } from "./PrintedRow.tsx";

/** The printed pages that lie under the drawing of the page in sight, the topmost first, and the way to bring more in. */
export function PrintedView() {
  const circuit = useApp(circuitNow);
  const pageId = useApp(({ open }) => open?.page);
  const adjusting = useApp(({ open }) => open?.adjusting ?? null);
  const page = circuit?.pages.find(({ id }) => id === pageId);
  if (!circuit || !page) return null;
  const underlays = page.underlays ?? [];
  return (
    <div className="view-scroll">
      <header className="view-head">
        <h2>Printed pages</h2>
        <p className="small">
          Under the drawing of <bdi>{page.title}</bdi>, to redraw over. The print dialog puts them under the sheet where
          it is told to.
        </p>
      </header>
      {underlays.some(({ id }) => id === adjusting?.underlay) && <AdjustCard adjusting={adjusting!} />}
      {underlays.length === 0 && (
        <Empty title="No printed page lies under this page">
          Bring in the PDF, a scan or a photograph of the schematic: choose files, drop them on the drawing, or copy a
          picture and paste it there with Ctrl V.
        </Empty>
      )}
      <BringButton />
      {underlays.length > 0 && (
        <ol className="circuit-rows printed-rows" aria-label="Printed pages under this page, the topmost first">
          {underlays.toReversed().map((underlay, index) => (
            <PrintedRow
              key={underlay.id}
              page={page}
              underlay={underlay}
              at={underlays.length - 1 - index}
              count={underlays.length}
            />
          ))}
        </ol>
      )}
      <Elsewhere circuit={circuit} page={page} />
    </div>
  );
}

/** A button that opens the browser's own field for files. */
function BringButton() {
  const { dispatch } = useAppStore();
  const choose = (): void => choosePrinted((files) => dispatch({ do: "bring-in", files }));
  return (
    <button type="button" className="button is-low printed-bring" onClick={choose}>
      <Icon name="add" size={16} />
      Bring in printed pages
    </button>
  );
}

/** Printed pages under other pages of the circuit. */
function Elsewhere({ circuit, page }: { readonly circuit: Circuit; readonly page: Page }) {
  const { dispatch } = useAppStore();
  const others = circuit.pages.filter(({ id, underlays }) => id !== page.id && underlays);
  if (others.length === 0 || underlaysOf(circuit).length === 0) return null;
  return (
    <section className="circuit-part" aria-label="Under other pages">
      <h3 className="place-name">Under other pages</h3>
      <ul className="printed-elsewhere">
        {others.map(({ id, title, underlays = [] }) => (
          <li key={id}>
            <button
              type="button"
              className="button is-quiet is-low"
              onClick={() => dispatch({ do: "show-page", page: id })}
            >
              <bdi>{title}</bdi>
            </button>
            <span className="small figures">{counted(underlays.length, "printed page")}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
