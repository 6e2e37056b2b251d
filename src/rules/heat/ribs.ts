import type { Build } from '../../build/build.ts';
import { type ColdAirs, coldAirs } from '../../build/design-humidity.ts';
import type { Heat } from '../../build/heat.ts';
import type { WorkedHeatDemand } from '../../build/heat-demand.ts';
import { directionOf, type SurfaceU } from '../../build/u-values.ts';
import { surfaceTemperatureC, temperatureFactor } from '../../calc/heat/surface.ts';
import { moistureStandard } from '../../catalogue/heat/heat-sources.ts';
import { insideFilmM2KPerW } from '../../catalogue/heat/surface-films.ts';
import { thermalMaterialNamed } from '../../catalogue/heat/thermal-materials.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length, share, temperatureC, transmittance } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { type AlikeSurfaces, alikeSurfaces } from '../alike-surfaces.ts';
import { warmthCaution } from '../cautions.ts';
import { dryEnough, humidityCaution, worstRisk } from '../damp.ts';
import { foldPasses } from '../fold-passes.ts';
import { demand, heat, uValueSources, winterLow } from '../warmth.ts';

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

type Ribbed = SurfaceU & { readonly ribLineUValue: number };

const isRibbed = (surface: SurfaceU): surface is Ribbed => surface.ribLineUValue !== undefined;

const ribbedSurfaces = ({ surfaces }: WorkedHeatDemand): readonly Ribbed[] => surfaces.filter(isRibbed);

const ribsGiven: Need<true> = ({ layout, heat: given_ }: Build) =>
  (layout?.ribs.length ?? 0) > 0 || given_?.ribs ? given(true) : missing('van.load_bay.ribs', 'heat.ribs');

export default defineRule({
  ...text,
  needs: { heat, demand, ribsGiven, winterLowC: winterLow },
  check: ({ build, facts: { heat, demand, winterLowC } }) => {
    const cold = coldAirs(build, heat, winterLowC);
    const groups = alikeSurfaces(
      ribbedSurfaces(demand),
      ({ part }) => part,
      ({ ribLineUValue }) => ribLineUValue.toFixed(6),
    );
    const findings = groups.map((group) => ({
      ...findingOf(group, heat, cold),
      assumptions: demand.assumptions.filter((each) => each.includes('rib')),
    }));
    return { findings: foldPasses(findings, 'surface') };
  },
});

function findingOf(
  { name, members }: AlikeSurfaces<Ribbed>,
  heat: Heat,
  { airs, words, citations }: ColdAirs,
): Finding {
  const [surface] = members;
  const film = insideFilmM2KPerW[directionOf(surface.part.surface)];
  const factorOf = (uValue: number) => temperatureFactor(Math.min(uValue, 1 / film), film);
  const { risk: coldest, insideC, outsideC } = worstRisk(factorOf(surface.ribLineUValue), airs);
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
    subject: `ribs of the ${name}`,
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
  return coverM <= mostCoverM
    ? say`Cover the faces of the ribs with ${length(coverM)} of ${cover}, or ${airing}.`
    : say`Put insulation over the ribs and not only between them (it would take ${length(coverM)} of ${cover} on their faces), or ${airing}.`;
}
