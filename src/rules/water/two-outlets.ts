import { colebrookPaper } from '../../catalogue/water/sources.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { flow, pressure, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { pairOf } from '../pair.ts';
import { flowThrough, type KnownSupply, networkCitations } from '../water-network.ts';
import { assumedOf, curveOf, lossTableText, type Supplies, supplies } from '../water-supplies.ts';
import { sharedFlowSteps } from '../working/flow.ts';

/** With another outlet open, each should still have so much of what it has to give. */
const LEAST_SHARE = 0.5;

const text: RuleText = {
  id: 'water.two-outlets',
  topic: 'water',
  title: 'flow with two outlets open',
  why: 'When someone rinses a cup while another showers, both share one pump and one pipe: the shower turns cold or stops.',
  formula:
    'p_pump(Q₁ + Q₂) = Δp_shared(Q₁ + Q₂) + p_j; p_j = Δp_i(Q_i) + ρ·g·h_i + p_n,i·(Q_i/Q_n,i)² for both outlets; the two that want most, each by the way that gives less; the lesser Q_i / Q_n,i in per cent',
  sources: [
    colebrookPaper,
    {
      title: `With two outlets open, each keeps ${LEAST_SHARE * 100} % of the flow that is wanted`,
      provenance: 'own choice',
      caution: 'A matter of comfort: it only warns.',
    },
  ],
  cautions: [waterCaution],
  fix: 'Take a wider common pipe or a stronger pump, or use one outlet at a time.',
  place: ['water', 'outlets'],
};

interface Pair {
  readonly all: Supplies;
  readonly both: readonly [KnownSupply, KnownSupply];
}

/** The two outlets that want most, each by the way on which it gets less. */
const hungriest: Need<Pair | 'one outlet'> = (build) => {
  if (build.water?.outlets.length === 1) return given('one outlet');
  const found = supplies(build);
  if (!found.ok) return found;
  const all = found.value;
  const ways = new Map<string, KnownSupply>();
  for (const supply of all.known) {
    const other = ways.get(supply.outlet.name);
    if (!other || aloneAt(all, supply) < aloneAt(all, other)) ways.set(supply.outlet.name, supply);
  }
  const [first, ...others] = [...ways.values()].toSorted(
    (a, b) => b.wanted.flowM3PerS - a.wanted.flowM3PerS || (a.outlet.name < b.outlet.name ? -1 : 1),
  );
  const second = others.find(({ isPumped }) => isPumped === first?.isPumped);
  if (first && second) return given({ all, both: [first, second] });
  return missing(...(all.missing.length > 0 ? all.missing : ['water.outlets']));
};

const aloneAt = (all: Supplies, supply: KnownSupply): number =>
  flowThrough(all.water, [supply], curveOf(all, supply)).totalM3S;

export default defineRule({
  ...text,
  needs: { pair: hungriest },
  check: ({ facts }) => {
    if (facts.pair === 'one outlet') return { findings: [oneOutlet] };
    return { findings: [findingOf(lackingOf(facts.pair))] };
  },
  work: ({ facts: { pair } }) => {
    if (pair === 'one outlet') return undefined;
    const { all, supply, other, flowM3S } = lackingOf(pair);
    const { outlet, wanted } = supply;
    return [
      ...sharedFlowSteps(all, supply, other),
      {
        what: `How much of what ${outlet.name} should give that is: Q / Q_n, the lesser of the two`,
        sum: say`${flow(flowM3S)} / ${flow(wanted.flowM3PerS)}`,
        result: share(flowM3S / wanted.flowM3PerS),
        paths: [[...outlet.path, 'flow']],
      },
    ];
  },
});

/** The one of the two that gets less of what it wants. */
function lackingOf({ all, both }: Pair): Open {
  const { branches, pumpPa } = flowThrough(all.water, both, curveOf(all, both[0]));
  const shares = branches.map(({ nominalShare }) => nominalShare);
  const [first, second] = both;
  const [supply, other] = (shares[0] ?? 0) <= (shares[1] ?? 0) ? [first, second] : [second, first];
  const flowM3S = Math.min(...shares) * supply.wanted.flowM3PerS;
  return { all, supply, other, flowM3S, pumpPa };
}

const oneOutlet = observed(text, {
  verdict: 'pass',
  subject: 'outlets',
  path: text.place,
  reason: say`The plan has one outlet: nothing else takes water while it is open.`,
});

interface Open {
  readonly all: Supplies;
  readonly supply: KnownSupply;
  readonly other: KnownSupply;
  readonly flowM3S: number;
  readonly pumpPa: number;
}

function findingOf({ all, supply, other, flowM3S, pumpPa }: Open): Finding {
  const { outlet, wanted, pipes, isPumped } = supply;
  const drive = isPumped ? say`the pump at ${pressure(pumpPa)}` : say`the height of the tank`;
  return judge({
    rule: text,
    subject: pairOf(supply.outlet.name, other.outlet.name),
    path: outlet.path,
    kind: 'share',
    measured: { value: flowM3S / wanted.flowM3PerS, standard: 0 },
    limit: LEAST_SHARE,
    sense: 'at least',
    broken: 'warn',
    reason: say`While ${other.outlet.name} is open too, ${outlet.name} gives ${flow(flowM3S)} of ${supply.kind} water; ${flow(wanted.flowM3PerS)} are wanted, with ${drive}.${assumedOf(supply)} ${lossTableText}`,
    sources: [...wanted.citations, ...networkCitations(pipes)],
    remedy: () => remedyOf(all, supply, other),
  });
}

/** The least open flow of a pump of the same cut-out that is enough, in whole litres a minute. */
function remedyOf(all: Supplies, supply: KnownSupply, other: KnownSupply): Phrase {
  const { pump } = all.water;
  const apart = say`Open one at a time, or give ${supply.outlet.name} a pipe of its own from the pump`;
  const shutOffPa = all.curve?.[0]?.pressurePa;
  if (!pump || shutOffPa === undefined || !supply.isPumped) return say`${apart}.`;
  for (let litres = 5; litres <= 30; litres += 1) {
    const openM3S = litres / 60_000;
    const curve = [
      { flowM3S: 0, pressurePa: shutOffPa },
      { flowM3S: openM3S, pressurePa: 0 },
    ];
    const { branches } = flowThrough(all.water, [supply, other], curve);
    const least = Math.min(...branches.map(({ nominalShare }) => nominalShare));
    if (!exceeds(LEAST_SHARE, least))
      return say`${apart}, or take a pump of ${flow(openM3S)} open flow that stops at ${pressure(shutOffPa)}: with it ${share(least)} are left.`;
  }
  return say`${apart}; no small pump that stops at ${pressure(shutOffPa)} is enough with these pipes.`;
}
