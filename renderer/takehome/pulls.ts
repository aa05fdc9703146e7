import { pullApart } from "../../core/edit/commands/pullApart.ts";
import { pushHome } from "../../core/edit/commands/pushHome.ts";
import { putIn } from "../../core/edit/commands/putIn.ts";
import { replaceFuse } from "../../core/edit/commands/replaceFuse.ts";
import { setBattery } from "../../core/edit/commands/setBattery.ts";
import { setEngine } from "../../core/edit/commands/setEngine.ts";
import { takeOut } from "../../core/edit/commands/takeOut.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { LEFT_BY_HAND } from "../../core/live/standing.ts";
import { fusesOf, hasEngine, type Pull, plugsOf } from "../words/pulls.ts";
import { build, say, typed } from "./build.ts";
import { acted, type Command, type Desk } from "./desk.ts";
import { type DeskStore, onChange, type View } from "./view.ts";

/** Plugs, fuses and relays, battery and engine: all that differs from rest and is no control. */
export function pulls(store: DeskStore): View {
  const { circuit } = store.getState().bench;
  const act = (command: Command) => (): void => store.setState(acted(store.getState(), command));
  const toggles: readonly { readonly element: HTMLElement; isOn(desk: Desk): boolean }[] = [
    toggle("Battery negative off", undefined, ({ batteryOff = false }) => batteryOff, setBattery),
    ...(hasEngine(circuit) ? [toggle("Engine running", undefined, ({ running = false }) => running, setEngine)] : []),
    ...plugsOf(circuit).map((plug) => pull(plug, "apart", "apart", pullApart, pushHome)),
    ...fusesOf(circuit).map((fuse) => pull(fuse, "out", "out", takeOut, putIn)),
  ];
  const melted = build("div", { class: "melted" });
  const showMelted = onChange((desk: Desk["bench"]) => {
    const gone = [...liveNow(desk).shown.parts].filter(([, { state }]) => LEFT_BY_HAND.includes(state));
    melted.replaceChildren(
      ...gone.map(([part, { state }]) =>
        build(
          "p",
          {},
          build("b", {}, part),
          ` has ${state}. `,
          build(
            "button",
            { type: "button", class: "button", click: act((bench) => replaceFuse(bench, part)) },
            state === "tripped" ? `Reset ${part}` : `Replace ${part}`,
          ),
        ),
      ),
    );
  });
  const element = build(
    "section",
    { "aria-label": "Plugs, fuses and battery" },
    melted,
    build(
      "details",
      {},
      build("summary", {}, "Plugs, fuses and battery"),
      build("div", { class: "toggles" }, ...toggles.map((each) => each.element)),
    ),
  );
  const show = (desk: Desk): void => {
    showMelted(desk.bench);
    for (const { element: button, isOn } of toggles) say(button, "aria-pressed", isOn(desk));
  };
  return { element, show };

  function toggle(
    words: string,
    about: string | undefined,
    isIn: (condition: Desk["bench"]["condition"]) => boolean,
    set: (bench: Desk["bench"], on: boolean) => ReturnType<Command>,
  ): { readonly element: HTMLElement; isOn(desk: Desk): boolean } {
    const isOn = ({ bench }: Desk): boolean => isIn(bench.condition);
    const press = act((bench) => set(bench, !isIn(bench.condition)));
    const name = about === undefined ? [words] : [words, " ", typed(about)];
    return { element: build("button", { type: "button", class: "button toggle", click: press }, ...name), isOn };
  }

  function pull(
    { id, about }: Pull,
    list: "apart" | "out",
    word: string,
    off: (bench: Desk["bench"], id: string) => ReturnType<Command>,
    on: (bench: Desk["bench"], id: string) => ReturnType<Command>,
  ): ReturnType<typeof toggle> {
    const isOff = (condition: Desk["bench"]["condition"]): boolean => condition[list]?.includes(id) ?? false;
    return toggle(`${id} ${word}`, about, isOff, (bench, isNow) => (isNow ? off : on)(bench, id));
  }
}
