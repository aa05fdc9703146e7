import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, builtThirdParties } from "./build.ts";
import { THIRD_PARTY_FILE, thirdPartyTable } from "./licences.ts";

// Run by `npm run licences`: builds, and writes down what of others the build holds.
const root = fileURLToPath(new URL("..", import.meta.url));
await build(root);
writeFileSync(join(root, THIRD_PARTY_FILE), thirdPartyTable(builtThirdParties(root)));
