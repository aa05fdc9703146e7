import { useEffect, useState } from "react";
import type { Circuit, Page } from "../../core/circuit/circuit.ts";
import { underlaysInPrint } from "../../core/circuit/underlays.ts";
import { usePictures } from "../printed/PicturesContext.tsx";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { underPage } from "./underPage.ts";

/** What lies under pages that are printed, by the page's id. */
export interface UnderPages {
  readonly pages: ReadonlyMap<string, { readonly address: string; readonly file: Blob }>;
  readonly isWorking: boolean;
}

const NOTHING: UnderPages = { pages: new Map(), isWorking: false };

/** The pages of a circuit that are printed as sheets, in order. */
export function pagesPrinted(circuit: Circuit, page: string | null): readonly Page[] {
  return page === null ? circuit.pages : circuit.pages.filter(({ id }) => id === page);
}

/** The printed pages under the circuit sheets in the print dialog, made ready where they are asked for. */
export function useUnderPages(): UnderPages {
  const pictures = usePictures();
  const circuit = useApp(circuitNow);
  const page = useApp(({ open }) => open?.printing.page ?? null);
  const isWanted = useApp(({ open }) => open?.printing.what === "sheet" && open.printing.isOverPrint === true);
  const [under, setUnder] = useState(NOTHING);
  useEffect(() => {
    if (!circuit || !isWanted) return setUnder(NOTHING);
    const made = new Map<string, { readonly address: string; readonly file: Blob }>();
    let isGone = false;
    const make = async (): Promise<void> => {
      for (const each of pagesPrinted(circuit, page)) {
        const file = underlaysInPrint(each).length > 0 ? await underPage(each, pictures) : null;
        if (isGone) return;
        if (file) made.set(each.id, { address: URL.createObjectURL(file), file });
      }
      setUnder({ pages: made, isWorking: false });
    };
    setUnder({ pages: new Map(), isWorking: true });
    void make();
    return () => {
      isGone = true;
      for (const { address } of made.values()) URL.revokeObjectURL(address);
    };
  }, [pictures, circuit, page, isWanted]);
  return under;
}
