import { useEffect, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import type { Picture } from "../../core/circuit/circuit.ts";
import { GONE_WORDS } from "../words/gone.ts";
import { usePictures } from "./PicturesContext.tsx";

/** A kept picture for an `img`: its address, null while it is read, and why it cannot be shown, null where it can. */
export function usePicture({ sha256 }: Picture): { readonly address: string | null; readonly trouble: string | null } {
  const pictures = usePictures();
  const [address, setAddress] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let isGone = false;
    pictures.file(sha256).then(
      (file) => {
        if (isGone) return;
        if (!file.ok) return setTrouble(sentence(file.refusal));
        made = URL.createObjectURL(file.value);
        setAddress(made);
        setTrouble(null);
      },
      () => !isGone && setTrouble(GONE_WORDS),
    );
    return () => {
      isGone = true;
      if (made !== null) URL.revokeObjectURL(made);
    };
  }, [pictures, sha256]);
  return { address, trouble };
}
