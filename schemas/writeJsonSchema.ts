import { writeFileSync } from "node:fs";
import { circuitJsonSchema } from "./jsonSchema.ts";

// Run by `npm run schema` after a change to the shape; a test holds the written file to the shape.
writeFileSync(new URL("circuit.schema.json", import.meta.url), circuitJsonSchema());
