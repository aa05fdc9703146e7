import type { Circuit } from "../../core/circuit/circuit.ts";
import { Empty } from "../panels/Empty.tsx";
import { Icon } from "../panels/Icon.tsx";
import { PageRow } from "./PageRow.tsx";
import { useAddPage } from "./useAddPage.ts";

/** The pages of the circuit in their order, and a way to add one. */
export function Pages({ circuit }: { readonly circuit: Circuit }) {
  const add = useAddPage();
  return (
    <section className="circuit-part" aria-label="Pages">
      <h3 className="place-name">Pages</h3>
      {circuit.pages.length === 0 && (
        <Empty title="This circuit has no page yet">
          Parts stand on pages, such as "Fuses and feeds" on an A3 sheet.
        </Empty>
      )}
      <ol className="circuit-rows">
        {circuit.pages.map((page, at) => (
          <PageRow key={page.id} circuit={circuit} page={page} at={at} />
        ))}
      </ol>
      <button type="button" className="button is-quiet is-low circuit-add" onClick={add}>
        <Icon name="add" size={16} />
        Add a page
      </button>
    </section>
  );
}
