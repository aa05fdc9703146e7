import { useApp } from "../state/AppContext.tsx";

/** The picture of a circuit in its own state code; an empty frame until it is drawn. Decoration: its title stands beside. */
export function CircuitPicture({ picture }: { readonly picture: string }) {
  const svg = useApp(({ shelf, theme }) => shelf.pictures[picture]?.[theme] ?? "");
  return <span className="picture" aria-hidden="true" dangerouslySetInnerHTML={{ __html: svg }} />;
}
