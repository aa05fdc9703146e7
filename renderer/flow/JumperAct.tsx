import { MenuAct } from "../panels/MenuAct.tsx";
import { useAppStore } from "../state/AppContext.tsx";

interface Shown {
  readonly point: string;
  readonly close: () => void;
}

/** Begins the check of a jumper at a pin: its other end is the pin that is chosen next. */
export function JumperAct({ point, close }: Shown) {
  const { dispatch } = useAppStore();
  const begin = (): void => {
    dispatch({ do: "set-jumper", jumper: { from: point, to: "", picking: "to" } });
    dispatch({ do: "open-panel", panel: "shares" });
  };
  return (
    <div className="value-acts">
      <MenuAct words="Check a jumper from here" act={begin} close={close} />
    </div>
  );
}
