import { worstFill, worstRatio } from '../calc/worst-fill.ts';
import type { LoadState } from '../engine/finding.ts';
import type { Body, VariableGroup } from './body.ts';
import type { Build, Filling } from './build.ts';
import { type Functional, sumOf, variableBodies } from './functional.ts';

/** The load state in which a sum over bodies is greatest, exactly. */
export function fillingWithGreatest<B extends Body>(
  bodies: readonly B[],
  functional: Functional<B>,
  supplyKg: number,
): Filling {
  const variables = inOrder(bodies);
  const masses = variables.map((body) => ({ ...rangeOf(body), effect: functional(body).perKg }));
  return filling(variables, worstFill(masses, supplyKg));
}

/** The load state in which a ratio of two sums over bodies is greatest, exactly. */
export function fillingWithGreatestRatio<B extends Body>(
  bodies: readonly B[],
  over: Functional<B>,
  under: Functional<B>,
  supplyKg: number,
): Filling {
  const variables = inOrder(bodies);
  const masses = variables.map((body) => ({
    ...rangeOf(body),
    over: over(body).perKg,
    under: under(body).perKg,
  }));
  const fixed = bodies.filter((body) => !body.variable);
  const nothing: Filling = new Map();
  const constant = {
    over: sumOf(fixed, over, nothing),
    under: sumOf(fixed, under, nothing),
  };
  return filling(variables, worstRatio(masses, constant, supplyKg));
}

/** Fresh before waste, so that where both are as bad the water is said to be in the fresh tank; then by name. */
function inOrder<B extends Body>(bodies: readonly B[]): readonly B[] {
  const rank = (body: B) => (body.variable?.group === 'waste' ? 1 : 0);
  return [...variableBodies(bodies)].sort((a, b) => rank(a) - rank(b) || (a.label < b.label ? -1 : 1));
}

function rangeOf({ variable }: Body) {
  return {
    leastKg: variable?.leastKg ?? 0,
    mostKg: variable?.mostKg ?? 0,
    shares: variable?.group === 'fresh' || variable?.group === 'waste',
  };
}

const filling = (variables: readonly Body[], chosen: readonly number[]): Filling =>
  new Map(variables.map((body, index) => [body.variable?.name ?? body.label, chosen[index] ?? 0]));

interface Described {
  readonly name: string;
  readonly share: number;
  readonly varies: boolean;
}

const groupWords: Record<Exclude<VariableGroup, 'people'>, string> = {
  fresh: 'fresh',
  waste: 'waste',
  fuel: 'fuel',
  gas: 'gas',
  stores: 'stores',
};

/** A filling in words: "fresh full, waste empty, 2 aboard, stores full". */
export function describe(build: Pick<Build, 'bodies' | 'persons'>, state: Filling): LoadState {
  const variables = variableBodies(build.bodies).flatMap(({ variable }) => (variable ? [variable] : []));
  const fills = variables.map((variable) => {
    const massKg = state.get(variable.name) ?? variable.leastKg;
    const leastKg = variable.group === 'people' ? 0 : variable.leastKg;
    const range = variable.mostKg - leastKg;
    return {
      varies: range > 0,
      name: variable.name,
      group: variable.group,
      massKg,
      share: range > 0 ? (massKg - leastKg) / range : 1,
    };
  });
  const parts: string[] = [];
  for (const group of ['fresh', 'waste', 'people', 'stores', 'fuel', 'gas'] as const) {
    const members = fills.filter((fill) => fill.group === group);
    if (group === 'people') {
      const seated = members.filter((fill) => fill.share > 0.5).length;
      // A driver who is part of the unladen mass has no body of his own.
      const aboard = seated + Math.max(0, build.persons - members.length);
      parts.push(`${aboard} aboard`);
    } else if (members.length > 0) parts.push(...groupText(groupWords[group], members));
  }
  return { text: parts.join(', '), fills: fills.map(({ name, massKg, share }) => ({ name, massKg, share })) };
}

/** "stores full", "stores full but bicycles empty", or, where no level stands out, each by its name. */
function groupText(word: string, all: readonly Described[]): string[] {
  // What is always aboard says nothing about a state.
  const members = all.filter(({ varies }) => varies);
  const levels = members.map(({ share }) => level(share));
  const usual = mostFrequent(levels);
  if (usual === undefined) return all.length > 0 ? [`${word} full`] : [];
  const odd = members.filter(({ share }) => level(share) !== usual);
  if (odd.length === 0) return [`${word} ${usual}`];
  if (odd.length * 2 >= members.length && members.length < 4)
    return members.map(({ name, share }) => `${name} ${level(share)}`);
  return [`${word} ${usual} but ${odd.map(({ name, share }) => `${name} ${level(share)}`).join(' and ')}`];
}

function mostFrequent(levels: readonly string[]): string | undefined {
  const count = (wanted: string) => levels.filter((each) => each === wanted).length;
  return levels.reduce<string | undefined>(
    (best, each) => (best !== undefined && count(best) >= count(each) ? best : each),
    undefined,
  );
}

function level(share: number): string {
  if (share <= 0.005) return 'empty';
  return share >= 0.995 ? 'full' : `${Math.round(share * 100)} % full`;
}
