import { ok } from "../../core/base/outcome.ts";
import { withLibrary } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What the versions of a circuit answer. */
export const VERSION_ANSWERS: AnswersOf<"circuits.versions" | "circuits.version"> = {
  "circuits.versions": ({ id }, host) =>
    withLibrary(host, async ({ versions }) => {
      const listed = await versions.list(id);
      return listed.ok ? ok({ versions: listed.value }) : listed;
    }),

  "circuits.version": ({ id, version }, host) =>
    withLibrary(host, async ({ versions }) => {
      const circuit = await versions.read(id, version);
      return circuit.ok ? ok({ circuit: circuit.value }) : circuit;
    }),
};
