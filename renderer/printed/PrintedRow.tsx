import type { Page, Underlay } from "../../core/circuit/circuit.ts";
import { FIRST_LOOK } from "../../core/circuit/underlays.ts";
import { cropUnderlay } from "../../core/edit/commands/cropUnderlay.ts";
import { lockUnderlay } from "../../core/edit/commands/lockUnderlay.ts";
import { removeUnderlay } from "../../core/edit/commands/removeUnderlay.ts";
import { reorderUnderlay } from "../../core/edit/commands/reorderUnderlay.ts";
import { retitleUnderlay } from "../../core/edit/commands/retitleUnderlay.ts";
import { LOOK_LIMITS, type Look, showUnderlay } from "../../core/edit/commands/showUnderlay.ts";
import { turnUnderlay } from "../../core/edit/commands/turnUnderlay.ts";
import { type RowAct, RowMenu } from "../circuit/RowMenu.tsx";
import { InPlace } from "../editor/InPlace.tsx";
import { useAsk } from "../editor/useAsk.ts";
import { Icon } from "../panels/Icon.tsx";
import { Toggle } from "../panels/Toggle.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import type { Adjusting } from "../state/state.ts";
import { useMake } from "../state/useMake.ts";
import { begun } from "./adjusting.ts";
import { PrintedSmall } from "./PrintedSmall.tsx";
import { Slider } from "./Slider.tsx";

interface Shown {
  readonly page: Page;
  readonly underlay: Underlay;
  /** Its place among those of the page, 0 the lowest. */
  readonly at: number;
  readonly count: number;
}

const PERCENT = 100;

/** One printed page: what it is, how it looks, and what can be done with it. */
export function PrintedRow({ page, underlay, at, count }: Shown) {
  const { dispatch } = useAppStore();
  const make = useMake();
  const ask = useAsk();
  const { id, title, image, whiteOut = false, isLocked = false, isHidden = false } = underlay;
  const { opacity = FIRST_LOOK.opacity, contrast = FIRST_LOOK.contrast } = underlay;
  const isOff = isLocked ? "It is locked" : undefined;
  const show = (look: Look) => make((bench) => showUnderlay(bench, id, look));
  const slide = (look: Look, group: string) =>
    dispatch({ do: "make", command: (bench) => showUnderlay(bench, id, look), group });
  const adjust = (how: Adjusting["how"]) => (): void =>
    dispatch({ do: "adjust", adjusting: begun(underlay, page, how) });
  const acts: readonly RowAct[] = [
    { icon: "turn", words: "Turn back", act: () => make((bench) => turnUnderlay(bench, id, "back")), isOff },
    {
      icon: "up",
      words: "Lay above the next",
      act: () => make((bench) => reorderUnderlay(bench, id, at + 1)),
      isOff: at === count - 1 ? "It is the topmost" : undefined,
    },
    {
      icon: "down",
      words: "Lay below the next",
      act: () => make((bench) => reorderUnderlay(bench, id, at - 1)),
      isOff: at === 0 ? "It is the lowest" : undefined,
    },
    {
      icon: "fit",
      words: "Show the whole picture",
      act: () => make((bench) => cropUnderlay(bench, id, null)),
      isOff: isOff ?? (underlay.cut ? undefined : "It is all shown"),
    },
    { icon: "bin", words: "Take away", act: () => make((bench) => removeUnderlay(bench, id)) },
  ];
  return (
    <li className="circuit-row printed-row" aria-label={title}>
      <div className="circuit-row-head">
        <PrintedSmall image={image} />
        <InPlace
          name={`Title of ${title}`}
          value={title}
          className="is-wide"
          take={(typed) => ask((bench) => retitleUnderlay(bench, id, typed))}
        />
        <RowMenu label={`More for ${title}`} acts={acts} />
      </div>
      <div className="printed-look">
        <Slider
          label="Strength"
          of={title}
          value={Math.round(opacity * PERCENT)}
          min={LOOK_LIMITS.opacity.min * PERCENT}
          max={LOOK_LIMITS.opacity.max * PERCENT}
          slide={(value, group) => slide({ opacity: value / PERCENT }, group)}
        />
        <Slider
          label="Contrast"
          of={title}
          value={Math.round(contrast * PERCENT)}
          min={LOOK_LIMITS.contrast.min * PERCENT}
          max={LOOK_LIMITS.contrast.max * PERCENT}
          slide={(value, group) => slide({ contrast: value / PERCENT }, group)}
        />
        <div className="printed-ticks">
          <Toggle words="Shown" isOn={!isHidden} onChange={(on) => show({ isHidden: !on })} />
          <Toggle words="White paper" isOn={whiteOut} onChange={(on) => show({ whiteOut: on })} />
          <Toggle words="Locked" isOn={isLocked} onChange={(on) => make((bench) => lockUnderlay(bench, id, on))} />
        </div>
      </div>
      <div className="value-acts">
        <Act words="Move and scale" isOff={isOff} act={adjust("lay")} />
        <Act words="Make square" isOff={isOff} act={adjust("square")} />
        <Act words="Crop" isOff={isOff} act={adjust("crop")} />
        <button
          type="button"
          className="icon-button is-small"
          aria-label={`Turn ${title}`}
          title={isOff ?? "Turn by a quarter"}
          disabled={isLocked}
          onClick={() => make((bench) => turnUnderlay(bench, id, "clockwise"))}
        >
          <Icon name="turn" size={16} />
        </button>
      </div>
    </li>
  );
}

interface Acted {
  readonly words: string;
  readonly isOff: string | undefined;
  readonly act: () => void;
}

function Act({ words, isOff, act }: Acted) {
  return (
    <button type="button" className="button is-low" disabled={isOff !== undefined} title={isOff} onClick={act}>
      {words}
    </button>
  );
}
