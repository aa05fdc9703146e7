import { remember } from "../../core/base/memo.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { useKeyOf } from "../keys/useKeyOf.ts";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";

/** Pages with parts or printed pages on them. */
const filledPages = remember(({ pages, placement }: Circuit): ReadonlySet<string> => {
  const printed = pages.flatMap(({ id, underlays }) => (underlays === undefined ? [] : [id]));
  return new Set([...printed, ...Object.values(placement.parts).map(({ page }) => page)]);
});

/** In the middle of a page on which nothing stands yet: how to begin. */
export function EmptyPage() {
  const keyOf = useKeyOf();
  const isEmpty = useApp((state) => {
    const circuit = circuitNow(state);
    return circuit !== null && !filledPages(circuit).has(state.open?.page ?? "");
  });
  const tool = useApp(({ open }) => open?.tool.is);
  if (!isEmpty || tool !== "hand") return null;
  return (
    <div className="empty-page">
      <h2>Nothing is drawn on this page yet</h2>
      <p>
        Add a part at the top left, such as a battery, a fuse or a lamp. Then press{" "}
        <kbd className="key-cap">{keyOf("wire")}</kbd> and click from terminal to terminal.
      </p>
      <p>Have it printed? Drop the PDF, scan or photograph here, and redraw over it.</p>
    </div>
  );
}
