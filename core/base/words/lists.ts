/** Heads of lists that are handed on as files. */
export const LIST_WORDS = {
  wires: ["Wire", "From", "To", "Colour", "mm2", "Metres", "Ohms", "Page"],
  positions: [
    "Connector",
    "Pin",
    "Point",
    "Colour",
    "Leads to",
    "Plug",
    "Position",
    "With",
    "State",
    "Volts",
    "Lamp to -",
    "Lamp to +",
  ],
  on: "on",
  off: "off",
  /** After the position it reads the same as. */
  same: (position: string, others: readonly string[]) => [position, ...others].join(" = "),
  nets: (title: string) => `Nets of ${title}: points that wires, splices, page links and plugs join, every plug home.`,
  alone: "Joined to nothing:",
} as const;
