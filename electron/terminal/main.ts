import { runProcess } from "./process.ts";

await runProcess(process.argv.slice(2));
