import { createContext, type ReactNode, useContext } from "react";
import type { Pictures } from "./pictures.ts";

const Context = createContext<Pictures | null>(null);

/** Gives the pictures of printed pages to everything inside it. */
export function PicturesProvider({
  pictures,
  children,
}: {
  readonly pictures: Pictures;
  readonly children: ReactNode;
}) {
  return <Context value={pictures}>{children}</Context>;
}

/** The pictures of printed pages. */
export function usePictures(): Pictures {
  const pictures = useContext(Context);
  if (!pictures) throw new Error("broken invariant: no pictures around this component");
  return pictures;
}
