import { alignThings, type Line } from "../../core/edit/commands/alignThings.ts";
import { distributeThings } from "../../core/edit/commands/distributeThings.ts";
import { duplicateThings } from "../../core/edit/commands/duplicateThings.ts";
import { flipThings } from "../../core/edit/commands/flipThings.ts";
import { pinParts } from "../../core/edit/commands/pinParts.ts";
import { removeThings } from "../../core/edit/commands/removeThings.ts";
import { turnThings } from "../../core/edit/commands/turnThings.ts";
import { CARRY, HAND } from "../canvas/tool.ts";
import { useKeyOf } from "../keys/useKeyOf.ts";
import { Icon } from "../panels/Icon.tsx";
import { Popover } from "../panels/Popover.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { makeCopies } from "../state/makeCopies.ts";
import { useMake } from "../state/useMake.ts";
import { chosenNow, circuitNow } from "../state/views.ts";
import { counted } from "../words/figures.ts";
import { WiresActs } from "./WiresActs.tsx";

/** How far to the right a double stands at least, grid units. */
const OFF = 4;
const PIN = "Stay where it is when the page is arranged";
const LINES: readonly (readonly [Line, string])[] = [
  ["left", "Left edges"],
  ["middle-across", "Middles over each other"],
  ["right", "Right edges"],
  ["top", "Top edges"],
  ["middle-down", "Middles side by side"],
  ["bottom", "Bottom edges"],
];

/** Beside the tools, where a fitted drawing leaves room, while something is chosen: what can be done with all of it. */
export function SelectionBar() {
  const keyOf = useKeyOf();
  const make = useMake();
  const store = useAppStore();
  const { dispatch } = store;
  const chosen = useApp(chosenNow);
  const tool = useApp(({ open }) => open?.tool ?? HAND);
  const parts = chosen.flatMap(({ is, id }) => (is === "part" ? [id] : []));
  const arePinned = useApp((state) => parts.every((id) => circuitNow(state)?.placement.parts[id]?.pinned === true));
  const wires = chosen.flatMap(({ is, id }) => (is === "wire" ? [id] : []));
  if (parts.length + wires.length === 0) return null;
  const [only] = parts;
  const words = [
    ...(parts.length > 0 ? [counted(parts.length, "part")] : []),
    ...(wires.length > 0 ? [counted(wires.length, "wire")] : []),
  ].join(", ");
  return (
    <div className="selection-bar card" role="toolbar" aria-label="What is chosen">
      <b className="together">{chosen.length === 1 ? chosen[0]!.id : words}</b>
      {only !== undefined && chosen.length === 1 && (
        <button type="button" className="button is-low" onClick={() => dispatch({ do: "edit-part", part: only })}>
          <Icon name="edit" size={16} />
          Edit
        </button>
      )}
      <button
        type="button"
        className={tool.is === "carry" ? "icon-button is-small is-on" : "icon-button is-small"}
        aria-pressed={tool.is === "carry"}
        aria-label="Move by two clicks"
        title="Move by two clicks: on what is to move, and on where it goes"
        onClick={() => dispatch({ do: "use-tool", tool: tool.is === "carry" ? HAND : CARRY })}
      >
        <Icon name="move" size={16} />
      </button>
      {parts.length > 0 && (
        <>
          <Act
            name="turn"
            words={`Turn (${keyOf("turn")})`}
            onClick={() => make((bench) => turnThings(bench, parts, "clockwise"))}
          />
          <Act
            name="flip"
            words={`Mirror (${keyOf("flip")})`}
            onClick={() => make((bench) => flipThings(bench, parts))}
          />
          <Act
            name="copy"
            words={`Duplicate (${keyOf("duplicate")})`}
            onClick={() => makeCopies(store, (bench) => duplicateThings(bench, parts, OFF, 0))}
          />
        </>
      )}
      {parts.length > 1 && (
        <Popover label="Align" className="icon-button is-small" place="below" button={<Icon name="left" size={16} />}>
          {(close) => (
            <ul className="menu">
              {LINES.map(([line, title]) => (
                <MenuAct
                  key={line}
                  title={title}
                  onClick={() => {
                    make((bench) => alignThings(bench, parts, line));
                    close();
                  }}
                />
              ))}
              {parts.length > 2 &&
                (["across", "down"] as const).map((way) => (
                  <MenuAct
                    key={way}
                    title={way === "across" ? "Even gaps across" : "Even gaps down"}
                    onClick={() => {
                      make((bench) => distributeThings(bench, parts, way));
                      close();
                    }}
                  />
                ))}
            </ul>
          )}
        </Popover>
      )}
      {parts.length > 0 && (
        <Act
          name="arrange"
          words={`Arrange (${keyOf("arrange")})`}
          onClick={() => dispatch({ do: "arrange", what: "chosen" })}
        />
      )}
      {parts.length > 0 && (
        <button
          type="button"
          className="icon-button is-small"
          aria-pressed={arePinned}
          aria-label={PIN}
          title={PIN}
          onClick={() => make((bench) => pinParts(bench, parts, !arePinned))}
        >
          <Icon name="pin" size={16} />
        </button>
      )}
      {wires.length > 0 && <WiresActs wires={wires} />}
      <Act
        name="bin"
        words={`Delete (${keyOf("remove")})`}
        onClick={() =>
          make((bench) =>
            removeThings(
              bench,
              chosen.filter(({ is }) => is !== "point").map(({ id }) => id),
            ),
          )
        }
      />
    </div>
  );
}

interface Acting {
  readonly name: "turn" | "flip" | "copy" | "arrange" | "bin";
  readonly words: string;
  readonly onClick: () => void;
}

function Act({ name, words, onClick }: Acting) {
  return (
    <button type="button" className="icon-button is-small" aria-label={words} title={words} onClick={onClick}>
      <Icon name={name} size={16} />
    </button>
  );
}

function MenuAct({ title, onClick }: { readonly title: string; readonly onClick: () => void }) {
  return (
    <li>
      <button type="button" className="menu-item" onClick={onClick}>
        {title}
      </button>
    </li>
  );
}
