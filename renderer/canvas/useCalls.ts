import { useMemo } from "react";
import { addAssembly } from "../../core/edit/commands/addAssembly.ts";
import { addPart } from "../../core/edit/commands/addPart.ts";
import { bendWire } from "../../core/edit/commands/bendWire.ts";
import { clampRound } from "../../core/edit/commands/clampRound.ts";
import { clipLead } from "../../core/edit/commands/clipLead.ts";
import { drawWire } from "../../core/edit/commands/drawWire.ts";
import { drawWires } from "../../core/edit/commands/drawWires.ts";
import { drawWireToWire } from "../../core/edit/commands/drawWireToWire.ts";
import { moveThings } from "../../core/edit/commands/moveThings.ts";
import { paste } from "../../core/edit/commands/paste.ts";
import { reattachWire } from "../../core/edit/commands/reattachWire.ts";
import { removeThings } from "../../core/edit/commands/removeThings.ts";
import { copied } from "../../core/edit/fragment.ts";
import { fragmentText, readFragment } from "../../schemas/fragment.ts";
import { useAppStore } from "../state/AppContext.tsx";
import type { Command } from "../state/action.ts";
import { connectorsWith, netThings, wiresOnConnector } from "../state/groups.ts";
import { makeCopies } from "../state/makeCopies.ts";
import { thingsOnPage } from "../state/places.ts";
import { refused } from "../state/reduce.ts";
import type { Thing } from "../state/state.ts";
import { benchOf } from "../state/state.ts";
import type { AppStore } from "../state/store.ts";
import { chosenNow, circuitNow, isHeld, suspectNow, withSuspectNow } from "../state/views.ts";
import { keyCommand } from "./keyCommands.ts";
import type { Calls, Card, ThrowHow } from "./shown.ts";
import { HAND, type LeadTool } from "./tool.ts";
import type { Pixel } from "./viewport.ts";

/** A menu that is open, and where. */
export interface OpenMenu {
  readonly thing: Thing;
  /** In the browser's client pixels. */
  readonly at: Pixel;
}

/** What gestures on the drawing ask of the store, and of the two cards over it. */
export function useCalls(
  onCard: (card: Card | null) => void,
  onMenu: (menu: OpenMenu) => void,
  onDrawn: (wires: readonly string[]) => void,
  onGathered: (count: number) => void,
  onCarrying: (isCarrying: boolean) => void,
): Calls {
  const store = useAppStore();
  return useMemo((): Calls => {
    const { dispatch, getState } = store;
    const make = (command: Command): void => dispatch({ do: "make", command });
    const draw = (command: Command, count = 1): void => {
      const before = circuitNow(getState())?.wires;
      make(command);
      const after = circuitNow(getState())?.wires;
      const drawn = after?.filter((wire) => !before?.includes(wire)) ?? [];
      // Where a wire was cut for a splice its halves are new too: the last one is what was asked for.
      if (drawn.length > 0) onDrawn(count === 1 ? [drawn.at(-1)!.id] : drawn.map(({ id }) => id));
    };
    return {
      onViewport: (viewport) => {
        const page = getState().open?.page;
        if (page !== undefined) dispatch({ do: "look-at", page, viewport });
      },
      onThrow: (control, position, how) => throwControl(store, control, position, how),
      onHover: (thing) => dispatch({ do: "hover", thing }),
      onSelect: (thing) => dispatch({ do: "choose", thing }),
      onFind: (thing) => dispatch({ do: "find", thing }),
      onAdd: () => dispatch({ do: "add", isAdding: true }),
      onSay: (words) => dispatch({ do: "say", words }),
      onSelectAlso: (thing) => dispatch({ do: "choose-also", thing }),
      onSelectAll: (things) => dispatch({ do: "choose-all", things }),
      onMove: (parts, dx, dy) => make((bench) => moveThings(bench, parts, dx, dy)),
      onBend: (wire, bends) => make((bench) => bendWire(bench, wire, bends)),
      onReattach: (wire, end, point) => make((bench) => reattachWire(bench, wire, end, point)),
      onTool: (tool) => dispatch({ do: "use-tool", tool }),
      onPlace: (tool, x, y) => {
        const { page } = getState().open ?? {};
        if (page === undefined) return;
        if (tool.is === "assembly") make((bench) => addAssembly(bench, tool.assembly, page, x, y));
        else make((bench) => addPart(bench, tool.kind, page, x, y, { turn: tool.turn, flip: tool.flip }));
      },
      onWire: (from, to, corners) =>
        draw((bench) => drawWire(bench, from, to, { bends: corners.map(({ x, y }) => [x, y] as const) })),
      onWires: (pairs) => draw((bench) => drawWires(bench, pairs), pairs.length),
      onGathered,
      onCarrying,
      onLead: (tool, place) => clipOn(store, tool, place),
      onWireToWire: (from, wire, spot) => draw((bench) => drawWireToWire(bench, from, wire, spot)),
      onCopy: (isCut) => {
        const state = getState();
        const circuit = circuitNow(state);
        const parts = chosenNow(state).flatMap(({ is, id }) => (is === "part" ? [id] : []));
        if (!circuit || parts.length === 0) return null;
        const text = fragmentText(copied(circuit, parts));
        if (isCut) make((bench) => removeThings(bench, parts));
        return text;
      },
      onPaste: (text, { x, y }) => {
        const read = readFragment(text);
        const page = getState().open?.page;
        if (!read.ok) dispatch({ do: "tell", notice: refused(read.refusal, "Not pasted.") });
        else if (page !== undefined) makeCopies(store, (bench) => paste(bench, read.value, page, x, y));
      },
      onFiles: (files) => dispatch({ do: "bring-in", files }),
      onAllOfPage: () => {
        const { open } = getState();
        const circuit = circuitNow(getState());
        if (open && circuit) dispatch({ do: "choose-all", things: thingsOnPage(circuit, open.page) });
      },
      onGroup: (group) => {
        const state = getState();
        const circuit = circuitNow(state);
        const [thing] = chosenNow(state);
        if (!circuit || !thing) return false;
        const things =
          group === "choose-net"
            ? netThings(circuit, thing)
            : connectorsWith(circuit, thing).flatMap((id) => wiresOnConnector(circuit, id));
        if (things.length > 0) dispatch({ do: "choose-all", things });
        return things.length > 0;
      },
      onKey: (key) => {
        const state = getState();
        if (key === "arrange") {
          const hasParts = chosenNow(state).some(({ is }) => is === "part");
          dispatch({ do: "arrange", what: hasParts ? "chosen" : "page" });
          return true;
        }
        if (key === "wrong" && suspectNow(state)) {
          dispatch({ do: "with-suspect", isWith: !withSuspectNow(state) });
          return true;
        }
        if (key === "changed" && state.open) {
          dispatch({ do: "show-changed", isOn: !state.open.showsChanged });
          return true;
        }
        if (key === "time" && state.open) {
          dispatch({ do: "let-time-pass", isPassing: !state.open.time.isPassing });
          return true;
        }
        if (key === "begin-traces") {
          dispatch({ do: "begin-trace", instrument: null });
          return true;
        }
        const bench = benchOf(state);
        const command = bench && keyCommand(key, bench, chosenNow(state));
        if (command && key === "duplicate") makeCopies(store, command);
        else if (command) make(command);
        return command !== null;
      },
      onEdit: (part) => dispatch({ do: "edit-part", part }),
      onMenu: (thing, at) => onMenu({ thing, at }),
      onCard,
    };
  }, [store, onCard, onMenu, onDrawn, onGathered, onCarrying]);
}

/** Clips a lead on; a red one that is on is followed by a black one that still hangs free. */
function clipOn({ dispatch, getState }: AppStore, tool: LeadTool, place: string): void {
  const { instrument, lead } = tool;
  const before = benchOf(getState());
  dispatch({
    do: "make",
    command: (bench) =>
      lead === "jaws" ? clampRound(bench, instrument, place) : clipLead(bench, instrument, lead, place),
  });
  const bench = benchOf(getState());
  if (bench === null || bench === before) return;
  const each = bench.clipped.find(({ id }) => id === instrument);
  const isNext = lead === "red" && each !== undefined && "black" in each && each.black === null;
  dispatch({ do: "use-tool", tool: isNext ? { ...tool, lead: "black", from: null } : HAND });
}

/** A press holds; a tap on what is held pins it; where a click latches, so does the end of a hold. */
function throwControl({ dispatch, getState }: AppStore, control: string, position: string, how: ThrowHow): void {
  const latches = getState().settings.springs === "latch";
  if (how === "press") dispatch({ do: "hold", control, position });
  else if (how === "release") dispatch({ do: latches ? "pin" : "let-go", control });
  else if (isHeld(getState(), control)) dispatch({ do: "pin", control });
  else dispatch({ do: "throw", control, position });
}
