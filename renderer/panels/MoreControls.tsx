import type { CircuitControl } from "../../core/circuit/points.ts";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow, conditionNow } from "../state/views.ts";
import { ControlSegments } from "./ControlSegments.tsx";
import { Icon } from "./Icon.tsx";
import { Popover } from "./Popover.tsx";
import { controlsByPlace } from "./stripControls.ts";

interface Shown {
  readonly controls: readonly CircuitControl[];
  readonly onOpen: (isOpen: boolean) => void;
}

/** The controls that the strip has no room for, those of other pages by themselves, and how many of all are at rest. */
export function MoreControls({ controls, onOpen }: Shown) {
  const { set = {} } = useApp(conditionNow);
  const circuit = useApp(circuitNow);
  const page = useApp(({ open }) => open?.page ?? "");
  const thrown = controls.filter(({ key, rest }) => (set[key] ?? rest) !== rest).length;
  const resting = controls.length - thrown;
  const words = thrown === 0 ? `${resting} at rest` : `${thrown} thrown, ${resting} at rest`;
  return (
    <div className="control">
      <div className="control-name">
        <span>More</span>
      </div>
      <Popover
        label={`More controls, ${words}`}
        className="button more-button"
        place="above"
        onOpen={onOpen}
        button={
          <>
            {words}
            <Icon name="onward" size={16} />
          </>
        }
      >
        {() => (
          <div className="more-controls">
            {circuit &&
              controlsByPlace(circuit, controls, page).map(({ place, controls: here }) => (
                <section key={place} aria-label={place} className="more-place">
                  <h3 className="place-name">{place}</h3>
                  {here.map((control) => (
                    <ControlSegments key={control.key} control={control} />
                  ))}
                </section>
              ))}
          </div>
        )}
      </Popover>
    </div>
  );
}
