import { WIRE_STATES, type WireState } from "../../core/base/states.ts";
import { chassisMarks, chevronMarks, glyphMarks } from "../../core/drawing/glyph.ts";
import type { Anchor, Drawing, Mark, Role, Weight } from "../../core/drawing/mark.ts";
import { wrapText } from "../../core/drawing/measure.ts";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { COLOUR_NAMES, type ColourName, colourNamed } from "../../core/trade/colourNames.ts";

/** A sheet that shows every role, glyph, hatch and size of type once. Written in millimetres, as the sheets are. */
export function specimen(): Drawing {
  return {
    title: "Specimen: states, swatches & <type>",
    width: gridUnitsOf(186),
    height: gridUnitsOf(254),
    marks: [...frame(), ...states(), ...symbols(), ...swatches(), ...weights(), ...type()],
  };
}

function words(
  text: string,
  x: number,
  y: number,
  points: number,
  weight: Weight = 400,
  options: { readonly anchor?: Anchor; readonly role?: Role; readonly turn?: number } = {},
): Mark {
  const { anchor = "start", role = "text", turn } = options;
  const at = { x: gridUnitsOf(x), y: gridUnitsOf(y) };
  return { mark: "text", at, text, points, weight, anchor, role, ...(turn !== undefined && { turn }) };
}

function line(role: Role, ...xy: readonly number[]): Mark {
  const spots = [];
  for (let i = 0; i < xy.length; i += 2) spots.push({ x: gridUnitsOf(xy[i]!), y: gridUnitsOf(xy[i + 1]!) });
  return { mark: "line", spots, role };
}

function box(role: Role, x: number, y: number, width: number, height: number, filled = false, corner = 0): Mark {
  const at = { x: gridUnitsOf(x), y: gridUnitsOf(y) };
  const size = { width: gridUnitsOf(width), height: gridUnitsOf(height), corner: gridUnitsOf(corner) };
  return { mark: "box", at, ...size, role, filled };
}

function circle(role: Role, x: number, y: number, radius: number, filled = false): Mark {
  return { mark: "circle", at: { x: gridUnitsOf(x), y: gridUnitsOf(y) }, radius: gridUnitsOf(radius), role, filled };
}

function frame(): readonly Mark[] {
  return [
    box("frame", 0.2, 0.2, 185.6, 253.6),
    box("frame-heavy", 3, 3, 180, 248),
    words("Specimen of marks", 7, 13, 17, 700),
    words("Every state, sign, hatch, weight and size of type", 7, 18.5, 10.5),
    line("rule", 7, 21.5, 179, 21.5),
  ];
}

const NAMES: Readonly<Record<WireState, string>> = {
  powered: "powered",
  "powered-through-load": "powered through a load",
  grounded: "grounded",
  "grounded-through-load": "grounded through a load",
  between: "between",
  floating: "floating",
  clash: "clash",
  undecided: "undecided",
};

const VOLTS = ["12.49 V", "12.6 V", "0.06 V", "0.0 V", "5.81 V", "drifts", "fuse F4 melts", "0.0 – 12.6 V"];

/** Each state as a wire round two corners, its glyph, its word; the bar of a feed that is always there. */
function states(): readonly Mark[] {
  return WIRE_STATES.flatMap((state, i) => {
    const y = 30 + i * 10;
    const spot = { x: gridUnitsOf(63), y: gridUnitsOf(y) };
    const role: Role = `wire-${state}`;
    const wire = line(role, 8, y, 36, y, 36, y + 4.5, 58, y + 4.5);
    const chevron = ["powered", "grounded", "between"].includes(state)
      ? chevronMarks({ x: gridUnitsOf(22), y: gridUnitsOf(y) }, 0, state, `W${i + 1}`)
      : [];
    const glyph = glyphMarks(state, spot, { of: `W${i + 1}`, alwaysFed: state === "powered" });
    const texts = [words(VOLTS[i]!, 67, y + 1.3, 10.5, 700), words(NAMES[state], 93, y + 1.3, 10)];
    return [{ ...wire, of: `W${i + 1}` }, ...chevron, ...glyph, ...texts];
  });
}

/** Contacts, bodies, joints, crossings and the ground sign. */
function symbols(): readonly Mark[] {
  const x = 140;
  return [
    words("Contact now and at rest", x, 29, 9.2, 600),
    line("wire-grounded", x + 4, 33, x + 4, 38),
    line("wire-powered", x + 14, 33, x + 14, 38),
    line("contact-rest", x + 4, 38, x + 9, 50),
    line("contact-now", x + 14, 38, x + 9, 50),
    line("link", x + 11.6, 44, x + 24, 44),
    line("wire-powered", x + 9, 50, x + 9, 56),
    circle("terminal", x + 4, 38, 0.75),
    circle("terminal", x + 14, 38, 0.75),
    circle("terminal", x + 9, 50, 0.75),
    words("4", x + 1, 39.2, 8),
    words("6", x + 11, 51, 8, 400, { role: "text-quiet" }),
    words("Join, crossing, body", x, 65, 9.2, 600),
    box("body", x + 1, 68, 14, 10, true, 1),
    line("wire-powered", x, 73, x + 36, 73),
    line("wire-powered", x + 22, 73, x + 22, 82),
    circle("wire-powered", x + 22, 73, 1.1, true),
    line("wire-grounded", x + 30, 68, x + 30, 84),
    box("symbol", x + 5, 71.2, 6, 3.6),
    line("wire-grounded", x + 4, 84, x + 4, 93),
    ...chevronMarks({ x: gridUnitsOf(x + 4), y: gridUnitsOf(88) }, 90, "grounded"),
    ...chassisMarks({ x: gridUnitsOf(x + 4), y: gridUnitsOf(93) }),
    circle("symbol", x + 16, 90, 3.6),
    words("M", x + 16, 91.4, 11.5, 700, { anchor: "middle" }),
    {
      mark: "arc",
      at: { x: gridUnitsOf(x + 28), y: gridUnitsOf(92) },
      radius: gridUnitsOf(3),
      from: 180,
      to: 0,
      role: "symbol",
    },
    box("symbol", x + 27, 91, 2, 4, true),
    ...chevronMarks({ x: gridUnitsOf(x + 36), y: gridUnitsOf(90) }, -90),
  ];
}

/** Every colour by itself, then pairs whose base and stripe must not be mixed up, then two stripes. */
function swatches(): readonly Mark[] {
  const single = COLOUR_NAMES.map((colour) => [colour]);
  const pairs = [
    ["black", "yellow"],
    ["yellow", "black"],
    ["orange", "black"],
    ["brown", "white"],
    ["white", "green"],
    ["grey", "red"],
    ["red", "white", "black"],
    ["blue", "white", "red"],
    ["blue", "red"],
  ] as const;
  const all: readonly (readonly ColourName[])[] = [...single, ...pairs.map((pair) => pair.map(colourNamed))];
  return all.flatMap((colours, i) => {
    const x = 7 + (i % 5) * 34.8;
    const y = 116 + Math.floor(i / 5) * 7.6;
    const [base, ...stripes] = colours;
    const at = { x: gridUnitsOf(x), y: gridUnitsOf(y) };
    const size = { width: gridUnitsOf(9), height: gridUnitsOf(3.4) };
    return [
      { mark: "swatch" as const, at, ...size, base: base!, stripes },
      words(colours.map((colour) => colour.name).join(" / "), x + 10.4, y + 2.7, 8.4, 600),
    ];
  });
}

const RULES: readonly Role[] = [
  "caution",
  "frame-heavy",
  "table",
  "field",
  "place",
  "rule",
  "rule-fine",
  "rule-dotted",
];

/** Line weights of the sheets, a field to write in, the two leads, and the bar of a caution. */
function weights(): readonly Mark[] {
  const rules = RULES.flatMap((role, i) => {
    const y = 170 + i * 4.6;
    return [line(role, 8, y, 48, y), words(role, 51, y + 1, 7.5)];
  });
  return [
    ...rules,
    box("caution", 78, 168, 100, 24),
    box("solid", 78, 168, 10, 24, true),
    words("Caution", 84.6, 187, 13, 700, { role: "paper", turn: -90 }),
    words("– Unplug 230 V first; mains wiring: licensed people only.", 91, 174, 9.2),
    words("– Hands and tools out of the vent frame: it may move.", 91, 179, 9.2),
    words("– Maker’s procedure, local codes, licensed practice first.", 91, 184, 9.2),
    box("field", 78, 196, 27, 11),
    words("V", 104, 206, 9, 400, { anchor: "end" }),
    box("rule", 110, 199, 5, 5),
    words("1", 112.5, 202.6, 8.5, 400, { anchor: "middle" }),
    box("rule-dotted", 115.5, 199, 5, 5),
    words("3", 118, 202.4, 7, 400, { anchor: "middle" }),
    box("solid", 121, 199, 5, 5, true),
    words("4", 123.5, 202.6, 8.5, 700, { anchor: "middle", role: "paper" }),
    box("caution", 127.35, 199.45, 4.1, 4.1),
    words("6", 129.4, 202.6, 8.5, 700, { anchor: "middle" }),
    words("black", 136, 202.6, 8),
    words("battery −", 144, 202.6, 11.5, 700),
  ];
}

const LONG =
  "Sag on both pins alike: current flows, so leave the trim shut and repeat with the lamp on X5-4, black on battery −. " +
  "Expect 12.0 – 12.3 V at 3.0 A, or 0.2 – 0.5 V on the way back through W17 (2.5 mm²).";

function type(): readonly Mark[] {
  const lines = wrapText(LONG, 9.2, 400, gridUnitsOf(80));
  return [
    words("22  X5-4", 8, 222, 22, 700),
    words("17  12.0 – 12.3 V", 46, 222, 17, 700),
    words("13.5  0.2–0.5 V", 8, 231, 13.5, 700),
    words("10.5  OG/BK  Il1 O0", 46, 231, 10.5, 600),
    words("0123456789 ± − – → Ω µ ² ° · ≤ ÄÖÜ ß é ž", 8, 238, 9),
    words("end here", 88, 244, 7.5, 400, { anchor: "end" }),
    words("7.5: smallest type on a sheet", 8, 244, 7.5),
    ...lines.map((text, i) => words(text, 98, 217 + i * 4.3, 9.2)),
    box("rule-fine", 97, 213, 82, lines.length * 4.3 + 1),
  ];
}
