import { pointWords, wireWords } from "../words/live.ts";
import { partStands, partTitle } from "../words/part.ts";
import type { Shown } from "./shown.ts";
import { standingOnOthers, standsOnWords } from "./standsOn.ts";

type Chosen = Pick<Shown, "circuit" | "page" | "live" | "selection" | "hover" | "tool">;

/**
 * What is chosen and how it stands, for whoever walks the circuit by keys without seeing it; while a wire is drawn, the
 * terminal that it would be taken to. Empty where nothing is.
 */
export function chosenWords({ circuit, page, live, selection, hover, tool }: Chosen): string {
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
      const others = standingOnOthers(circuit, page, [id], 0, 0).flatMap((each) => each.others);
      const stands = others.length > 0 ? standsOnWords(others) : "";
      return [id, partTitle(circuit, part), partStands(circuit, live, part), stands]
        .filter((word) => word !== "")
        .join(", ");
    }
  }
}
