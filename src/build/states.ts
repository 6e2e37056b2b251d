import { allRuns } from '../plan/cross-check.ts';
import type { Fills, Plan } from '../plan/schema.ts';
import type { Body, Variable } from './body.ts';
import type { Filling, NamedState, Ticket } from './build.ts';

/** The plan's own load states. What a state does not name is full; waste tanks are empty. */
export function statesOf(plan: Plan, variables: readonly Variable[]): NamedState[] {
  return Object.entries(plan.load_states ?? {}).map(([name, fills]) => ({
    name,
    path: ['load_states', name],
    filling: fillingOf(fills, variables, (variable) =>
      variable.group === 'waste' ? variable.leastKg : variable.mostKg,
    ),
  }));
}

function fillingOf(
  fills: Fills,
  variables: readonly Variable[],
  otherwise: (variable: Variable) => number,
): Filling {
  return new Map(
    variables.map((variable) => {
      const fill = fillIn(fills, variable);
      return [variable.name, fill === undefined ? otherwise(variable) : massOf(fill, variable)];
    }),
  );
}

/** A store may be called `constructor`: only what the plan itself says counts. */
const fillIn = (fills: Fills, { name }: Variable): Fills[string] | undefined =>
  Object.hasOwn(fills, name) ? fills[name] : undefined;

function massOf(fill: Fills[string], variable: Variable): number {
  if (fill.kind === 'share') {
    // A share runs from empty to full, as on a gauge; of a person, from absent to aboard.
    const emptyKg = variable.group === 'people' ? 0 : variable.leastKg;
    return emptyKg + fill.value * (variable.mostKg - emptyKg);
  }
  return fill.kind === 'volume' ? fill.value * (variable.densityKgM3 ?? 1000) : fill.value;
}

/** Weighbridge tickets. What a ticket does not name was not aboard, the driver included. */
export function ticketsOf(
  plan: Plan,
  bodies: readonly Body[],
  variables: readonly Variable[],
  states: readonly NamedState[],
): Ticket[] {
  return Object.entries(plan.weighed ?? {}).map(([name, ticket]) => {
    const total = ticket.total ?? addUp(ticket.front, ticket.rear);
    const named =
      typeof ticket.state === 'string' ? states.find((state) => state.name === ticket.state) : undefined;
    const fills = typeof ticket.state === 'object' ? ticket.state : {};
    const unsaid = variables.filter((variable) => fillIn(fills, variable) === undefined);
    const nothing = (variable: Variable) => (variable.group === 'people' ? 0 : variable.leastKg);
    return {
      name,
      path: ['weighed', name],
      date: ticket.date,
      ...(ticket.front && { front: ticket.front }),
      ...(ticket.rear && { rear: ticket.rear }),
      total,
      filling: named?.filling ?? fillingOf(fills, variables, nothing),
      absent: withContents(ticket.without ?? [], bodies),
      assumed:
        named || unsaid.length === 0
          ? []
          : [`empty or not aboard when weighed: ${unsaid.map((variable) => variable.name).join(', ')}`],
    };
  });
}

type Weight = Ticket['total'];

function addUp(front: Weight | undefined, rear: Weight | undefined): Weight {
  return {
    value: (front?.value ?? 0) + (rear?.value ?? 0),
    halfWidth: Math.hypot(front?.halfWidth ?? 0, rear?.halfWidth ?? 0),
    shared: [...(front?.shared ?? []), ...(rear?.shared ?? [])],
  };
}

/** A thing that was not aboard did not hold anything either; `routes` stands for all cables and pipes. */
function withContents(absent: readonly string[], bodies: readonly Body[]): ReadonlySet<string> {
  const all = new Set(absent);
  if (all.has(allRuns)) for (const { sort, label } of bodies) if (sort === 'run') all.add(label);
  for (let before = -1; before !== all.size; ) {
    before = all.size;
    for (const body of bodies) if (body.host !== undefined && all.has(body.host)) all.add(body.label);
  }
  return all;
}
