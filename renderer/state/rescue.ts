import { type Outcome, refuse } from "../../core/base/outcome.ts";
import type { OpenedCircuit } from "../../schemas/calls.ts";
import type { Host } from "../host/host.ts";
import { copyTitle } from "../words/library.ts";

/**
 * Brings the newest version of a circuit that can still be read to the bench, as a circuit of its own: the one whose newest
 * version is damaged stays as it is. Refuses `versions-damaged` where none can be read.
 */
export async function earlierOpened(host: Host, id: string): Promise<Outcome<OpenedCircuit>> {
  const list = await host.ask("circuits.versions", { id });
  if (!list.ok) return list;
  for (const { version } of list.value.versions) {
    const read = await host.ask("circuits.version", { id, version });
    if (!read.ok) continue;
    const { circuit } = read.value;
    return host.ask("circuits.create", { circuit: { ...circuit, title: copyTitle(circuit.title) } });
  }
  return refuse("versions-damaged");
}
