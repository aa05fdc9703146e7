import { useMemo } from "react";
import type { ControlKey } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow, complaintNow, conditionNow } from "../state/views.ts";
import { ControlSegments } from "./ControlSegments.tsx";
import { Elsewhere } from "./Elsewhere.tsx";
import { inCircuitOrder, stripControls } from "./stripControls.ts";
import { useFitting } from "./useFitting.ts";

/** Room for "Elsewhere, n at rest" at the end of the strip. */
const ELSEWHERE_WIDTH = 190;
const NONE: readonly ControlKey[] = [];

/** The controls in hand, each with all its positions; what has no room stands under Elsewhere. */
export function ControlsStrip() {
  const circuit = useApp(circuitNow);
  return circuit && <Strip circuit={circuit} />;
}

function Strip({ circuit }: { readonly circuit: Circuit }) {
  const condition = useApp(conditionNow);
  const page = useApp(({ open }) => open?.page ?? "");
  const recent = useApp(({ open }) => open?.recent ?? NONE);
  const complaint = useApp(complaintNow);
  const wanted = useMemo(() => Object.keys(complaint?.condition.set ?? {}), [complaint]);
  const all = stripControls({ circuit, condition, page, recent, wanted });
  const { row, fitting } = useFitting(all.length, all.map(({ key }) => key).join(" "), ELSEWHERE_WIDTH);
  const shown = inCircuitOrder(circuit, all.slice(0, fitting));
  const elsewhere = inCircuitOrder(circuit, all.slice(fitting));
  return (
    <section className="strip" aria-label="Controls">
      <div className="strip-row" ref={row}>
        {(fitting === all.length ? all : shown).map((control) => (
          <ControlSegments key={control.key} control={control} />
        ))}
        {elsewhere.length > 0 && <Elsewhere controls={elsewhere} />}
      </div>
    </section>
  );
}
