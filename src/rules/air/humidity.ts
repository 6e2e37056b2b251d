import { type DampestNight, dampestNightOf } from '../../build/mild-nights.ts';
import type { Humid, NightAir, WaterOfDay } from '../../build/night-air.ts';
import { flowForHumidityM3S, vapourPressurePa } from '../../calc/air/moisture.ts';
import { dewPointC } from '../../calc/air/saturation.ts';
import { moistureRows } from '../../catalogue/air/moisture.ts';
import { mildNights, stillNight } from '../../catalogue/air/still-night.ts';
import { outsideHumidityCitation } from '../../catalogue/heat/vapour-layers.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { airFlow, kelvins, mass, share, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { airLimit, night } from '../air-facts.ts';
import { airCaution, warmthCaution } from '../cautions.ts';
import { joined } from '../routed.ts';
import { upToShown } from '../shown-digits.ts';
import { areaForFlow, ventsAskedM2 } from '../vent-area.ts';
import { humiditySteps } from '../working/humidity.ts';

// The rest of what still nights are reckoned with is about carbon dioxide, or said by `mildNights`.
const [, outsideAir, , fixedVents] = stillNight.citations;

const text: RuleText = {
  id: 'air.humidity',
  topic: 'air',
  title: 'humidity while the heating is on',
  why: 'Two people breathe, cook and dry litres of water into the air every day: what the vents do not carry out ends in bedding, wood and the cold metal behind the lining.',
  formula:
    'φ = (φ_e · p_s(T_e) + M · R_v · T_i / Q) / p_s(T_i) ≤ φ_limit; M water set free, kg/s, Q fresh air through the fixed vents without wind, m³/s, p_s saturation pressure, Pa, R_v = 461.5 J/(kg·K); in the coldest weather by day and asleep, and asleep on the dampest still night between that and the mildest',
  sources: [
    ...moistureRows['person-asleep'].citations,
    ...moistureRows.cooking.citations,
    outsideAir,
    fixedVents,
  ],
  cautions: [
    airCaution,
    warmthCaution,
    'Sources for the water that living sets free differ by a factor of two, for cooking by thirty. What walls, wood and bedding take up for a while is not counted, nor is wind or an open window.',
  ],
  fix: 'Let more air through, cook with a lid, and dry clothes elsewhere.',
  limits: ['room-humidity', 'surface-humidity'],
  place: ['air', 'vents'],
};

const winter: Need<NightAir> = (build) => {
  const found = night(build);
  const keys = build.habits.winterLowC === undefined ? ['living.winter_low'] : [];
  if (!found.ok) return missing(...found.missing, ...keys);
  return keys.length > 0 ? missing(...keys) : found;
};

export default defineRule({
  ...text,
  needs: { winter },
  check: ({ build, facts }) => {
    const mild = dampestNightOf(build, facts.winter);
    return { findings: [findingFor(facts.winter), ...(mild ? [mildFinding(facts.winter, mild)] : [])] };
  },
  work: ({ build, facts: { winter: still } }, { subject }) => {
    const mild = dampestNightOf(build, still);
    if (subject === mildSubject) return mild && humiditySteps(still, mild.air, build);
    return humiditySteps(still, dampestPart(still), build);
  },
});

const mildSubject = 'mild night';

/** Of the winter's day: that in which the air is fuller of water. */
function dampestPart({ humid }: NightAir): Humid {
  const [first, ...more] = humid;
  const worst = more.reduce(
    (most, each) => (each.unboundedHumidity > (most?.unboundedHumidity ?? 0) ? each : most),
    first,
  );
  if (!worst) throw new Error('a day has a part');
  return worst;
}

function findingFor(still: NightAir): Finding {
  const row = airLimit('room-humidity');
  const worst = dampestPart(still);
  return judge({
    rule: text,
    subject: 'humidity',
    path: text.place,
    kind: 'share',
    measured: { value: worst.relativeHumidity, standard: 0 },
    limit: row.value,
    sense: 'at most',
    broken: 'warn',
    reason: say`A winter's day sets ${mass(still.waterKgPerDay.totalKg)} of water free (${sourcesInWords(still.waterKgPerDay)}). ${partInWords(worst)}`,
    remedy: () => remedyFor(still, worst, row.value),
    sources: row.citations,
    cautions: row.cautions,
  });
}

/** The limit for a room in winter cannot be kept when the air outside is mild and wet, but mould must not grow. */
function mildFinding(still: NightAir, { air, coldestC, month }: DampestNight): Finding {
  const row = airLimit('surface-humidity');
  const { insideC, outsideC, flowM3PerS, unboundedHumidity } = air;
  const asIn: Phrase = month ? say` (about as in ${month.name}: ${month.of})` : [];
  const comesTo: Phrase =
    unboundedHumidity > 1
      ? say`the air cannot hold what people breathe out: the rest settles as water`
      : say`it comes to ${share(unboundedHumidity)} relative humidity`;
  return judge({
    rule: text,
    subject: mildSubject,
    path: text.place,
    kind: 'share',
    measured: { value: air.relativeHumidity, standard: 0 },
    limit: row.value,
    sense: 'at most',
    broken: 'warn',
    reason: say`Of the still nights from ${temperatureC(coldestC)} outside up, with the heating on, the mildest is the dampest: at ${temperatureC(outsideC)}${asIn} and ${temperatureC(insideC)} inside, with ${airFlow(flowM3PerS)} of fresh air, ${comesTo}. Mould grows where it stays above ${share(row.value)}.`,
    remedy: () => {
      const enoughM3PerS = flowFor(air, row.value);
      return Number.isFinite(enoughM3PerS)
        ? say`It takes ${airFlow(enoughM3PerS)} for ${share(row.value)}: sleep with a window ajar or a quiet fan on, or ${areaForFlow(still.vents, air, enoughM3PerS)}.`
        : tooDampOutside(air, row.value);
    },
    // Of the month only the temperature counts: the air outside is taken as damper than it usually is.
    sources: [
      ...row.citations,
      ...mildNights.citations,
      ...(month?.citations ?? []).filter((citation) => citation !== outsideHumidityCitation),
    ],
    cautions: row.cautions,
  });
}

function sourcesInWords(water: WaterOfDay): Phrase {
  const { peopleKg, cookingKg, flamesKg, showersKg, clothesKg, cookingAssumed } = water;
  const parts: readonly (readonly [string, number])[] = [
    ['people', peopleKg],
    [cookingAssumed ? 'cooking, a usual day’s since `living.cooking` is not given,' : 'cooking', cookingKg],
    ['the flame under it', flamesKg],
    ['showers', showersKg],
    ['wet clothes', clothesKg],
  ];
  return joined(parts.filter(([, kg]) => kg > 0).map(([name, kg]) => say`${name} ${mass(kg)}`));
}

function partInWords(humid: Humid): Phrase {
  const { part, insideC, outsideC, flowM3PerS, unboundedHumidity } = humid;
  const when = part === 'day' ? 'Over the day' : 'While people are asleep';
  const air = say`${when}, with ${airFlow(flowM3PerS)} of fresh air, ${temperatureC(insideC)} inside and ${temperatureC(outsideC)} outside,`;
  return unboundedHumidity > 1
    ? say`${air} the air cannot hold it: the rest settles as water.`
    : say`${air} it comes to ${share(unboundedHumidity)} relative humidity, and water settles on what is colder than ${temperatureC(humid.dewPointC)}.`;
}

/** Enough for day and night: what cures the damper part may leave the other one, which warmth draws less air through. */
function remedyFor({ vents, humid }: NightAir, worst: Humid, wanted: number): Phrase {
  const parts = humid.map((air) => ({ air, flowM3PerS: flowFor(air, wanted) }));
  const flowM3PerS = Math.max(...parts.map((each) => each.flowM3PerS));
  if (!Number.isFinite(flowM3PerS)) {
    const warming = (air: Humid): number => warmerK(air, wanted);
    const coldest = humid.reduce((most, air) => (warming(air) > warming(most) ? air : most), worst);
    return tooDampOutside(coldest, wanted);
  }
  const [first = { air: worst, flowM3PerS }, ...others] = parts;
  const asking = (each: typeof first): number => ventsAskedM2(vents, each.air, each.flowM3PerS);
  const most = others.reduce((larger, each) => (asking(each) > asking(larger) ? each : larger), first);
  return say`It takes ${airFlow(upToShown(flowM3PerS, secondsAnHour))} for ${share(wanted)}: run a fan, open a window while cooking, or ${areaForFlow(vents, most.air, most.flowM3PerS)}.`;
}

const secondsAnHour = 3600;

const flowFor = ({ insideC, outsideC, releaseKgPerS }: Humid, wanted: number): number =>
  flowForHumidityM3S(
    { insideC, outsideC, outsideHumidity: stillNight.outsideHumidity, releaseKgS: releaseKgPerS },
    wanted,
  );

const tooDampOutside = (worst: Humid, wanted: number): Phrase =>
  say`The outside air is too damp for ${share(wanted)} by airing alone: warm the room by more than ${kelvins(warmerK(worst, wanted))}, or dry its air.`;

/** How much warmer the outside air must become for its own vapour to be no more than is wanted. */
const warmerK = ({ insideC, outsideC }: Humid, wanted: number): number =>
  Math.max(0, dewPointC(vapourPressurePa(outsideC, stillNight.outsideHumidity) / wanted) - insideC);
