import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { connectorAt, controlAt, controlsOf, isInLine, parsePoint, partAt } from "../circuit/points.ts";

/**
 * Reads `S1=on,S5=open,apart:X5,out:F3,battery:off,drive:U1.3=on,engine:running,ambient:80`; the empty text is rest.
 * Refuses what the circuit does not have, with the names it does have.
 */
export function parseCondition(circuit: Circuit, text: string): Outcome<Condition> {
  const set: Record<string, string> = {};
  const apart: string[] = [];
  const out: string[] = [];
  const drive: Record<string, "on" | "off"> = {};
  let rest: Pick<Condition, "batteryOff" | "running" | "ambientC"> = {};
  for (const word of text.split(",").map((piece) => piece.trim())) {
    if (word === "") continue;
    const [, what = "", value = ""] = /^([^:=]+):(.*)$/.exec(word) ?? [];
    if (what === "apart") apart.push(value);
    else if (what === "out") out.push(value);
    else if (word === "battery:off") rest = { ...rest, batteryOff: true };
    else if (word === "engine:running") rest = { ...rest, running: true };
    else if (what === "ambient" && /^-?\d+(\.\d+)?$/.test(value)) rest = { ...rest, ambientC: Number(value) };
    else if (what === "drive" && /=(on|off)$/.test(value)) {
      const at = value.lastIndexOf("=");
      drive[value.slice(0, at)] = value.endsWith("=on") ? "on" : "off";
    } else if (what === "" && /^[^=]+=[^=]+$/.test(word)) {
      const [key = "", position = ""] = word.split("=");
      set[key.trim()] = position.trim();
    } else return refuse("condition-spelling", { word });
  }
  const condition: Condition = {
    ...(Object.keys(set).length > 0 && { set }),
    ...(apart.length > 0 && { apart }),
    ...(out.length > 0 && { out }),
    ...(Object.keys(drive).length > 0 && { drive }),
    ...rest,
  };
  const refusal = conditionRefusal(circuit, condition);
  return refusal ? { ok: false, refusal } : ok(condition);
}

/** The spelling of a condition; "rest" has none and gives the empty text. */
export function conditionText(condition: Condition): string {
  return [
    ...Object.entries(condition.set ?? {}).map(([key, position]) => `${key}=${position}`),
    ...(condition.apart ?? []).map((id) => `apart:${id}`),
    ...(condition.out ?? []).map((id) => `out:${id}`),
    ...Object.entries(condition.drive ?? {}).map(([point, level]) => `drive:${point}=${level}`),
    ...(condition.batteryOff ? ["battery:off"] : []),
    ...(condition.running ? ["engine:running"] : []),
    ...(condition.ambientC !== undefined ? [`ambient:${condition.ambientC}`] : []),
  ].join(",");
}

/** Coldest and hottest ambient that the tables stand for. */
export const AMBIENT_LIMITS = { least: -40, most: 125 } as const;

/** Why a condition cannot be reached on this circuit, or null where it can. */
export function conditionRefusal(circuit: Circuit, condition: Condition): Refusal | null {
  const no = (code: string, about: Refusal["about"]): Refusal => ({ code, about });
  for (const [key, position] of Object.entries(condition.set ?? {})) {
    const known = controlAt(circuit, key);
    if (!known)
      return no("condition-control", {
        control: key,
        controls: controlsOf(circuit)
          .map((each) => each.key)
          .join(", "),
      });
    const positions = known.control.positions.map((each) => each.name);
    if (!positions.includes(position))
      return no("condition-position", { control: key, position, positions: positions.join(", ") });
  }
  for (const id of condition.apart ?? []) {
    const part = partAt(circuit, id);
    if (!connectorAt(circuit, id) && !(part && isInLine(part))) {
      return no("condition-connector", {
        connector: id,
        connectors: circuit.connectors.map((each) => each.id).join(", "),
      });
    }
  }
  for (const id of condition.out ?? []) if (!partAt(circuit, id)) return no("condition-part", { part: id });
  for (const point of Object.keys(condition.drive ?? {})) {
    const known = parsePoint(circuit, point);
    if (!known.ok || known.value.kind !== "terminal" || known.value.part.kind !== "module")
      return no("condition-drive", { point });
  }
  const { ambientC } = condition;
  if (ambientC !== undefined && (ambientC < AMBIENT_LIMITS.least || ambientC > AMBIENT_LIMITS.most)) {
    return no("condition-ambient", { ambient: ambientC, ...AMBIENT_LIMITS });
  }
  return null;
}
