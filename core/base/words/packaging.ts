/** What the desktop of a system says of the program and of the kinds of file it opens. */
export const PACKAGE_NAMES = {
  generic: "Wiring diagram tracer",
  about:
    "Redraw a vehicle's wiring diagram, throw a switch, and see every wire powered, grounded or floating, and the order to probe it in.",
  /** Further paragraphs of the description of a Debian package. */
  more: [
    "For technicians who find electrical faults on cars and trucks, and for those who teach it. Everything stays on this computer.",
    "The vehicle maker's procedure, local codes and licensed practice come first.",
  ],
  keywords: ["wiring", "schematic", "vehicle", "electrician", "fault", "probe"],
  packed: "Wirefathom circuit with its pictures",
  circuit: "Wirefathom circuit",
  job: "Wirefathom job",
  exercise: "Wirefathom exercise",
  handin: "Wirefathom hand-in",
} as const;
