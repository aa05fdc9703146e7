import { build, say, typed } from "./build.ts";
import type { Desk } from "./desk.ts";
import type { DeskStore, View } from "./view.ts";

/** Element that shows the chosen page. */
export const PANEL_ID = "panel";

/** The pages of the circuit as tabs; arrow keys go along them. */
export function tabs(store: DeskStore): View {
  const { pages } = store.getState().bench.circuit;
  const turn = (page: string): void => store.setState({ page, asked: null });
  const buttons = pages.map(({ id, title }, index) =>
    build(
      "button",
      { type: "button", role: "tab", id: `tab-${index}`, "aria-controls": PANEL_ID, click: () => turn(id) },
      `${index + 1} `,
      typed(title),
    ),
  );
  const walk = (event: Event): void => {
    const step = event instanceof KeyboardEvent ? { ArrowRight: 1, ArrowLeft: -1 }[event.key] : undefined;
    const at = pages.findIndex(({ id }) => id === store.getState().page);
    if (step === undefined || at < 0) return;
    const next = (at + step + pages.length) % pages.length;
    turn(pages[next]!.id);
    buttons[next]!.focus();
  };
  const element = build("div", { class: "tabs", role: "tablist", "aria-label": "Pages", keydown: walk }, ...buttons);
  const show = ({ page }: Desk): void => {
    for (const [index, button] of buttons.entries()) {
      const isShown = pages[index]!.id === page;
      say(button, "aria-selected", isShown);
      button.tabIndex = isShown ? 0 : -1;
    }
  };
  return { element, show };
}
