import { ok } from "../../core/base/outcome.ts";
import { placeOf } from "../store/circuits.ts";
import { circuitInVersion, versionsOf } from "../store/versions.ts";
import { withStore } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What the versions of a circuit answer. */
export const VERSION_ANSWERS: AnswersOf<"circuits.versions" | "circuits.version"> = {
  "circuits.versions": ({ id }, host) =>
    withStore(host, (store) => {
      const place = placeOf(store, id);
      return place.ok ? ok({ versions: versionsOf(store, place.value.key) }) : place;
    }),

  "circuits.version": ({ id, version }, host) =>
    withStore(host, (store) => {
      const place = placeOf(store, id);
      if (!place.ok) return place;
      const circuit = circuitInVersion(store, place.value.key, version);
      return circuit.ok ? ok({ circuit: circuit.value }) : circuit;
    }),
};
