import type { Contact, ContactGroup } from "./contacts.ts";

/** A place where a blade can lie: the contact it closes there, and the terminal. */
export interface Throw {
  readonly key: string;
  readonly terminal: string;
}

/** One moving blade: its pivot at the foot, its throws at the top from left to right. A make contact has one throw. */
export interface Arm {
  readonly foot: string;
  readonly throws: readonly Throw[];
  /** Key of the contact closed at rest, or null where the blade lies open. */
  readonly rest: string | null;
}

/** Where a terminal of a contact group stands in its symbol. */
export type Row = "top" | "foot";

/** How a continuity table is drawn: the arms of each control, and the row in which each terminal stands. */
export interface Arms {
  readonly groups: readonly (readonly Arm[])[];
  readonly homes: ReadonlyMap<string, Row>;
}

/**
 * Finds the blades of a continuity table. A terminal with two contacts or more that are never closed together is a pole,
 * first those joined in most positions; what remains are single make contacts, the shared terminal at the top. Poles that
 * share a throw become neighbours, with the shared throw between them. `feet` names terminals that stand at the foot in any
 * case.
 */
export function armsOf(groups: readonly ContactGroup[], feet: readonly string[] = []): Arms {
  const homes = new Map<string, Row>(feet.map((terminal) => [terminal, "foot"]));
  const poles = groups.map(polesOf);
  for (const { arms } of poles) for (const { foot } of arms) settle(homes, foot, "foot");
  for (const { arms } of poles)
    for (const { throws } of arms) for (const { terminal } of throws) settle(homes, terminal, "top");
  const all = poles.map(({ arms, left }, index) => [...arms, ...makesOf(left, groups[index]!, homes)]);
  return { groups: all.map((arms) => facing(chained(arms))), homes };
}

function settle(homes: Map<string, Row>, terminal: string, row: Row): void {
  if (!homes.has(terminal)) homes.set(terminal, row);
}

function polesOf(group: ContactGroup): { readonly arms: readonly Arm[]; readonly left: readonly Contact[] } {
  const arms: Arm[] = [];
  let left = group.contacts;
  for (;;) {
    const pole = bestPole(left, group);
    if (pole === null) return { arms, left };
    const mine = left.filter((contact) => touches(contact, pole));
    const throws = mine.map((contact) => ({ key: contact.key, terminal: contact.a === pole ? contact.b : contact.a }));
    arms.push({ foot: pole, throws: restFirst(throws, group), rest: restKey(throws, group) });
    left = left.filter((contact) => !mine.includes(contact));
  }
}

/** The terminal that is joined, to one other at a time, in most positions; then the one written first in its pairs. */
function bestPole(left: readonly Contact[], group: ContactGroup): string | null {
  let best: { readonly terminal: string; readonly joined: number; readonly first: number } | null = null;
  for (const terminal of new Set(left.flatMap(({ a, b }) => [a, b]))) {
    const mine = left.filter((contact) => touches(contact, terminal));
    const closed = group.positions.map(({ keys }) => mine.filter(({ key }) => keys.includes(key)).length);
    if (mine.length < 2 || closed.some((count) => count > 1)) continue;
    const joined = closed.filter((count) => count === 1).length;
    const first = mine.filter(({ a }) => a === terminal).length / mine.length;
    if (!best || joined > best.joined || (joined === best.joined && first > best.first))
      best = { terminal, joined, first };
  }
  return best?.terminal ?? null;
}

/** Single make contacts: a terminal keeps the row it stands in; where neither has one, the busier goes to the top. */
function makesOf(left: readonly Contact[], group: ContactGroup, homes: Map<string, Row>): readonly Arm[] {
  const count = (terminal: string): number => left.filter((contact) => touches(contact, terminal)).length;
  const busiest = ({ a, b }: Contact): number => Math.max(count(a), count(b));
  const tops = new Map<Contact, string>();
  for (const contact of [...left].sort((one, other) => busiest(other) - busiest(one))) {
    const { a, b } = contact;
    const stands = homes.get(a) === "top" || homes.get(b) === "foot";
    const hangs = homes.get(b) === "top" || homes.get(a) === "foot";
    const top = stands ? a : hangs || count(b) > count(a) ? b : a;
    tops.set(contact, top);
    settle(homes, top, "top");
    settle(homes, top === a ? b : a, "foot");
  }
  return left.map((contact) => {
    const terminal = tops.get(contact)!;
    const throws = [{ key: contact.key, terminal }];
    return { foot: terminal === contact.a ? contact.b : contact.a, throws, rest: restKey(throws, group) };
  });
}

function touches({ a, b }: Contact, terminal: string): boolean {
  return a === terminal || b === terminal;
}

function restKey(throws: readonly Throw[], { positions }: ContactGroup): string | null {
  return throws.find(({ key }) => positions[0]?.keys.includes(key))?.key ?? null;
}

/** Two throws stand with the one of rest at the left; more than two keep the order of the positions. */
function restFirst(throws: readonly Throw[], group: ContactGroup): readonly Throw[] {
  return throws.length === 2 && restKey(throws, group) === throws[1]!.key ? [...throws].reverse() : throws;
}

/** Arms in an order that puts those with a common terminal at the top side by side. */
function chained(arms: readonly Arm[]): readonly Arm[] {
  const waiting = [...arms];
  const order: Arm[] = [];
  while (waiting.length > 0) {
    const last = order.at(-1);
    const near = last ? waiting.findIndex((arm) => shared(arm, last)) : -1;
    order.push(...waiting.splice(Math.max(near, 0), 1));
  }
  return order;
}

function shared(one: Arm, other: Arm): boolean {
  return one.throws.some(({ terminal }) => other.throws.some((candidate) => candidate.terminal === terminal));
}

/** Turns the throws of neighbours so that the one they share lies between them. */
function facing(arms: readonly Arm[]): readonly Arm[] {
  const turned: Arm[] = [];
  let isFixed = false;
  for (const arm of arms) {
    const last = turned.at(-1);
    const meeting: readonly [Arm, Arm] | undefined = last && meet(last, arm, isFixed);
    if (meeting) turned.splice(-1, 1, ...meeting);
    else turned.push(arm);
    isFixed = meeting !== undefined;
  }
  return turned;
}

function meet(left: Arm, right: Arm, isFixed: boolean): readonly [Arm, Arm] | undefined {
  for (const one of isFixed ? [left] : [left, mirrored(left)]) {
    for (const other of [right, mirrored(right)]) {
      if (one.throws.at(-1)!.terminal === other.throws[0]!.terminal) return [one, other];
    }
  }
  return undefined;
}

function mirrored(arm: Arm): Arm {
  return { ...arm, throws: [...arm.throws].reverse() };
}
