import type { Bench } from "../../../core/edit/bench.ts";
import type { CommandId } from "../../../core/edit/commands/index.ts";

/** What a command is tried with. */
export interface Cases {
  /** A bench and what to give: the command makes an edit. */
  readonly good: readonly (readonly [Bench, ...unknown[]])[];
  /** A code, a bench and what to give: the command refuses with the code. */
  readonly bad: readonly (readonly [string, Bench, ...unknown[]])[];
}

/** Cases of some commands. */
export type SomeCases = Readonly<Partial<Record<CommandId, Cases>>>;
