/** The little of the layout library that is used: its own types do not pass the compiler. */
declare module "elkjs/lib/elk-api.js" {
  import type { ElkGraph } from "./elkGraph.ts";

  // biome-ignore lint/style/noDefaultExport: the library has one
  export default class ELK {
    constructor(options: { readonly workerFactory: () => Worker });
    layout(graph: ElkGraph): Promise<ElkGraph>;
    terminateWorker(): void;
  }
}
