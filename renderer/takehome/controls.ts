import type { CircuitControl } from "../../core/circuit/points.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { restAll } from "../../core/edit/commands/restAll.ts";
import { positionNow } from "../../core/edit/commands/throwControl.ts";
import { asOnTheHandle } from "../panels/segments.ts";
import { controlTitle, positionTitle } from "../words/condition.ts";
import { build, say, typed } from "./build.ts";
import { acted, type Desk, pressed } from "./desk.ts";
import type { DeskStore, View } from "./view.ts";

/** Every control with all its positions, and a way to put all at rest. */
export function controls(store: DeskStore): View {
  const all = controlsOf(store.getState().bench.circuit).map((control) => controlRow(store, control));
  const rest = build(
    "button",
    { type: "button", class: "button", click: () => store.setState(acted(store.getState(), restAll)) },
    "All at rest",
  );
  const head = build("div", { class: "head" }, build("h2", { id: "controls" }, "Switches"), rest);
  const element = build(
    "section",
    { "aria-labelledby": "controls" },
    head,
    all.some(({ springs }) => springs)
      ? build(
          "p",
          { class: "small" },
          "A position with an arrow springs back: it is held for you until you press it again.",
        )
      : null,
    ...all.map((row) => row.element),
  );
  const show = (desk: Desk): void => {
    for (const row of all) row.show(desk);
  };
  return { element, show };
}

function controlRow(store: DeskStore, control: CircuitControl): View & { readonly springs: boolean } {
  const { circuit } = store.getState().bench;
  const label = control.control.label ?? control.part.label ?? "";
  const name = controlTitle(circuit, control);
  const isNamed = name.endsWith(label);
  const positions = asOnTheHandle(control.control.positions);
  const buttons = positions.map(({ name: position, springsBackTo }) => {
    const said = [
      positionTitle(position),
      position === control.rest ? ", rest" : "",
      springsBackTo ? ", springs back" : "",
    ];
    return build(
      "button",
      {
        type: "button",
        class: position === control.rest ? "segment is-rest" : "segment",
        "aria-label": said.join(""),
        click: () => store.setState(pressed(store.getState(), control.key, position)),
      },
      springsBackTo === undefined ? null : build("span", { class: "springs", "aria-hidden": "true" }, "\u21BA"),
      typed(positionTitle(position)),
    );
  });
  const element = build(
    "div",
    { class: "control", role: "group", "aria-label": isNamed ? name : `${name} ${label}`, "data-control": control.key },
    build("div", { class: "control-name" }, build("b", {}, typed(name)), " ", isNamed ? null : typed(label)),
    build("div", { class: "segments" }, ...buttons),
  );
  const show = ({ bench }: Desk): void => {
    const now = positionNow(bench, control.key);
    for (const [at, button] of buttons.entries()) say(button, "aria-pressed", positions[at]!.name === now);
  };
  return { element, show, springs: positions.some(({ springsBackTo }) => springsBackTo !== undefined) };
}
