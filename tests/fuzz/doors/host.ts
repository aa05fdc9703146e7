import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { z } from "zod";
import { ok } from "../../../core/base/outcome.ts";
import { answerText } from "../../../electron/answers/door.ts";
import type { Host } from "../../../electron/answers/host.ts";
import { noRequests } from "../../../electron/answers/requests.ts";
import { reportsIn } from "../../../electron/reports.ts";
import { keepStore } from "../../../electron/store/sqlite/keeper.ts";
import { CALL_NAMES, type CallName } from "../../../schemas/callNames.ts";
import { CALLS } from "../../../schemas/calls.ts";
import { settingsShape } from "../../../schemas/settings.ts";
import { png } from "../../electron/pictureFiles.ts";
import type { Lots } from "../../lots.ts";
import type { Door } from "../door.ts";
import { spoiltJson, spoiltText } from "../mutate.ts";
import { exercises, hornCircuit, SAMPLES, smallCircuits } from "./given.ts";

const NOW = new Date("2026-03-02T08:00:00Z");

/** A host over a library of its own, which goes with the process. */
function hostFor(): Host {
  const folder = mkdtempSync(join(tmpdir(), "wirefathom-fuzz-"));
  process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
  return {
    kind: "loopback",
    version: "0.0.0",
    keeper: keepStore(folder, () => NOW),
    samples: fileURLToPath(SAMPLES),
    printer: new URL("../../../electron/print/printer.ts", import.meta.url),
    takeHome: folder,
    requests: noRequests(),
    reports: reportsIn(folder, "0.0.0", () => NOW),
    now: () => NOW,
    saveFile: async () => ok({ done: "download" }),
    chooseFile: async () => ok({ done: "choose" }),
  };
}

let host: Host | null = null;
let known: string | null = null;

/** The host with one circuit in its library, which is made anew where it was deleted. */
async function hostWithCircuit(): Promise<Host> {
  host ??= hostFor();
  known ??= idOf(await answerText(host, "circuits.create", JSON.stringify({ circuit: hornCircuit() })));
  return host;
}

function idOf(text: string): string {
  return JSON.parse(text).value.id;
}

type Schema = Readonly<Record<string, unknown>>;

/** An argument that a schema would take, mostly: what a hand-written list of examples would miss is in it by itself. */
function argumentOf(schema: Schema, lots: Lots, name = ""): unknown {
  const {
    type,
    enum: words,
    const: only,
    properties,
    items,
    anyOf,
    oneOf,
    pattern,
    additionalProperties,
  } = schema as {
    readonly type?: string;
    readonly enum?: readonly unknown[];
    readonly const?: unknown;
    readonly properties?: Readonly<Record<string, Schema>>;
    readonly items?: Schema;
    readonly anyOf?: readonly Schema[];
    readonly oneOf?: readonly Schema[];
    readonly pattern?: string;
    readonly additionalProperties?: Schema | boolean;
  };
  if (only !== undefined) return only;
  if (words) return lots.oneOf(words);
  const either = anyOf ?? oneOf;
  if (either) return argumentOf(lots.oneOf(either), lots, name);
  switch (type) {
    case "object": {
      const { required = [] } = schema as { readonly required?: readonly string[] };
      const own = Object.entries(properties ?? {}).filter(([each]) => required.includes(each) || lots.happens(0.5));
      const more = typeof additionalProperties === "object" ? [["a", additionalProperties] as const] : [];
      return Object.fromEntries([...own, ...more].map(([each, about]) => [each, argumentOf(about, lots, each)]));
    }
    case "array":
      return Array.from({ length: lots.upTo(3) }, () => argumentOf(items ?? {}, lots, name));
    case "integer":
      return lots.oneOf([0, 1, 2, 50, 300, Number(schema.minimum ?? 0), Number(schema.maximum ?? 9)]);
    case "number":
      return lots.oneOf([0, 1, 1.5, 12.6, Number(schema.minimum ?? 0)]);
    case "boolean":
      return lots.happens(0.5);
    case "null":
      return null;
    case "string":
      return textFor(name, pattern, lots);
    default:
      return JSON.parse(lots.oneOf(smallCircuits()));
  }
}

function textFor(name: string, pattern: string | undefined, lots: Lots): string {
  if (name === "id" || name === "circuit") return lots.oneOf([known ?? "1", "1", "0".repeat(64)]);
  if (name === "sha256" || pattern?.includes("{64}")) return "0123456789abcdef".repeat(4);
  if (name === "bytes") return png(20, 10).toString("base64");
  if (name === "text") return lots.oneOf([...smallCircuits(), ...exercises().slice(0, 2)]);
  if (name === "bench")
    return lots.oneOf(["{}", '{"version":1,"bench":{"condition":{"set":{"S1":"pressed"}}}}', "not JSON"]);
  return lots.oneOf(["S1=pressed", "low-horn", "4-horn", "W15:open", "p1", "a", "2026-03-02T08:00:00Z", "X20"]);
}

/** Printing takes a thread each time, so it is seldom asked for. */
const SELDOM: readonly CallName[] = ["print.pdf", "print.class", "export.takeHome"];
const NO_END = AbortSignal.abort();

/** What a page asks of its host. */
export const HOST_DOORS: readonly Door[] = [
  {
    name: "host calls",
    kind: "text",
    seeds: async () => {
      await hostWithCircuit();
      return ["start {}", 'settings.set {"theme":"dark"}', 'circuits.list {"search":"horn"}'];
    },
    make: (lots, seeds) => {
      const name = lots.oneOf(CALL_NAMES);
      if (SELDOM.includes(name) && lots.happens(0.95)) return spoiltText(String(lots.oneOf(seeds)), seeds, lots);
      const schema = z.toJSONSchema(CALLS[name].argument, { unrepresentable: "any", io: "input" }) as Schema;
      const argument = JSON.stringify(argumentOf(schema, lots));
      return `${name} ${lots.happens(0.3) ? argument : spoiltJson(argument, lots)}`;
    },
    open: async (input) => {
      const text = String(input);
      const at = text.indexOf(" ");
      const reply = JSON.parse(
        await answerText(await hostWithCircuit(), text.slice(0, at), text.slice(at + 1), NO_END),
      );
      if (text.startsWith("circuits.remove") && reply.ok) known = null;
      return reply;
    },
    share: 6,
    mostMs: 20_000,
  },
  {
    name: "settings kept",
    kind: "json",
    seeds: async () => [
      JSON.stringify({
        theme: "dark",
        scale: 1.5,
        shop: [{ of: "relay", factor: 2, source: "own records" }],
        tasks: "A: B",
        keys: { undo: "Ctrl+G" },
      }),
    ],
    open: (input) => {
      const read = settingsShape.partial().safeParse(jsonOr(String(input)));
      return read.success
        ? ok(read.data)
        : { ok: false, refusal: { code: "call-argument", about: { call: "settings.set", field: "" } } };
    },
    share: 5,
    mostMs: 1_000,
  },
];

function jsonOr(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}
