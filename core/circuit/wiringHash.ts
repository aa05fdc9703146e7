import { hashOf } from "../base/hash.ts";
import { remember } from "../base/memo.ts";
import type { Circuit } from "./circuit.ts";

/**
 * Eight signs that name what current can feel of a circuit and where it can be probed: parts with their tables and values,
 * wires, plugs. Titles, labels, colours, trim, checks and where things stand do not count, so that tidying a drawing leaves it.
 */
export const wiringHash = remember((circuit: Circuit): string => {
  const { nominalVolts, parts, wires, connectors } = circuit;
  const felt = [
    nominalVolts,
    parts.map(({ label: _, printed: __, ...part }) => inOrder(part)),
    wires.map(({ id, from, to, mm2, metres, ohms }) => [id, from, to, mm2, metres, ohms]),
    connectors.map(({ id, rows, cavities }) => [id, rows, inOrder(cavities ?? {})]),
  ];
  return hashOf(JSON.stringify(felt)).toString(16).padStart(8, "0");
});

/** Fields by name: two files may write them in another order. */
function inOrder(fields: object): readonly (readonly [string, unknown])[] {
  return Object.entries(fields).sort(([one], [other]) => (one < other ? -1 : 1));
}
