import { z } from "zod";
import { type Outcome, ok, refuse } from "../core/base/outcome.ts";
import type { Circuit } from "../core/circuit/circuit.ts";
import type { Fragment } from "../core/edit/fragment.ts";
import { normalised } from "./circuit.ts";
import { circuitRefusal } from "./circuitRules.ts";
import { circuitShape } from "./circuitShape.ts";
import { refusalOf } from "./issue.ts";
import { parseJson } from "./json.ts";
import { textOf } from "./text.ts";

/** The version of a fragment's text that this program writes. */
export const FRAGMENT_VERSION = 1;

const { nominalVolts, colourCodes, parts, wires, connectors, placement } = circuitShape.shape;
const { parts: places, wires: bends } = placement.unwrap().shape;
const place = places.unwrap().valueType.omit({ page: true });

/** The shape of a fragment: lists as a circuit has them, and places without a page. */
const fragmentShape = z.strictObject({
  format: z.literal("wirefathom/fragment"),
  version: z.literal(FRAGMENT_VERSION),
  nominalVolts,
  colourCodes,
  parts,
  wires,
  connectors,
  places: z.record(places.unwrap().keyType, place),
  bends: bends.unwrap(),
});

/** A page that any fragment fits, to judge it on. */
const PAGE = { id: "p", title: "", widthMm: 5_000, heightMm: 5_000 };

/** A fragment as text for the clipboard; the same fragment always gives the same text. */
export function fragmentText(fragment: Fragment): string {
  return JSON.stringify(fragment);
}

/**
 * Reads a fragment from text that anybody may have written. Refuses `fragment-none` for any other text, `file-newer`, and
 * what a circuit file with the same parts would be refused for, with the path; nothing is half read.
 */
export function readFragment(text: string): Outcome<Fragment> {
  const plain = textOf(text);
  const json = plain.ok ? parseJson(plain.value) : plain;
  if (!json.ok) return refuse("fragment-none");
  const { format, version } = json.value as { readonly format?: unknown; readonly version?: unknown };
  if (format !== "wirefathom/fragment") return refuse("fragment-none");
  if (typeof version === "number" && version > FRAGMENT_VERSION) {
    return refuse("file-newer", { version, known: FRAGMENT_VERSION });
  }
  const parsed = fragmentShape.safeParse(json.value);
  if (!parsed.success) return { ok: false, refusal: refusalOf(parsed.error.issues, json.value) };
  const fragment: Fragment = parsed.data;
  const circuit = circuitWith(fragment);
  const refusal = circuitRefusal(circuit);
  return refusal ? { ok: false, refusal } : ok({ ...fragment, wires: normalised(circuit).wires });
}

/** A circuit that holds the fragment and nothing else: what holds for circuits is judged on it. */
function circuitWith(fragment: Fragment): Circuit {
  const standing = Object.entries(fragment.places).map(([id, where]) => [id, { ...where, page: PAGE.id }] as const);
  return {
    format: "wirefathom/circuit",
    version: 1,
    title: "",
    nominalVolts: fragment.nominalVolts,
    colourCodes: fragment.colourCodes,
    pages: [PAGE],
    parts: fragment.parts,
    wires: fragment.wires,
    placement: { parts: Object.fromEntries(standing), wires: fragment.bends },
    connectors: fragment.connectors,
    access: [],
    reach: {},
    checks: [],
    scenes: [],
  };
}
