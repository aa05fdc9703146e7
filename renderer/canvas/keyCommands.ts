import { partAt, pointAt } from "../../core/circuit/points.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { duplicateThings } from "../../core/edit/commands/duplicateThings.ts";
import { flipThings } from "../../core/edit/commands/flipThings.ts";
import { pullApart } from "../../core/edit/commands/pullApart.ts";
import { pushHome } from "../../core/edit/commands/pushHome.ts";
import { putIn } from "../../core/edit/commands/putIn.ts";
import { removeThings } from "../../core/edit/commands/removeThings.ts";
import { restAll } from "../../core/edit/commands/restAll.ts";
import { setBattery } from "../../core/edit/commands/setBattery.ts";
import { setEngine } from "../../core/edit/commands/setEngine.ts";
import { showFaults } from "../../core/edit/commands/showFaults.ts";
import { takeOut } from "../../core/edit/commands/takeOut.ts";
import { turnThings } from "../../core/edit/commands/turnThings.ts";
import type { KeyIdOf } from "../../core/edit/keys/rows.ts";
import type { Command } from "../state/action.ts";
import { plugIdsOf } from "../state/places.ts";
import type { Thing } from "../state/state.ts";

/** How far to the right a double stands at least, grid units. */
const OFF = 4;

/** What a key may come to with this chosen, the likeliest first: what cannot be done now is passed over. */
function candidates(key: KeyIdOf<"drawing">, bench: Bench, chosen: readonly Thing[]): readonly Command[] {
  const ids = chosen.flatMap(({ is, id }) => (is === "point" ? [] : [id]));
  const parts = chosen.flatMap(({ is, id }) => (is === "part" ? [id] : []));
  switch (key) {
    case "turn":
      return [(now) => turnThings(now, parts, "clockwise")];
    case "flip":
      return [(now) => flipThings(now, parts)];
    case "remove":
      return [(now) => removeThings(now, ids)];
    case "duplicate":
      return [(now) => duplicateThings(now, parts, OFF, 0)];
    case "plug":
      return connectorsAt(bench, chosen).flatMap((id): readonly Command[] => [
        (now) => pullApart(now, id),
        (now) => pushHome(now, id),
      ]);
    case "fuse":
      return parts.flatMap((id): readonly Command[] => [(now) => takeOut(now, id), (now) => putIn(now, id)]);
    case "battery":
      return [(now) => setBattery(now, !(now.condition.batteryOff ?? false))];
    case "engine":
      return [(now) => setEngine(now, !(now.condition.running ?? false))];
    case "wrong":
      return [(now) => showFaults(now, !now.showFaults)];
    case "rest":
      return [restAll];
    default:
      return [];
  }
}

/** The plugs that a key can pull: what is chosen, or what carries it. */
function connectorsAt({ circuit }: Bench, chosen: readonly Thing[]): readonly string[] {
  return chosen.flatMap(({ is, id }) => {
    const point = is === "point" ? pointAt(circuit, id) : undefined;
    if (point?.kind === "cavity") return [point.connector.id];
    const part = is === "part" ? partAt(circuit, id) : undefined;
    return part ? plugIdsOf(circuit, part) : [];
  });
}

/** The edit that a key makes now; null where the key is none of these, and the first refusal's command where none is possible. */
export function keyCommand(key: KeyIdOf<"drawing">, bench: Bench, chosen: readonly Thing[]): Command | null {
  const possible = candidates(key, bench, chosen);
  return possible.find((command) => command(bench).ok) ?? possible[0] ?? null;
}
