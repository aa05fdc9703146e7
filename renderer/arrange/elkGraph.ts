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

/** One way of laying a page out: the library's options beside those that all ways share. */
export type Way = Readonly<Record<string, string>>;

const SIDES: Readonly<Record<Side, string>> = { up: "NORTH", down: "SOUTH", left: "WEST", right: "EAST" };

/** From feed to ground downwards, terminals where the symbols have them, wires at right angles; lengths in grid units. */
const ALWAYS: Way = {
  "elk.algorithm": "layered",
  "elk.direction": "DOWN",
  "elk.edgeRouting": "ORTHOGONAL",
  "elk.padding": "[top=0,left=0,bottom=0,right=0]",
  "elk.spacing.edgeEdge": "2",
  "elk.spacing.edgeNode": "3",
  "elk.layered.spacing.edgeEdgeBetweenLayers": "2",
  "elk.layered.spacing.edgeNodeBetweenLayers": "3",
  "elk.spacing.componentComponent": "10",
};

/** A question in the library's form. */
export function elkGraph({ nodes, edges }: ArrangeQuestion, way: Way): ElkGraph {
  const { grounds, ...options } = way;
  return {
    id: "page",
    layoutOptions: { ...ALWAYS, ...options },
    children: nodes.map((node) => elkNode(node, grounds === "last")),
    edges: edges.map(({ id, from, to }) => ({ id, sources: [from], targets: [to] })),
  };
}

function elkNode({ id, poses: [{ width, height, ports }], order }: ArrangeNode, isGroundLast: boolean): ElkNode {
  const layer = order === "first" && isGroundLast ? "FIRST" : order === "last" && isGroundLast ? "LAST" : "NONE";
  return {
    id,
    width,
    height,
    layoutOptions: { "elk.portConstraints": "FIXED_POS", "elk.layered.layering.layerConstraint": layer },
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
