import { useKeyOf } from "../keys/useKeyOf.ts";

/** At the foot of the drawing while things are moved by two clicks: what the next one does. */
export function CarryHint({ isCarrying }: { readonly isCarrying: boolean }) {
  const leave = useKeyOf()("pen-leave");
  return (
    <p className="wire-hint card small" role="status">
      {isCarrying
        ? `Click where it goes. ${leave} leaves it where it was.`
        : `Click what is to move: a part, a piece of a wire, or the end of the wire that is chosen. ${leave} ends.`}
    </p>
  );
}
