import { noteSeen } from "../../core/edit/commands/noteSeen.ts";
import { Icon } from "../panels/Icon.tsx";
import { Popover } from "../panels/Popover.tsx";
import { WireValues } from "../panels/WireValues.tsx";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { circuitNow } from "../state/views.ts";
import { SeenValues } from "./SeenValues.tsx";
import { WiresValues } from "./WiresValues.tsx";

/** What can be done with the wires that are chosen: say their colours and sizes, and what was seen on the vehicle. */
export function WiresActs({ wires: ids }: { readonly wires: readonly string[] }) {
  const make = useMake();
  const circuit = useApp(circuitNow);
  const wires = circuit?.wires.filter(({ id }) => ids.includes(id)) ?? [];
  const [only] = wires;
  if (!circuit || !only) return null;
  const areSeen = wires.every(({ seen }) => seen !== undefined);
  const isOne = wires.length === 1;
  return (
    <>
      <Popover
        label="Colour and size"
        className="icon-button is-small"
        place="below"
        button={<Icon name="wire" size={16} />}
      >
        {() => (
          <div className="wires-card">
            {isOne ? (
              <WireValues circuit={circuit} wire={only} />
            ) : (
              <WiresValues circuit={circuit} wires={wires.map(({ id }) => id)} />
            )}
          </div>
        )}
      </Popover>
      {isOne ? (
        <Popover
          label="Seen on the vehicle"
          className={areSeen ? "icon-button is-small is-on" : "icon-button is-small"}
          place="below"
          button={<Icon name="tick" size={16} />}
        >
          {() => (
            <div className="wires-card">
              <SeenValues circuit={circuit} wire={only} />
            </div>
          )}
        </Popover>
      ) : (
        <button
          type="button"
          className={areSeen ? "icon-button is-small is-on" : "icon-button is-small"}
          aria-pressed={areSeen}
          aria-label="Seen on the vehicle as printed"
          title="Seen on the vehicle as printed"
          onClick={() =>
            make((bench) =>
              noteSeen(
                bench,
                wires.map(({ id }) => id),
                areSeen ? null : {},
              ),
            )
          }
        >
          <Icon name="tick" size={16} />
        </button>
      )}
    </>
  );
}
