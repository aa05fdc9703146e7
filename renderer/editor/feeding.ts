import type { PartId } from "../../core/base/ids.ts";
import { remember } from "../../core/base/memo.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { controlsOf, terminalPoint, terminalsOf, wireSideOf } from "../../core/circuit/points.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { liveOf } from "../../core/live/live.ts";
import type { Part } from "../../core/parts/kind.ts";

/** What the circuit brings to a terminal of a part: a feed, or the way home to the return. */
export type Brings = "feed" | "home";

/** By terminal what the circuit brings to it; a terminal that leads to a load, or to both, is not there. */
export type Brought = ReadonlyMap<string, Brings>;

const known = remember((_: Circuit) => new Map<PartId, Brought>());

/**
 * What the circuit brings to each terminal while the part itself is out of it: a firm path to a feed or to the return, at
 * rest and with all keys on. Solves the circuit twice at most, and remembers it for this wiring.
 */
export function broughtTo(circuit: Circuit, part: Part): Brought {
  const byPart = known(wiringOf(circuit));
  const found = byPart.get(part.id) ?? solved(circuit, part);
  byPart.set(part.id, found);
  return found;
}

function solved(circuit: Circuit, part: Part): Brought {
  const set = keysOn(circuit, part.id);
  const conditions: readonly Condition[] = [{}, ...(Object.keys(set).length > 0 ? [{ set }] : [])];
  const lives = conditions.map((condition) => liveOf(circuit, { ...condition, out: [part.id] }));
  const brought = terminalsOf(circuit, part).flatMap((terminal): readonly (readonly [string, Brings])[] => {
    const point = wireSideOf(circuit, terminalPoint(part, terminal));
    const states = lives.map(({ points }) => points.get(point)?.state);
    const [isFed, isHome] = [states.includes("powered"), states.includes("grounded")];
    return isFed === isHome ? [] : [[terminal, isFed ? "feed" : "home"]];
  });
  return new Map(brought);
}

/** Every other key at the last position in which it stays. */
function keysOn(circuit: Circuit, part: PartId): Readonly<Record<string, string>> {
  const keys = controlsOf(circuit).filter((each) => each.part.kind === "ignition-switch" && each.part.id !== part);
  return Object.fromEntries(
    keys.flatMap(({ key, control, rest }) => {
      const on = control.positions.filter(({ springsBackTo }) => springsBackTo === undefined).at(-1);
      return on && on.name !== rest ? [[key, on.name]] : [];
    }),
  );
}
