import type { ArrangeAnswer, ArrangeNode, ArrangeQuestion } from "../../core/circuit/arrange.ts";
import type { Side } from "../../core/parts/kind.ts";

/** What the layout library is given and gives back, as far as it is used here: its own types lack edges and miss a key. */
export interface ElkGraph {
  readonly id: string;
  readonly layoutOptions?: Readonly<Record<string, string>>;
  readonly children?: readonly ElkNode[];
  readonly edges?: readonly {
    readonly id: string;
    readonly sources: readonly string[];
    readonly targets: readonly string[];
  }[];
}
interface ElkNode extends ElkGraph {
  readonly width: number;
  readonly height: number;
  readonly x?: number;
  readonly y?: number;
  readonly ports: readonly {
    readonly id: string;
    readonly x: number;
    readonly y: number;
    readonly layoutOptions: Readonly<Record<string, string>>;
  }[];
}

/** Options of the library by name. */
export type ElkOptions = Readonly<Record<string, string>>;

/** Ways of laying a page out that are tried one after the other: which is best shows only once the wires are laid. */
export const WAYS: readonly ElkOptions[] = [
  {
    "elk.layered.layering.strategy": "LONGEST_PATH",
    "elk.layered.nodePlacement.strategy": "BRANDES_KOEPF",
  },
  {
    "elk.layered.layering.strategy": "NETWORK_SIMPLEX",
    "elk.layered.nodePlacement.strategy": "NETWORK_SIMPLEX",
  },
];

const SIDES: Readonly<Record<Side, string>> = { up: "NORTH", down: "SOUTH", left: "WEST", right: "EAST" };

/** From feed to ground downwards, terminals where the symbols have them, wires at right angles; lengths in grid units. */
const ALWAYS: ElkOptions = {
  "elk.algorithm": "layered",
  "elk.direction": "DOWN",
  "elk.edgeRouting": "ORTHOGONAL",
  "elk.padding": "[top=0,left=0,bottom=0,right=0]",
  "elk.layered.thoroughness": "20",
  "elk.layered.nodePlacement.favorStraightEdges": "true",
  "elk.spacing.nodeNode": "6",
  "elk.layered.spacing.nodeNodeBetweenLayers": "8",
  "elk.spacing.edgeEdge": "2",
  "elk.spacing.edgeNode": "3",
  "elk.layered.spacing.edgeEdgeBetweenLayers": "2",
  "elk.layered.spacing.edgeNodeBetweenLayers": "3",
  "elk.spacing.componentComponent": "10",
};

/** A question in the library's form, to be laid out in one of the ways. */
export function elkGraph({ nodes, edges }: ArrangeQuestion, way: ElkOptions): ElkGraph {
  return {
    id: "page",
    layoutOptions: { ...ALWAYS, ...way },
    children: nodes.map(elkNode),
    edges: edges.map(({ id, from, to }) => ({ id, sources: [from], targets: [to] })),
  };
}

/** Feeds come above and grounds below since wires point downwards: a fixed first layer is refused where feeds are in series. */
function elkNode({ id, poses: [{ width, height, ports }] }: ArrangeNode): ElkNode {
  return {
    id,
    width,
    height,
    layoutOptions: { "elk.portConstraints": "FIXED_POS" },
    ports: ports.map(({ id: port, x, y, side }) => ({
      id: port,
      x,
      y,
      layoutOptions: { "elk.port.side": SIDES[side] },
    })),
  };
}

/** Where the library has put the parts. */
export function elkAnswer({ children = [] }: ElkGraph): ArrangeAnswer {
  return Object.fromEntries(children.map(({ id, x = 0, y = 0 }) => [id, { x, y }]));
}
