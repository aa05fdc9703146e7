import { kindOf } from "../../core/parts/catalogue.ts";
import { partWords, pointWords, wireWords } from "../words/live.ts";
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
      const about = part?.label ?? kindOf(part?.kind ?? "")?.title ?? "";
      return [id, about, partWords(live.parts.get(id))].filter((word) => word !== "").join(", ");
    }
  }
}
