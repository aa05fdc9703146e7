import type { PartId } from "../base/ids.ts";
import { PAPER_WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { feedingOf } from "../diagnose/feeding.ts";
import type { Suspect } from "../diagnose/step.ts";
import { faultModes, targetOf } from "../live/fault.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { FaultMode } from "../parts/kind.ts";

const WORDS = PAPER_WORDS.proves;

/** Kinds that are proven in one way, whatever is wrong with them. */
const BY_KIND: Readonly<Record<string, (id: PartId) => string>> = {
  battery: WORDS.battery,
  fuse: WORDS.fuse,
  ground: WORDS.ground,
  splice: WORDS.splice,
  relay: WORDS.part,
  flasher: WORDS.part,
};

/** What proves a suspect before a part is ordered, by what it sits on and what it does there. */
export function proveWords(circuit: Circuit, { faults }: Suspect): string {
  const fault = faults[0]!;
  const target = targetOf(circuit, fault.target);
  const mode = target && faultModes(circuit, target).find(({ mode }) => mode === fault.mode);
  if (target?.is === "wire") return does(mode, "bridge") ? WORDS.touchingWire(target.id) : WORDS.wire(target.id);
  if (target?.is === "cavity") return faults.length > 1 ? WORDS.plug(target.connector) : WORDS.cavity(target.id);
  const kind = kindOf(partAt(circuit, fault.target)?.kind ?? "");
  if (fault.mode.startsWith("left-in")) return WORDS.control(fault.target);
  const known = kind && BY_KIND[kind.name];
  if (known) return known(fault.target);
  if (mode?.repair === "find what wakes it") return WORDS.awake(fault.target);
  if (mode?.repair === "free the mechanism")
    return does(mode, "hold") ? WORDS.plunger(fault.target) : WORDS.mechanism(fault.target);
  if (kind?.role === "control")
    return sticksClosed(mode) ? WORDS.stuckContact(fault.target) : WORDS.contact(fault.target);
  if (feedingOf(circuit)(fault.target) !== null) return loadWords(fault.target, mode);
  return WORDS.part(fault.target);
}

/** A load that can be fed by itself: what it then does tells how it is broken. */
function loadWords(id: PartId, mode: FaultMode | null | undefined): string {
  if (does(mode, "add-ohms")) return WORDS.weakLoad(id);
  return does(mode, "set-ohms") ? WORDS.shortedLoad(id) : WORDS.load(id);
}

function does(mode: FaultMode | null | undefined, what: string): boolean {
  return mode?.effects(mode.value?.usual[0] ?? 0).some((effect) => effect.does === what) ?? false;
}

function sticksClosed(mode: FaultMode | null | undefined): boolean {
  return mode?.effects(0).some((effect) => effect.does === "stick" && effect.closed) ?? false;
}
