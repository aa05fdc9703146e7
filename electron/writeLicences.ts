import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { build, builtThirdParties } from "./build.ts";
import { THIRD_PARTY_FILE, thirdPartyTable } from "./licences.ts";
import { ROOT } from "./root.ts";

// Run by `npm run licences`: builds, and writes down what of others the build holds.
await build(ROOT);
writeFileSync(join(ROOT, THIRD_PARTY_FILE), thirdPartyTable(builtThirdParties(ROOT)));
