import { pointWords, wireWords } from "../words/live.ts";
import { partStands, partTitle } from "../words/part.ts";
import type { Shown } from "./shown.ts";

type Chosen = Pick<Shown, "circuit" | "live" | "selection" | "hover" | "tool">;

/**
 * What is chosen and how it stands, for whoever walks the circuit by keys without seeing it; while a wire is drawn, the
 * terminal that it would be taken to. Empty where nothing is.
 */
export function chosenWords({ circuit, live, selection, hover, tool }: Chosen): string {
  const thing = tool.is === "wire" ? hover : selection;
  if (!thing) return "";
  const { id } = thing;
  switch (thing.is) {
    case "point":
      return `${id}, ${pointWords(live.points.get(id))}`;
    case "wire":
      return `${id}, ${wireWords(live.wires.get(id))}`;
    case "part": {
      const part = circuit.parts.find((each) => each.id === id);
      if (!part) return id;
      return [id, partTitle(circuit, part), partStands(circuit, live, part)].filter((word) => word !== "").join(", ");
    }
  }
}
