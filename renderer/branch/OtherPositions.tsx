import { useEffect, useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import type { Branch } from "../../core/live/branch.ts";
import { type OtherPosition, otherPositions } from "../../core/live/branchElsewhere.ts";
import { useMake } from "../state/useMake.ts";

const NONE: readonly OtherPosition[] = [];
const MOST_NAMED = 8;

/** The positions in which other wires carry the same load's current; pressing one sets the drawing so. */
export function OtherPositions({ circuit, branch }: { readonly circuit: Circuit; readonly branch: Branch }) {
  const make = useMake();
  const [others, setOthers] = useState(NONE);
  useEffect(() => {
    // Solved once for a load: after the rows are on the screen, so that they never wait for it.
    const later = setTimeout(() => setOthers(otherPositions(wiringOf(circuit), branch)), 0);
    return () => clearTimeout(later);
  }, [circuit, branch]);
  if (others.length === 0) return null;
  return (
    <section className="other-positions">
      <h2 className="place-name">In other positions also</h2>
      <ul>
        {others.map(({ check, parts, wires }) => (
          <li key={check.id}>
            <button type="button" className="menu-item" onClick={() => make((bench) => setUp(bench, check.condition))}>
              <span>
                {check.label}
                <span className="caption other-carriers">{named([...parts, ...wires])}</span>
              </span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function named(ids: readonly string[]): string {
  const more = ids.length - MOST_NAMED;
  return `${ids.slice(0, MOST_NAMED).join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
}
