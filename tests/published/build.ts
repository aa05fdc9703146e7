import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import type { Attachment } from "../../core/live/attachment.ts";
import { type Fault, parseFault } from "../../core/live/fault.ts";
import { type Live, liveOf } from "../../core/live/live.ts";
import type { Part, Settings } from "../../core/parts/kind.ts";

/** A part in brief: its kind, its settings, and what else the file would say of it. */
export type Brief = readonly [kind: string, settings?: Settings | undefined, more?: Partial<Part>];

/**
 * A circuit document in few words. A run is points with blanks between, a wire from each to the next; `(0.09)` before
 * a point gives that wire its ohms. Other wires have as few ohms as the program allows.
 */
export function build(
  title: string,
  nominalVolts: number,
  parts: Readonly<Record<string, Brief>>,
  runs: readonly string[],
): Circuit {
  const wires: Circuit["wires"][number][] = [];
  for (const run of runs) {
    let from = "";
    let ohms = 0;
    for (const word of run.split(/\s+/)) {
      if (word.startsWith("(")) {
        ohms = Number(word.slice(1, -1));
        continue;
      }
      if (from) wires.push({ id: `W${wires.length + 1}`, from, to: word, ohms });
      from = word;
      ohms = 0;
    }
  }
  return {
    format: "wirefathom/circuit",
    version: 1,
    title,
    nominalVolts,
    colourCodes: "free",
    pages: [],
    parts: Object.entries(parts).map(([id, [kind, settings, more]]) => ({
      id,
      kind,
      ...(settings && { settings }),
      ...more,
    })),
    wires,
    placement: { parts: {}, wires: {} },
    connectors: [],
    access: [],
    reach: {},
    checks: [],
    scenes: [],
  };
}

/** A switch by its continuity table: position name to pairs joined, `1-2 3-4`; a position after `!` springs back to rest. */
export function table(positions: Readonly<Record<string, string>>, terminals?: readonly string[]): Brief {
  const names = Object.keys(positions);
  return [
    "switch",
    undefined,
    {
      ...(terminals && { terminals }),
      positions: names.map((name) => ({
        name: name.replace("!", ""),
        joins: pairs(positions[name]!),
        ...(name.startsWith("!") && { springsBackTo: names[0]! }),
      })),
    },
  ];
}

function pairs(text: string): readonly (readonly [string, string])[] {
  const words = text.split(" ").filter((word) => word !== "");
  return words.map((word) => [word.split("-")[0]!, word.split("-")[1]!] as const);
}

/** An ideal battery but for a milliohm: this many volts with nothing on it. */
export function cell(volts: number, internalOhms = 0.001): Brief {
  // At a quarter of its charge a battery of the table has exactly its nominal volts.
  return ["battery", { volts, charge: 25, internalOhms }];
}

/** A circuit in a condition reached from rest, and short words for reading it. Faults are written `K1:coil-open`. */
export function tried(
  circuit: Circuit,
  condition: Condition = {},
  faults: readonly string[] = [],
  clipped: readonly Attachment[] = [],
) {
  const live = liveOf(
    circuit,
    condition,
    faults.map((text) => faultOf(circuit, text)),
    clipped,
  );
  return { live, ...readings(live) };
}

function readings(live: Live) {
  return {
    /** Volts of a point to the reference battery's negative post; 0 where it floats, as a meter shows. */
    volts: (point: string): number => live.points.get(point)!.volts ?? 0,
    state: (point: string) => live.points.get(point)!.state,
    doing: (part: string) => live.parts.get(part)!.doing,
    amps: (part: string): number => live.parts.get(part)!.amps,
    watts: (part: string): number => live.parts.get(part)!.watts,
    isOn: (part: string): boolean => ["on", "dim", "pulled-in", "forward"].includes(live.parts.get(part)!.doing ?? ""),
  };
}

/** The fault of this spelling; throws where the circuit has none such. */
export function faultOf(circuit: Circuit, text: string): Fault {
  const fault = parseFault(circuit, text);
  if (!fault.ok) throw new Error(`${text}: ${fault.refusal.code}`);
  return fault.value;
}
