import type { Circuit } from "../../core/circuit/circuit.ts";
import { partOfPoint } from "../../core/circuit/points.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import type { Live } from "../../core/live/live.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { colourWords } from "../words/colour.ts";
import { partWords, wireWords } from "../words/live.ts";
import { build, typed } from "./build.ts";
import type { Desk } from "./desk.ts";
import { onChange, type View } from "./view.ts";

/** One wire or part in a line: "W13, OG/BK, SP1.3 to X5-6: powered, 12.44 V"; empty for what is not there. */
export function aboutWords(circuit: Circuit, live: Live, id: string): string {
  const wire = circuit.wires.find((each) => each.id === id);
  if (wire) {
    const colour = wire.colour === undefined ? "" : `, ${wire.colour}`;
    return `${id}${colour}, ${wire.from} to ${wire.to}: ${wireWords(live.wires.get(id))}`;
  }
  const part = circuit.parts.find((each) => each.id === id);
  if (!part) return "";
  const now = partWords(live.parts.get(id));
  return `${id}, ${part.label ?? kindOf(part.kind)?.title ?? part.kind}${now === "" ? "" : `: ${now}`}`;
}

/** Every wire and part of the shown page in words, as it stands now: the drawing for those who do not see it. */
export function inWords(desk: () => Desk): View {
  const [wires, parts] = [build("tbody"), build("tbody")];
  const element = build("details", { class: "words" });
  const fill = onChange((...[bench, page, isOpen]: readonly [Desk["bench"], string, boolean]) => {
    if (!isOpen) return;
    const { circuit } = bench;
    const live = liveNow(bench).shown;
    const isHere = (part: string | undefined): boolean => circuit.placement.parts[part ?? ""]?.page === page;
    wires.replaceChildren(
      ...circuit.wires
        .filter(({ from, to }) => [from, to].some((end) => isHere(partOfPoint(circuit, end)?.part.id)))
        .map(({ id, colour = "", from, to }) =>
          row(
            id,
            `${colour} ${colourWords(colour, circuit.colourCodes)}`.trim(),
            `${from} to ${to}`,
            wireWords(live.wires.get(id)),
          ),
        ),
    );
    parts.replaceChildren(
      ...circuit.parts
        .filter(({ id }) => isHere(id))
        .map(({ id, kind, label }) =>
          row(id, kindOf(kind)?.title ?? kind, label ?? "", partWords(live.parts.get(id)) || "\u2013"),
        ),
    );
  });
  const show = ({ bench, page }: Desk): void => fill(bench, page, element.open);
  element.append(
    build("summary", {}, "Every wire and part of this page in words"),
    table("Wires", ["Wire", "Colour", "From and to", "Now"], wires),
    table("Parts", ["Part", "Kind", "Name", "Now"], parts),
  );
  element.addEventListener("toggle", () => show(desk()));
  return { element, show };
}

function table(title: string, heads: readonly string[], body: HTMLElement): HTMLElement {
  return build(
    "div",
    { class: "scrolls", role: "region", tabindex: "0", "aria-label": title },
    build(
      "table",
      {},
      build("caption", {}, title),
      build("thead", {}, build("tr", {}, ...heads.map((head) => build("th", { scope: "col" }, head)))),
      body,
    ),
  );
}

function row(name: string, ...cells: readonly string[]): HTMLElement {
  return build(
    "tr",
    {},
    build("th", { scope: "row" }, typed(name)),
    ...cells.map((cell) => build("td", {}, typed(cell))),
  );
}
