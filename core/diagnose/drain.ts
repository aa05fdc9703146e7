import { figure } from "../base/figure.ts";
import { remember } from "../base/memo.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Amps } from "../base/units.ts";
import { DRAIN_WORDS as WORDS } from "../base/words/drain.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import { workOf } from "../live/live.ts";
import { referenceBattery } from "../live/network.ts";
import { SLEEPING_AMPS, UNTIL_ASLEEP } from "../trade/sleeping.ts";
import { openedBeforehand } from "./beforehand.ts";

/** Id of the complaint that no check of a circuit stands for: the battery goes flat with the key off. */
export const DRAIN = "battery-goes-flat";

/** Amps by which a fault must raise what the good circuit takes, so that it can be found across a fuse (a guess). */
const LEAST_MORE: Amps = 0.02;
/** A battery that gives more than this is flat in minutes, with smoke: nobody calls that a drain (a guess). */
const MOST: Amps = 100;

/** The complaint as a check: the battery, everything at rest, should give nothing. Null where there is no battery. */
export const drainCheck = remember((circuit: Circuit): FunctionCheck | null => {
  const battery = referenceBattery(circuit);
  return battery && { id: DRAIN, label: WORDS.label, condition: {}, load: battery.id, expect: "off" };
});

/** The check of this id: one of the circuit's own, or the battery that goes flat. */
export function checkFor(circuit: Circuit, id: string | null): FunctionCheck | null {
  const own = circuit.checks.find((check) => check.id === id);
  return own ?? (id === DRAIN ? drainCheck(circuit) : null);
}

/** Whether a check is the battery that goes flat: then nothing may be woken. */
export function isDrain({ id, load, condition }: FunctionCheck, circuit: Circuit): boolean {
  return id === DRAIN && load === referenceBattery(circuit)?.id && Object.keys(condition).length === 0;
}

/** Whether a battery gives more than is expected asleep, and more than the good circuit lets it. */
export function drains(amps: Amps, healthy: Amps, sleeping: Amps): boolean {
  return amps > Math.max(sleeping, healthy + LEAST_MORE) && amps <= MOST;
}

/** The complaint in words: "The battery goes flat: more than 50 mA with the key off". */
export function drainWords(sleeping: Amps): string {
  return WORDS.complaint(milliampsText(sleeping));
}

/** What to do before the first row: let the vehicle sleep, wake nothing; and what the drawing itself takes at rest. */
export function beforeDrain(circuit: Circuit, sleeping: Amps): readonly string[] {
  const battery = referenceBattery(circuit);
  const first = openedBeforehand(circuit);
  const minutes = figure(
    first.reduce((sum, group) => sum + group.minutes, 0),
    0,
  );
  const drawn = (battery && workOf(circuit, {}).get(battery.id)?.amps) ?? 0;
  return [
    WORDS.asleep(figure(UNTIL_ASLEEP, 0)),
    WORDS.open,
    ...(first.length > 0 ? [WORDS.beforehand(first.map(({ label }) => label).join("; "), minutes)] : []),
    WORDS.leaveIn,
    WORDS.battery,
    ...(drawn > sleeping ? [WORDS.drawn(milliampsText(drawn))] : []),
  ];
}

/** Most and least that is believed for a sleeping vehicle. */
const BELIEVED = { least: 0.001, most: 2 } as const;

/** Reads the expected sleeping current, `50`, `50 mA`, `0,05 A`; a bare number is milliamps. Refuses `sleeping-amps`. */
export function sleepingAmpsOf(typed: string): Outcome<Amps> {
  const [, number = "", unit = ""] = /^(\d*[.,]?\d+)\s*(m?a?)$/.exec(typed.trim().toLowerCase()) ?? [];
  const amps = Number(number.replace(",", ".")) / (unit === "a" ? 1 : 1000);
  const isBelieved = number !== "" && amps >= BELIEVED.least && amps <= BELIEVED.most;
  return isBelieved ? ok(amps) : refuse("sleeping-amps", { typed, usual: milliampsText(SLEEPING_AMPS.amps) });
}

/** Milliamps as they are printed: whole from ten up, tenths below. */
export function milliampsText(amps: Amps): string {
  const milliamps = amps * 1000;
  return figure(milliamps, Math.abs(milliamps) < 10 && !Number.isInteger(milliamps) ? 1 : 0);
}
