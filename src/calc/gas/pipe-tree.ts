import { notNegative } from '../argument.ts';
import { type GasTube, gasDropPa, type Vapour } from './pipe-flow.ts';

/** A tube from one point to the next, away from the regulator. */
export interface GasSection extends GasTube {
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

export interface GasSectionFlow {
  readonly name: string;
  /** Of all appliances behind it, all on. */
  readonly flowM3S: number;
  readonly dropPa: number;
}

export interface GasTree {
  /** Of each point fed, the root with 0: lost between the root and it, Pa. */
  readonly dropPaAt: ReadonlyMap<string, number>;
  /** In the order given; those that the root does not feed are left out. */
  readonly sections: readonly GasSectionFlow[];
  /** Appliances that no section reaches from the root, in the order given. */
  readonly unfed: readonly string[];
}

/**
 * Pressure lost from the regulator to every point of a branching pipe with all appliances on.
 *
 *     Q_section = Σ Q of the appliances behind it        Δp_point = Σ Δp of the sections on the way
 *
 * root: where the tree begins. demands: flow drawn at a point, m³/s (≥ 0), keyed by its name.
 *
 * Throws RangeError if a point is fed twice (a ring), the sections run back into the root, or a value is out of the range
 * of {@link gasDropPa}.
 */
export function gasTreeOf(
  root: string,
  sections: readonly GasSection[],
  demands: ReadonlyMap<string, number>,
  vapour: Vapour,
): GasTree {
  const feeds = new Map<string, GasSection>();
  const leaving = new Map<string, GasSection[]>();
  for (const section of sections) {
    if (feeds.has(section.to) || section.to === root)
      throw new RangeError(`"${section.to}" is fed twice: the pipes must branch like a tree.`);
    feeds.set(section.to, section);
    leaving.set(section.from, [...(leaving.get(section.from) ?? []), section]);
  }
  // Breadth first, so that what feeds a point stands before it; what lies in a loop apart is never reached.
  const reached = [root];
  for (const point of reached) for (const { to } of leaving.get(point) ?? []) reached.push(to);
  const flows = new Map<string, number>();
  for (const point of reached.toReversed()) {
    const behind = (leaving.get(point) ?? []).reduce((sum, { to }) => sum + (flows.get(to) ?? 0), 0);
    flows.set(point, behind + notNegative(demands.get(point) ?? 0, 'The flow to an appliance'));
  }
  const dropPaAt = new Map<string, number>([[root, 0]]);
  const found = new Map<string, GasSectionFlow>();
  for (const point of reached) {
    for (const section of leaving.get(point) ?? []) {
      const flowM3S = flows.get(section.to) ?? 0;
      const { dropPa } = gasDropPa(section, flowM3S, vapour);
      found.set(section.name, { name: section.name, flowM3S, dropPa });
      dropPaAt.set(section.to, (dropPaAt.get(point) ?? 0) + dropPa);
    }
  }
  return {
    dropPaAt,
    sections: sections.flatMap(({ name }) => found.get(name) ?? []),
    unfed: [...demands.keys()].filter((point) => !dropPaAt.has(point)),
  };
}
