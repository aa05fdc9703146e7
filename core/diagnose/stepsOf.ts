import { DRAIN_WORDS } from "../base/words/drain.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { probeFor } from "./candidates.ts";
import { expectedOf } from "./expected.ts";
import { cautionsFor, outcomesOf, whyOf } from "./explain.ts";
import type { Listed } from "./plan/linear.ts";
import type { Rows } from "./rows.ts";
import type { Setting, Step, Suspect } from "./step.ts";
import type { Tries } from "./tries.ts";
import { turningIn } from "./turning.ts";

/** Rows of a list in full: what to expect, why, and what each outcome would leave. */
export function stepsOf(
  circuit: Circuit,
  suspects: readonly Suspect[],
  { columns, conditions }: Rows,
  list: readonly Listed[],
  { sweepOf, isAsleep }: Tries,
): readonly Step[] {
  // Only the conditions of rows on the list are tried: acts bring many that are not.
  const listed = new Set(list.flatMap(({ probe }) => columns[probe]!.candidate.conditions));
  const turning = conditions.map((condition, number) => (listed.has(number) ? turningIn(circuit, condition) : []));
  return list.map(({ probe, minutes }, index) => {
    const column = columns[probe]!;
    const { candidate } = column;
    const { at, black, instrument, lampTo, hands, positions, fineness } = candidate;
    const outcomes = outcomesOf(column, suspects);
    const isSwept = candidate.sweepOf !== null && instrument !== "listen";
    const settings = candidate.conditions.map((number, place) => ({
      condition: conditions[number]!,
      position: isSwept ? positions[place]! : "",
      expect: expectedOf(circuit, { ...probeFor(candidate, conditions[number]!), fineness }),
    }));
    return {
      number: index + 1,
      point: at.point,
      black,
      connector: at.connector,
      cavity: at.cavity,
      colour: at.colour,
      instrument,
      lampTo,
      sweepOf: isSwept ? sweepOf : null,
      // What is heard is heard on the way from rest to the last of them.
      settings: instrument === "listen" ? settings.slice(-1) : settings,
      access: at.access,
      minutes,
      hands,
      why: whyOf(outcomes),
      cautions: [...cautionsFor(circuit, candidate, turning), ...(isAsleep ? partedCautions(settings) : [])],
      outcomes: instrument === "listen" ? outcomes.map(lastWindow) : outcomes,
      ohms: candidate.ohms ?? null,
    };
  });
}

/** Where something is parted while the vehicle sleeps: wait, then read. */
function partedCautions(settings: readonly Setting[]): readonly string[] {
  const isParted = settings.some(({ condition: { apart = [], out = [] } }) => apart.length + out.length > 0);
  return isParted ? [DRAIN_WORDS.parted] : [];
}

function lastWindow<T extends { readonly windows: readonly unknown[] }>(outcome: T): T {
  return { ...outcome, windows: outcome.windows.slice(-1) };
}
