import type { PointId } from "../base/ids.ts";
import { type Refusal, refuse } from "../base/outcome.ts";
import { type Asked, type Circuit, MOST_QUESTIONS, type Scene } from "../circuit/circuit.ts";
import type { Lead } from "../live/attachment.ts";
import { isLead } from "../live/instruments/clipped.ts";

type Questions = NonNullable<Scene["questions"]>;

/** Why a scene cannot ask these questions: they are too many, or a place that they name is not there. Null where it can. */
export function questionsRefusal(circuit: Circuit, questions: Questions): Refusal | null {
  if (questions.length > MOST_QUESTIONS) return refuse("questions-many", { most: MOST_QUESTIONS }).refusal;
  const lost = questions.flatMap(placesOf).find((place) => !isLead(circuit, place));
  return lost === undefined ? null : refuse("point-spelling", { text: lost }).refusal;
}

/** Questions with their points where `moved` puts them, without those of which one is gone; the same list where nothing moved. */
export function questionsMoved(questions: Questions, moved: (point: PointId) => PointId | null): Questions {
  const next = questions.flatMap((asked) => questionMoved(asked, moved));
  const isSame = next.length === questions.length && next.every((asked, index) => asked === questions[index]);
  return isSame ? questions : next;
}

function questionMoved(asked: Asked, moved: (point: PointId) => PointId | null): readonly Asked[] {
  const point = moved(asked.point);
  if (point === null) return [];
  if (asked.asks !== "volts") return [point === asked.point ? asked : { ...asked, point }];
  const black = isPost(asked.black) ? asked.black : moved(asked.black);
  if (black === null) return [];
  return [point === asked.point && black === asked.black ? asked : { ...asked, point, black }];
}

function placesOf(asked: Asked): readonly Lead[] {
  return asked.asks === "volts" ? [asked.point, asked.black] : [asked.point];
}

function isPost(lead: Lead): boolean {
  return lead === "battery +" || lead === "battery -";
}
