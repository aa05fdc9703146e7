import type { ProbeOrder, Progress } from "../../core/diagnose/step.ts";
import { FileVerdict } from "./FileVerdict.tsx";

/** The search has come to an end: nothing that is left is worth reading before the part is looked at. */
const AT_AN_END: readonly Progress[] = ["certain", "order-now", "tied"];

/** Offers to file the likeliest suspect as the verdict, once the search has come to an end. */
export function FileLeader({ order }: { readonly order: ProbeOrder }) {
  const [leader] = order.suspects;
  if (!leader || !AT_AN_END.includes(order.progress)) return null;
  return (
    <p className="order-facts">
      <FileVerdict suspect={leader.id} order={order} words={`File the verdict: ${leader.title}`} />
    </p>
  );
}
