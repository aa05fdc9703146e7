import { progressWords } from "../../core/diagnose/progressWords.ts";
import type { ProbeOrder } from "../../core/diagnose/step.ts";

/** How far the search is: the first sentence bold where something was found, the others below it. */
export function ProgressLines({ order }: { readonly order: ProbeOrder }) {
  const [first = "", ...others] = progressWords(order);
  const isFound = order.progress === "certain" || order.progress === "order-now";
  return (
    <div className="progress small" role="status">
      <p className={isFound ? "is-found" : undefined}>{first}</p>
      {others.map((words) => (
        <p key={words}>{words}</p>
      ))}
    </div>
  );
}
