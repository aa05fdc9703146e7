/** Words of the take-home page that its host writes too. */
export const TAKE_HOME_WORDS = {
  deference: "The vehicle maker’s procedure, local codes and licensed practice come first.",
  solved:
    "This page works the circuit out as drawn, with nothing wrong in it. It does not touch a vehicle and does not replace measuring.",
  made: "Made with Wirefathom. Nothing is loaded and nothing is sent: the page is all in this one file.",
  noScript: "This page shows a circuit that can be switched. Allow scripts for this file to see it.",
} as const;
