import type { ReactNode } from "react";
import { Icon } from "./Icon.tsx";

/** One caution: what can hurt, in ink. */
export function Caution({ children }: { readonly children: ReactNode }) {
  return (
    <p className="caution">
      <Icon name="note" size={16} />
      <span>{children}</span>
    </p>
  );
}
