import type { Outcome } from "../../core/base/outcome.ts";
import type { Answer, Argument, CallName } from "../../schemas/calls.ts";
import type { Host } from "./host.ts";

/** Browsers send at most 64 KiB for a page that is gone (Fetch standard, "inflight keepalive bytes"), all calls together. */
const MOST_KEPT_ALIVE = 30_000;

/** The host that served this page: every call is one POST to where the page came from. */
export function loopbackHost(send: typeof fetch = (...request) => fetch(...request)): Host {
  const ask = async <N extends CallName>(name: N, argument: Argument<N>): Promise<Outcome<Answer<N>>> => {
    const body = JSON.stringify(argument);
    const response = await send(`/call/${name}`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      credentials: "same-origin",
      body,
      // What is kept while its tab closes is still sent, as far as a browser allows for.
      keepalive: body.length < MOST_KEPT_ALIVE,
    });
    if (!response.ok) throw new Error(`the host answered ${response.status}`);
    return (await response.json()) as Outcome<Answer<N>>;
  };
  return { name: "loopback", ask };
}
