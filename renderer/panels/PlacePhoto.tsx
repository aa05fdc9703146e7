import { useState } from "react";
import { PRINTED_WORDS } from "../../core/base/words/printed.ts";
import type { Picture } from "../../core/circuit/circuit.ts";
import { usePicture } from "../printed/usePicture.ts";

interface Shown {
  readonly photo: Picture;
  /** What comes off there. */
  readonly of: string;
}

/** The photo of a place: small, and as wide as the panel once it is pressed. Where it is not there, a sentence says why. */
export function PlacePhoto({ photo, of }: Shown) {
  const { address, trouble } = usePicture(photo);
  const [isLarge, setLarge] = useState(false);
  const [broken, setBroken] = useState<string | null>(null);
  const why = broken === address && address !== null ? PRINTED_WORDS["picture-damaged"] : trouble;
  if (why !== null)
    return (
      <p className="place-photo-gone small" role="note">
        The photo of {of} cannot be shown. {why}
      </p>
    );
  return (
    <button
      type="button"
      className={isLarge ? "place-photo is-large" : "place-photo"}
      aria-expanded={isLarge}
      aria-label={`Photo: ${of}`}
      title={isLarge ? "Smaller" : "Larger"}
      onClick={() => setLarge(!isLarge)}
    >
      {address !== null && (
        <img
          src={address}
          alt=""
          width={photo.widthPx}
          height={photo.heightPx}
          decoding="async"
          onError={() => setBroken(address)}
        />
      )}
    </button>
  );
}
