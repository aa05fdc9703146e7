import type { Brightness } from "../../core/trade/instruments.ts";

/** The lamp itself as it burns: rays where it is bright, a few where it is dim, none where it is dark. */
export function LampLight({ light }: { readonly light: Brightness }) {
  const rays = light === "bright" ? 8 : light === "dim" ? 4 : 0;
  return (
    <svg className={`lamp-light is-${light}`} width="40" height="40" viewBox="-20 -20 40 40" aria-hidden="true">
      <circle r="9" />
      {Array.from({ length: rays }, (_, index) => {
        const turn = (index * 360) / rays;
        return <line key={turn} x1="0" y1="-13" x2="0" y2="-18" transform={`rotate(${turn})`} />;
      })}
    </svg>
  );
}
