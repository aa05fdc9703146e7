import { type FocusEvent, useEffect, useRef } from "react";
import type { CircuitRow } from "../../schemas/calls.ts";
import { opensKey } from "../state/shelf.ts";
import { focusOpener } from "./focusOpener.ts";

/**
 * Keeps the keys with the list: where the circuit that had them is deleted, the next one gets them, else the one before,
 * else the search. What is returned goes onto the list.
 */
export function useFollowing(circuits: readonly CircuitRow[]): {
  readonly onFocus: (event: FocusEvent<HTMLUListElement>) => void;
} {
  const held = useRef<string | null>(null);
  const before = useRef(circuits);
  useEffect(() => {
    const at = before.current.findIndex((row) => opensKey(row) === held.current);
    before.current = circuits;
    const isGone = at >= 0 && circuits.every((row) => opensKey(row) !== held.current);
    if (!isGone || document.activeElement !== document.body) return;
    const next = circuits[Math.min(at, circuits.length - 1)];
    focusOpener(next ? opensKey(next) : null);
  }, [circuits]);
  return {
    onFocus: ({ target }) => {
      const entry = target.closest(".entry")?.querySelector<HTMLElement>("[data-opens]");
      held.current = entry?.dataset.opens ?? null;
    },
  };
}
