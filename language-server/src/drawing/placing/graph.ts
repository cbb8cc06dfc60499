import type { ElkNode } from "../engine.js";
import { engine } from "../engine.js";

/** How the layout engine is to work. Ids in a graph are numbers: equal graphs are placed once, whatever they are of. */
const options: Readonly<Record<string, string>> = {
  "elk.algorithm": "layered",
  "elk.direction": "RIGHT",
  "elk.edgeRouting": "ORTHOGONAL",
  "elk.randomSeed": "1",
  // The order of the text decides wherever nothing else does: a new line moves what stands behind it, and no more.
  "elk.layered.considerModelOrder.strategy": "NODES_AND_EDGES",
  "elk.layered.crossingMinimization.semiInteractive": "false",
  "elk.layered.nodePlacement.strategy": "NETWORK_SIMPLEX",
  "elk.layered.nodePlacement.favorStraightEdges": "true",
  "elk.layered.thoroughness": "4",
  // The order of the text leaves nothing for it to mend, and it takes half of the time.
  "elk.layered.crossingMinimization.greedySwitch.type": "OFF",
  "elk.edgeLabels.placement": "CENTER",
  "elk.layered.edgeLabels.sideSelection": "ALWAYS_UP",
  "elk.layered.spacing.nodeNodeBetweenLayers": "8",
  "elk.layered.spacing.edgeNodeBetweenLayers": "10",
  "elk.layered.spacing.edgeEdgeBetweenLayers": "12",
  "elk.spacing.nodeNode": "22",
  "elk.spacing.edgeNode": "16",
  "elk.spacing.edgeEdge": "14",
  "elk.spacing.edgeLabel": "3",
  "elk.spacing.labelNode": "6",
  "elk.spacing.componentComponent": "40",
  "elk.aspectRatio": "1.9",
  "elk.padding": "[top=0,left=0,bottom=0,right=0]",
};

/**
 * From so many nodes on, straightness is sought in a way whose time grows with their number alone: a few crossings more
 * for a tenth of the time.
 */
const manyNodes = 60;
const forMany: Readonly<Record<string, string>> = {
  ...options,
  "elk.layered.nodePlacement.strategy": "BRANDES_KOEPF",
  "elk.layered.thoroughness": "1",
};

export interface Graph {
  readonly children: NonNullable<ElkNode["children"]>;
  readonly edges: NonNullable<ElkNode["edges"]>;
  readonly options?: Readonly<Record<string, string>>;
}

/** The graphs that were asked for last. A change of the text changes few of them, and often none. */
const remembered = new Map<string, Promise<ElkNode>>();
const most = 200;

/** The graph with a place for everything: the same for the same graph, on every machine. What is returned is shared. */
export function placed({ children, edges, options: own = {} }: Graph): Promise<ElkNode> {
  const usual = children.length < manyNodes ? options : forMany;
  const graph: ElkNode = { id: "sheet", layoutOptions: { ...usual, ...own }, children, edges };
  const key = JSON.stringify(graph);
  const known = remembered.get(key);
  if (known) remembered.delete(key);
  const result = known ?? engine().then((elk) => elk.layout(graph));
  remembered.set(key, result);
  if (remembered.size > most) remembered.delete(remembered.keys().next().value!);
  return result;
}
