import type { Layout, Solid } from '../../build/layout.ts';
import { bodyMeasuresCaution } from '../../catalogue/body-measures.ts';
import { lengthLimit } from '../../catalogue/fit-limits.ts';
import { shoulderBreadthTable, statureTable } from '../../catalogue/fit-sources.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { count, length, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type EffectiveLimit, type Need, type RuleText } from '../../engine/rule.ts';
import { bodyCaution, fitCaution } from '../cautions.ts';
import { layout, some } from '../needs.ts';
import { type Bed, bedsOf, lyingIn, type Peopled, peopled, shouldersM } from '../peopled-beds.ts';
import { statures, unknownStatures } from '../sleepers.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { bedLengthSteps, bedWidthSteps } from '../working/bed.ts';

const text: RuleText = {
  id: 'movement.bed-length',
  topic: 'movement',
  title: 'length of the bed',
  why: 'Who cannot stretch out does not sleep well, and no cushion makes a bed longer afterwards.',
  formula:
    'l ≥ S + 15 mm + clearance, S: stature of the tallest who sleeps there, mm; across the corners: the longest rectangle 520 mm wide (shoulders of a broad man, clothed) that lies on the mattress at any angle ≥ S + 15 mm. The tallest sleepers are put in the longest beds, and two in the widest',
  sources: [statureTable, shoulderBreadthTable],
  cautions: [fitCaution, bodyCaution, bodyMeasuresCaution],
  fix: 'Make the bed longer or turn it, and leave room beyond feet and head.',
  limits: ['bed-clearance', 'bed-width-single'],
  place: ['people', 'sleepers'],
};

const beds: Need<readonly Solid[]> = some('fixtures.NAME.is', bedsOf);

export default defineRule({
  ...text,
  override: { limit: 'bed-clearance', kinds: ['length'] },
  needs: { layout, statures, beds },
  check: ({ facts, limit }) => {
    const clearance = limit('bed-clearance');
    const single = limit('bed-width-single');
    const occupied = peopled(facts.beds, facts.layout, facts.statures);
    return {
      findings: occupied.flatMap((bed) => [
        ...(bed.tallestM === undefined ? [] : [lengthFinding(bed, bed.tallestM, clearance, facts.layout)]),
        ...widthFinding(bed, single),
      ]),
    };
  },
  work: ({ facts, limit }, { subject }) => {
    const occupied = peopled(facts.beds, facts.layout, facts.statures);
    const long = occupied.find(({ bed }) => bed.name === subject);
    if (long) return bedLengthSteps(long, limit('bed-clearance').value, facts.layout);
    const wide = occupied.find(({ bed }) => widthSubject(bed) === subject);
    return wide && bedWidthSteps(wide, limit('bed-width-single').value);
  },
});

const widthSubject = ({ name }: Solid): string => `${name}, width`;

function lengthFinding(bed: Peopled, statureM: number, clearance: EffectiveLimit, room: Layout): Finding {
  const { name, path } = bed.bed;
  const { how, lyingM, wantedM, diagonalM = 0, crossM } = lyingIn(bed, statureM, clearance.value);
  const common = {
    rule: text,
    subject: name,
    path: [...path, 'size'],
    kind: 'length',
    sense: 'at least',
    sources: clearance.citations,
    cautions: clearance.cautions,
  } as const;
  const about = say`${leaningWalls(bed)}${unknownStatures(room)}`;
  const longer = (byM: number) => lengthen(bed, upToMillimetre(byM));
  if (how === 'straight')
    return judge({
      ...common,
      measured: { value: bed.lengthM, standard: 0 },
      limit: wantedM,
      broken: clearance.failing ? 'fail' : 'warn',
      reason: exceeds(wantedM, bed.lengthM)
        ? say`Someone of ${length(statureM)} just lies straight in ${name}: ${length(lyingM)} of ${length(bed.lengthM)}, head and feet at its ends.${about}`
        : say`Someone of ${length(statureM)} lies straight in ${name}: ${length(bed.lengthM)} long, ${length(bed.lengthM - lyingM)} more than the ${length(lyingM)} that the body takes.${comfort(bed, lyingM)}${about}`,
      remedy: longer,
    });
  if (how === 'across the corners')
    return judge({
      ...common,
      measured: { value: bed.lengthM, standard: 0 },
      limit: wantedM,
      broken: 'warn',
      reason: say`Someone of ${length(statureM)} lies in ${name} only across its corners: straight it is ${length(bed.lengthM)}, on the diagonal ${length(diagonalM)} for shoulders of ${length(shouldersM)}, and the body takes ${length(lyingM)}.${takenFromOther(bed, lyingM)}${about}`,
      remedy: longer,
    });
  return judge({
    ...common,
    measured: { value: crossM ?? bed.lengthM, standard: 0 },
    limit: lyingM,
    broken: 'fail',
    reason: say`Nobody of ${length(statureM)} with shoulders of ${length(shouldersM)} lies stretched out in ${name}: the body takes ${length(lyingM)}, and the bed has ${length(bed.lengthM)} straight${crossM === undefined ? ' and no more across its corners' : say` and ${length(crossM)} across its corners`}.${about}`,
    remedy: () => longer(wantedM - bed.lengthM),
  });
}

/** A bed across the van that would have to be longer than the van is wide can only be turned. */
function lengthen({ bed, acrossM, lengthM, widthM }: Peopled, byM: number): Phrase {
  const { name } = bed;
  if (acrossM !== undefined && exceeds(lengthM + byM, acrossM))
    return say`Turn ${name} lengthways and make it ${length(upToMillimetre(lengthM + byM))} long and ${length(widthM)} wide: across the van there are only ${length(acrossM)} clear at that height.`;
  return say`Make ${name} ${length(byM)} longer.`;
}

const leaningWalls = ({ lostM, bed }: Bed): Phrase =>
  lostM === 0
    ? []
    : say` The walls lean in over the ends of ${bed.name} and take ${length(lostM)} of its length.`;

/** The measure of a bed in a house, for those who have the room. */
function comfort({ lengthM }: Bed, lyingM: number): Phrase {
  const comfortable = lengthLimit('bed-clearance-comfortable').valueM;
  return lengthM - lyingM >= comfortable
    ? []
    : say` A bed in a house has ${length(comfortable)} more than the body.`;
}

/**
 * Someone who lies on the diagonal lies with half of the body in each half of the bed, whatever the angle, because both
 * are the same turned half round.
 */
function takenFromOther({ sleepers, lengthM, widthM }: Peopled, lyingM: number): Phrase {
  if (sleepers < 2) return [];
  return say` That takes ${share((lyingM * shouldersM) / (lengthM * widthM))} of the other half of the bed.`;
}

function widthFinding({ bed, widthM, sleepers }: Peopled, single: EffectiveLimit): readonly Finding[] {
  const neededM = sleepers * single.value;
  if (!exceeds(neededM, widthM)) return [];
  return [
    judge({
      rule: text,
      subject: widthSubject(bed),
      path: [...bed.path, 'size'],
      kind: 'length',
      measured: { value: widthM, standard: 0 },
      limit: neededM,
      sense: 'at least',
      broken: single.failing ? 'fail' : 'warn',
      reason: say`${bed.name} is ${length(widthM)} wide for ${sleepers === 1 ? 'one sleeper' : say`${count(sleepers)} sleepers, who have ${length(widthM / sleepers)} each`}; a berth has ${length(single.value)} for each.`,
      remedy: (shortfall) =>
        say`Make ${bed.name} ${length(upToMillimetre(shortfall))} wider, or plan another bed.`,
      sources: single.citations,
      cautions: single.cautions,
    }),
  ];
}
