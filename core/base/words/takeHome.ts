/** Words of the take-home page that its host writes too. */
export const TAKE_HOME_WORDS = {
  deference: "The vehicle maker’s procedure, local codes and licensed practice come first.",
  solved:
    "This page works the circuit out as drawn, with nothing wrong in it. It does not touch a vehicle and does not replace measuring.",
  made: "Made with Wirefathom. Nothing is loaded and nothing is sent: the page is all in this one file.",
  notOpened:
    "This exercise cannot be opened here. Open the file in a browser on a computer or a phone, not in a preview of a mail or a message.",
  noExercise: "This page is an exercise with a hidden fault. Allow scripts for this file to work on it.",
  noScript: "This page shows a circuit that can be switched. Allow scripts for this file to see it.",
} as const;
