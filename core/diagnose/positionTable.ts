import type { ConnectorId, PointId } from "../base/ids.ts";
import type { WireState } from "../base/states.ts";
import type { Volts } from "../base/units.ts";
import type { Condition } from "../circuit/circuit.ts";
import type { Brightness } from "../trade/instruments.ts";

/** One distinct position of the controls, plug on or off; positions that read the same are merged into one column. */
export interface PositionColumn {
  /** What stands in it: "S5 open", "At rest". */
  readonly title: string;
  /** A word under it: "held", "key on". */
  readonly under: string;
  readonly condition: Condition;
  /** False for the columns read on the harness half with the plug off. */
  readonly plugged: boolean;
  /** Other positions that read the same here. */
  readonly merged: readonly string[];
}

/** What one pin shows in one column. */
export interface PositionCell {
  readonly state: WireState;
  /** Volts to battery negative; null where the pin reaches neither post and a meter drifts. */
  readonly volts: Volts | null;
  /** A 4 A lamp from the pin to battery -, and from battery + to the pin. */
  readonly lampToMinus: Brightness;
  readonly lampToPlus: Brightness;
}

/** One pin of the table: what it is, and what it shows in every column. */
export interface PositionRow {
  readonly point: PointId;
  /** Cavity or terminal name. */
  readonly pin: string;
  readonly colour: string | null;
  /** Where its wire leads: "to S2", "motor 1", "feed, SP1". */
  readonly leadsTo: string;
  readonly cells: readonly PositionCell[];
}

/** Test point by switch position to expected reading, for one connector or part. */
export interface PositionTable {
  readonly connector: ConnectorId;
  readonly columns: readonly PositionColumn[];
  readonly rows: readonly PositionRow[];
}
