/** Days that a deleted circuit can be brought back. */
export const BIN_DAYS = 30;

/** What a circuit file may hold at most. Far above any vehicle; they keep a damaged file from filling the memory. */
export const LIMITS = {
  bytes: 20_000_000,
  depth: 24,
  pages: 500,
  parts: 20_000,
  wires: 60_000,
  connectors: 20_000,
  terminals: 400,
  positions: 60,
  joins: 400,
  controls: 60,
  rules: 400,
  rows: 60,
  columns: 120,
  bends: 400,
  access: 2_000,
  checks: 5_000,
  readings: 2_000,
  /** Moves on the route of an exercise. */
  moves: 5_000,
  branchDepth: 12,
  scenes: 2_000,
  cautions: 40,
  idLength: 40,
  labelLength: 160,
  textLength: 1_000,
  grid: 10_000,
  /** Printed pages under one page. */
  underlays: 40,
  /** Longer side of a picture, in pixels. */
  pictureSide: 12_000,
  /** Pixels of a picture: A3 at 300 dots an inch is 17.4 million. */
  picturePixels: 24_000_000,
  /** Bytes of a picture's file. */
  pictureBytes: 24_000_000,
  /** Bytes of a circuit that is packed with its pictures, and of all that is in it. */
  packBytes: 64_000_000,
  /** How far off its page, in millimetres, a corner of a printed page may lie. */
  cornerMm: 20_000,
} as const;
