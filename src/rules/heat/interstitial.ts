import { monthName } from '../../build/energy.ts';
import type { EnvelopePart } from '../../build/heat.ts';
import { usualFilms } from '../../build/u-values.ts';
import { type DampYear, type NamedVapourLayer, vapourStack } from '../../build/vapour-walls.ts';
import { type GlaserYear, glaserYear, type VapourMonth } from '../../calc/heat/glaser.ts';
import { type AddedLayer, clearingRemedies, type Remedy } from '../../calc/heat/remedy.ts';
import { condensationProgram, moistureStandard } from '../../catalogue/heat/heat-sources.ts';
import {
  condensateLimits,
  laidFoilCaution,
  paints,
  toleratedLeftCitation,
  toleratedLeftKgPerM2,
  vapourFoils,
} from '../../catalogue/heat/vapour-layers.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { arealMass, condensate } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { type AlikeSurfaces, alikeSurfaces } from '../alike-surfaces.ts';
import { warmthCaution } from '../cautions.ts';
import { dampYear, humidityCaution } from '../damp.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { heat } from '../warmth.ts';
import { placeOf, vapourSteps } from '../working/vapour.ts';

const text: RuleText = {
  id: 'heat.interstitial',
  topic: 'heat',
  title: 'water inside the walls',
  why: 'Vapour that gets behind the lining turns to water on the cold skin: insulation gets wet, wood rots and the van rusts from inside.',
  formula:
    'g = δ·((p_i − p_c) / s_i − (p_c − p_e) / s_e), month by month; δ 2·10⁻¹⁰ kg/(m·s·Pa), p Pa, p_c saturated, s equivalent air μ·d in m inwards and outwards; sum ≤ 0.5 kg/m², over 0.2 warns, left after a year ≤ 0.02',
  sources: [
    condensationProgram,
    moistureStandard,
    ...condensateLimits.filter(({ id }) => id !== 'of a wall').flatMap(({ citations }) => citations),
    toleratedLeftCitation,
  ],
  cautions: [
    warmthCaution,
    humidityCaution,
    'The method knows nothing of air that leaks through joints, which carries more water than diffusion, nor of wool and wood that take some up: use it to compare build-ups.',
  ],
  fix: 'Put a vapour barrier on the warm side of the insulation, tight at every joint.',
  place: ['build_ups'],
};

const limitOf = (id: string): number => condensateLimits.find((row) => row.id === id)?.limitKgPerM2 ?? 0;
/** Metal takes up none: more than this fails, and more than the other may run down inside. */
const failsAboveKgPerM2 = limitOf('on what takes none up');
const runsOffAboveKgPerM2 = limitOf('runs off');

/** Surfaces that are lined; of bare metal there is no inside. */
const linedParts: Need<readonly EnvelopePart[]> = (build) => {
  if (!build.heat) return missing('heat');
  const lined = build.heat.envelope.filter(
    ({ layers, surface, areaM2 }) => layers.length > 0 && surface !== 'bulkhead' && areaM2 > 0,
  );
  return lined.length > 0 ? given(lined) : missing('build_ups.NAME.of');
};

export default defineRule({
  ...text,
  needs: { heat, linedParts, dampYear },
  check: ({ facts: { heat, linedParts, dampYear } }) => {
    const lacking: string[] = [];
    const findings: Finding[] = [];
    for (const group of alikeSurfaces(linedParts, (part) => part)) {
      const { layers, missing: keys } = vapourStack(group.members[0], heat);
      if (keys.length > 0) lacking.push(...keys);
      else findings.push(findingOf(group, layers, dampYear));
    }
    return { findings: [...foldPasses(findings, 'surface'), ...notKnown(lacking)] };
  },
  work: ({ facts: { heat, linedParts, dampYear } }, { subject }) => {
    const group = alikeSurfaces(linedParts, (part) => part).find(({ name }) => name === subject);
    if (!group) return undefined;
    const [part] = group.members;
    const { layers, missing: keys } = vapourStack(part, heat);
    if (keys.length > 0) return undefined;
    const wall = { ...usualFilms(part.surface), layers, path: part.path };
    const year = glaserYear(wall, dampYear.months);
    return vapourSteps(wall, dampYear, year, accumulatesIn(year) ? 'left' : 'peak');
  },
});

/** It does not dry within the year, and what is left is more than a trace. */
const accumulatesIn = ({ driesOut, leftKgPerM2 }: GlaserYear): boolean =>
  !driesOut && exceeds(leftKgPerM2, toleratedLeftKgPerM2);

function notKnown(lacking: readonly string[]): Finding[] {
  const keys = [...new Set(lacking)];
  if (keys.length === 0) return [];
  return [
    observed(text, {
      verdict: 'not checked',
      subject: 'layers that are not known',
      path: ['build_ups'],
      reason: say`Some layers do not say how they let heat and vapour through.`,
      remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
      missing: keys,
    }),
  ];
}

function findingOf(
  { name, members }: AlikeSurfaces<EnvelopePart>,
  layers: readonly NamedVapourLayer[],
  { months, year: outside, humidity }: DampYear,
): Finding {
  const [part] = members;
  const films = usualFilms(part.surface);
  const year = glaserYear({ ...films, layers }, months);
  const accumulates = accumulatesIn(year);
  const isTooMuch = exceeds(year.peakKgPerM2, failsAboveKgPerM2);
  const limit = accumulates ? toleratedLeftKgPerM2 : isTooMuch ? failsAboveKgPerM2 : runsOffAboveKgPerM2;
  const where = say`of the ${name}`;
  return judge({
    rule: text,
    subject: name,
    path: part.path,
    kind: 'condensate',
    measured: { value: accumulates ? year.leftKgPerM2 : year.peakKgPerM2, standard: 0 },
    limit,
    sense: 'at most',
    broken: accumulates || isTooMuch ? 'fail' : 'warn',
    reason: say`${reasonOf(year, layers, where, accumulates)} Worked out with the air of ${outside.of} and ${humidity.words}.`,
    remedy: () => remedyOf(layers, films, months),
    sources: [...humidity.citations, ...outside.citations],
  });
}

function reasonOf(
  year: GlaserYear,
  layers: readonly NamedVapourLayer[],
  where: Phrase,
  accumulates: boolean,
): Phrase {
  const { worst, peakKgPerM2, leftKgPerM2 } = year;
  if (!worst) return say`No water gathers inside ${where}.`;
  const wettest = year.months.reduce((most, each) => (each.totalKgPerM2 > most.totalKgPerM2 ? each : most));
  const gathers = say`By ${monthName(wettest.month)} up to ${condensate(peakKgPerM2)} of water gathers ${placeOf(worst.plane, layers)} ${where}`;
  if (accumulates)
    return say`${gathers}, and ${condensate(leftKgPerM2)} are left after a year: it gets wetter every winter.`;
  return leftKgPerM2 > 0
    ? say`${gathers}; all but ${condensate(leftKgPerM2)} dries within the year.`
    : say`${gathers}, and dries within the year.`;
}

/** Foils go on the warm side of the innermost insulation, paint on the face. */
function remedyOf(
  layers: readonly NamedVapourLayer[],
  films: ReturnType<typeof usualFilms>,
  months: readonly VapourMonth[],
): Phrase {
  const insulation = layers.findLastIndex(({ insulates }) => insulates);
  const added =
    (place: number) =>
    (row: (typeof vapourFoils)[number]): AddedLayer => ({
      name: row.id,
      insideOf: place,
      layer: { resistanceM2KPerW: 0, equivalentAirM: row.equivalentAirM, massKgPerM2: row.massKgPerM2 },
    });
  const foilPlace = Math.max(insulation, 0);
  const remedies = clearingRemedies({
    ...films,
    layers,
    months,
    foils: [...vapourFoils.map(added(foilPlace)), ...paints.map(added(layers.length - 1))],
    thickenings: [],
    accept: { peakKgPerM2: runsOffAboveKgPerM2, leftKgPerM2: toleratedLeftKgPerM2 },
  });
  const [lightest, next] = remedies;
  if (!lightest)
    return say`No foil keeps it below ${condensate(runsOffAboveKgPerM2)} with that humidity: fill the wall without gaps with foam that lets no vapour through, and air more.`;
  const textOf = ({ changes, addedKgPerM2, year }: Remedy): Phrase => {
    const what = changes.join(' and ');
    const place = paints.some(({ id }) => id === what)
      ? 'on the lining'
      : `on the inner side of the ${layers[foilPlace]?.name ?? 'skin'}`;
    const wet = exceeds(year.peakKgPerM2, mentionedAboveKgPerM2)
      ? say`then at most ${condensate(year.peakKgPerM2)} gathers`
      : say`then no water gathers that counts`;
    return say`${what} ${place} (${arealMass(addedKgPerM2)} more; ${wet})`;
  };
  const other = next ? say`, or ${textOf(next)}` : [];
  return say`Put ${textOf(lightest)}${other}. ${laidFoilCaution}`;
}

/** A gram on a square metre is no water. */
const mentionedAboveKgPerM2 = 0.001;
