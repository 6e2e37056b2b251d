import Graph from 'graphology';
import { bidirectional } from 'graphology-shortest-path/dijkstra.js';
import { finite, notNegative } from '../argument.ts';

/** A way between two named points that cables, pipes or ducts may take, in either direction. */
export interface Chase {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly lengthM: number;
}

/** A way through chases. */
export interface Route<C extends Chase> {
  readonly lengthM: number;
  /** In the order in which they are passed; empty from a point to itself. */
  readonly chases: readonly C[];
}

/** A point in the van: rearward, to the right, above the floor. */
export interface PlaceInVan {
  readonly xM: number;
  readonly yM: number;
  readonly zM: number;
}

/**
 * Finds shortest ways through the permitted chases: from one named point to another, or undefined if there is none. Of
 * chases between the same two points the shortest serves, of equally long ones the first.
 *
 * Lengths are ≥ 0. A point that no permitted chase ends at is reached from itself only. Throws RangeError if a permitted
 * chase's length is negative or not finite.
 *
 * Method: E. W. Dijkstra, "A note on two problems in connexion with graphs", Numerische Mathematik 1 (1959) (memory),
 * from both ends, by the graph library.
 */
export function routesThrough<C extends Chase>(
  chases: readonly C[],
  permitted: (chase: C) => boolean,
): (from: string, to: string) => Route<C> | undefined {
  // The library keeps points as keys of plain objects, in which a point named "constructor" would seem to be known
  // already; numbered keys cannot clash.
  const keys = new Map<string, string>();
  const graph = new Graph<{ [name: string]: never }, { lengthM: number; chase: C }>({ type: 'undirected' });
  const keyOf = (point: string): string => {
    const known = keys.get(point);
    if (known !== undefined) return known;
    const key = `p${keys.size}`;
    keys.set(point, key);
    graph.addNode(key);
    return key;
  };
  for (const chase of chases) {
    if (!permitted(chase)) continue;
    const { lengthM } = chase;
    notNegative(lengthM, `The length of the chase "${chase.id}"`);
    const [a, b] = [keyOf(chase.from), keyOf(chase.to)];
    if (a === b) continue;
    const known = graph.edge(a, b);
    if (known === undefined) graph.addEdge(a, b, { lengthM, chase });
    else if (lengthM < graph.getEdgeAttribute(known, 'lengthM')) {
      graph.replaceEdgeAttributes(known, { lengthM, chase });
    }
  }
  return (from, to) => {
    const points: string[] | null = bidirectional(graph, keyOf(from), keyOf(to), 'lengthM');
    if (points === null) return undefined;
    const passed = points.slice(1).map((point, index) => {
      const edge = graph.edge(points[index], point);
      return graph.getEdgeAttribute(edge, 'chase');
    });
    return { lengthM: passed.reduce((sum, chase) => sum + chase.lengthM, 0), chases: passed };
  };
}

/** One way as `routesThrough` finds it; for several, find them all through the same chases at once. */
export const shortestRoute = <C extends Chase>(
  chases: readonly C[],
  from: string,
  to: string,
  permitted: (chase: C) => boolean,
): Route<C> | undefined => routesThrough(chases, permitted)(from, to);

/**
 * The way between two places along the van, across it and up or down, m: what a cable clipped along edges takes where
 * no chase is planned.
 *
 *     d = |Δx| + |Δy| + |Δz|
 *
 * Throws RangeError if a value is not finite.
 */
export function rectilinearDistance(a: PlaceInVan, b: PlaceInVan): number {
  const apart = (from: number, to: number) => Math.abs(finite(to, 'A place') - finite(from, 'A place'));
  return apart(a.xM, b.xM) + apart(a.yM, b.yM) + apart(a.zM, b.zM);
}
