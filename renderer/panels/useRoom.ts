import { useMemo, useSyncExternalStore } from "react";
import { useApp } from "../state/AppContext.tsx";
import { type Room, roomIn } from "./room.ts";

/** The room that the window leaves now. Style sheets read it from `data-width` and `data-height` of the bench. */
export function useRoom(): Room {
  const scale = useApp(({ settings }) => settings.scale);
  const width = useSyncExternalStore(onResize, () => innerWidth);
  const height = useSyncExternalStore(onResize, () => innerHeight);
  const room = roomIn(width, height, scale);
  return useMemo(() => ({ width: room.width, height: room.height }), [room.width, room.height]);
}

function onResize(changed: () => void): () => void {
  addEventListener("resize", changed);
  return () => removeEventListener("resize", changed);
}
