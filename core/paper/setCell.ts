import type { ControlKey } from "../base/ids.ts";
import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { controlAt } from "../circuit/points.ts";
import { printedPosition } from "../circuit/positionWords.ts";
import type { Setting, Step } from "../diagnose/step.ts";
import { leadName } from "./leads.ts";
import { paragraph } from "./lines.ts";
import { type Piece, space, stack } from "./piece.ts";
import { instrumentPiece } from "./sign.ts";
import { TYPE } from "./sizes.ts";
import { conditionWords, controlName, type SetWords, springsBack } from "./throws.ts";

/** How long a spring-back switch on a motor is held at most, in seconds (common practice, no source). */
export const HOLD_SECONDS = 3;

/** What to throw for a row with one reading, and where the lamp goes. */
export function setPiece(circuit: Circuit, step: Step, matters: readonly ControlKey[], room: Millimetres): Piece {
  const words = conditionWords(circuit, step.settings[0]?.condition ?? {}, matters);
  return stack([...wordsPieces([...words, ...secondPerson(step)], room), ...lampPieces(step, room)]);
}

/** What to throw for a sweep: the instrument, what stays set, then every position in turn. */
export function sweepSetPiece(
  circuit: Circuit,
  step: Step,
  settings: readonly Setting[],
  matters: readonly ControlKey[],
  room: Millimetres,
): Piece {
  const key = step.sweepOf ?? "";
  const others = matters.filter((each) => each !== key);
  const kept = conditionWords(circuit, without(settings[0]?.condition ?? {}, key), others);
  const rest = controlAt(circuit, key)?.rest ?? WORDS.rest;
  const turns = settings.map(({ position }, i): SetWords => {
    const isHeld = springsBack(circuit, key, position);
    const words = isHeld ? WORDS.holdPosition(printedPosition(position)) : printedPosition(position);
    const comma = i < settings.length - 1 ? "," : "";
    return {
      words: `${i === 0 ? `${controlName(circuit, key)}: ` : ""}${words}${comma}`,
      isBold: isHeld && position !== rest,
    };
  });
  const isHeld = settings.some(({ position }) => springsBack(circuit, key, position));
  const each = isHeld ? [{ words: WORDS.eachFor(HOLD_SECONDS), isBold: false }] : [];
  const words = wordsPieces([...kept, ...turns, ...each, ...secondPerson(step)], room);
  return stack([instrumentPiece(step.instrument, room), space(0.4), ...words, ...lampPieces(step, room)]);
}

function without(condition: Condition, key: ControlKey): Condition {
  const set = Object.fromEntries(Object.entries(condition.set ?? {}).filter(([each]) => each !== key));
  return { ...condition, set };
}

function secondPerson(step: Step): readonly SetWords[] {
  return step.hands === 2 ? [{ words: WORDS.bySecond, isBold: true }] : [];
}

function wordsPieces(lines: readonly SetWords[], room: Millimetres): readonly Piece[] {
  return lines.map(({ words, isBold }) => paragraph(words, isBold ? TYPE.act : TYPE.set, room));
}

function lampPieces(step: Step, room: Millimetres): readonly Piece[] {
  if (step.lampTo === null) return [];
  const clips = [step.point, leadName(step.lampTo === "black" ? step.black : step.lampTo)] as const;
  const [from, to] = step.lampTo === "battery +" ? [clips[1], clips[0]] : clips;
  return [space(0.6), paragraph(WORDS.lampFrom(from, to), TYPE.lampSet, room)];
}
