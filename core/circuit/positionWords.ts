/** A position so short is lettered on a switch in capitals; a longer word in capitals reads as shouting. */
const LETTERED = /^\p{L}{1,5}$/u;

/** A position of a control in its own words: "speed 1". */
export function ownPosition(position: string): string {
  return position.replaceAll("-", " ");
}

/** The same as a printed sheet has it, short words as they are lettered on the switch: "OPEN", but "rest" and "speed 1". */
export function printedPosition(position: string): string {
  const isLettered = LETTERED.test(position) && position.toLowerCase() !== "rest";
  return isLettered ? position.toUpperCase() : ownPosition(position);
}
