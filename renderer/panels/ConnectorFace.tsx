import { useMemo } from "react";
import type { PointId } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type FacePlace, faceOf } from "../../core/paper/face.ts";
import { Swatch } from "./Swatch.tsx";

/** Places shown across; of a wider face the columns round the lit one. */
const MOST_ACROSS = 6;
const MOST_DOWN = 4;

/** The face on which a point lies, seen from the wire side, its place lit. */
export function ConnectorFace({
  circuit,
  point,
  isLit = true,
}: {
  readonly circuit: Circuit;
  readonly point: PointId;
  readonly isLit?: boolean;
}) {
  const face = useMemo(() => faceOf(circuit, point), [circuit, point]);
  const lit = isLit ? face.rows.flat().find((place) => place?.point === point) : undefined;
  if (face.rows.flat().length < 2) return null;
  const rows = windowOn(face.rows, point);
  const name = `${face.caption} seen from the wire side${lit ? `, place ${lit.name} lit` : ""}`;
  return (
    <div className={face.hasLatch ? "face has-latch" : "face"} role="img" aria-label={name}>
      {rows.map((row, index) => (
        <div className="face-row" key={index}>
          {row.map((place, at) => (
            <Place key={at} place={place} isLit={place !== null && place === lit} set={circuit.colourCodes} />
          ))}
        </div>
      ))}
    </div>
  );
}

function Place({
  place,
  isLit,
  set,
}: {
  readonly place: FacePlace | null;
  readonly isLit: boolean;
  readonly set: Circuit["colourCodes"];
}) {
  if (!place) return <span className="face-place is-gap" />;
  const look = isLit ? "face-place is-lit" : place.isWired ? "face-place" : "face-place is-empty";
  return (
    <span className={look}>
      {place.name}
      {place.colour !== null && (
        <span className="face-swatch">
          <Swatch code={place.colour} set={set} width={18} height={8} />
        </span>
      )}
    </span>
  );
}

type Rows = readonly (readonly (FacePlace | null)[])[];

/** As many rows and columns as there is room for, with the lit place among them. */
function windowOn(rows: Rows, point: PointId): Rows {
  const down = rows.findIndex((row) => row.some((place) => place?.point === point));
  const across = rows[Math.max(0, down)]?.findIndex((place) => place?.point === point) ?? 0;
  const top = start(down, rows.length, MOST_DOWN);
  const left = start(across, Math.max(...rows.map((row) => row.length)), MOST_ACROSS);
  return rows.slice(top, top + MOST_DOWN).map((row) => row.slice(left, left + MOST_ACROSS));
}

function start(at: number, length: number, most: number): number {
  return Math.max(0, Math.min(at - Math.floor(most / 2), length - most));
}
