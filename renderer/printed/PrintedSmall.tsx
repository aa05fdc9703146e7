import type { Picture } from "../../core/circuit/circuit.ts";
import { usePicture } from "./usePicture.ts";

/** A printed page small; where its picture is not there, a sentence says why. */
export function PrintedSmall({ image }: { readonly image: Picture }) {
  const { address, trouble } = usePicture(image);
  if (trouble !== null)
    return (
      <span className="printed-small small" role="alert">
        {trouble}
      </span>
    );
  return <span className="printed-small">{address !== null && <img src={address} alt="" decoding="async" />}</span>;
}
