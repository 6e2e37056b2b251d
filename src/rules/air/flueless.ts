import type { Build } from '../../build/build.ts';
import { fanned, knownFans } from '../../build/fanned.ts';
import { type Flame, flamesOf } from '../../build/flames.ts';
import { type NightAir, stackM3S } from '../../build/night-air.ts';
import { burnt, butaneMolecule, flameFlows, propaneMolecule } from '../../calc/air/burning.ts';
import { type FillingBreathedRoom, flowForPpmAfterM3S, ppmAfter } from '../../calc/air/carbon-dioxide.ts';
import { stillNight } from '../../catalogue/air/still-night.ts';
import { gasRequirementFor } from '../../catalogue/gas/requirements.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { airFlow, concentration, duration, mass } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { airLimit, flames, night } from '../air-facts.ts';
import { airCaution, combustionCaution, gasCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { type Fumes, fumesSteps } from '../working/flueless.ts';

const text: RuleText = {
  id: 'air.flueless',
  topic: 'air',
  title: 'flames without a flue',
  why: 'A flame without a flue burns the air that people breathe and leaves its fumes in it: it kills sleepers, and it makes the room wet.',
  formula:
    'flueless heaters: none where people sleep; hobs: C(t) = C_0 + (10⁶ · G / Q + C_e − C_0) · (1 − e^(−Q·t/V)) ≤ C_limit at full flame through the cooking time, ppm',
  sources: [{ title: 'Carbon dioxide and water from the chemical equation', provenance: 'computed' }],
  cautions: [
    combustionCaution,
    gasCaution,
    airCaution,
    'Open a window and the vents whenever a hob burns, and never heat with it.',
  ],
  fix: 'Take a room-sealed heater; open a window and the vents whenever a hob burns.',
  lifeSafety: true,
  limits: ['carbon-dioxide-workplace'],
  place: ['gas', 'appliances'],
};

/** The heater under `heat` has a rule of its own. */
const appliances: Need<readonly Flame[]> = (build) => {
  const found = flames(build);
  if (!found.ok) return found;
  const listed = flamesOf(build.gas, undefined);
  const unsaid = listed.filter(({ flue }) => flue === undefined);
  return unsaid.length > 0 ? missing(...unsaid.map(({ path }) => `${path.join('.')}.flue`)) : given(listed);
};

export default defineRule({
  ...text,
  needs: { appliances },
  check: ({ build, facts }) => {
    const { heaters, others } = sorted(facts.appliances);
    if (heaters.length + others.length === 0)
      return {
        findings: [
          observed(text, {
            verdict: 'pass',
            subject: 'flames without a flue',
            path: text.place,
            reason: say`The plan shows no gas appliance without a flue.`,
          }),
        ],
      };
    return {
      findings: [
        ...heaters.map((flame) => heaterFinding(flame, build)),
        ...(others.length > 0 ? [roomFinding(others, build)] : []),
      ],
    };
  },
  work: ({ build, facts }, { measured }) => {
    const still = night(build);
    return measured && still.ok
      ? fumesSteps(fumesOf(still.value, sorted(facts.appliances).others, build), build)
      : undefined;
  },
});

/** What heats the room with its fumes in it or near it, and whatever else has no flue. */
function sorted(appliances: readonly Flame[]): Record<'heaters' | 'others', readonly Flame[]> {
  const heaters = appliances.filter(({ use, flue }) => use === 'room heating' && flue !== 'room-sealed');
  return {
    heaters,
    others: appliances.filter((each) => each.flue === 'flueless' && !heaters.includes(each)),
  };
}

function heaterFinding({ name, path, flue }: Flame, { codes }: Build): Finding {
  const row = gasRequirementFor('flueless-heater', codes);
  return observed(text, {
    verdict: flue === 'flueless' ? 'fail' : 'warn',
    subject: name,
    path: [...path, 'flue'],
    reason:
      flue === 'flueless'
        ? say`${name} heats the room without a flue: its fumes stay where people sleep.`
        : say`${name} heats the room with an open flue: it burns the air of the room, and a fan or wind can push its fumes back in.`,
    remedy: say`Take 1 room-sealed heater, which has its air and its fumes outside.`,
    sources: row.citations,
    cautions: row.cautions,
  });
}

// --- Hobs and whatever else has no flue ---

function roomFinding(flueless: readonly Flame[], build: Build): Finding {
  const still = night(build);
  const keys = [
    ...flueless.flatMap(({ path, gasKgPerS }) =>
      gasKgPerS === undefined ? [`${path.join('.')}.input`] : [],
    ),
    ...(still.ok ? [] : still.missing),
  ];
  const [first] = flueless;
  if (!first) throw new Error('one of them burns');
  if (!still.ok || keys.length > 0)
    return observed(text, {
      verdict: 'not checked',
      subject: first.name,
      path: first.path,
      reason: say`What ${namesOf(flueless.map(({ name }) => name))} without a flue ${flueless.length === 1 ? 'does' : 'do'} to the air of the room cannot be worked out.`,
      remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
      missing: keys,
    });
  return fumesIn(still.value, flueless, first, build);
}

interface Burning extends Fumes {
  readonly room: Omit<FillingBreathedRoom, 'flowM3S'>;
  readonly waterKg: number;
  readonly fanlessPpm: number;
}

/** All flames full on through the cooking, with the fans on, or with what warmth moves where there are none. */
function fumesOf(still: NightAir, flueless: readonly Flame[], build: Build): Burning {
  const { carbonDioxide, airM3 } = still;
  const insideC = build.heat?.insideC ?? stillNight.usualInsideC;
  const outsideC = insideC - stillNight.mildRiseK;
  const seconds = build.habits.cookingS ?? stillNight.usualCookingS;
  const fans = roomFans(build);
  const together = build.air && fanned(build.air, fans);
  const fanM3PerS = together?.freshM3S ?? 0;
  const calmM3PerS = stackM3S(still.vents, insideC, outsideC);
  const flowM3PerS = Math.max(fanM3PerS, calmM3PerS, still.leaksM3PerS ?? 0);
  const burning = flueless.map((flame) => {
    const { burns, gasKgPerS = 0 } = flame;
    return {
      flame,
      gasKgPerS,
      waterKg: burnt(moleculeOf(burns)).waterPerFuel * gasKgPerS * seconds,
      carbonDioxideM3S: flameFlows(moleculeOf(burns), gasKgPerS, insideC).carbonDioxideM3S,
    };
  });
  const generationM3PerS = burning.reduce((sum, each) => sum + each.carbonDioxideM3S, 0);
  const room = {
    outsidePpm: carbonDioxide.outsidePpm,
    startPpm: carbonDioxide.startPpm,
    generationM3S: generationM3PerS,
    volumeM3: airM3,
  };
  const endWith = (flowM3S: number): number =>
    seconds > 0 ? ppmAfter({ ...room, flowM3S }, seconds) : room.startPpm;
  return {
    still,
    fans,
    together,
    insideC,
    outsideC,
    seconds,
    fanM3PerS,
    calmM3PerS,
    flowM3PerS,
    burning,
    generationM3PerS,
    room,
    waterKg: burning.reduce((sum, each) => sum + each.waterKg, 0),
    endPpm: endWith(flowM3PerS),
    fanlessPpm: endWith(Math.max(calmM3PerS, still.leaksM3PerS ?? 0)),
  };
}

function fumesIn(still: NightAir, flueless: readonly Flame[], first: Flame, build: Build): Finding {
  const fumes = fumesOf(still, flueless, build);
  const { room, seconds, fanM3PerS, flowM3PerS, endPpm, fanlessPpm, waterKg } = fumes;
  const row = airLimit('carbon-dioxide-workplace');
  const by: Phrase =
    fanM3PerS > 0 && fanM3PerS >= flowM3PerS
      ? say`with ${airFlow(flowM3PerS)} by ${namesOf(roomFans(build).map(({ fan }) => fan.name))}, which must run all the while (without it, to ${concentration(fanlessPpm * 1e-6)})`
      : say`with ${airFlow(flowM3PerS)} of fresh air on a still day and no fan`;
  return judge({
    rule: text,
    subject: first.name,
    path: first.path,
    kind: 'concentration',
    measured: { value: endPpm * 1e-6, standard: 0 },
    limit: row.value * 1e-6,
    sense: 'at most',
    broken: 'warn',
    reason: say`${namesOf(flueless.map(({ name }) => name))} at full flame for ${duration(seconds)}${build.habits.cookingS === undefined ? ' (`living.cooking` is not given)' : ''} ${flueless.length === 1 ? 'brings' : 'bring'} carbon dioxide in the room to ${concentration(endPpm * 1e-6)} ${by}, and ${flueless.length === 1 ? 'leaves' : 'leave'} ${mass(waterKg)} of water in the air.`,
    remedy: () =>
      say`Move ${airFlow(flowForPpmAfterM3S(room, row.value, seconds))} while it burns: a fan that blows out, and a window that lets as much in.`,
    sources: row.citations,
    cautions: row.cautions,
  });
}

const roomFans = ({ air }: Build) =>
  air ? knownFans(air).filter(({ fan }) => fan.serves === undefined) : [];

/** Only gas is burnt without a flue here; as propane where the gas is not butane. */
const moleculeOf = (burns: Flame['burns']) => (burns === 'butane' ? butaneMolecule : propaneMolecule);
