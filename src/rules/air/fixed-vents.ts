import type { Vent } from '../../build/air.ts';
import type { Build } from '../../build/build.ts';
import type { Flame } from '../../build/flames.ts';
import { type FixedOpenings, fixedOpeningsOf } from '../../build/night-air.ts';
import {
  caravanAuNzM2,
  caravanAuNzRow,
  highShare,
  type LeisureVentilation,
  leisureVentilation,
} from '../../catalogue/air/fixed-ventilation.ts';
import type { Codes } from '../../catalogue/codes.ts';
import { gasProperties } from '../../catalogue/gas/properties.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, type Judgement, judge } from '../../engine/judge.ts';
import { area, freeArea } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { flames, vents } from '../air-facts.ts';
import { airCaution, combustionCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { cm2PerM2, upToShown } from '../shown-digits.ts';
import { caravanSteps, isInRoof, leisureSteps } from '../working/vents.ts';

const text: RuleText = {
  id: 'air.fixed-vents',
  topic: 'air',
  title: 'fixed vents, high and low',
  why: 'People and flames use up the air of so small a room in an hour or two: openings that nobody can shut are what is left when all else is closed.',
  formula:
    'A_roof + A_wall / 2 ≥ A_high and A_low ≥ A_table, in cm² of free area; the row by the larger of outside length × width and floor. Australia and New Zealand: ΣA ≥ max(40 cm², 6.1 cm² · MJ/h + 6.5 cm² · sleepers)',
  sources: [
    {
      title: 'Free areas side by side add up; a wall vent counts half of a roof vent',
      provenance: 'computed',
    },
  ],
  cautions: [
    combustionCaution,
    airCaution,
    'Free area is what air gets through: a grille or an insect screen has less than the hole behind it.',
  ],
  fix: 'Open more free area that cannot be closed, high and low.',
  lifeSafety: true,
  place: ['air', 'vents'],
};

const outsidePlan: Need<number> = ({ livingSpace, vehicle }) =>
  livingSpace?.outsidePlanM2 === undefined
    ? missing(
        ...(livingSpace ? [] : ['van.load_bay']),
        ...(vehicle.overallLengthM === undefined ? ['van.overall_length'] : []),
        'van.overall_width',
      )
    : given(livingSpace.outsidePlanM2);

export default defineRule({
  ...text,
  needs: { air: vents, flames, outsidePlan },
  check: ({ build, facts }) => {
    const open = fixedOpeningsOf(build);
    const burning = facts.flames.filter(takesRoomAir);
    const asked = askedOf(build, facts.outsidePlan, burning);
    const leisure = build.codes === 'au' ? [] : byLeisureTable(open, asked, burning, build.codes);
    const australian =
      build.codes === 'au' || build.codes === undefined
        ? byCaravanRule(open, burning, build.habits.people ?? 0)
        : [];
    return { findings: foldPasses(merged([...leisure, ...australian]), 'figure') };
  },
  work: ({ build, facts }, { subject }) => {
    const open = fixedOpeningsOf(build);
    const burning = facts.flames.filter(takesRoomAir);
    // Where several hinge on the same, the first of them was measured.
    if (subject.startsWith(together))
      return caravanSteps(allFixed(open), burning, grossInputW, build.habits.people ?? 0);
    const byTable = {
      open,
      burning,
      asked: askedOf(build, facts.outsidePlan, burning),
      outsidePlanM2: facts.outsidePlan,
      floorM2: build.livingSpace?.floorM2,
    };
    return leisureSteps(byTable, subject.startsWith('high') ? 'high' : 'low');
  },
});

const together = 'fixed vents together';

const askedOf = (
  { livingSpace }: Build,
  outsidePlanM2: number,
  burning: readonly Flame[],
): LeisureVentilation =>
  leisureVentilation({
    outsidePlanM2,
    ...(livingSpace && { floorM2: livingSpace.floorM2 }),
    burnsRoomAir: burning.length > 0,
  });

/** What does not say that it is room-sealed is taken as burning the room's air: the stricter row. */
const takesRoomAir = ({ flue }: Flame): boolean => flue !== 'room-sealed';

// --- Judging what may hinge on vents of which too little is said ---

interface Asked extends Pick<Judgement, 'subject' | 'broken' | 'sources' | 'cautions'> {
  readonly haveM2: number;
  readonly neededM2: number;
  /** What those would add of which the plan does not say whether they can be shut, or how high they are. */
  readonly unsaid: readonly Vent[];
  readonly worthM2: (vent: Vent) => number;
  readonly reason: Phrase;
  readonly remedy: (shortM2: number) => Phrase;
}

function judged({ haveM2, neededM2, unsaid, worthM2, reason, remedy, ...rest }: Asked): Finding {
  const perhapsM2 = unsaid.reduce((sum, vent) => sum + worthM2(vent), 0);
  const isBroken = exceeds(neededM2, haveM2);
  const subject = { ...rest, rule: text, path: text.place, kind: 'free area' } as const;
  if (isBroken && perhapsM2 > 0 && !exceeds(neededM2, haveM2 + perhapsM2)) {
    const keys = unsaid.flatMap(({ path, closes, level }) => [
      ...(closes === undefined ? [`${path.join('.')}.closes`] : []),
      ...(level === undefined ? [`${path.join('.')}.level`] : []),
    ]);
    return observed(text, {
      verdict: 'not checked',
      subject: rest.subject,
      path: text.place,
      measured: freeArea(haveM2),
      reason: say`${reason} Whether ${namesOf(unsaid.map(({ name }) => name))} ${unsaid.length === 1 ? 'counts' : 'count'} the plan does not say; it would be enough.`,
      remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}: \`closes: false\` only of what nobody can shut.`,
      missing: keys,
      sources: rest.sources ?? [],
      cautions: rest.cautions ?? [],
    });
  }
  return judge({
    ...subject,
    measured: { value: haveM2, standard: 0 },
    limit: neededM2,
    sense: 'at least',
    reason,
    remedy,
  });
}

/** Several that are not checked for the same want are one finding. */
function merged(findings: readonly Finding[]): readonly Finding[] {
  const unclear = findings.filter(({ verdict }) => verdict === 'not checked');
  const [first, ...more] = unclear;
  if (!first || more.length === 0) return findings;
  const keys = [...new Set(unclear.flatMap(({ missing: lacking }) => lacking ?? []))];
  return [
    ...findings.filter(({ verdict }) => verdict !== 'not checked'),
    {
      ...first,
      subject: namesOf(unclear.map(({ subject }) => subject)),
      reason: unclear.map(({ reason }) => reason).reduce((all, each) => say`${all} ${each}`),
      remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}: \`closes: false\` only of what nobody can shut.`,
      missing: keys,
    },
  ];
}

// --- The table for leisure vehicles ---

const european: readonly (Codes | undefined)[] = ['uk', 'eu', undefined];
const abroad =
  "A European table: no figure of the plan's region was read, so it only warns. Ask the local authority.";
const undecided = 'The plan names no codes, so every table is asked and the strictest decides.';

function byLeisureTable(
  open: FixedOpenings,
  asked: LeisureVentilation,
  burning: readonly Flame[],
  codes: Codes | undefined,
): readonly Finding[] {
  const { row, areaM2, basis, byFloor, rowNotRead } = asked;
  const roofM2 = sumOf(open.high.filter(isInRoof));
  const wallM2 = sumOf(open.high.filter((vent) => !isInRoof(vent)));
  const { roofHighM2, wallHighM2, lowM2 } = row;
  const highM2 = highShare(row, roofM2, wallM2) * roofHighM2;
  const why: Phrase = say`${basis === 'floor' ? 'the floor' : 'the outside'} of ${area(areaM2)} ${burningWords(burning)}${byFloor ? say`; by the floor alone it would be ${freeArea(byFloor.roofHighM2)} high and ${freeArea(byFloor.lowM2)} low` : ''}`;
  const common = {
    broken: european.includes(codes) ? 'fail' : 'warn',
    sources: row.citations,
    cautions: [
      ...(european.includes(codes) ? [] : [abroad]),
      ...(codes === undefined ? [undecided] : []),
      ...(rowNotRead
        ? ['No row for so large a vehicle without open flames was read; the row with them stands in.']
        : []),
    ],
  } as const;
  const counts = (level: Vent['level']) => (vent: Vent) => vent.level === level || vent.level === undefined;
  const others = [...open.unsaid, ...open.withoutLevel];
  const highs: Phrase =
    open.high.length === 0
      ? say`No fixed high vent is in the plan`
      : say`${namesOf(open.high.map(({ name }) => name))} ${open.high.length === 1 ? 'gives' : 'give'} ${freeArea(roofM2 + wallM2)} high up${wallM2 > 0 ? say`, of which ${freeArea(wallM2)} in a wall count half` : ''}`;
  const lows: Phrase =
    open.low.length === 0
      ? say`No fixed low vent is in the plan`
      : say`${namesOf(open.low.map(({ name }) => name))} ${open.low.length === 1 ? 'gives' : 'give'} ${freeArea(open.lowM2)} low down`;
  return [
    judged({
      ...common,
      subject: 'high vents',
      haveM2: highM2,
      neededM2: roofHighM2,
      unsaid: others.filter(counts('high')),
      worthM2: (vent) => (isInRoof(vent) ? vent.freeAreaM2 : (vent.freeAreaM2 * roofHighM2) / wallHighM2),
      reason: say`${highs}; the table asks for ${freeArea(roofHighM2)} in the roof or ${freeArea(wallHighM2)} in a wall, by ${why}.${closableWords(open, 'high')}`,
      remedy: (shortM2) =>
        say`Fit ${freeArea(upToShown(shortM2, cm2PerM2))} more in the roof, or ${freeArea(upToShown((shortM2 * wallHighM2) / roofHighM2, cm2PerM2))} high in a wall, that nobody can shut (\`closes: false\`).`,
    }),
    judged({
      ...common,
      subject: 'low vents',
      haveM2: open.lowM2,
      neededM2: lowM2,
      unsaid: others.filter(counts('low')),
      worthM2: ({ freeAreaM2 }) => freeAreaM2,
      reason: say`${lows}; the table asks for ${freeArea(lowM2)}, by ${why}.${closableWords(open, 'low')}`,
      remedy: (shortM2) =>
        say`Fit ${freeArea(upToShown(shortM2, cm2PerM2))} more in the floor or just above it, that nobody can shut (\`closes: false\`).`,
    }),
  ];
}

const sumOf = (list: readonly Vent[]): number => list.reduce((sum, { freeAreaM2 }) => sum + freeAreaM2, 0);

function burningWords(burning: readonly Flame[]): string {
  if (burning.length === 0) return 'without anything that burns the air of the room';
  const unclear = burning.filter(({ flue }) => flue === undefined);
  const guessed =
    unclear.length === 0
      ? ''
      : ` (of ${namesOf(unclear.map(({ name }) => name))} the plan does not say \`flue\`)`;
  return `with ${namesOf(burning.map(({ name }) => name))} burning the air of the room${guessed}`;
}

function closableWords({ closable }: FixedOpenings, level: Vent['level']): string {
  const names = closable.filter((vent) => vent.level === level).map(({ name }) => name);
  return names.length === 0
    ? ''
    : ` ${namesOf(names)} ${names.length === 1 ? 'does' : 'do'} not count: what can be shut is shut on a cold night.`;
}

// --- Australia and New Zealand ---

/** Input is counted gross there: the gas that is burnt times its gross heating value. */
function byCaravanRule(open: FixedOpenings, burning: readonly Flame[], sleepers: number): readonly Finding[] {
  const inputW = burning.reduce((sum, flame) => sum + grossInputW(flame), 0);
  const neededM2 = caravanAuNzM2(inputW, sleepers);
  const haveM2 = sumOf(allFixed(open));
  const lacking = burning.filter(({ gasKgPerS }) => gasKgPerS === undefined);
  return [
    judged({
      subject: together,
      broken: 'fail',
      sources: caravanAuNzRow.citations,
      cautions: [
        caravanAuNzRow.caution,
        ...(lacking.length > 0
          ? [
              `What ${namesOf(lacking.map(({ name }) => name))} burns is not in the sum: its input is not given.`,
            ]
          : []),
      ],
      haveM2,
      neededM2,
      unsaid: open.unsaid,
      worthM2: ({ freeAreaM2 }) => freeAreaM2,
      reason: say`The fixed vents come to ${freeArea(haveM2)}; the rule of Australia and New Zealand asks for ${freeArea(neededM2)} for ${burningWords(burning).replace(/^with /, '')} and ${String(sleepers)} who sleep here.`,
      remedy: (shortM2) =>
        say`Fit ${freeArea(upToShown(shortM2, cm2PerM2))} more that nobody can shut, half of it high and half low.`,
    }),
  ];
}

const allFixed = ({ low, high, withoutLevel }: FixedOpenings): readonly Vent[] => [
  ...low,
  ...high,
  ...withoutLevel,
];

/** What burns is counted as propane, which has the higher value. */
const { grossJPerKg } = gasProperties.propane;
const grossInputW = ({ gasKgPerS = 0 }: Flame): number => gasKgPerS * grossJPerKg;
