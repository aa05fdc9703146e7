import { line, text } from "../drawing/shapes.ts";
import { doesNothing, type Kind, type PartView } from "./kind.ts";

const LETTER = 0.62;

/** A page link: all links of one name are one net, on whatever page they stand. One without a name joins nothing. */
export const pageLink: Kind = {
  name: "page-link",
  title: "Page link",
  words: ["off-page", "continued", "to sheet", "reference"],
  letter: "L",
  role: "join",
  settings: [
    { name: "name", label: "name of the net", unit: "", value: { type: "word", usual: "" }, source: "the circuit" },
  ],
  terminals: () => ["1"],
  controls: () => [],
  model: (view) => [
    { key: "link", a: view.terminals[0]!, b: sharedEnd(view), law: { law: "joint" }, passes: "conductor" },
  ],
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing: doesNothing,
  faults: () => [],
  symbol(view) {
    const name = view.word("name");
    const width = Math.max(4, Math.ceil(name.length * LETTER + 2.4));
    return {
      width,
      height: 2,
      terminals: { [view.terminals[0]!]: { x: 0, y: 1, side: "left" } },
      marks: [
        line("symbol-fine", 0, 1, 1, 0.1, width, 0.1, width, 1.9, 1, 1.9, 0, 1),
        text(name, width - 0.5, 1.4, { anchor: "end" }),
      ],
      nameAt: { x: width + 0.5, y: 1.4, anchor: "start" },
    };
  },
  testPoints: () => [],
};

function sharedEnd(view: PartView): string {
  const name = view.word("name").trim();
  return name === "" ? "~alone" : `=link:${name}`;
}
