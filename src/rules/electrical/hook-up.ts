import type { Shore } from '../../build/electrical.ts';
import { dropShare, leadDropV } from '../../calc/electrical/hook-up-lead.ts';
import { copperTemperatureFactor } from '../../calc/electrical/resistance.ts';
import { ampacityOf } from '../../catalogue/electrical/ampacity.ts';
import type { Conductor } from '../../catalogue/electrical/conductors.ts';
import {
  drumCitations,
  drumShares,
  hookUpLength,
  hookUpSizeFor,
  hookUpSizes,
} from '../../catalogue/electrical/leisure-mains.ts';
import type { Finding, PlanPath, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import {
  crossSectionMm2,
  current,
  factor,
  length,
  resistancePerMetre,
  share,
  temperatureC,
  voltage,
} from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { electricalCaution, mainsCaution } from '../cautions.ts';
import { electrical } from '../circuits.ts';
import { foldPasses } from '../fold-passes.ts';

/** What the plainest rubber flex bears, and the temperature that its tables hold for. */
const flexC = 60;

const text: RuleText = {
  id: 'electrical.hook-up',
  topic: 'electrical',
  title: 'hook-up lead',
  why: 'A thin, long or coiled lead gets hot at full current, melts on its drum, and leaves too little voltage for heaters and chargers.',
  formula:
    'A ≥ A_min of the plug’s rating; L ≤ 27 m; coiled: I ≤ k · I_z; ΔU = 2 · L · r · I; A conductor in mm², L length in m, I supply current and I_z current of the lead in A, k share on a drum, r resistance of a conductor at 60 °C in Ω/m, ΔU drop in V',
  sources: [
    { title: 'The drop follows from the circuit, out and back', provenance: 'computed' },
    { title: 'The lead’s copper counted at 60 °C', provenance: 'common practice' },
  ],
  cautions: [electricalCaution, mainsCaution],
  fix: 'Take a shorter or thicker lead, and unroll it.',
  lifeSafety: true,
  place: ['electrical', 'shore', 'lead'],
};

interface Lead {
  readonly shore: Shore;
  readonly lengthM: number;
  readonly conductor: Conductor;
  readonly coiled: boolean;
}

const lead: Need<Lead> = (build) => {
  const found = electrical(build);
  if (!found.ok) return found;
  const { shore } = found.value;
  if (!shore) return missing('electrical.shore');
  if (!shore.lead) return missing('electrical.shore.lead');
  const { lengthM, conductor, coiled } = shore.lead;
  return conductor
    ? given({ shore, lengthM, conductor, coiled })
    : missing('electrical.shore.lead.conductor');
};

export default defineRule({
  ...text,
  needs: { lead },
  check: ({ facts }) => ({
    findings: foldPasses(
      [...bySize(facts.lead), byLength(facts.lead), ...(facts.lead.coiled ? [onDrum(facts.lead)] : [])],
      'figure of the lead',
      'figures of the lead',
    ),
  }),
  work: ({ facts }, { subject, measured }) => (measured ? stepsOf(facts.lead, subject) : undefined),
});

function stepsOf(given: Lead, subject: string): readonly Step[] | undefined {
  const { shore, lengthM, conductor } = given;
  const supply: PlanPath = [...shore.path, 'current'];
  const size: PlanPath = [...text.place, 'conductor'];
  if (subject === onDrumSubject) {
    const { listedA, coiledA } = coiledFigures(conductor);
    return [
      {
        what: 'What the lead carries unrolled: I_z, from the table',
        sum: say`${crossSectionMm2(conductor.areaMm2)}, insulation for ${temperatureC(flexC)}`,
        result: current(listedA),
        paths: [size],
      },
      {
        what: 'What it carries coiled, counted as four layers on a drum: k · I_z',
        sum: say`${share(drumShare)} · ${current(listedA)}`,
        result: current(coiledA),
        paths: [[...text.place, 'coiled']],
      },
      { what: 'What the supply gives: I', result: current(shore.currentA), paths: [supply] },
    ];
  }
  if (subject === lengthSubject)
    return [
      ...lossSteps(given),
      {
        what: 'How long it may be by the rules for leisure vehicles',
        sum: say`${length(hookUpLength.lengthM)} + ${length(hookUpLength.toleranceM)}`,
        result: length(mostM),
      },
      { what: 'How long it is: L', result: length(lengthM), paths: [[...text.place, 'length']] },
    ];
  const row = hookUpSizeFor(shore.currentA);
  if (!row) return undefined;
  return [
    ...lossSteps(given),
    {
      what: 'The least size for the plug: A_min, from the table',
      sum: say`the row for plugs of up to ${current(row.ratingA)}, for a supply of ${current(shore.currentA)}`,
      result: crossSectionMm2(row.areaMm2),
      paths: [supply],
    },
    { what: 'The size of the lead: A', result: crossSectionMm2(conductor.areaMm2), paths: [size] },
  ];
}

/** Resistance and loss at full current: shown with the size and the length, though no limit is set to it here. */
function lossSteps(given: Lead): readonly Step[] {
  const { shore, lengthM, conductor } = given;
  const { conductorOhmPerM, dropV } = lossOf(given);
  return [
    {
      what: 'The resistance of a metre of one conductor, warm: r',
      sum: say`${resistancePerMetre(conductor.resistanceOhmPerM)} · ${factor(copperTemperatureFactor(flexC, conductor.resistanceAtC))}; from ${temperatureC(conductor.resistanceAtC)} in the table to ${temperatureC(flexC)}`,
      result: resistancePerMetre(conductorOhmPerM),
      paths: [[...text.place, 'conductor']],
    },
    {
      what: 'What the lead loses at full current, out and back: ΔU = 2 · L · r · I',
      sum: say`2 · ${length(lengthM)} · ${resistancePerMetre(conductorOhmPerM)} · ${current(shore.currentA)}`,
      result: voltage(dropV),
      paths: [
        [...text.place, 'length'],
        [...shore.path, 'current'],
      ],
    },
  ];
}

function lossOf({ shore, lengthM, conductor }: Lead) {
  const conductorOhmPerM =
    conductor.resistanceOhmPerM * copperTemperatureFactor(flexC, conductor.resistanceAtC);
  return { conductorOhmPerM, dropV: leadDropV(shore.currentA, { lengthM, conductorOhmPerM }) };
}

/** What is lost at full current. */
function loss(given: Lead): Phrase {
  const { shore } = given;
  const { dropV } = lossOf(given);
  return say`it loses ${voltage(dropV)} of ${voltage(shore.voltageV)} (${share(dropShare(dropV, shore.voltageV))}) at ${current(shore.currentA)}`;
}

function bySize(given: Lead): readonly Finding[] {
  const { shore, conductor, lengthM } = given;
  const row = hookUpSizeFor(shore.currentA);
  if (!row) return [];
  return [
    judge({
      rule: text,
      subject: 'size of the lead',
      path: [...text.place, 'conductor'],
      kind: 'cross-section',
      measured: { value: conductor.areaMm2 * 1e-6, standard: 0 },
      limit: row.areaMm2 * 1e-6,
      sense: 'at least',
      broken: 'warn',
      reason: say`The lead of ${length(lengthM)} has ${crossSectionMm2(conductor.areaMm2)}; a plug of up to ${current(row.ratingA)} asks for ${crossSectionMm2(row.areaMm2)}, and ${loss(given)}.`,
      remedy: () => {
        const carries = hookUpSizes.findLast(({ areaMm2 }) => areaMm2 <= conductor.areaMm2 * (1 + 1e-9));
        return say`Take a lead of ${crossSectionMm2(row.areaMm2)}${carries ? say`, or draw no more than ${current(carries.ratingA)} through this one` : []}.`;
      },
      sources: row.citations,
    }),
  ];
}

const lengthSubject = 'length of the lead';
const mostM = hookUpLength.lengthM + hookUpLength.toleranceM;

function byLength(given: Lead): Finding {
  return judge({
    rule: text,
    subject: lengthSubject,
    path: [...text.place, 'length'],
    kind: 'length',
    measured: { value: given.lengthM, standard: 0 },
    limit: mostM,
    sense: 'at most',
    broken: 'warn',
    reason: say`The lead is ${length(given.lengthM)} long, and ${loss(given)}; one of ${length(hookUpLength.lengthM)}, give or take ${length(hookUpLength.toleranceM)}, in one piece is what the rules for leisure vehicles know.`,
    remedy: () => say`Take a lead of at most ${length(mostM)}, in one piece.`,
    sources: hookUpLength.citations,
    cautions: [hookUpLength.caution],
  });
}

/** How many layers lie on the drum the plan does not say: the most that are listed. */
const drumShare = Math.min(...drumShares.map((row) => row.share));
const mostLayers: { readonly title: string; readonly provenance: 'own choice' } = {
  title: 'A coiled lead counts as one of four layers on a drum',
  provenance: 'own choice',
};

const onDrumSubject = 'coiled lead';

function coiledFigures({ areaMm2 }: Conductor) {
  const listed =
    ampacityOf('heavy flexible cable', areaMm2, flexC) ?? ampacityOf('flexible cord', areaMm2, flexC);
  const listedA = listed?.currentA ?? 0;
  return { listed, listedA, coiledA: drumShare * listedA };
}

function onDrum({ shore, conductor }: Lead): Finding {
  const { areaMm2 } = conductor;
  const { listed, coiledA } = coiledFigures(conductor);
  return judge({
    rule: text,
    subject: onDrumSubject,
    path: [...text.place, 'coiled'],
    kind: 'current',
    measured: { value: shore.currentA, standard: 0 },
    limit: coiledA,
    sense: 'at most',
    broken: 'warn',
    reason: say`The lead of ${crossSectionMm2(areaMm2)} stays coiled: in layers on a drum it carries ${share(drumShare)} of its current, ${current(coiledA)}, and the supply gives ${current(shore.currentA)}.`,
    remedy: () =>
      say`Unroll the whole lead whenever it is used, or draw no more than ${current(Math.floor(coiledA * 10 + 1e-9) / 10)} through it.`,
    sources: [...drumCitations, ...(listed?.citations ?? []), mostLayers],
  });
}
