import type { Build } from '../../build/build.ts';
import { type ColdAirs, coldAirs } from '../../build/design-humidity.ts';
import type { Heat } from '../../build/heat.ts';
import type { WorkedHeatDemand } from '../../build/heat-demand.ts';
import { directionOf, type SurfaceU } from '../../build/u-values.ts';
import { surfaceTemperatureC, temperatureFactor } from '../../calc/heat/surface.ts';
import { moistureStandard } from '../../catalogue/heat/heat-sources.ts';
import { insideFilmM2KPerW } from '../../catalogue/heat/surface-films.ts';
import { thermalMaterialNamed } from '../../catalogue/heat/thermal-materials.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { heatResistance, length, share, temperatureC, transmittance } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { type AlikeSurfaces, alikeSurfaces } from '../alike-surfaces.ts';
import { warmthCaution } from '../cautions.ts';
import { dryEnough, humidityCaution, worstRisk } from '../damp.ts';
import { foldPasses } from '../fold-passes.ts';
import { demand, heat, uValueSources, winterLow } from '../warmth.ts';
import { dewSteps, faceStep } from '../working/face.ts';
import { passedStep } from '../working/wall.ts';

const text: RuleText = {
  id: 'heat.ribs',
  topic: 'heat',
  title: 'cold over the ribs',
  why: 'Steel ribs lead the cold through the insulation: stripes of water and mould on the lining show where they are.',
  formula:
    'T_s = T_i − U·R_si·(T_i − T_e) ≥ T_d, each less T_e; coldest with U straight through rib and cover, warmest with the greatest U of the whole wall, W/(m²·K); R_si film inside, m²K/W',
  sources: [moistureStandard, ...uValueSources],
  cautions: [
    warmthCaution,
    humidityCaution,
    'Metal bridges lie outside the simple method of the standards: the figures are a range, and the real face lies somewhere in it.',
  ],
  fix: 'Cover the ribs with insulation, or keep the air drier.',
  place: ['heat', 'ribs'],
};

type Ribbed = SurfaceU & Required<Pick<SurfaceU, 'ribLineUValue' | 'ribLine'>>;

const isRibbed = (surface: SurfaceU): surface is Ribbed =>
  surface.ribLineUValue !== undefined && surface.ribLine !== undefined;

const ribbedSurfaces = ({ surfaces }: WorkedHeatDemand): readonly Ribbed[] => surfaces.filter(isRibbed);

const ribsGiven: Need<true> = ({ layout, heat: given_ }: Build) =>
  (layout?.ribs.length ?? 0) > 0 || given_?.ribs ? given(true) : missing('van.load_bay.ribs', 'heat.ribs');

export default defineRule({
  ...text,
  needs: { heat, demand, ribsGiven, winterLowC: winterLow },
  check: ({ build, facts: { heat, demand, winterLowC } }) => {
    const cold = coldAirs(build, heat, winterLowC);
    const findings = groupsOf(demand).map((group) => ({
      ...findingOf(group, heat, cold),
      assumptions: demand.assumptions.filter((each) => each.includes('rib')),
    }));
    return { findings: foldPasses(findings, 'surface') };
  },
  work: ({ build, facts: { heat, demand, winterLowC } }, { subject }) => {
    const group = groupsOf(demand).find(({ name }) => subjectOf(name) === subject);
    return group && stepsOf(group, build, coldAirs(build, heat, winterLowC));
  },
});

const groupsOf = (demand: WorkedHeatDemand): readonly AlikeSurfaces<Ribbed>[] =>
  alikeSurfaces(
    ribbedSurfaces(demand),
    ({ part }) => part,
    ({ ribLineUValue }) => ribLineUValue.toFixed(6),
  );

const subjectOf = (name: string): string => `ribs of the ${name}`;

/** The coldest that the face over a rib can be, in the air that leaves it least to spare. */
function coldestFace({ part, ribLineUValue }: Ribbed, { airs }: ColdAirs) {
  const filmM2KPerW = insideFilmM2KPerW[directionOf(part.surface)];
  const factor = temperatureFactor(Math.min(ribLineUValue, 1 / filmM2KPerW), filmM2KPerW);
  return { filmM2KPerW, worst: worstRisk(factor, airs) };
}

function stepsOf({ name, members }: AlikeSurfaces<Ribbed>, build: Build, cold: ColdAirs): readonly Step[] {
  const [surface] = members;
  const { part, ribLine, ribLineUValue } = surface;
  const { filmM2KPerW, worst } = coldestFace(surface, cold);
  const wholeM2KPerW = ribLine.reduce((sum, { m2KPerW }) => sum + m2KPerW, 0);
  return [
    passedStep(
      `What holds heat back straight through a rib of the ${name}, where nothing spreads sideways: R = Σ d/λ and the films`,
      ribLine,
      [part.path, ['heat', 'ribs'], ['heat', 'skin']],
    ),
    {
      what: 'So much goes through there: U = 1 / R',
      sum: say`1 / ${heatResistance(wholeM2KPerW)}`,
      result: transmittance(ribLineUValue),
    },
    ...dewSteps(build, worst.air),
    faceStep({ of: 'the lining over the rib', uValue: ribLineUValue, filmM2KPerW, ...worst.air, paths: [] }),
  ];
}

function findingOf({ name, members }: AlikeSurfaces<Ribbed>, heat: Heat, cold: ColdAirs): Finding {
  const { words, citations } = cold;
  const [surface] = members;
  const { filmM2KPerW: film, worst } = coldestFace(surface, cold);
  const { risk: coldest, insideC, outsideC } = worst;
  const factorOf = (uValue: number) => temperatureFactor(Math.min(uValue, 1 / film), film);
  const greatestU = Math.max(...members.map(({ greatestUValue }) => greatestUValue));
  const leastU = Math.min(...members.map(({ leastUValue }) => leastUValue));
  // The face over a rib is never warmer than that of the wall between ribs.
  const warmestC = surfaceTemperatureC(
    factorOf(Math.min(greatestU, surface.ribLineUValue)),
    insideC,
    outsideC,
  );
  return judge({
    rule: text,
    subject: subjectOf(name),
    path: ['heat', 'ribs'],
    kind: 'temperature difference',
    measured: { value: coldest.surfaceC - outsideC, standard: 0 },
    limit: coldest.dewPointC - outsideC,
    sense: 'at least',
    broken: 'warn',
    reason: say`At ${temperatureC(outsideC)} outside and ${temperatureC(insideC)} inside the lining over the ribs of the ${name} has from ${temperatureC(coldest.surfaceC)} to ${temperatureC(warmestC)}; water settles below ${temperatureC(coldest.dewPointC)} (${words}), and mould grows where the air against it is damper than ${share(0.8)}. The ${name} as a whole lose${name.endsWith('s') ? '' : 's'} between ${transmittance(leastU)} and ${transmittance(greatestU)}.`,
    remedy: () =>
      remedy(surface, heat, film, {
        insideC,
        surfaceC: coldest.surfaceC,
        neededFactor: coldest.neededFactor,
      }),
    sources: citations,
  });
}

const usualCover = 'elastomeric foam';
const mostCoverM = 0.05;
/** Own choice: what a van has room for. */
const mostOverRibsM = 0.1;
const stepM = 0.001;

function remedy(
  { ribLineUValue }: Ribbed,
  { ribs }: Heat,
  filmM2KPerW: number,
  {
    insideC,
    surfaceC,
    neededFactor,
  }: { insideC: number; surfaceC: number; neededFactor: number | undefined },
): Phrase {
  const airing = dryEnough(surfaceC, insideC, 1);
  const cover = ribs?.coveredBy?.material.name ?? usualCover;
  const conductivity = thermalMaterialNamed(cover)?.conductivityWPerMK;
  const nowM = ribs?.coveredBy?.thicknessM ?? 0;
  if (neededFactor === undefined || neededFactor >= 1 || conductivity === undefined)
    return say`No cover is warm enough for that: ${airing}.`;
  const addedM2KPerW = filmM2KPerW / (1 - neededFactor) - 1 / ribLineUValue;
  const coverM = Math.ceil((nowM + addedM2KPerW * conductivity) / stepM - 1e-9) * stepM;
  if (coverM <= mostCoverM)
    return say`Cover the faces of the ribs with ${length(coverM)} of ${cover}, or ${airing}.`;
  return coverM <= mostOverRibsM
    ? say`Put insulation over the ribs and not only between them (it would take ${length(coverM)} of ${cover} on their faces), or ${airing}.`
    : say`No cover that a van has room for is enough: ${airing}, with more open vents or less wet clothes and steam, and lay a whole layer of insulation over the ribs.`;
}
