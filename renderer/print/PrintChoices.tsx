import type { Circuit } from "../../core/circuit/circuit.ts";
import { underlaysInPrint } from "../../core/circuit/underlays.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { loadsOf } from "../../core/live/branch.ts";
import { loadTitle } from "../branch/branchWords.ts";
import { Choice, SelectChoice } from "../panels/Choice.tsx";
import { Toggle } from "../panels/Toggle.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { foundNow, handoverSaid, straightLoad } from "../state/printing.ts";
import { benchOf } from "../state/state.ts";
import { complaintNow } from "../state/views.ts";
import { conditionPhrase } from "../words/condition.ts";
import { HandoverWords } from "./HandoverWords.tsx";
import { pagesPrinted } from "./useUnderPages.ts";

/** What, which of it, and on what paper in which ink. */
export function PrintChoices({ circuit }: { readonly circuit: Circuit }) {
  const { dispatch } = useAppStore();
  const printing = useApp(({ open }) => open?.printing);
  const settings = useApp((state) => state.settings);
  const complaint = useApp(complaintNow);
  const bench = useApp(benchOf);
  const phrase = useApp((state) => {
    const bench = benchOf(state);
    return bench ? conditionPhrase(bench.circuit, bench.condition) : "";
  });
  const isFound = useApp(({ open }) => open !== null && foundNow(open) !== null);
  if (!printing) return null;
  const { what, page, connector, isOverPrint = false } = printing;
  return (
    <>
      <Choice
        title="What"
        isColumn
        now={what}
        choices={[
          ["sheet", "Circuit sheet"],
          ["checklist", "Checklist"],
          ["branches", "Branch sheet"],
          ["wiggle", "Wiggle sheet"],
          ["straight", "Straight branch"],
          ["table", "Position table"],
          ["budget", "Drop budget"],
          ...(isFound || what === "proof" || what === "handover"
            ? ([
                ["proof", "Proof run"],
                ["handover", "Handover page"],
              ] as const)
            : []),
        ]}
        onChoose={(next) => dispatch({ do: "print-what", sheets: { what: next } })}
      />
      {what === "sheet" && (
        <>
          <SelectChoice
            title="Page"
            now={page ?? ""}
            choices={[
              ["", "All pages"],
              ...circuit.pages.map(({ id, title }, at) => [id, `${at + 1} ${title}`] as const),
            ]}
            onChoose={(id) => dispatch({ do: "print-what", sheets: { page: id === "" ? null : id } })}
          />
          <p className="caption">As it is drawn now: {phrase}.</p>
          {pagesPrinted(circuit, page).some((each) => underlaysInPrint(each).length > 0) && (
            <Toggle
              words="Printed pages under it, pale"
              isOn={isOverPrint}
              onChange={(on) => dispatch({ do: "print-what", sheets: { isOverPrint: on } })}
            />
          )}
        </>
      )}
      {(what === "checklist" || what === "branches" || what === "wiggle") && (
        <p className="caption">
          {complaint ? complaint.label : "Choose under Probe order what does not work; the sheet follows from it."}
        </p>
      )}
      {(what === "straight" || what === "budget") && bench && (
        <>
          <SelectChoice
            title="Load"
            now={straightLoad(bench, printing)}
            choices={loadsOf(wiringOf(circuit)).map((id) => [id, loadTitle(circuit, id)] as const)}
            onChoose={(load) => dispatch({ do: "print-what", sheets: { load } })}
          />
          <p className="caption">
            As it is drawn now: {phrase}. Where the load carries no current so, as the first check in which it works.
          </p>
        </>
      )}
      {(what === "proof" || what === "handover") && !isFound && (
        <p className="caption">Nothing is found any more: read on until one suspect is left.</p>
      )}
      {what === "handover" && isFound && bench && <HandoverWords said={handoverSaid(bench, printing)} />}
      {what === "table" && (
        <SelectChoice
          title="Connector"
          now={connector}
          choices={circuit.connectors.map(({ id, label }) => [id, label ? `${id}, ${label}` : id] as const)}
          onChoose={(id) => dispatch({ do: "print-what", sheets: { connector: id } })}
        />
      )}
      <Choice
        title="Paper"
        now={settings.paper}
        choices={[
          ["a4", "A4"],
          ["a3", "A3"],
          ["letter", "Letter"],
          ["tabloid", "Tabloid"],
        ]}
        onChoose={(paper) => dispatch({ do: "set", settings: { paper } })}
      />
      <Choice
        title="Ink"
        now={settings.ink}
        choices={[
          ["black", "Black only"],
          ["colour", "Colour"],
        ]}
        onChoose={(ink) => dispatch({ do: "set", settings: { ink } })}
      />
      {(what === "sheet" || what === "straight") && (
        <Choice
          title="Symbols"
          now={settings.look}
          choices={[
            ["iec", "IEC"],
            ["na", "North American"],
          ]}
          onChoose={(look) => dispatch({ do: "set", settings: { look } })}
        />
      )}
    </>
  );
}
