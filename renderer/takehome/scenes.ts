import { paused, played, scrubbed, timeOf } from "../../core/lesson/play.ts";
import { build, say, typed } from "./build.ts";
import { atScene, type Desk, lengthsOf, playedTo, sceneShown } from "./desk.ts";
import type { DeskStore, View } from "./view.ts";

/** The scenes with their captions: stepped, played, scrubbed, or chosen from the list. Absent where there are none. */
export function scenes(store: DeskStore): View | null {
  const { scenes: all } = store.getState().bench.circuit;
  if (all.length === 0) return null;
  const set = (next: (desk: Desk) => Desk) => (): void => store.setState(next(store.getState()));
  const step = (by: number) => set((desk) => atScene(desk, desk.play.at + by));
  const button = (words: string, act: () => void): HTMLButtonElement =>
    build("button", { type: "button", class: "button", click: act }, words);

  const place = build("p", { class: "small" });
  const title = build("h3");
  const caption = build("p");
  const [back, next] = [button("Back", step(-1)), button("Next", step(1))];
  const play = button(
    "Play",
    set((desk) => ({ ...desk, play: desk.play.isPlaying ? paused(desk.play) : played(desk.play, lengthsOf(desk)) })),
  );
  const time = build("input", {
    type: "range",
    min: "0",
    step: "0.1",
    max: String(lengthsOf(store.getState()).reduce((sum, length) => sum + length, 0)),
    "aria-label": "Time in the scenes",
    input: () => store.setState(moved(store.getState(), Number(time.value))),
  });
  const rows = all.map((scene, at) =>
    build(
      "button",
      { type: "button", class: "scene", click: set((desk) => atScene(desk, at)) },
      `${at + 1} `,
      typed(scene.label),
    ),
  );
  const element = build(
    "section",
    { class: "scenes", "aria-labelledby": "scenes" },
    build("h2", { id: "scenes" }, "Scenes"),
    build("div", { class: "caption" }, place, title, caption),
    build("div", { class: "steps" }, back, play, next),
    time,
    build("ol", {}, ...rows.map((row) => build("li", {}, row))),
  );
  const show = (desk: Desk): void => {
    const scene = all[desk.play.at]!;
    const isShown = sceneShown(desk) !== null;
    place.textContent = isShown
      ? `Scene ${desk.play.at + 1} of ${all.length}`
      : `Changed since scene ${desk.play.at + 1} of ${all.length}; press it in the list to set it up again`;
    title.replaceChildren(typed(scene.label));
    caption.replaceChildren(typed(scene.caption ?? ""));
    play.textContent = desk.play.isPlaying ? "Pause" : "Play";
    back.disabled = desk.play.at === 0;
    next.disabled = desk.play.at === all.length - 1;
    time.value = String(timeOf(desk.play, lengthsOf(desk)));
    time.setAttribute("aria-valuetext", `Scene ${desk.play.at + 1}: ${scene.label}`);
    for (const [at, row] of rows.entries()) say(row, "aria-pressed", isShown && at === desk.play.at);
  };
  return { element, show };
}

function moved(desk: Desk, seconds: number): Desk {
  return playedTo(desk, scrubbed(desk.play, seconds, lengthsOf(desk)));
}
