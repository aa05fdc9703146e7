import { ok } from "../../core/base/outcome.ts";
import { withLibrary } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What the versions of a circuit answer. */
export const VERSION_ANSWERS: AnswersOf<"circuits.versions" | "circuits.version"> = {
  "circuits.versions": ({ id }, host) => withLibrary(host, ({ versions }) => versions.list(id)),

  "circuits.version": ({ id, version }, host) =>
    withLibrary(host, async ({ versions }) => {
      const circuit = await versions.read(id, version);
      return circuit.ok ? ok({ circuit: circuit.value }) : circuit;
    }),
};
