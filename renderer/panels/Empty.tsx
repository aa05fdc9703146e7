import type { ReactNode } from "react";

/** What stands where there is nothing yet: one bold line, one of how to begin. */
export function Empty({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <div className="empty">
      <b>{title}</b>
      <p className="small">{children}</p>
    </div>
  );
}
