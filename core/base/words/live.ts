/** Sentences for conditions, faults and points that a person types. */
export const LIVE_WORDS: Readonly<Record<string, string>> = {
  "condition-spelling":
    "{word} is no condition; write it like S1=on,apart:X5,out:F3,battery:off,engine:running,ambient:80.",
  "condition-control": "There is no control {control}; this circuit has {controls}.",
  "condition-position": "{control} has no position {position}; it has {positions}.",
  "condition-connector": "There is no connector {connector} to pull apart; this circuit has {connectors}.",
  "condition-part": "There is no part {part} to take out.",
  "condition-drive": "{point} is no pin of a control module that could be driven.",
  "branch-load": "There is no part {part} whose current could be followed; this circuit has {loads}.",
  "branch-no-current":
    "{part} carries no current in any function check or scene; add a check that says when it should work.",
  "condition-ambient": "Ambient {ambient} degC is outside what the tables cover, {least} to {most}.",
  "fault-spelling": "{text} is no fault; write TARGET:MODE or TARGET:MODE=VALUE, such as W13:open or X5-6:corroded=20.",
  "fault-target": "There is no part, wire or pin {target} to put a fault on.",
  "fault-mode": "{target} has no fault {mode}; it has {modes}.",
  "fault-pattern":
    "{fault} stays as it is: only what opens a wire, a pin, a ground, a splice or a contact, or adds ohms to it, comes and goes.",
  "fault-crossed": "{target}:crossed takes another wire of this circuit after =, not {other}.",
  "fault-no-value": "{target}:{mode} takes no value.",
  "fault-value": "{target}:{mode} takes {min} to {max} {unit}, not {typed}.",
};
