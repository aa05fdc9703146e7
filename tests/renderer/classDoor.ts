import { ok, refuse } from "../../core/base/outcome.ts";
import { type ClassChannel, fromClass, linkToClass } from "../../renderer/class/link.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import type { Door } from "../fuzz/door.ts";
import { hornCircuit } from "../fuzz/doors/given.ts";

/** An instructor's window with a circuit open, and how a class window speaks to it. */
function classSpokenTo(): (said: unknown) => void {
  const channel: ClassChannel = { postMessage: () => {}, onmessage: null };
  const link = linkToClass(channel, (run) => run());
  const store = createAppStore("light", [link.reaction]);
  link.listen(store);
  store.dispatch({
    do: "opened",
    opened: { id: "c1", version: 1, circuit: hornCircuit(), bench: null, benchVersion: 0, known: false },
  });
  return (said) => channel.onmessage?.({ data: said } as MessageEvent<unknown>);
}

function asJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}

/** What the window of a class says to the instructor's. */
export const CLASS_DOOR: Door = {
  name: "class window",
  kind: "json",
  seeds: async () =>
    [
      { say: "here", room: { width: 1280, height: 460, screen: 720 } },
      { say: "act", asked: { act: "class-throw", control: "S1", position: "pressed" } },
      { say: "act", asked: { act: "class-hand", choice: 1 } },
      { say: "gone" },
    ].map((said) => JSON.stringify(said)),
  open: (input) => {
    const said = asJson(String(input));
    const speak = classSpokenTo();
    speak({ say: "here", room: { width: 1280, height: 460, screen: 720 } });
    speak(said);
    return fromClass.safeParse(said).success ? ok(null) : refuse("call-argument", { call: "class", field: "" });
  },
  share: 1,
  mostMs: 4_000,
};
