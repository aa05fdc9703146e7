import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Asked } from "../../circuit/circuit.ts";
import { questionsOf } from "../../lesson/questions.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { sceneAt, sceneOf } from "../sceneFields.ts";
import { wiringOf } from "../wiring.ts";

/**
 * Has the scene at a place, counted from 0, ask one thing more, after what it asks already. Refuses `no-scene`, `point-spelling`,
 * `questions-known` and `questions-many`, and `questions-none` where the circuit cannot answer it in that scene.
 */
export function askInScene(bench: Bench, place: number, asked: Asked): Outcome<Edit> {
  const { circuit } = bench;
  const scene = sceneAt(circuit, place);
  if (!scene.ok) return scene;
  const { questions = [], condition } = scene.value;
  if (questions.some((each) => JSON.stringify(each) === JSON.stringify(asked))) return refuse("questions-known");
  const now = sceneOf(circuit, place, { ...scene.value, questions: [...questions, asked] });
  if (!now.ok) return now;
  if (questionsOf(wiringOf(circuit), { condition, questions: [asked] }).length === 0) return refuse("questions-none");
  const value = circuit.scenes.map((each, index) => (index === place ? now.value : each));
  return editOf(bench, WIRING_NAMES.askInScene(now.value.label), [{ change: "circuit", field: "scenes", value }]);
}
