import { z } from "zod";
import { circuitShape } from "./circuitShape.ts";

/** The JSON Schema of the circuit file as text, generated from the schema that the program itself reads by. */
export function circuitJsonSchema(): string {
  const schema = z.toJSONSchema(circuitShape, { io: "input", target: "draft-2020-12" });
  return `${JSON.stringify({ ...schema, title: "Wirefathom circuit, version 1" }, null, 2)}\n`;
}
