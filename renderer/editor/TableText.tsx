import { type KeyboardEvent, useId, useRef, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import { writeTable } from "../../core/edit/commands/writeTable.ts";
import { type TableLine, tableText, tableWritten } from "../../core/edit/tableText.ts";
import type { Part, Position } from "../../core/parts/kind.ts";
import { Icon } from "../panels/Icon.tsx";
import { positionTitle } from "../words/condition.ts";
import { counted } from "../words/figures.ts";
import { Trouble } from "./Trouble.tsx";
import { controlWords } from "./tableWords.ts";
import { useAsked } from "./useAsk.ts";

/** The tables of a switch as text, to be written in one go; beside it what was understood before anything is changed. */
export function TableText({ part }: { readonly part: Part }) {
  const { ask, trouble } = useAsked();
  const [typed, setTyped] = useState<string | null>(null);
  const field = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  const text = typed ?? tableWritten(part);
  const lines = tableText(text);
  const isGood = lines.length > 0 && lines.every(({ wrong }) => wrong === null);
  const take = (): void => {
    if (ask((bench) => writeTable(bench, part.id, text)) === null) setTyped(null);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey) || !isGood) return;
    event.preventDefault();
    take();
  };
  return (
    <details
      className="pin-paste"
      onToggle={({ currentTarget }) => {
        if (currentTarget.open) field.current?.select();
      }}
    >
      <summary>
        <Icon name="down" size={16} />
        Write it as text
      </summary>
      <label className="small" htmlFor={id}>
        One control a line: its name and a colon, then positions with a semicolon between, rest first. After a position
        stand "held" where it springs back, and what it joins.
      </label>
      <textarea
        id={id}
        ref={field}
        rows={Math.min(8, Math.max(3, lines.length + 1))}
        value={text}
        spellCheck={false}
        placeholder={"Left: rest 4-1 5-2; open held 4-6 5-2\nRight: rest 7-1; open held 7-6"}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={onKeyDown}
      />
      {typed !== null && <Understood lines={lines} />}
      {typed !== null && isGood && (
        <div className="chart-acts">
          <button type="button" className="button" title="Ctrl+Enter" onClick={take}>
            Take {counted(lines.length, "control")}
          </button>
        </div>
      )}
      <Trouble words={trouble} />
    </details>
  );
}

function Understood({ lines }: { readonly lines: readonly TableLine[] }) {
  if (lines.length === 0) return null;
  return (
    <table className="pin-rows small">
      <caption className="unseen">What was understood</caption>
      <tbody>
        {lines.map(({ control, wrong }, index) => (
          // Two lines may say the same, so that the place alone tells them apart.
          <tr key={index} className={wrong ? "is-wrong" : ""}>
            <th scope="row">{control ? controlWords(control) : <Icon name="note" size={16} />}</th>
            <td>{wrong ? sentence(wrong) : control?.positions.map(saidPosition).join("; ")}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function saidPosition({ name, joins, springsBackTo: back }: Position): string {
  const joined = joins.length === 0 ? "joins nothing" : joins.map(([a, b]) => `${a} with ${b}`).join(", ");
  return `${positionTitle(name)}${back === undefined ? "" : `, springs back to ${positionTitle(back)}`}: ${joined}`;
}
