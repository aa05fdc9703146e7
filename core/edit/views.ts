import type { ConnectorId, PointId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { pointAt } from "../circuit/points.ts";
import { probeOrder } from "../diagnose/order.ts";
import type { PositionTable } from "../diagnose/positionTable.ts";
import { type Seen, seenIn } from "../diagnose/seen.ts";
import type { ProbeOrder } from "../diagnose/step.ts";
import { positionTable } from "../diagnose/tableReading.ts";
import { PLAIN_WEIGHING, type Weighing } from "../diagnose/weighing.ts";
import type { Fault } from "../live/fault.ts";
import { attachmentsOf } from "../live/instruments/clipped.ts";
import { type Why, whyFrom } from "../live/why.ts";
import type { Bench } from "./bench.ts";
import { liveNow } from "./liveNow.ts";
import { wiringOf } from "./wiring.ts";

const NO_FAULTS: readonly Fault[] = [];

function shownFaults({ showFaults, faults }: Bench): readonly Fault[] {
  return showFaults ? faults : NO_FAULTS;
}

// ---------------------------------------------------------------- why

const whysOf = remember((_: Bench) => new Map<PointId, Why>());

/**
 * Why a point has the state that is shown, latches and melted fuses kept; null for a point that is not there. Solves every
 * throw of every control once.
 */
export function whyAt(bench: Bench, point: PointId): Why | null {
  if (!pointAt(bench.circuit, point)) return null;
  const whys = whysOf(bench);
  const known = whys.get(point);
  if (known) return known;
  const { after } = liveNow(bench);
  const now = { condition: bench.condition, states: bench.showFaults ? after.now : after.good };
  const clipped = attachmentsOf(bench.clipped, bench.circuit.nominalVolts).map(({ attachment }) => attachment);
  const why = whyFrom(wiringOf(bench.circuit), point, now, shownFaults(bench), clipped);
  whys.set(point, why);
  return why;
}

// ---------------------------------------------------------------- what to probe

/** The complaint and what else was seen; null where nothing is complained of. A complaint not noted is taken as dead. */
export function observationsNow({ circuit, complaint, observed, sleepingAmps }: Bench): Seen | null {
  return seenIn(circuit, complaint, observed, sleepingAmps);
}

interface Ordered {
  readonly asked: string;
  readonly order: ProbeOrder;
}
const lastOrder = remember((_: Circuit): { known: Ordered | null } => ({ known: null }));

/** The probe order for the complaint and what was seen of the other checks; null where nothing is complained of. */
export function probeOrderNow(bench: Bench): ProbeOrder | null {
  const seen = observationsNow(bench);
  if (!seen) return null;
  const wiring = wiringOf(bench.circuit);
  const { readings, batteryVolts, sleepingAmps } = bench;
  const weighing: Weighing = { ...PLAIN_WEIGHING, circuit: bench.weights };
  const observed = [seen.complaint, ...seen.others].map(({ check, word }) => `${check.id}=${word}`);
  const asked = JSON.stringify([observed, readings, batteryVolts, sleepingAmps, weighing]);
  const last = lastOrder(wiring);
  if (last.known?.asked !== asked)
    last.known = {
      asked,
      order: probeOrder(wiring, seen.complaint, { others: seen.others, readings, batteryVolts, weighing }),
    };
  return last.known.order;
}

const tablesOf = remember((_: Circuit) =>
  remember((_faults: readonly Fault[]) => new Map<ConnectorId, PositionTable>()),
);

/** The position table of a connector, with the faults where they are shown. */
export function tableNow(bench: Bench, connector: ConnectorId): PositionTable {
  const wiring = wiringOf(bench.circuit);
  const faults = shownFaults(bench);
  const tables = tablesOf(wiring)(faults);
  const table = tables.get(connector) ?? positionTable(wiring, connector, faults);
  tables.set(connector, table);
  return table;
}
