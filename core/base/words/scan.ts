/** What a scan tool says of a module, and how a row asks for it. */
export const SCAN_WORDS = {
  noAnswer: "no answer",
  between: "between",
  input: (pin: string, level: string) => `${pin} ${level}`,
  output: (pin: string, isAsked: boolean) => `${pin} ${isAsked ? "asked for" : "not asked for"}`,
  ask: (module: string) => `Ask the scan tool what ${module} sees at each input and which output it asks for`,
  closed: (module: string) => `ask the scan tool about ${module}`,
  means:
    "An input that differs from what its pin measures: the module or its pin. An output asked for and no volts there: the output. No answer: feed or ground of the module, or its data wires.",
  bySocket: "by scan tool",
} as const;
