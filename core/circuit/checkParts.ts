import { kindOf } from "../parts/catalogue.ts";
import type { Around, Part, PartView, Sees } from "../parts/kind.ts";
import { orderRefusal } from "../parts/rising.ts";
import { viewOf } from "../parts/view.ts";
import type { Circuit } from "./circuit.ts";
import { boxesOn } from "./overlap.ts";
import { looseEnd, type Problem, problem } from "./problem.ts";
import { overlaps } from "./sheetRoom.ts";

/** Above this many volts DC the work belongs to licensed people (UN R100, class A ends at 60 V DC). */
const MOST_VOLTS = 60;

/** What is wrong with single parts, page links and function checks. */
export function checkParts(circuit: Circuit): readonly Problem[] {
  return [
    ...(circuit.nominalVolts > MOST_VOLTS ? [problem("over-60-volts", "", { volts: circuit.nominalVolts })] : []),
    ...circuit.parts.flatMap((part) => [...checkPart(circuit, part), ...checkPlace(circuit, part)]),
    ...checkOverlaps(circuit),
    ...checkLinks(circuit),
    ...checkLoads(circuit),
  ];
}

function checkPart(circuit: Circuit, part: Part): readonly Problem[] {
  const kind = kindOf(part.kind);
  if (!kind) return [problem("part-kind", part.id, { part: part.id, kind: part.kind })];
  const found: Problem[] = [];
  for (const { name, label, value } of kind.settings) {
    if (value.type !== "number" && value.usual === "" && !part.settings?.[name]) {
      found.push(problem("setting-missing", part.id, { part: part.id, setting: label }));
    }
  }
  const order = orderRefusal(kind, part, circuit.nominalVolts);
  if (order) found.push(problem(order.code, part.id, order.about));
  if (kind.name === "switch" && kind.controls(part).length === 0) {
    found.push(problem("switch-without-positions", part.id, { part: part.id }));
  }
  const volts = kind.role === "source" ? part.settings?.volts : undefined;
  if (typeof volts === "number" && volts > MOST_VOLTS) found.push(problem("over-60-volts", part.id, { volts }));
  return found;
}

/** A circuit without pages is a list of joints, and nothing in it needs a place. */
function checkPlace(circuit: Circuit, part: Part): readonly Problem[] {
  if (circuit.pages.length === 0 || Object.hasOwn(circuit.placement.parts, part.id)) return [];
  return [looseEnd("part-not-placed", part.id, { part: part.id })];
}

/** Of two parts that lie over one another, one is read for the other. */
function checkOverlaps(circuit: Circuit): readonly Problem[] {
  return circuit.pages.flatMap(({ id: page }) =>
    boxesOn(circuit, page).flatMap(({ id, box }, index, all) =>
      all
        .slice(index + 1)
        .filter(({ box: other }) => overlaps(box, other))
        .map((over) => looseEnd("part-over-part", over.id, { part: over.id, other: id, page })),
    ),
  );
}

/** A page link waits for another of its name. */
function checkLinks(circuit: Circuit): readonly Problem[] {
  const links = circuit.parts.filter((part) => part.kind === "page-link");
  const names = links.map((part) => String(part.settings?.name ?? ""));
  const count = new Map<string, number>();
  for (const name of names) count.set(name, (count.get(name) ?? 0) + 1);
  return links.flatMap((part, index) =>
    count.get(names[index]!) === 1 ? [looseEnd("link-alone", part.id, { part: part.id, name: names[index]! })] : [],
  );
}

/** A function check judges a part by the work it does. */
function checkLoads(circuit: Circuit): readonly Problem[] {
  return circuit.checks.flatMap((check) => {
    const part = circuit.parts.find(({ id }) => id === check.load);
    if (part && doesWork(circuit, part)) return [];
    return [problem("check-without-work", check.id, { check: check.label, load: check.load })];
  });
}

function doesWork(circuit: Circuit, part: Part): boolean {
  const kind = kindOf(part.kind);
  if (!kind) return false;
  const view = viewOf(kind, part, circuit.nominalVolts);
  return kind.doing(view, kind.start, NOTHING_SEEN, atRest(view)) !== null;
}

const NOTHING_SEEN: Sees = { volts: () => 0, amps: () => 0, terminalVolts: () => null };

function atRest(view: PartView): Around {
  const positions = Object.fromEntries(
    view.controls.map((control) => [control.name, control.positions[0]?.name ?? ""]),
  );
  return { positions, drive: {}, engineRunning: false, ambientC: 20, nominalVolts: view.nominalVolts };
}
