import { type Outcome, type Refusal, refuse } from "../../core/base/outcome.ts";
import { type CallName, isCallName } from "../../schemas/callNames.ts";
import { CALL_LIMITS } from "../../schemas/calls/call.ts";
import { CALLS } from "../../schemas/calls.ts";
import { storeRefusal } from "../store/failure.ts";
import { ANSWERS } from "./answers.ts";
import type { Host } from "./host.ts";
import { isKeeping } from "./keeping.ts";

/**
 * Answers a call as it came from a page: its name, and its argument as JSON text. What comes back is JSON too, of a value
 * or a refusal. Nothing that a page sends makes it reject; a broken invariant does. `gone` ends what only waits.
 */
export async function answerText(host: Host, name: string, argument: string, gone?: AbortSignal): Promise<string> {
  if (argument.length > CALL_LIMITS.text) {
    return JSON.stringify(refuse("call-too-large", { limit: CALL_LIMITS.text / 1_000_000 }));
  }
  let sent: unknown;
  try {
    sent = JSON.parse(argument);
  } catch {
    return JSON.stringify(refuse("call-text"));
  }
  return JSON.stringify(await answer(host, name, sent, gone));
}

/** Answers a call whose argument was read already: checks it against its schema, then hands it to its function. */
export async function answer(host: Host, name: string, sent: unknown, gone?: AbortSignal): Promise<Outcome<unknown>> {
  if (!isCallName(name)) return refuse("call-unknown", { call: name.slice(0, 40) });
  const checked = CALLS[name].argument.safeParse(sent);
  if (!checked.success) return { ok: false, refusal: argumentRefusal(name, checked.error.issues[0]!) };
  try {
    const why = isKeeping(name) ? await host.keeper.whyNotKept?.() : null;
    if (why) return { ok: false, refusal: why };
    return await functionOf(name)(checked.data, host, gone);
  } catch (error) {
    const refusal = storeRefusal(error, host.keeper.folder);
    if (!refusal) throw error;
    return { ok: false, refusal };
  }
}

/** The schema has made the argument fit its function, which the compiler cannot follow across the list. */
function functionOf(name: CallName): (checked: unknown, host: Host, gone?: AbortSignal) => Promise<Outcome<unknown>> {
  return ANSWERS[name] as (checked: unknown, host: Host, gone?: AbortSignal) => Promise<Outcome<unknown>>;
}

/** A circuit that was refused brings its own refusal; anything else is a fault of the page. */
function argumentRefusal(
  call: CallName,
  issue: { readonly code?: string; readonly path: readonly PropertyKey[]; readonly params?: unknown },
): Refusal {
  const { refusal } = (issue.params ?? {}) as { readonly refusal?: Refusal };
  return refusal ?? refuse("call-argument", { call, field: issue.path.map(String).join(".") || "all of it" }).refusal;
}
