import type { Circuit } from "./circuit.ts";

/** A3 lying: the usual sheet for circuits, which scales to A4 (common practice, no source). */
const A3 = { widthMm: 420, heightMm: 297 } as const;

/** A circuit with one empty page, for a passenger car with the colour codes of IEC 60757. */
export function emptyCircuit(title: string): Circuit {
  return {
    format: "wirefathom/circuit",
    version: 1,
    title,
    nominalVolts: 12,
    colourCodes: "iec60757",
    pages: [{ id: "p1", title: "Page 1", ...A3 }],
    parts: [],
    wires: [],
    placement: { parts: {}, wires: {} },
    connectors: [],
    access: [],
    reach: {},
    checks: [],
    scenes: [],
  };
}
