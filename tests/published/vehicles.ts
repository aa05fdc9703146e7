import type { Circuit } from "../../core/circuit/circuit.ts";
import { build, table } from "./build.ts";

/** TM 9-2320-273-20, paragraph 2-47: backup lamps that a blackout relay locks out. */
export const BACKUP_LAMPS = build(
  "Backup lamps with blackout lock-out",
  12,
  {
    G1: ["battery"],
    GP1: ["ground"],
    S1: table({ off: "", run: "1-2" }),
    F2: ["breaker", { amps: 20 }],
    F5: ["breaker", { amps: 20 }],
    S2: table({ normal: "1-3", blackout: "1-2" }),
    S3: table({ "not reverse": "", reverse: "1-2" }),
    K7: ["relay", { form: "break" }],
    E1: ["lamp"],
    E2: ["lamp"],
  },
  [
    "G1.- GP1.stud",
    "G1.+ S1.1",
    "S1.2 F5.1",
    "F5.2 S3.1",
    "S3.2 K7.30",
    "K7.87a E1.1",
    "K7.87a E2.1",
    "E1.2 GP1.stud",
    "E2.2 GP1.stud",
    "G1.+ F2.1",
    "F2.2 S2.1",
    "S2.2 K7.86",
    "K7.85 GP1.stud",
  ],
);

/** The same manual, between paragraphs 2-46 and 2-47: 12 V turn signals whose relays pass 24 V to the trailer. */
export const TRAILER_SIGNALS = build(
  "Turn signals with 24 V trailer relays",
  12,
  {
    G1: ["battery"],
    G2: ["battery"],
    GP1: ["ground"],
    F2: ["breaker", { amps: 20 }],
    F7: ["breaker", { amps: 20 }],
    S1: table({ normal: "1-2", blackout: "1-3" }),
    K1: ["flasher"],
    S2: table({ off: "", left: "1-2", right: "1-3" }),
    S3: table({ off: "", hazard: "1-2 1-3" }),
    E1: ["lamp"],
    E2: ["lamp"],
    E3: ["lamp"],
    E4: ["lamp"],
    K2: ["relay"],
    K3: ["relay"],
    E5: ["lamp", { volts: 24 }],
    E6: ["lamp", { volts: 24 }],
  },
  [
    "G1.- GP1.stud",
    "G1.+ G2.-",
    "G1.+ F2.1",
    "F2.2 S1.1",
    "S1.2 K1.49",
    "K1.49a S2.1 S3.1",
    "S2.2 S3.2 E1.1 E2.1 K2.86",
    "S2.3 S3.3 E3.1 E4.1 K3.86",
    "G2.+ F7.1",
    "F7.2 K2.30 K3.30",
    "K2.87 E5.1",
    "K3.87 E6.1",
    "GP1.stud E1.2 E2.2 E3.2 E4.2 E5.2 E6.2 K2.85 K3.85",
  ],
);

/** The same manual, paragraph 5-8: a 12 V truck that starts on 24 V. */
export const STARTING = build(
  "Starting system, 24 V start on a 12 V truck",
  12,
  {
    G1: ["battery"],
    G2: ["battery"],
    GP1: ["ground"],
    S1: table({ off: "", run: "1-2" }),
    S2: table({ released: "", "!pressed": "1-2" }),
    S3: table({ "in gear": "", neutral: "1-2" }),
    Y1: ["solenoid"],
    K1: ["relay"],
    K2: ["relay", { coilOhms: 10, pullInVolts: 16, dropOutVolts: 5, contactOhms: 0.0005 }],
    M1: ["motor", { volts: 24, amps: 150, stall: 600 }],
  },
  [
    "G1.- GP1.stud",
    "G1.+ G2.-",
    "G1.+ S1.1",
    "S1.2 Y1.1",
    "Y1.2 GP1.stud",
    "S1.2 S2.1",
    "S2.2 S3.1",
    "S3.2 K1.86",
    "K1.85 GP1.stud",
    "G2.+ K1.30",
    "K1.87 K2.86",
    "K2.85 GP1.stud",
    "G2.+ K2.30",
    "K2.87 M1.1",
    "M1.2 GP1.stud",
  ],
);

/** TM 9-8000, paragraph 17-11: a horn relay fed by the ignition, its coil grounded by the button. */
export const HORN = build(
  "Horn with relay",
  12,
  {
    G1: ["battery"],
    GP1: ["ground"],
    S1: table({ off: "", on: "1-2" }),
    K1: ["relay"],
    H1: ["horn"],
    S2: table({ released: "", "!pressed": "1-2" }),
  },
  [
    "G1.- GP1.stud",
    "G1.+ S1.1",
    "S1.2 K1.86",
    "S1.2 K1.30",
    "K1.87 H1.1",
    "H1.2 GP1.stud",
    "K1.85 S2.1",
    "S2.2 GP1.stud",
  ],
);

/** TM 9-8000, paragraph 16-13: turn signals that share the stop filament. */
export const SHARED_FILAMENT = build(
  "Turn signals sharing the stop filament",
  12,
  {
    G1: ["battery"],
    GP1: ["ground"],
    K1: ["flasher"],
    S1: table({ released: "", pressed: "1-2" }),
    S2: table({ off: "stop-LR stop-RR", left: "flash-LR flash-LF stop-RR", right: "flash-RR flash-RF stop-LR" }, [
      "stop",
      "flash",
      "LR",
      "RR",
      "LF",
      "RF",
    ]),
    E1: ["lamp"],
    E2: ["lamp"],
    E3: ["lamp"],
    E4: ["lamp"],
  },
  [
    "G1.- GP1.stud",
    "G1.+ K1.49",
    "K1.49a S2.flash",
    "G1.+ S1.1",
    "S1.2 S2.stop",
    "S2.LR E1.1",
    "S2.RR E2.1",
    "S2.LF E3.1",
    "S2.RF E4.1",
    "GP1.stud E1.2 E2.2 E3.2 E4.2",
  ],
);

/** TM 9-8000, paragraphs 16-7 and 16-8: the military main light switch. Its pin letters were not found; these are ours. */
export const MAIN_LIGHT_SWITCH = build(
  "Military main light switch",
  24,
  {
    G1: ["battery"],
    GP1: ["ground"],
    S1: [
      "switch",
      undefined,
      {
        terminals: ["feed", "brake", "head", "stop", "marker", "drive", "any", "service", "panel", "park"],
        controls: [
          {
            name: "main",
            positions: [
              { name: "off", joins: [] },
              {
                name: "blackout marker",
                joins: [
                  ["feed", "marker"],
                  ["feed", "any"],
                ],
              },
              {
                name: "blackout drive",
                joins: [
                  ["feed", "marker"],
                  ["feed", "drive"],
                  ["feed", "any"],
                ],
              },
              {
                name: "stop light",
                joins: [
                  ["brake", "stop"],
                  ["feed", "any"],
                ],
              },
              {
                name: "service drive",
                joins: [
                  ["brake", "stop"],
                  ["feed", "head"],
                  ["feed", "any"],
                  ["feed", "service"],
                ],
              },
            ],
          },
          {
            name: "auxiliary",
            positions: [
              { name: "off", joins: [] },
              { name: "panel", joins: [["any", "panel"]] },
              { name: "parking", joins: [["service", "park"]] },
            ],
          },
        ],
      },
    ],
    S2: table({ released: "", pressed: "1-2" }),
    E1: ["lamp", { watts: 55 }],
    E2: ["lamp"],
    E3: ["lamp", { watts: 5 }],
    E4: ["lamp"],
    E5: ["lamp", { watts: 2 }],
    E6: ["lamp", { watts: 5 }],
  },
  [
    "G1.- GP1.stud",
    "G1.+ S1.feed",
    "G1.+ S2.1",
    "S2.2 S1.brake",
    "S1.head E1.1",
    "S1.stop E2.1",
    "S1.marker E3.1",
    "S1.drive E4.1",
    "S1.panel E5.1",
    "S1.park E6.1",
    "GP1.stud E1.2 E2.2 E3.2 E4.2 E5.2 E6.2",
  ],
);

/** TM 10-3930-671-24: a charge lamp between key and alternator terminal 1; terminal 2 senses the battery. */
export const CHARGE_LAMP: Circuit = {
  ...build(
    "Charge indicator lamp",
    12,
    {
      G1: ["battery"],
      GP1: ["ground"],
      S1: table({ off: "", on: "1-2" }),
      F1: ["fuse", { amps: 10 }],
      E1: ["lamp", { watts: 2 }],
      R1: ["heater", { watts: 12 }],
      X1: ["connector", { ways: 2 }],
      G2: ["alternator"],
      R2: ["heater", { watts: 60 }],
    },
    [
      "G1.- GP1.stud",
      "G2.B- GP1.stud",
      "G1.+ G2.B+",
      "G1.+ S1.1",
      "S1.2 F1.1",
      "F1.2 E1.1",
      "F1.2 R1.1",
      "R1.2 GP1.stud",
      "E1.2 X1-1a",
      "X1-1b G2.D+",
      "G1.+ X1-2a",
      "G1.+ R2.1",
      "R2.2 GP1.stud",
    ],
  ),
  connectors: [{ id: "X1", rows: [["1", "2"]] }],
};

/** TM 5-2420-222-20-1, item 28: a reversing alarm; brown wire to switch terminal 3, black from 4 to alarm terminal 2. */
export const REVERSING_ALARM = build(
  "Reversing alarm",
  12,
  {
    G1: ["battery"],
    GP1: ["ground"],
    S1: table({ forward: "", reverse: "3-4" }, ["3", "4"]),
    H1: ["horn", { amps: 0.5 }],
  },
  ["G1.- GP1.stud", "G1.+ S1.3", "S1.4 H1.2", "H1.1 GP1.stud"],
);

/** Every circuit of this file. */
export const VEHICLES: readonly Circuit[] = [
  BACKUP_LAMPS,
  TRAILER_SIGNALS,
  STARTING,
  HORN,
  SHARED_FILAMENT,
  MAIN_LIGHT_SWITCH,
  CHARGE_LAMP,
  REVERSING_ALARM,
];
