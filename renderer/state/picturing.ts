import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Host } from "../host/host.ts";
import type { Picture } from "../workers/picture.ts";
import { circuitKey, type Shelf, sampleKey, versionKey } from "./shelf.ts";
import type { Open } from "./state.ts";
import type { AppStore, Reaction } from "./store.ts";

/** Something that draws the picture of a circuit in its own time. */
export type Drawer = (circuit: Circuit) => Promise<Picture | null>;

interface Wanted {
  readonly key: string;
  readonly read: () => Promise<Circuit | null>;
}

/** Has pictures drawn, one after the other, each once: of the shelf, or of the versions shown while a bench is open. */
export function picturingReaction(host: Host, draw: Drawer): Reaction {
  let isAtWork = false;
  const work = async (store: AppStore): Promise<void> => {
    for (;;) {
      const { shelf, open } = store.getState();
      const wanted = open ? versionsOf(open, host) : wantedOn(shelf, host);
      const next = wanted.find(({ key }) => !Object.hasOwn(shelf.pictures, key));
      if (!next) return;
      store.dispatch({ do: "pictured", key: next.key, picture: null });
      const circuit = await next.read();
      const picture = circuit && (await draw(circuit));
      if (picture) store.dispatch({ do: "pictured", key: next.key, picture });
    }
  };
  return (action, _state, _before, store) => {
    if (isAtWork || !["shelved", "samples-listed", "close", "versions-listed", "show-older"].includes(action.do))
      return;
    isAtWork = true;
    void work(store)
      .catch(() => {})
      .finally(() => {
        isAtWork = false;
      });
  };
}

/** The versions shown; the present one stands on the bench and is not among them. */
function versionsOf({ id, versions: { rows, shown } }: Open, host: Host): readonly Wanted[] {
  if (id === null || rows === null) return [];
  return rows.slice(1, 1 + shown).map(
    ({ version }): Wanted => ({
      key: versionKey(id, version),
      read: async () => circuitOf(await host.ask("circuits.version", { id, version })),
    }),
  );
}

/** The library first, then the samples. */
function wantedOn(shelf: Shelf, host: Host): readonly Wanted[] {
  const circuits = shelf.circuits.map(
    (row): Wanted => ({
      key: circuitKey(row),
      read: async () => circuitOf(await host.ask("circuits.read", { id: row.id })),
    }),
  );
  const listed = new Set(shelf.circuits.map(({ id }) => id));
  const ofJobs = shelf.jobs
    .filter(({ circuit }) => !listed.has(circuit))
    .map(
      ({ circuit, version }): Wanted => ({
        key: versionKey(circuit, version),
        read: async () => circuitOf(await host.ask("circuits.read", { id: circuit })),
      }),
    );
  const samples = shelf.samples.map(
    (row): Wanted => ({
      key: sampleKey(row),
      read: async () => circuitOf(await host.ask("samples.open", { sample: row.sample })),
    }),
  );
  return [...circuits, ...ofJobs, ...samples];
}

function circuitOf(answer: { readonly ok: boolean; readonly value?: { readonly circuit: Circuit } }): Circuit | null {
  return answer.value?.circuit ?? null;
}
