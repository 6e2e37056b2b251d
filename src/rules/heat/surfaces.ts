import { monthName } from '../../build/energy.ts';
import type { EnvelopePart, Heat } from '../../build/heat.ts';
import { surfaceU } from '../../build/u-values.ts';
import type { DampYear } from '../../build/vapour-walls.ts';
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
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length, share, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { type AlikeSurfaces, alikeSurfaces } from '../alike-surfaces.ts';
import { warmthCaution } from '../cautions.ts';
import { dampYear, dryEnough, humidityCaution } from '../damp.ts';
import { foldPasses } from '../fold-passes.ts';
import { leastThickening } from '../thicker-insulation.ts';
import { demand, heat, uValueSources } from '../warmth.ts';

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
    const parts = demand.surfaces.map(({ part }) => part).filter(({ surface }) => surface !== 'bulkhead');
    const groups = alikeSurfaces(parts, (part) => part);
    const findings = groups.flatMap((group) => findingOf(group, heat, worst, dampYear));
    return { findings: foldPasses(findings, 'surface') };
  },
});

/** The month that asks for the warmest face against the difference between inside and outside. */
function worstMonth(months: readonly VapourMonth[]): WorstMonth | undefined {
  let worst: (WorstMonth & { readonly factor: number }) | undefined;
  months.forEach(({ insideC, outsideC, insidePa }, month) => {
    if (insideC - outsideC < leastDifferenceK) return;
    const neededC = coldestDryFaceC(insidePa, mouldHumidity);
    const factor = (neededC - outsideC) / (insideC - outsideC);
    if (worst === undefined || factor > worst.factor) worst = { month, insideC, outsideC, neededC, factor };
  });
  return worst;
}

function faceC(part: EnvelopePart, heat: Heat, { insideC, outsideC }: WorstMonth): number | undefined {
  const surface = surfaceU(part, heat, undefined, {
    insideM2KPerW: mouldFilmM2KPerW,
    outsideM2KPerW: outsideFilmM2KPerW,
  });
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
    ? say`Make the ${thicker.layer.name} ${length(thicker.addedM)} thicker, or ${airing}.`
    : say`Insulation alone does not do it: ${airing}; leave a gap behind cupboards and mattresses.`;
}
