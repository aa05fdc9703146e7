import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Step } from "../../core/diagnose/step.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { pageOf, readAt } from "../state/places.ts";
import { Icon } from "./Icon.tsx";

/** The page on which the active row is read, where it is not the one in sight, and the way there. */
export function StepPage({ circuit, step }: { readonly circuit: Circuit; readonly step: Step }) {
  const { dispatch } = useAppStore();
  const inSight = useApp(({ open }) => open?.page ?? "");
  const thing = readAt(circuit, step);
  const id = thing ? pageOf(circuit, thing, inSight) : undefined;
  const at = circuit.pages.findIndex((page) => page.id === id);
  if (at < 0 || id === inSight) return null;
  return (
    <button
      type="button"
      className="button is-quiet is-low step-page"
      onClick={({ currentTarget }) => {
        // The pressed button goes away.
        currentTarget.closest(".step")?.querySelector<HTMLElement>(".step-head")?.focus();
        dispatch({ do: "go-to-step", step: step.number });
      }}
    >
      <Icon name="find" size={16} />
      <span>
        On page {at + 1}, <bdi>{circuit.pages[at]!.title}</bdi>: show it
      </span>
    </button>
  );
}
