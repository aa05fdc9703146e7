import { z } from "zod";
import { type Circuit, EXPECTATIONS, MOST_QUESTIONS, PICTURE_TYPES, SCENE_LIMITS } from "../core/circuit/circuit.ts";
import { PHOTO_SIDE } from "../core/circuit/pictures.ts";
import { LIMITS } from "./limits.ts";

// ---------------------------------------------------------------- names

/** Names that every object has by birth; as an id they would find what nobody wrote. */
const isOrdinary = (name: string): boolean => !(name in Object.prototype);

const named = (pattern: RegExp) => z.string().min(1).max(LIMITS.idLength).regex(pattern).refine(isOrdinary);

/** Ids of parts and connectors begin with a letter, so that a condition keeps the order in which it was written. */
const partId = named(/^\p{L}[\p{L}\p{N}_/]*$/u);
/** Wires, pages, access groups and checks: letters, digits, and a dash or dot between. */
const id = named(/^[\p{L}\p{N}][\p{L}\p{N}_/.-]*$/u);
const wireId = named(/^[\p{L}\p{N}][\p{L}\p{N}_/]*$/u);
/** Terminals and cavities as parts are stamped: `30`, `B+`, `D+/61`, `-`. */
const terminal = named(/^[^\s.,:=@~]+$/u);
/** A part with several controls has a name for each; no dot, since `S2.middle` is its key. */
const controlName = named(/^\p{L}[\p{L}\p{N}_/-]*$/u);
/** Positions as printed on the switch. */
const positionName = named(/^[^\s,:=@](?:[^\n,:=@]*[^\s,:=@])?$/u);
const reference = z
  .string()
  .min(1)
  .max(2 * LIMITS.idLength + 1)
  .refine(isOrdinary);

const label = z.string().max(LIMITS.labelLength);
const words = z.string().max(LIMITS.textLength);
const cautions = z.array(label).max(LIMITS.cautions);
const gridUnits = z.int().min(-LIMITS.grid).max(LIMITS.grid);
const minutes = z.number().min(0).max(10_000);
const hands = z.union([z.literal(1), z.literal(2)]);

// ---------------------------------------------------------------- parts

const join = z.tuple([terminal, terminal]);
const joins = z.array(join).max(LIMITS.joins);
const position = z.strictObject({
  name: positionName,
  springsBackTo: positionName.exactOptional(),
  joins,
});
const positions = z.array(position).min(1).max(LIMITS.positions);
const control = z.strictObject({
  name: controlName,
  label: label.exactOptional(),
  positions,
});
const whenThen = z.strictObject({
  when: z.record(terminal, z.enum(["high", "low"])),
  joins,
});

const pixelSpot = z.number().min(0).max(LIMITS.pictureSide);
const printed = z.strictObject({ underlay: id, x: pixelSpot, y: pixelSpot });

const part = z.strictObject({
  id: partId,
  kind: z.string().min(1).max(LIMITS.idLength),
  label: label.exactOptional(),
  settings: z.record(reference, z.union([z.number(), label, z.boolean()])).exactOptional(),
  terminals: z.array(terminal).min(1).max(LIMITS.terminals).exactOptional(),
  positions: positions.exactOptional(),
  controls: z.array(control).min(1).max(LIMITS.controls).exactOptional(),
  pins: z
    .record(terminal, z.enum(["supply", "ground", "input", "drives-high", "drives-low", "unknown"]))
    .exactOptional(),
  table: z.array(whenThen).max(LIMITS.rules).exactOptional(),
  printed: printed.exactOptional(),
});

// ---------------------------------------------------------------- pages, wires, connectors, trim

const millimetres = z.number().min(-LIMITS.cornerMm).max(LIMITS.cornerMm);
const cutCorner = z.tuple([pixelSpot, pixelSpot]);
const pageCorner = z.tuple([millimetres, millimetres]);

const picture = (mostSide: number) =>
  z.strictObject({
    sha256: z.string().regex(/^[0-9a-f]{64}$/),
    mime: z.enum(PICTURE_TYPES),
    widthPx: z.int().min(1).max(mostSide),
    heightPx: z.int().min(1).max(mostSide),
  });

const underlay = z.strictObject({
  id,
  title: label,
  image: picture(LIMITS.pictureSide),
  cut: z.tuple([cutCorner, cutCorner, cutCorner, cutCorner]).exactOptional(),
  corners: z.tuple([pageCorner, pageCorner, pageCorner, pageCorner]),
  opacity: z.number().min(0).max(1).exactOptional(),
  contrast: z.number().min(0.5).max(4).exactOptional(),
  whiteOut: z.boolean().exactOptional(),
  isLocked: z.boolean().exactOptional(),
  isHidden: z.boolean().exactOptional(),
});

const page = z.strictObject({
  id,
  title: label,
  widthMm: z.number().min(50).max(5_000),
  heightMm: z.number().min(50).max(5_000),
  underlays: z.array(underlay).max(LIMITS.underlays).exactOptional(),
});

const seen = z.strictObject({
  colour: z.string().min(1).max(LIMITS.idLength).exactOptional(),
  from: terminal.exactOptional(),
  to: terminal.exactOptional(),
});

const wire = z.strictObject({
  id: wireId,
  from: reference,
  to: reference,
  colour: z.string().min(1).max(LIMITS.idLength).exactOptional(),
  mm2: z.number().min(0.01).max(500).exactOptional(),
  metres: z.number().min(0).max(1_000).exactOptional(),
  ohms: z.union([z.number().min(0).max(1e6), z.null()]).exactOptional(),
  printed: printed.exactOptional(),
  seen: seen.exactOptional(),
});

const connector = z.strictObject({
  id: partId,
  label: label.exactOptional(),
  rows: z
    .array(z.array(z.union([terminal, z.literal("")])).max(LIMITS.columns))
    .min(1)
    .max(LIMITS.rows),
  cavities: z.record(terminal, reference).exactOptional(),
});

const access = z.strictObject({
  id,
  label,
  minutes,
  hands: hands.exactOptional(),
  after: z.array(id).max(LIMITS.access).exactOptional(),
  cautions: cautions.exactOptional(),
  photo: picture(PHOTO_SIDE).exactOptional(),
});

const reach = z.strictObject({
  where: label.exactOptional(),
  access: id.exactOptional(),
  minutes: minutes.exactOptional(),
  hands: hands.exactOptional(),
  doNotProbe: label.exactOptional(),
  cautions: cautions.exactOptional(),
});

const place = z.strictObject({
  page: id,
  x: gridUnits,
  y: gridUnits,
  turn: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]).exactOptional(),
  flip: z.boolean().exactOptional(),
  pinned: z.literal(true).exactOptional(),
});

const placement = z.strictObject({
  parts: z.record(partId, place).default({}),
  wires: z.record(wireId, z.array(z.tuple([gridUnits, gridUnits])).max(LIMITS.bends)).default({}),
});

// ---------------------------------------------------------------- conditions, checks, scenes

/** A condition as a file writes it. */
export const condition = z.strictObject({
  set: z.record(reference, positionName).exactOptional(),
  apart: z.array(partId).max(LIMITS.connectors).exactOptional(),
  out: z.array(partId).max(LIMITS.parts).exactOptional(),
  batteryOff: z.boolean().exactOptional(),
  drive: z.record(reference, z.enum(["on", "off"])).exactOptional(),
  running: z.boolean().exactOptional(),
  ambientC: z.number().min(-60).max(150).exactOptional(),
});

const check = z.strictObject({
  id,
  label,
  condition,
  load: partId,
  expect: z.enum(EXPECTATIONS),
});

const post = z.enum(["battery +", "battery -"]);
const asked = z.discriminatedUnion("asks", [
  z.strictObject({ asks: z.literal("state"), point: reference }),
  z.strictObject({ asks: z.literal("volts"), point: reference, black: reference }),
  z.strictObject({
    asks: z.literal("lamp"),
    point: reference,
    lampTo: post,
    lamp: z.enum(["4 A lamp", "0.25 A lamp"]),
  }),
]);

const scene = z.strictObject({
  label,
  condition,
  caption: words.exactOptional(),
  notes: words.exactOptional(),
  focus: z.array(partId).min(1).max(LIMITS.parts).exactOptional(),
  seconds: z.number().min(SCENE_LIMITS.least).max(SCENE_LIMITS.most).exactOptional(),
  questions: z.array(asked).min(1).max(MOST_QUESTIONS).exactOptional(),
});

// ---------------------------------------------------------------- the file

/** The shape of a `*.circuit.json` of version 1. Lists that a short circuit leaves out are empty. */
export const circuitShape = z.strictObject({
  format: z.literal("wirefathom/circuit"),
  version: z.literal(1),
  title: label,
  vehicle: label.exactOptional(),
  revision: z.int().min(0).max(1_000_000).exactOptional(),
  nominalVolts: z.number().min(1).max(2_000),
  colourCodes: z.enum(["iec60757", "din72551", "german", "japanese", "north-american", "free"]),
  pages: z.array(page).max(LIMITS.pages),
  parts: z.array(part).max(LIMITS.parts),
  wires: z.array(wire).max(LIMITS.wires),
  placement: placement.default({ parts: {}, wires: {} }),
  connectors: z.array(connector).max(LIMITS.connectors).default([]),
  access: z.array(access).max(LIMITS.access).default([]),
  reach: z.record(reference, reach).default({}),
  checks: z.array(check).max(LIMITS.checks).default([]),
  scenes: z.array(scene).max(LIMITS.scenes).default([]),
  cautions: cautions.exactOptional(),
});

type Frozen<T> = T extends readonly (infer _)[] | object ? { readonly [K in keyof T]: Frozen<T[K]> } : T;
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;

/** Fails to compile where the schema and the core's type of a circuit part ways. */
export const shapeIsCircuit: Same<Frozen<z.infer<typeof circuitShape>>, Frozen<Circuit>> = true;
