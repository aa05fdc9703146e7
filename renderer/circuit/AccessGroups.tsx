import { useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { Empty } from "../panels/Empty.tsx";
import { Icon } from "../panels/Icon.tsx";
import { AccessRow } from "./AccessRow.tsx";
import { AddAccess } from "./AddAccess.tsx";

/** What must come off to reach parts: the groups, and a way to add one. */
export function AccessGroups({ circuit }: { readonly circuit: Circuit }) {
  const [isNew, setIsNew] = useState<boolean | null>(null);
  return (
    <section className="circuit-part" aria-label="Access">
      <h3 className="place-name">Access</h3>
      {circuit.access.length === 0 && !isNew && (
        <Empty title="Nothing stands in the way yet">
          An access group is trim or a panel that comes off first, such as "Lift the switch panel out", 5 minutes.
        </Empty>
      )}
      <ul className="circuit-rows">
        {circuit.access.map((group) => (
          <AccessRow key={group.id} circuit={circuit} group={group} />
        ))}
      </ul>
      {isNew ? (
        <AddAccess close={() => setIsNew(false)} />
      ) : (
        <button
          type="button"
          // biome-ignore lint/a11y/noAutofocus: it comes back in place of the form that was just left
          autoFocus={isNew === false}
          className="button is-quiet is-low circuit-add"
          onClick={() => setIsNew(true)}
        >
          <Icon name="add" size={16} />
          Add an access group
        </button>
      )}
    </section>
  );
}
