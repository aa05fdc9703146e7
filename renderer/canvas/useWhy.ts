import { useEffect, useState } from "react";
import type { PointId } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Fault } from "../../core/live/fault.ts";
import type { Live } from "../../core/live/live.ts";
import { type Why, whyOf } from "../../core/live/why.ts";

/** How long a new state must stand before it is explained anew, milliseconds: a throw is answered first. */
const CALM_MS = 150;

/**
 * Why a point is as it is. The answer costs a few solves, so it is worked out when the window has nothing else to do; the
 * old one of the same point stays until then. Null before the first.
 */
export function useWhy(circuit: Circuit, live: Live, faults: readonly Fault[], point: PointId): Why | null {
  const [why, setWhy] = useState<Why | null>(null);
  const isKnown = why?.point === point;
  useEffect(() => {
    let idle = 0;
    const answer = (): void => setWhy(whyOf(circuit, point, live.condition, faults));
    const timer = setTimeout(
      () => {
        idle = requestIdleCallback(answer, { timeout: 500 });
      },
      isKnown ? CALM_MS : 0,
    );
    return () => {
      clearTimeout(timer);
      cancelIdleCallback(idle);
    };
  }, [circuit, live, faults, point]);
  return isKnown ? why : null;
}
