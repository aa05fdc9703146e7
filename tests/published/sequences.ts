import type { Circuit } from "../../core/circuit/circuit.ts";
import { build, table } from "./build.ts";

/**
 * Army subcourse OD1662, lesson 1, task 2, steps 11 to 17: an 8 x 8 truck on 24 V that does not crank. ENGINE switch and
 * neutral switch to the coil of the starter relay; its contacts through wire 45, here W7, to the solenoid of the starter.
 * The minutes are ours: the text names a cover and a side panel that come off for step 17.
 */
export const NO_CRANK: Circuit = {
  ...build(
    "Truck that does not crank",
    24,
    {
      G1: ["battery"],
      GP1: ["ground"],
      S1: table({ off: "", "!start": "1-2" }),
      S2: table({ neutral: "1-2", "in gear": "" }),
      K1: ["relay"],
      K2: ["relay", { coilOhms: 10, pullInVolts: 16, dropOutVolts: 5, contactOhms: 0.0005 }],
      M1: ["motor", { volts: 24, amps: 150, stall: 600 }],
    },
    [
      "G1.- GP1.stud",
      "G1.+ S1.1",
      "S1.2 S2.1",
      "S2.2 K1.86",
      "K1.85 GP1.stud",
      "G1.+ K1.30",
      "K1.87 K2.86",
      "K2.85 GP1.stud",
      "G1.+ K2.30",
      "K2.87 M1.1",
      "M1.2 GP1.stud",
    ],
  ),
  access: [{ id: "engine", label: "Engine cover and side panel off", minutes: 7 }],
  reach: { K1: { minutes: 2 }, K2: { access: "engine", minutes: 1 }, M1: { access: "engine", minutes: 1 } },
  checks: [{ id: "cranks", label: "Starter cranks", condition: { set: { S1: "start" } }, load: "M1", expect: "on" }],
};

/** TM 5-3820-256-24-5, section 6-II-A: an engine that cranks, but whose fuel shut-off does not move. */
export const SHUT_OFF: Circuit = {
  ...build(
    "Fuel shut-off",
    12,
    {
      G1: ["battery"],
      GP1: ["ground"],
      S1: table({ off: "", ignition: "1-2" }),
      K1: ["relay"],
      F1: ["fuse", { amps: 15 }],
      Y1: ["solenoid"],
    },
    [
      "G1.- GP1.stud",
      "G1.+ S1.1",
      "S1.2 K1.86",
      "K1.85 GP1.stud",
      "G1.+ K1.30",
      "K1.87 F1.1",
      "F1.2 Y1.1",
      "Y1.2 GP1.stud",
    ],
  ),
  checks: [{ id: "moves", label: "Shut-off moves", condition: { set: { S1: "ignition" } }, load: "Y1", expect: "on" }],
};

/**
 * TM 5-4210-230-14&P-1, instruments, water temperature gauge: battery, key, gauge and its wire W4 to the sender, in whose
 * place a resistor of these ohms is put. The ohms of the gauge are ours: the manual has none.
 */
export function gauge(senderOhms: number): Circuit {
  return build(
    "Gauge with a resistor for its sender",
    12,
    {
      G1: ["battery"],
      GP1: ["ground"],
      S1: table({ off: "", on: "1-2" }),
      P1: ["resistor", { ohms: 60 }],
      R1: ["resistor", { ohms: senderOhms }],
    },
    ["G1.- GP1.stud", "G1.+ S1.1", "S1.2 P1.1", "P1.2 R1.1", "R1.2 GP1.stud"],
  );
}

/** A lamp at the end of eight wires in a row, all of one place: what a wire voltage drop test goes along. */
export const ROW_OF_PLUGS: Circuit = {
  ...build(
    "Lamp behind seven plugs",
    12,
    {
      G1: ["battery"],
      GP1: ["ground"],
      ...Object.fromEntries([1, 2, 3, 4, 5, 6, 7].map((number) => [`X${number}`, ["connector", { ways: 1 }] as const])),
      E1: ["lamp"],
    },
    [
      "G1.- GP1.stud",
      "G1.+ X1-1a",
      ...[1, 2, 3, 4, 5, 6].map((number) => `X${number}-1b X${number + 1}-1a`),
      "X7-1b E1.1",
      "E1.2 GP1.stud",
    ],
  ),
  connectors: [1, 2, 3, 4, 5, 6, 7].map((number) => ({ id: `X${number}`, rows: [["1"]] })),
  checks: [{ id: "lights", label: "Lamp lights", condition: {}, load: "E1", expect: "on" }],
};

/** TM 9-2320-280-20-1, wire 58D: a lamp with a ground wire of its own and a second way to ground. */
export const TWO_GROUNDS: Circuit = {
  ...build(
    "Lamp with two grounds",
    12,
    { G1: ["battery"], GP1: ["ground"], GP2: ["ground"], S1: table({ off: "", on: "1-2" }), E1: ["lamp"] },
    ["G1.- GP1.stud", "G1.+ S1.1", "S1.2 E1.1", "E1.2 GP1.stud", "E1.2 GP2.stud"],
  ),
  checks: [{ id: "lights", label: "Lamp lights", condition: { set: { S1: "on" } }, load: "E1", expect: "on" }],
};
