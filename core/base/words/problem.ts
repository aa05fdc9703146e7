/** Sentences about problems and loose ends in a drawing. */
export const PROBLEM_WORDS = {
  "no-battery": "There is no battery: nothing in the drawing can be fed.",
  "references-many": "Only one battery can be the reference for volts; {parts} are marked.",
  "reference-not-said":
    "There are several batteries and none is marked as reference; volts are measured to the minus of {part}.",
  "battery-shorted": "{part} is shorted: wires join its two posts.",
  "batteries-in-a-ring": "{part} and {other} are joined in a ring, plus to minus twice, with nothing between.",
  "batteries-facing":
    "{part} and {other} face each other: plus is joined to plus, and their minus posts are not joined.",
  "no-supply": "{part} has no supply: no battery can reach it.",
  "no-return": "{part} is fed and has no return: the loop does not close.",
  "load-bridged": "Both ends of {part} are joined by wires; it can do nothing.",
  "switch-without-positions": "{part} has no positions yet; draw its continuity table.",
  "part-not-placed": "{part} stands on no page.",
  "part-over-part": "{part} stands on {other} on page {page}: move one of them aside.",
  "link-alone": 'Page link {part} is the only one named "{name}".',
  "check-without-work": '"{check}" watches {load}, which does no work.',
  "over-60-volts": "{volts} V is more than 60 V DC: out of scope, work for licensed people.",
  "orange-cable": "{wire} is a thick orange cable: over 60 V on a vehicle, out of scope, work for licensed people.",
  "wire-to-nowhere": "{wire} ends at {end}, where nothing is.",
  "wire-to-itself": "Both ends of {wire} are at {end}.",
  "wire-without-colour": "{wire} has no colour.",
  "wire-without-size": "{wire} has neither a size nor ohms.",
  "wire-colour": "{wire}: {colour} is no colour of the code set {set}.",
  "wire-across-pages": "{wire} runs from page {from} to page {to}; put a page link on each.",
  "terminal-without-wire": "No wire goes to {point}.",
  "access-unused": "Nothing is reached through access group {access}.",
} as const;
