import { useAppStore } from "../state/AppContext.tsx";
import { MenuAct } from "./MenuAct.tsx";

interface Shown {
  readonly connector: string;
  readonly close: () => void;
}

/** Opens the position table of a plug. */
export function TableAct({ connector, close }: Shown) {
  const { dispatch } = useAppStore();
  const open = (): void => {
    dispatch({ do: "show-table", connector });
    dispatch({ do: "open-panel", panel: "table" });
  };
  return <MenuAct words={`Position table of ${connector}`} act={open} close={close} />;
}
