import { Children, type ReactNode } from "react";

/** A named group of switches of the condition; absent where it is empty. */
export function ConditionGroup({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  if (Children.toArray(children).length === 0) return null;
  return (
    <section className="condition-group">
      <h3 className="place-name">{title}</h3>
      <div className="condition-rows">{children}</div>
    </section>
  );
}
