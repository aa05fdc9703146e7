import { useKeyOf } from "../keys/useKeyOf.ts";
import { counted } from "../words/figures.ts";

/** At the foot of the drawing while wires are drawn: how one is led, and how several are at once. */
export function WireHint({ gathered }: { readonly gathered: number }) {
  const keyOf = useKeyOf();
  const words =
    gathered === 0
      ? "Several wires at once: Shift-click or Shift-drag over terminals, then click where the first one goes."
      : `${counted(gathered, "terminal")} gathered. Click where the first one goes. ${keyOf("pen-leave")} lets them go.`;
  return (
    <p className="wire-hint card small" role="status">
      {words}
    </p>
  );
}
