import type { Circuit } from "../../core/circuit/circuit.ts";
import { conditionText } from "../../core/live/condition.ts";
import { faultText } from "../../core/live/fault.ts";
import { type Live, liveOf } from "../../core/live/live.ts";
import type { Happening } from "../../core/live/settle.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { readCircuitFile } from "../files.ts";
import { type Console, EXIT, need } from "./console.ts";
import { conditionOf, faultsOf, type Typed } from "./given.ts";
import { happeningText, markWords } from "./happenings.ts";
import { aligned, GLYPHS, stateWords, voltsText } from "./rows.ts";

/** `live FILE`: every wire's state, volts and amps in a condition; a finding where a fuse melts or nothing settles. */
export async function live(console: Console, file: string, typed: Typed): Promise<number> {
  const circuit = need(await readCircuitFile(file));
  const faults = faultsOf(circuit, typed);
  const result = liveOf(circuit, conditionOf(circuit, typed), faults);
  if (typed.json) console.write(`${JSON.stringify(liveJson(circuit, result), null, 2)}\n`);
  else {
    const where = conditionText(result.condition) || "rest";
    console.write(`${circuit.title}: ${where}${faults.map((fault) => `, fault ${faultText(fault)}`).join("")}\n\n`);
    console.write(`${[...wireRows(circuit, result), "", ...partRows(circuit, result)].join("\n")}\n`);
    for (const happening of result.happenings) console.write(`\n${happeningText(happening)}\n`);
    if (result.before) console.write(`${clashText(result.before)}\n`);
  }
  return result.settled && !result.happenings.some(({ what }) => what === "melted") ? EXIT.fine : EXIT.finding;
}

function wireRows(circuit: Circuit, { wires }: Live): readonly string[] {
  const rows = circuit.wires.map(({ id, from, to, colour }) => {
    const wire = wires.get(id)!;
    const [near, far] = wire.state;
    const states = near === far ? stateWords(near) : `${stateWords(near)} / ${stateWords(far)}`;
    const glyphs = near === far ? GLYPHS[near] : `${GLYPHS[near]}${GLYPHS[far]}`;
    return [
      id,
      colour ?? "",
      `${from} – ${to}`,
      glyphs,
      states,
      voltsText(wire.volts[0], wire.range[0]),
      voltsText(wire.volts[1], wire.range[1]),
      ampsText(wire.amps),
      markWords(wire),
    ];
  });
  return aligned([["wire", "colour", "from – to", "", "state", "from", "to", "amps", ""], ...rows], [5, 6, 7]);
}

/** What stood in a clash in the moment before the fuse melted. */
function clashText({ wires }: Live): string {
  const clashing = [...wires].filter(([, wire]) => wire.state.includes("clash")).map(([id]) => id);
  return clashing.length === 0
    ? "Before that no wire joined feed and ground."
    : `Before that feed met ground in ${clashing.join(", ")}.`;
}

function partRows(circuit: Circuit, { parts }: Live): readonly string[] {
  const supplies = new Set(circuit.parts.filter((part) => kindOf(part.kind)?.role === "source").map((part) => part.id));
  const rows = [...parts].flatMap(([id, part]) => {
    if (part.doing === null) return [];
    return [
      [
        id,
        part.doing,
        ampsText(part.amps),
        `${part.watts.toFixed(1)} W`,
        part.level === null || supplies.has(id) ? "" : `${Math.round(part.level * 100)} %`,
      ],
    ];
  });
  return rows.length === 0 ? [] : aligned([["part", "doing", "amps", "watts", "level"], ...rows], [2, 3, 4]);
}

function ampsText(amps: number): string {
  return Math.abs(amps) < 0.005 ? "–" : `${amps.toFixed(2)} A`;
}

function liveJson(circuit: Circuit, live: Live): object {
  const terminals = Object.fromEntries(
    [...live.points].map(([id, { volts, state, sourceOhms, range, alwaysFed, weak, ghost }]) => [
      id,
      {
        volts,
        state,
        sourceOhms,
        ...(range && { range }),
        ...(alwaysFed && { alwaysFed }),
        ...(weak && { weak }),
        ...(ghost && { ghost }),
      },
    ]),
  );
  const wires = Object.fromEntries(
    [...live.wires].map(([id, { state, volts, amps, alwaysFed, weak }]) => [
      id,
      { state, volts, amps, ...(alwaysFed && { alwaysFed }), ...(weak && { weak }) },
    ]),
  );
  const parts = Object.fromEntries(
    [...live.parts].map(([id, { doing, amps, watts, level, state, closed }]) => [
      id,
      { doing, amps, watts, level, ...(state && { state }), ...(closed.size > 0 && { closed: [...closed] }) },
    ]),
  );
  const notes = live.happenings.map((happening: Happening) => ({ ...happening, text: happeningText(happening) }));
  const before = live.before && liveJson(circuit, live.before);
  return {
    condition: live.condition,
    settled: live.settled,
    terminals,
    wires,
    parts,
    notes,
    ...(before && { before }),
  };
}
