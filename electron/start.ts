import { runProcess } from "./terminal/process.ts";

// Run by `npm start`, with a circuit file to open or none.
await runProcess(["open", ...process.argv.slice(2)]);
