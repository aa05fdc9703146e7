import { useKeyOf } from "../keys/useKeyOf.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { Choice } from "./Choice.tsx";
import { Icon } from "./Icon.tsx";
import { OwnName } from "./OwnName.tsx";
import { Popover } from "./Popover.tsx";

/** Size steps of everything outside the drawing. */
const SCALES: readonly number[] = [0.75, 1, 1.25, 1.5, 2];

/** What a person sets once: look, symbols, size, motion, spring-back positions. */
export function SettingsButton() {
  return (
    <Popover label="Settings and keys" className="icon-button" place="below" button={<Icon name="settings" />}>
      {(close) => <SettingsCard close={close} />}
    </Popover>
  );
}

function SettingsCard({ close }: { readonly close: () => void }) {
  const keyOf = useKeyOf();
  const { dispatch } = useAppStore();
  const settings = useApp((state) => state.settings);
  return (
    <div className="settings">
      <Choice
        title="Look"
        now={settings.theme}
        onChoose={(theme) => dispatch({ do: "set", settings: { theme } })}
        choices={[
          ["system", "As the system"],
          ["light", "Light"],
          ["dark", "Dark"],
        ]}
      />
      <Choice
        title="Symbols"
        now={settings.look}
        onChoose={(look) => dispatch({ do: "set", settings: { look } })}
        choices={[
          ["iec", "IEC"],
          ["na", "North American"],
        ]}
      />
      <Choice
        title="Size of everything but the drawing"
        now={settings.scale}
        onChoose={(scale) => dispatch({ do: "set", settings: { scale } })}
        choices={SCALES.map((scale) => [scale, `${scale * 100}\u00A0%`] as const)}
      />
      <Choice
        title="A press on a spring-back position"
        now={settings.springs}
        onChoose={(springs) => dispatch({ do: "set", settings: { springs } })}
        choices={[
          ["hold", "long: holds, short: pins"],
          ["latch", "always pins"],
        ]}
      />
      <Choice
        title="Motion"
        now={settings.motion}
        onChoose={(motion) => dispatch({ do: "set", settings: { motion } })}
        choices={[
          ["system", "As the system"],
          ["still", "None"],
        ]}
      />
      <OwnName />
      <button
        type="button"
        className="menu-item"
        onClick={() => {
          close();
          dispatch({ do: "open-keys" });
        }}
      >
        Keys and commands
        <kbd className="key-cap menu-end">{keyOf("keys")}</kbd>
      </button>
    </div>
  );
}
