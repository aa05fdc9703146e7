import dgram from "node:dgram";
import dns from "node:dns";
import { writeSync } from "node:fs";
import { Socket } from "node:net";
import { isMainThread } from "node:worker_threads";

// Loaded before a host or the terminal by `--require`: whatever would leave this machine, or ask for the address of another one,
// ends the process at once. Threads of the process inherit it.

/** What a process ends with that tried to reach the network. */
const REACHED_OUT = 97;
const HERE = ["127.0.0.1", "::1", "localhost"];

function stop(what: string): never {
  writeSync(2, `the network was asked for: ${what}\n`);
  // A thread that exits would leave the process as if nothing were.
  if (!isMainThread) process.kill(process.pid, "SIGKILL");
  process.exit(REACHED_OUT);
}

const connect = Socket.prototype.connect;
Socket.prototype.connect = function (this: Socket, ...given: unknown[]) {
  // Node hands the same on as a list of its own.
  const [first] = Array.isArray(given[0]) ? given[0] : given;
  const to = Object(first) as { readonly host?: string; readonly port?: unknown; readonly path?: string };
  const host = to.host ?? (typeof given[1] === "string" ? given[1] : "localhost");
  if (to.path === undefined && !HERE.includes(host)) stop(`${host} ${to.port ?? first}`);
  return connect.apply(this, given as Parameters<typeof connect>);
} as typeof connect;

const ASKS = ["lookup", "resolve", "resolve4", "resolve6", "resolveAny", "reverse"] as const;
for (const asks of [dns, dns.promises]) {
  for (const name of ASKS) {
    const own = asks[name] as (...given: unknown[]) => unknown;
    Object.assign(asks, {
      [name]: (...given: unknown[]) =>
        HERE.includes(String(given[0])) ? own.apply(asks, given) : stop(`the name ${given[0]}`),
    });
  }
}
dgram.createSocket = () => stop("a datagram");
