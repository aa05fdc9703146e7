import { useCallback } from "react";
import { HAND, isDropping } from "../canvas/tool.ts";
import { useKeyOf } from "../keys/useKeyOf.ts";
import { Icon, type IconName } from "../panels/Icon.tsx";
import { Popover } from "../panels/Popover.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { Catalogue } from "./Catalogue.tsx";

/** Over the top left of the drawing: the hand that throws and chooses, parts to place, and the wire. */
export function Tools() {
  const keyOf = useKeyOf();
  const { dispatch } = useAppStore();
  const tool = useApp(({ open }) => open?.tool ?? HAND);
  const isAdding = useApp(({ open }) => open?.isAdding ?? false);
  const tellOpen = useCallback((isOpen: boolean) => dispatch({ do: "add", isAdding: isOpen }), [dispatch]);
  return (
    <div className="tools">
      <ToolButton
        icon="arrow"
        words="Choose"
        keys={keyOf("pen-leave")}
        isOn={tool.is === "hand"}
        onClick={() => dispatch({ do: "use-tool", tool: HAND })}
      />
      <Popover
        label="Add a part"
        title={`Add a part (${keyOf("add-part")})`}
        isWanted={isAdding}
        onOpen={tellOpen}
        className={isDropping(tool) ? "icon-button is-on" : "icon-button"}
        place="below"
        button={
          <>
            <Icon name="part" />
            <span className="words">Part</span>
          </>
        }
      >
        {(close) => <Catalogue close={close} />}
      </Popover>
      <ToolButton
        icon="wire"
        words="Wire"
        keys={keyOf("wire")}
        isOn={tool.is === "wire"}
        onClick={() => dispatch({ do: "use-tool", tool: tool.is === "wire" ? HAND : { is: "wire" } })}
      />
    </div>
  );
}

interface Shown {
  readonly icon: IconName;
  readonly words: string;
  readonly keys: string;
  readonly isOn: boolean;
  readonly onClick: () => void;
}

function ToolButton({ icon, words, keys, isOn, onClick }: Shown) {
  return (
    <button
      type="button"
      className="icon-button"
      aria-label={words}
      title={`${words} (${keys})`}
      aria-pressed={isOn}
      onClick={onClick}
    >
      <Icon name={icon} />
      <span className="words">{words}</span>
    </button>
  );
}
