import { remember } from "../../core/base/memo.ts";
import { EXPECTATIONS, type Expectation } from "../../core/circuit/circuit.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import type { Live } from "../../core/live/live.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Part } from "../../core/parts/kind.ts";

const NONE: readonly never[] = [];

const working = remember((_: Live) => new Map<readonly Part[], readonly Part[]>());

/** Parts of which a check can say what they should do: those that do work. The same list for the same circuit and state. */
export function loadsOf(bench: Bench | null): readonly Part[] {
  if (!bench) return NONE;
  const { good } = liveNow(bench);
  const known = working(good);
  const { parts } = bench.circuit;
  const loads = known.get(parts) ?? parts.filter((part) => isLoad(part, good));
  known.set(parts, loads);
  return loads;
}

/** Batteries and fuses do something too, but nobody complains of what they do. */
function isLoad({ id, kind }: Part, live: Live): boolean {
  const role = kindOf(kind)?.role;
  return role !== "source" && role !== "protection" && (live.parts.get(id)?.doing ?? null) !== null;
}

const RESTING: readonly unknown[] = [null, undefined, "off", "released"];

/** Id of the load that a new check is most likely of: one that works now, lamps and motors before relays; "" for none. */
export function loadAtWork(bench: Bench | null): string {
  const loads = loadsOf(bench);
  if (!bench) return "";
  const { good } = liveNow(bench);
  const ofRole = loads.filter(({ kind }) => kindOf(kind)?.role === "load");
  const works = ({ id }: Part): boolean => !RESTING.includes(good.parts.get(id)?.doing);
  return (ofRole.find(works) ?? loads.find(works) ?? ofRole[0] ?? loads[0])?.id ?? "";
}

/** What a load can be expected to do by its kind; every other one works, stays off or flashes. */
const BY_KIND: Readonly<Record<string, readonly Expectation[]>> = {
  motor: ["forward", "reverse", "off", "low", "high"],
  "wiper-motor": ["low", "high", "off"],
};
const ANY_LOAD: readonly Expectation[] = ["on", "off", "flashes"];

/** What a load can be expected to do, what it does now first. */
export function expectationsOf(bench: Bench | null, load: string): readonly Expectation[] {
  const part = bench?.circuit.parts.find(({ id }) => id === load);
  if (!bench || !part) return NONE;
  const doing = liveNow(bench).good.parts.get(load)?.doing;
  const now = EXPECTATIONS.find((each) => each === doing) ?? (doing === "pulled-in" ? "on" : undefined);
  return sorted(BY_KIND[part.kind] ?? ANY_LOAD, now);
}

const lists = new Map<string, readonly Expectation[]>();

/** One list for each order, so that what shows it does not render anew. */
function sorted(possible: readonly Expectation[], first: Expectation | undefined): readonly Expectation[] {
  const list = first && possible.includes(first) ? [first, ...possible.filter((each) => each !== first)] : possible;
  const known = lists.get(list.join()) ?? list;
  lists.set(list.join(), known);
  return known;
}
