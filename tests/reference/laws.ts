import type { Element } from "../../core/solve/element.ts";

/** Amps from a to b through an element at these volts from a to b, written anew from core/solve/element.ts. */
export function ampsThrough(element: Exclude<Element, { law: "joint" }>, volts: number): number {
  switch (element.law) {
    case "resistor":
      return volts / element.ohms;
    case "source":
      return (volts - element.volts) / element.ohms;
    case "lamp": {
      const u = volts / element.ratedVolts;
      return (element.ratedAmps * u) / (u * u + 10 ** (-1 / 0.225)) ** 0.225;
    }
    case "motor": {
      const size = Math.abs(volts);
      const stalled = size / element.ohms;
      if (stalled <= element.frictionAmps) return Math.sign(volts) * stalled;
      const over = size - element.frictionAmps * element.ohms;
      return Math.sign(volts) * (element.frictionAmps + over / (element.ohms + element.speedOhms));
    }
    case "diode":
      return element.saturationAmps * (Math.exp(volts / element.emissionVolts) - 1);
    case "regulated":
      return -Math.min(element.maxAmps, Math.max(0, (element.volts - volts) / element.ohms));
  }
}
