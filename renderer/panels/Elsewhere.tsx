import type { CircuitControl } from "../../core/circuit/points.ts";
import { useApp } from "../state/AppContext.tsx";
import { conditionNow } from "../state/views.ts";
import { ControlSegments } from "./ControlSegments.tsx";
import { Icon } from "./Icon.tsx";
import { Popover } from "./Popover.tsx";

/** The controls that the strip has no room for, and how many of them are at rest. */
export function Elsewhere({ controls }: { readonly controls: readonly CircuitControl[] }) {
  const { set = {} } = useApp(conditionNow);
  const thrown = controls.filter(({ key, rest }) => (set[key] ?? rest) !== rest).length;
  const resting = controls.length - thrown;
  const words = thrown === 0 ? `${resting} at rest` : `${thrown} thrown, ${resting} at rest`;
  return (
    <div className="control">
      <div className="control-name">
        <span>Elsewhere</span>
      </div>
      <Popover
        label={`Elsewhere, ${words}`}
        className="button elsewhere"
        place="above"
        button={
          <>
            {words}
            <Icon name="onward" size={16} />
          </>
        }
      >
        {() => (
          <div className="elsewhere-controls">
            {controls.map((control) => (
              <ControlSegments key={control.key} control={control} />
            ))}
          </div>
        )}
      </Popover>
    </div>
  );
}
