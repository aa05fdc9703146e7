import { useId, useState } from "react";
import type { Page } from "../../core/circuit/circuit.ts";
import { resizePage } from "../../core/edit/commands/resizePage.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsked } from "../editor/useAsk.ts";
import { Choice } from "../panels/Choice.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import { sideChanged } from "./pages.ts";
import { PAPER_NAMES, type PaperName, paperOf, sidesOf } from "./paperSizes.ts";

/** What the list of papers says for a size of its own. */
const OTHER = "other";

/** The size of a page: a paper, lying or standing, or its sides in millimetres. */
export function PageSize({ page }: { readonly page: Page }) {
  const { ask, trouble } = useAsked();
  const paper = paperOf(page);
  const [isOther, setIsOther] = useState(false);
  const id = useId();
  const isStanding = page.heightMm > page.widthMm;
  const isOwn = isOther || paper === null;
  const resize = (name: PaperName, stands: boolean): void => {
    const [width, height] = sidesOf(name, stands);
    ask((bench) => resizePage(bench, page.id, width, height));
  };
  const choose = (name: string): void => {
    setIsOther(name === OTHER);
    if (name !== OTHER) resize(name as PaperName, isStanding);
  };
  return (
    <div className="page-size">
      <label className="unseen" htmlFor={id}>
        Size of <bdi>{page.title}</bdi>
      </label>
      <span className="field">
        <select id={id} value={isOwn ? OTHER : paper} onChange={(event) => choose(event.target.value)}>
          {PAPER_NAMES.map((name) => (
            <option key={name}>{name}</option>
          ))}
          <option value={OTHER}>Other</option>
        </select>
      </span>
      {isOwn ? (
        <div className="page-sides">
          <Side page={page} side="widthMm" label="Width" />
          <Side page={page} side="heightMm" label="Height" />
        </div>
      ) : (
        <Choice
          title={`How ${page.title} lies`}
          now={isStanding ? "portrait" : "landscape"}
          choices={[
            ["landscape", "Landscape"],
            ["portrait", "Portrait"],
          ]}
          onChoose={(way) => resize(paper, way === "portrait")}
        />
      )}
      <Trouble words={trouble} />
    </div>
  );
}

interface Sided {
  readonly page: Page;
  readonly side: "widthMm" | "heightMm";
  readonly label: string;
}

function Side({ page, side, label }: Sided) {
  return (
    <ValueField label={label} value={String(page[side])} unit="mm" change={(typed) => sideChanged(page, side, typed)} />
  );
}
