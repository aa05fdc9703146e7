import type { Circuit } from "../../core/circuit/circuit.ts";

let count = 0;

/** The same circuit with a page that nothing is remembered of, and of parts that nothing is remembered of; and the id of the page. */
export function unknownPage(circuit: Circuit, page: string): { readonly circuit: Circuit; readonly page: string } {
  const copy = structuredClone(circuit);
  const id = `unknown ${count++}`;
  const places = Object.entries(copy.placement.parts);
  const parts = places.map(([part, place]) => [part, place.page === page ? { ...place, page: id } : place] as const);
  const pages = copy.pages.map((each) => (each.id === page ? { ...each, id } : each));
  return {
    circuit: { ...copy, pages, placement: { ...copy.placement, parts: Object.fromEntries(parts) } },
    page: id,
  };
}
