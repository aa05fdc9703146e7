import { useEffect, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import type { Picture } from "../../core/circuit/circuit.ts";
import { GONE_WORDS } from "../words/gone.ts";
import { usePictures } from "./PicturesContext.tsx";

/** A printed page small; where its picture is not there, a sentence says why. */
export function PrintedSmall({ image }: { readonly image: Picture }) {
  const pictures = usePictures();
  const [address, setAddress] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let isGone = false;
    pictures.file(image.sha256).then(
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
  }, [pictures, image.sha256]);
  if (trouble !== null)
    return (
      <span className="printed-small small" role="alert">
        {trouble}
      </span>
    );
  return <span className="printed-small">{address !== null && <img src={address} alt="" decoding="async" />}</span>;
}
