import { monthName } from '../../build/energy.ts';
import type { EnvelopePart, Heat } from '../../build/heat.ts';
import type { WorkedHeatDemand } from '../../build/heat-demand.ts';
import { surfaceU } from '../../build/u-values.ts';
import type { DampYear } from '../../build/vapour-walls.ts';
import { vapourExcessPa } from '../../calc/air/moisture.ts';
import type { VapourMonth } from '../../calc/heat/glaser.ts';
import { coldestDryFaceC, surfaceTemperatureC, temperatureFactor } from '../../calc/heat/surface.ts';
import { moistureStandard } from '../../catalogue/heat/heat-sources.ts';
import {
  mouldFilmCitations,
  mouldFilmM2KPerW,
  mouldHumidity,
  mouldHumidityCitations,
  outsideFilmM2KPerW,
} from '../../catalogue/heat/surface-films.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { closeC, kelvins, length, pressure, share, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { type AlikeSurfaces, alikeSurfaces } from '../alike-surfaces.ts';
import { bracketedC } from '../bracketed.ts';
import { warmthCaution } from '../cautions.ts';
import { dampYear, dryEnough, humidityCaution } from '../damp.ts';
import { foldPasses } from '../fold-passes.ts';
import { leastThickening } from '../thicker-insulation.ts';
import { demand, heat, uValueSources } from '../warmth.ts';
import { faceStep } from '../working/face.ts';
import { clearWallSteps } from '../working/wall.ts';

const text: RuleText = {
  id: 'heat.surfaces',
  topic: 'heat',
  title: 'mould on linings',
  why: 'Where a lining stays cold in damp air behind a cupboard or a mattress, mould grows, and people breathe it.',
  formula:
    'T_s − T_e = (1 − U·R_si)·(T_i − T_e) ≥ T(p / 0.8) − T_e in the worst month; R_si 0.25 m²K/W, U with that film in W/(m²·K), p vapour pressure inside in Pa',
  sources: [moistureStandard, ...mouldFilmCitations, ...mouldHumidityCitations, ...uValueSources],
  cautions: [warmthCaution, humidityCaution],
  fix: 'Insulate the face better, or keep the air drier.',
  place: ['build_ups'],
};

/** Months in which it is hardly warmer inside say nothing of insulation, K. */
const leastDifferenceK = 1;

interface WorstMonth {
  readonly month: number;
  readonly insideC: number;
  readonly insidePa: number;
  readonly outsidePa: number;
  readonly outsideC: number;
  /** The coldest that a face may be. */
  readonly neededC: number;
}

export default defineRule({
  ...text,
  needs: { heat, demand, dampYear },
  check: ({ facts: { heat, demand, dampYear } }) => {
    const worst = worstMonth(dampYear.months);
    if (!worst) return { findings: [] };
    const findings = groupsOf(demand).flatMap((group) => findingOf(group, heat, worst, dampYear));
    return { findings: foldPasses(findings, 'surface') };
  },
  work: ({ facts: { heat, demand, dampYear } }, { subject }) => {
    const worst = worstMonth(dampYear.months);
    const group = groupsOf(demand).find(({ name }) => name === subject);
    return worst && group && stepsOf(group.members[0], heat, worst, dampYear);
  },
});

const groupsOf = ({ surfaces }: WorkedHeatDemand): readonly AlikeSurfaces<EnvelopePart>[] =>
  alikeSurfaces(
    surfaces.map(({ part }) => part).filter(({ surface }) => surface !== 'bulkhead'),
    (part) => part,
  );

/** Air that stands still before the face, as behind a cupboard. */
const stillFilms = { insideM2KPerW: mouldFilmM2KPerW, outsideM2KPerW: outsideFilmM2KPerW };

function stepsOf(
  part: EnvelopePart,
  heat: Heat,
  { month, insideC, insidePa, outsidePa, outsideC, neededC }: WorstMonth,
  { humidity, year }: DampYear,
): readonly Step[] {
  const excess = vapourExcessPa(humidity.excessPa, outsideC);
  const full =
    outsidePa + excess > insidePa * (1 + 1e-9) ? '; the air cannot hold more, and the rest settles' : '';
  const uValue = surfaceU(part, heat, undefined, stillFilms)?.clearUValue ?? Number.NaN;
  return [
    ...clearWallSteps(part, heat, stillFilms),
    {
      what: `Water vapour inside in ${monthName(month)}, the month that asks for the warmest face: that outside, and what living adds`,
      sum: say`${pressure(outsidePa)} + ${share(excess / humidity.excessPa)} of ${pressure(humidity.excessPa)}, which it is in frost and none at 20 °C, by ${humidity.words}; ${closeC(insideC)} inside on the mean and ${closeC(outsideC)} outside: ${year.of}${full}`,
      result: pressure(insidePa),
      paths: [
        ['living', 'place'],
        ['heat', 'inside'],
        ['heat', 'asleep'],
        ['living', 'asleep'],
      ],
    },
    {
      what: `As cold as the face may be before the air against it reaches ${mouldHumidity * 100} %: p_s(T) = p / ${mouldHumidity}`,
      sum: say`${pressure(insidePa)} / ${String(mouldHumidity)} = ${pressure(insidePa / mouldHumidity)}, with which air is full at ${closeC(neededC)}, by the table of saturated vapour`,
      result: closeC(neededC),
    },
    {
      what: 'So much warmer than outside the face must be: T − T_e',
      sum: say`${closeC(neededC)} − ${bracketedC(outsideC)}`,
      result: kelvins(neededC - outsideC),
    },
    faceStep({
      of: `the ${part.surface}`,
      uValue,
      filmM2KPerW: mouldFilmM2KPerW,
      insideC,
      outsideC,
      paths: [part.path],
    }),
  ];
}

/** The month that asks for the warmest face against the difference between inside and outside. */
function worstMonth(months: readonly VapourMonth[]): WorstMonth | undefined {
  let worst: (WorstMonth & { readonly factor: number }) | undefined;
  months.forEach(({ insideC, outsideC, insidePa, outsidePa }, month) => {
    if (insideC - outsideC < leastDifferenceK) return;
    const neededC = coldestDryFaceC(insidePa, mouldHumidity);
    const factor = (neededC - outsideC) / (insideC - outsideC);
    if (worst === undefined || factor > worst.factor)
      worst = { month, insideC, insidePa, outsidePa, outsideC, neededC, factor };
  });
  return worst;
}

function faceC(part: EnvelopePart, heat: Heat, { insideC, outsideC }: WorstMonth): number | undefined {
  const surface = surfaceU(part, heat, undefined, stillFilms);
  return (
    surface &&
    surfaceTemperatureC(temperatureFactor(surface.clearUValue, mouldFilmM2KPerW), insideC, outsideC)
  );
}

function findingOf(
  { name, members }: AlikeSurfaces<EnvelopePart>,
  heat: Heat,
  worst: WorstMonth,
  { year, humidity }: DampYear,
): Finding[] {
  const [part] = members;
  const { month, insideC, outsideC, neededC } = worst;
  const face = faceC(part, heat, worst);
  if (face === undefined) return [];
  const bare = part.layers.length === 0 ? ' is bare metal and' : '';
  return [
    judge({
      rule: text,
      subject: name,
      path: part.path,
      kind: 'temperature difference',
      measured: { value: face - outsideC, standard: 0 },
      limit: neededC - outsideC,
      sense: 'at least',
      broken: 'warn',
      reason: say`In ${monthName(month)} (${temperatureC(outsideC)} outside: ${year.of}; ${temperatureC(insideC)} inside on the mean; ${humidity.words}) the face of the ${name}${bare} has ${temperatureC(face)} where air stands still. Below ${temperatureC(neededC)} the air against it is damper than ${share(mouldHumidity)}.`,
      remedy: () => remedy(part, heat, worst, face),
      sources: [...humidity.citations, ...year.citations],
    }),
  ];
}

function remedy(part: EnvelopePart, heat: Heat, worst: WorstMonth, face: number): Phrase {
  const airing = dryEnough(face, worst.insideC, mouldHumidity);
  const thicker = leastThickening(part, (changed) => (faceC(changed, heat, worst) ?? face) >= worst.neededC);
  return thicker
    ? say`Make the ${thicker.layer.name} ${length(thicker.addedM)} thicker (${length((thicker.layer.thicknessM ?? 0) + thicker.addedM)}), or ${airing}.`
    : say`Insulation alone does not do it: ${airing}; leave a gap behind cupboards and mattresses.`;
}
