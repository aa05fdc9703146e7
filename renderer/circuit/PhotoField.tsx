import { useRef, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import { type AccessGroup, PICTURE_TYPES } from "../../core/circuit/circuit.ts";
import { photoAccess } from "../../core/edit/commands/photoAccess.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { PlacePhoto } from "../panels/PlacePhoto.tsx";
import { usePictures } from "../printed/PicturesContext.tsx";
import { useMake } from "../state/useMake.ts";
import { GONE_WORDS } from "../words/gone.ts";
import { photoOf } from "./photoFile.ts";

const ACCEPTED = PICTURE_TYPES.join(",");

/** The photo of a place: brought in by choosing a file, by paste while the focus is here, or by drop. */
export function PhotoField({ group }: { readonly group: AccessGroup }) {
  const { id, label, photo } = group;
  const pictures = usePictures();
  const make = useMake();
  const add = useRef<HTMLButtonElement>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [isReading, setReading] = useState(false);
  const bring = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setTrouble(null);
    setReading(true);
    try {
      const bytes = await photoOf(file);
      const put = bytes.ok ? await pictures.put(bytes.value) : bytes;
      if (put.ok) make((bench) => photoAccess(bench, id, put.value));
      else setTrouble(sentence(put.refusal));
    } catch {
      setTrouble(GONE_WORDS);
    }
    setReading(false);
  };
  const choose = (): void => {
    const field = document.createElement("input");
    field.type = "file";
    field.accept = ACCEPTED;
    field.addEventListener("change", () => void bring(field.files?.[0]));
    field.click();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset with a legend stands around choices, not around a picture
    <div
      className="setting photo-field"
      role="group"
      aria-label={`Photo of ${label}`}
      onPaste={(event) => {
        const [file] = event.clipboardData.files;
        if (!file) return;
        event.preventDefault();
        void bring(file);
      }}
      onDrop={(event) => {
        event.preventDefault();
        void bring(event.dataTransfer.files[0]);
      }}
      onDragOver={(event) => event.preventDefault()}
    >
      <span className="small">Photo</span>
      {photo && <PlacePhoto photo={photo} of={label} />}
      <div className="value-acts">
        <button ref={add} type="button" className="button is-low" disabled={isReading} onClick={choose}>
          {photo ? "Another photo" : "Add a photo"}
        </button>
        {photo && (
          <button
            type="button"
            className="button is-low"
            onClick={() => {
              make((bench) => photoAccess(bench, id, null));
              // The pressed button goes away.
              add.current?.focus();
            }}
          >
            Remove the photo
          </button>
        )}
        {!photo && <span className="small">Or drop one here, or paste one with this button chosen.</span>}
      </div>
      <Trouble words={trouble} />
    </div>
  );
}
