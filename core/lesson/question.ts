import type { Volts } from "../base/units.ts";
import type { Asked, Condition } from "../circuit/circuit.ts";
import type { Idea } from "./ideas.ts";

/** An answer to choose, and the wrong ideas that lead to it; none where it is right, or only wrong. */
export interface Choice {
  /** "powered", "12.6 V", "dim". */
  readonly answer: string;
  /** Where the answer is in volts. */
  readonly volts: Volts | null;
  readonly ideas: readonly Idea[];
}

/** A question made from a circuit: predict, then reveal. */
export interface Question {
  readonly asked: Asked;
  readonly condition: Condition;
  readonly text: string;
  readonly choices: readonly Choice[];
  /** Number of the right choice, from 0. */
  readonly right: number;
  /** Why it is so, in sentences: the path of the point, then what speaks against each wrong idea. */
  readonly reason: readonly string[];
}

/** Share of the widest choice by which typed volts may be off a choice. */
const NEAR = 0.05;

/** The choice that a typed answer stands for, by number: its words, or volts near those of one choice; null where it is none. */
export function answered({ choices }: Question, typed: string): number | null {
  const text = typed.trim().toLowerCase();
  const named = choices.findIndex(({ answer }) => answer.toLowerCase() === text);
  if (named >= 0) return named;
  const [, number] = /^(-?\d+(?:[.,]\d+)?)\s*v?$/.exec(text) ?? [];
  if (number === undefined) return null;
  const volts = Number(number.replace(",", "."));
  const widest = Math.max(...choices.map((choice) => Math.abs(choice.volts ?? 0)));
  const off = choices.map((choice) =>
    choice.volts === null ? Number.POSITIVE_INFINITY : Math.abs(choice.volts - volts),
  );
  const nearest = off.indexOf(Math.min(...off));
  return off[nearest]! <= NEAR * widest ? nearest : null;
}

/** What a class answered: how many chose each, and how many hold each wrong idea. */
export interface Tally {
  readonly counts: readonly number[];
  readonly ideas: ReadonlyMap<Idea, number>;
}

/** Counts the choices of a class, given by number, or how many hands went up for each. */
export function tallied({ choices }: Question, hands: readonly number[]): Tally {
  const ideas = new Map<Idea, number>();
  choices.forEach((choice, index) => {
    const count = hands[index] ?? 0;
    if (count > 0) for (const idea of choice.ideas) ideas.set(idea, (ideas.get(idea) ?? 0) + count);
  });
  return { counts: choices.map((_, index) => hands[index] ?? 0), ideas };
}
