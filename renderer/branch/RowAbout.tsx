import type { Circuit } from "../../core/circuit/circuit.ts";
import type { BranchEnd, BranchPart, BranchRow, BranchWire } from "../../core/live/branch.ts";
import { aboutPart } from "../../core/paper/straightWords.ts";
import { StateGlyph } from "../panels/StateGlyph.tsx";
import { WireCode } from "../panels/WireCode.tsx";
import { voltsText } from "../words/figures.ts";
import { dropText, standingText, terminalsText, wireAmpsText } from "./branchWords.ts";

/** What a row says: its name, what it is, and at the right what is read there. */
export function RowAbout({ circuit, row }: { readonly circuit: Circuit; readonly row: BranchRow }) {
  if (row.is === "wire") return <WireAbout circuit={circuit} row={row} />;
  if (row.is === "link")
    return (
      <span className="branch-line">
        <span className="branch-name">
          Page link <b>{row.name}</b>
        </span>
        <span className="caption">{row.parts.join(" to ")}</span>
      </span>
    );
  return <PartAbout circuit={circuit} row={row} />;
}

function PartAbout({ circuit, row }: { readonly circuit: Circuit; readonly row: BranchPart }) {
  const standing = standingText(row);
  const terminals = terminalsText(circuit, row);
  const drop = dropText(row);
  return (
    <>
      <span className="branch-line">
        <span className="branch-name">
          <b>{row.name}</b> {aboutPart(circuit, row.part)}
        </span>
        {drop !== "" && row.is !== "ground" && (
          <span className="branch-drop figures">
            <span className="unseen">{row.isLoad ? "across it " : "lost "}</span>
            {drop}
          </span>
        )}
      </span>
      {(terminals !== "" || standing !== "") && (
        <span className="branch-line small">
          <span>
            {terminals}
            {terminals !== "" && standing !== "" && " · "}
            {standing}
          </span>
        </span>
      )}
    </>
  );
}

function WireAbout({ circuit, row }: { readonly circuit: Circuit; readonly row: BranchWire }) {
  const wire = circuit.wires.find(({ id }) => id === row.wire);
  const amps = wireAmpsText(row);
  const isCut = row.entry.state !== row.exit.state;
  return (
    <>
      <span className="branch-line">
        <span className="branch-name small">
          <span className="together">{row.wire}</span>
          {wire?.colour !== undefined && <WireCode code={wire.colour} set={circuit.colourCodes} />}
          {wire?.mm2 !== undefined && <span className="figures together">{wire.mm2} mm²</span>}
        </span>
        <EndReading end={row.entry} />
      </span>
      <span className="branch-line caption">
        <span>
          <span className="together">{row.entry.point}</span> to <span className="together">{row.exit.point}</span>
          {amps !== "" && <span className="figures"> · {amps}</span>}
        </span>
        {isCut && <EndReading end={row.exit} />}
      </span>
    </>
  );
}

function EndReading({ end }: { readonly end: BranchEnd }) {
  return (
    <span className="branch-volts figures">
      <StateGlyph state={end.state} size={14} />
      {voltsText(end.volts)}
    </span>
  );
}
