import { columnPa, seriesLossPa } from '../../calc/water/pipe-loss.ts';
import type { SolvedFlow } from '../../calc/water/solve-flow.ts';
import { colebrookPaper } from '../../catalogue/water/sources.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { flow, pressure } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import {
  flowThrough,
  type KnownSupply,
  liquidOf,
  lossesOf,
  networkCitations,
  segmentOf,
} from '../water-network.ts';
import {
  assumedOf,
  curveOf,
  heightText,
  lossTableText,
  type Supplies,
  supplies,
  supplyName,
} from '../water-supplies.ts';
import { widerThan } from '../wider-pipes.ts';
import { flowSteps } from '../working/flow.ts';

/** Less than this part of what is wanted fails, where the plan itself says what is wanted. */
const FAILS_BELOW = 0.5;

const text: RuleText = {
  id: 'water.flow',
  topic: 'water',
  title: 'flow at each outlet',
  why: 'A shower that only drips uses as much patience as water: what a pump promises on its label is gone after a few metres of narrow pipe.',
  formula:
    'p_pump(Q) = Σ (f·L/D + ΣK)·ρ·v²/2 + ρ·g·h + p_n·(Q/Q_n)²; f by Colebrook–White; L, D length and inner diameter, m; v = 4·Q/(π·D²), m/s; h outlet above the bottom of the tank, m; Q_n and p_n flow and pressure that the outlet is made for; K of a tee to the side where a pipe begins at a tee and counts none',
  sources: [
    colebrookPaper,
    {
      title: `Less than ${FAILS_BELOW * 100} % of the flow that the plan asks for fails, less than all of it warns`,
      provenance: 'own choice',
    },
    {
      title: 'Where only cut-out and open flow of a pump are known, its pressure falls straight between them',
      provenance: 'own choice',
      caution:
        'A curve measured by the maker comes first. What heaters, filters and strainers lose is not counted.',
    },
  ],
  cautions: [waterCaution],
  fix: 'Take wider or shorter pipes with fewer bends, or a pump with more pressure.',
  place: ['water', 'outlets'],
};

export default defineRule({
  ...text,
  needs: { supplies },
  check: ({ facts }) => {
    const findings = facts.supplies.known.map((supply) => findingOf(facts.supplies, supply));
    return {
      findings: [...foldPasses(findings, 'way to an outlet', 'ways to outlets'), ...notKnown(facts.supplies)],
    };
  },
  work: ({ facts }, { subject }) => {
    const supply = facts.supplies.known.find((each) => supplyName(each) === subject);
    return supply && flowSteps(facts.supplies, supply);
  },
});

function findingOf(all: Supplies, supply: KnownSupply): Finding {
  const { water } = all;
  const { outlet, wanted, pipes } = supply;
  const solved = flowThrough(water, [supply], curveOf(all, supply));
  const actual = solved.totalM3S;
  const far = exceeds(FAILS_BELOW * wanted.flowM3PerS, actual) && wanted.flowGiven;
  return judge({
    rule: text,
    subject: supplyName(supply),
    path: outlet.path,
    kind: 'flow',
    measured: { value: actual, standard: 0 },
    limit: wanted.flowM3PerS,
    sense: 'at least',
    broken: actual === 0 || far ? 'fail' : 'warn',
    reason: actual === 0 ? nothing(supply, solved) : working(all, supply, solved),
    sources: [...wanted.citations, ...networkCitations(pipes)],
    remedy: () => remedyOf(all, supply),
  });
}

function nothing({ outlet, kind, riseM }: KnownSupply, { pumpPa }: SolvedFlow): Phrase {
  const column = say`${outlet.name} lies ${heightText(riseM)} the bottom of the tank`;
  return pumpPa > 0
    ? say`No ${kind} water comes out of ${outlet.name}: ${column}, and the pump's ${pressure(pumpPa)} do not lift it there.`
    : say`No ${kind} water comes out of ${outlet.name}: ${column}, and no pump lifts it there.`;
}

/** Pressure, loss, height and rest, as one would add them up on paper. */
function working({ water }: Supplies, supply: KnownSupply, solved: SolvedFlow): Phrase {
  const { outlet, kind, riseM, wanted, pipes, isPumped } = supply;
  const [branch] = solved.branches;
  const losses = lossesOf(water, supply, solved.totalM3S);
  const worst = losses.indexOf(Math.max(...losses));
  const source = isPumped
    ? say`Of the pump's ${pressure(solved.pumpPa)} at this flow`
    : say`From the height of the tank`;
  const most = pipes.length > 1 ? `, most of it in ${pipes[worst]?.name ?? ''}` : '';
  return say`${outlet.name} gives ${flow(solved.totalM3S)} of ${kind} water with nothing else open; ${flow(wanted.flowM3PerS)} are wanted. ${source}, the pipes lose ${pressure(solved.trunkLossPa + (branch?.lossPa ?? 0))}${most}, and ${pressure(branch?.outletPa ?? 0)} are left at the outlet, ${heightText(riseM)} the bottom of the tank.${assumedOf(supply)} ${lossTableText}`;
}

function remedyOf(all: Supplies, supply: KnownSupply): Phrase {
  const { water } = all;
  const { wanted, pipes, segments, riseM, isPumped } = supply;
  const losses = lossesOf(water, supply, wanted.flowM3PerS);
  const worst = losses.indexOf(Math.max(...losses));
  const pipe = pipes[worst];
  const boreM = segments[worst]?.innerDiameterM;
  const gives = (wide: readonly (typeof segments)[number][]): boolean =>
    !exceeds(
      wanted.flowM3PerS,
      flowThrough(water, [{ ...supply, segments: wide }], curveOf(all, supply)).totalM3S,
    );
  if (pipe && boreM !== undefined)
    for (const { narrowestM, text: size } of widerThan(pipe, boreM)) {
      const wide = segmentOf(pipe, water, narrowestM);
      if (wide && gives(segments.map((segment, index) => (index === worst ? wide : segment))))
        return say`Make ${pipe.name}, which loses most, of ${size}: that is enough.`;
    }
  const liquid = liquidOf(water);
  const neededPa =
    seriesLossPa(wanted.flowM3PerS, segments, liquid) +
    columnPa(riseM, liquid.densityKgM3) +
    wanted.pressurePa;
  return isPumped
    ? say`One wider pipe is not enough. With these pipes it takes a pump that keeps ${pressure(neededPa)} at ${flow(wanted.flowM3PerS)}; or an outlet made for a lower pressure.`
    : say`One wider pipe is not enough. With these pipes it takes ${pressure(neededPa)} at ${flow(wanted.flowM3PerS)} from a pump.`;
}

function notKnown({ missing, known }: Supplies): Finding[] {
  if (missing.length === 0) return [];
  return [
    observed(text, {
      verdict: 'not checked',
      subject: 'other ways to outlets',
      path: text.place,
      reason: say`${known.length === 1 ? 'One way is' : `${known.length} ways are`} known from tank to outlet. The others need the pump's duty, an outlet's height, and material, size and length of each pipe on the way.`,
      remedy: say`Add ${missing.map((key) => `\`${key}\``).join(', ')}.`,
      missing,
    }),
  ];
}
