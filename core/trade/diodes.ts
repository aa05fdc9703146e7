import type { Amps, Ohms, Volts } from "../base/units.ts";
import type { Source } from "./source.ts";
import { MEMORY, PRACTICE, published } from "./source.ts";

/** Volts that a junction drops while it conducts. */
export interface ForwardDrop {
  readonly name: string;
  readonly leastVolts: Volts;
  readonly mostVolts: Volts;
  readonly source: Source;
}

const COURSE = published("electricity-and-semiconductors-course, module 02");

/** Forward drops (electricity-and-semiconductors-course, module 02; germanium from two web pages; rectifier from memory). */
export const FORWARD_DROPS: readonly ForwardDrop[] = [
  { name: "silicon", leastVolts: 0.6, mostVolts: 0.7, source: COURSE },
  { name: "schottky", leastVolts: 0.2, mostVolts: 0.4, source: COURSE },
  { name: "led", leastVolts: 1.8, mostVolts: 3.3, source: COURSE },
  {
    name: "germanium",
    leastVolts: 0.2,
    mostVolts: 0.3,
    source: published("curioustab.com and electronicarmory.com, diode types"),
  },
  { name: "rectifier at rated current", leastVolts: 0.9, mostVolts: 1.1, source: MEMORY },
];

/** An LED tell-tale on 12 V: its amps and the resistor before it (common practice, no source). */
export const LED_TELL_TALE = {
  leastAmps: 0.01 as Amps,
  mostAmps: 0.02 as Amps,
  leastOhms: 470 as Ohms,
  mostOhms: 1000 as Ohms,
  source: PRACTICE,
};
