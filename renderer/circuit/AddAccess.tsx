import { AccessForm } from "../editor/AccessForm.tsx";
import { newAccess } from "../editor/reaching.ts";

/** A new access group of the circuit. */
export function AddAccess({ close }: { readonly close: () => void }) {
  return <AccessForm className="circuit-form" make={newAccess} close={close} />;
}
