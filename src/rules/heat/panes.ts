import type { Build } from '../../build/build.ts';
import { type ColdAirs, coldAirs } from '../../build/design-humidity.ts';
import type { Pane } from '../../build/heat.ts';
import { paneUValue } from '../../build/heat-demand.ts';
import { directionOf } from '../../build/u-values.ts';
import { temperatureFactor } from '../../calc/heat/surface.ts';
import { moistureStandard } from '../../catalogue/heat/heat-sources.ts';
import { openingLoss, paneLosses } from '../../catalogue/heat/openings.ts';
import { filmCitations, insideFilmM2KPerW } from '../../catalogue/heat/surface-films.ts';
import type { Finding, PlanPath, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { temperatureC, transmittance } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { warmthCaution } from '../cautions.ts';
import { dryEnough, humidityCaution, worstRisk } from '../damp.ts';
import { foldPasses } from '../fold-passes.ts';
import { heat, winterLow } from '../warmth.ts';
import { dewSteps, faceStep } from '../working/face.ts';

const text: RuleText = {
  id: 'heat.panes',
  topic: 'heat',
  title: 'water on panes',
  why: 'Water that runs down a pane soaks the lining below it, night after night, where nobody looks.',
  formula:
    'T_s − T_e = (1 − U·R_si)·(T_i − T_e) ≥ T_d − T_e; U of the pane in W/(m²·K), R_si 0.13 m²K/W (0.10 in the roof), T_d dew point of the air inside, °C',
  sources: [moistureStandard, ...filmCitations],
  cautions: [warmthCaution, humidityCaution],
  fix: 'Take double panes, cover them at night, or keep the air drier.',
  place: ['heat', 'panes'],
};

interface KnownPane {
  readonly pane: Pane;
  readonly uValue: number;
}

/** Panes of the living space. The one in a bulkhead has the cab behind it. */
const panes: Need<readonly KnownPane[]> = (build) => {
  if (!build.heat) return missing('heat.panes');
  const all = build.heat.panes.filter(({ surface }) => surface !== 'bulkhead');
  const found = all.flatMap((pane): KnownPane[] => {
    const uValue = paneUValue(pane);
    return uValue === undefined ? [] : [{ pane, uValue }];
  });
  const unknown = all.filter((pane) => paneUValue(pane) === undefined);
  if (all.length === 0) return missing('van.openings');
  return unknown.length > 0 ? missing(...unknown.map(({ name }) => `heat.panes.${name}.kind`)) : given(found);
};

export default defineRule({
  ...text,
  needs: { heat, panes, winterLowC: winterLow },
  check: ({ build, facts: { heat, panes, winterLowC } }) => {
    const cold = coldAirs(build, heat, winterLowC);
    const findings = alike(panes).map((group) => findingOf(group, cold));
    return { findings: foldPasses(findings, 'pane') };
  },
  work: ({ build, facts: { heat, panes, winterLowC } }, { subject }) => {
    const group = alike(panes).find((each) => nameOf(each) === subject);
    return group && stepsOf(group, build, coldAirs(build, heat, winterLowC));
  },
});

type Group = readonly [KnownPane, ...KnownPane[]];

const nameOf = (group: Group): string =>
  group
    .map((one) => one.pane.name)
    .sort()
    .join(' and ');

/** A pane cannot lose more than the film inside lets through. */
function faceOf([{ pane, uValue }]: Group, { airs }: ColdAirs) {
  const filmM2KPerW = insideFilmM2KPerW[directionOf(pane.surface)];
  return {
    filmM2KPerW,
    worst: worstRisk(temperatureFactor(Math.min(uValue, 1 / filmM2KPerW), filmM2KPerW), airs),
  };
}

function stepsOf(group: Group, build: Build, cold: ColdAirs): readonly Step[] {
  const [{ pane, uValue }] = group;
  const { filmM2KPerW, worst } = faceOf(group, cold);
  const paths = group.map((one) => one.pane.path);
  const what = group.length > 1 ? `the ${group.length} panes` : 'the pane';
  return [
    paneStep(pane, uValue, what, paths),
    ...dewSteps(build, worst.air),
    faceStep({ of: what, uValue, filmM2KPerW, ...worst.air, paths: [] }),
  ];
}

function paneStep(
  { kind, uValue: typed }: Pane,
  uValue: number,
  what: string,
  paths: readonly PlanPath[],
): Step {
  const uprightU = kind && openingLoss(kind)?.uValue;
  const { horizontal, upward } = insideFilmM2KPerW;
  const shown = {
    what: `What ${what} ${what === 'the pane' ? 'lets' : 'let'} through: U`,
    result: transmittance(uValue),
    paths,
  };
  if (typed !== undefined || kind === undefined || uprightU === undefined)
    return { ...shown, sum: say`as typed` };
  if (Math.abs(uprightU - uValue) < 1e-12) return { ...shown, sum: say`${kind}, by the table` };
  if (kind === roofKind) return { ...shown, sum: say`a hatch of ${kind} in the roof, by the table` };
  return {
    ...shown,
    sum: say`${kind}, in the roof, where the film of air inside is thinner: 1 / (1 / ${transmittance(uprightU)} − ${String(horizontal)} m²K/W + ${String(upward)} m²K/W)`,
  };
}

/** The table has it for the roof too. */
const roofKind = 'double acrylic';

/** Panes that are made alike get wet alike. */
function alike(panes: readonly KnownPane[]): readonly Group[] {
  const groups = new Map<string, [KnownPane, ...KnownPane[]]>();
  for (const one of panes) {
    const key = `${one.uValue} ${directionOf(one.pane.surface)}`;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()];
}

function findingOf(group: Group, cold: ColdAirs): Finding {
  const { words, citations } = cold;
  const [{ pane, uValue }] = group;
  const { filmM2KPerW: film, worst } = faceOf(group, cold);
  const { risk, insideC, outsideC } = worst;
  const covered = group.some((one) => one.pane.cover)
    ? ' A cover on the inside makes the pane colder still; on the outside it keeps it warmer.'
    : '';
  return judge({
    rule: text,
    subject: nameOf(group),
    path: pane.path,
    kind: 'temperature difference',
    measured: { value: risk.surfaceC - outsideC, standard: 0 },
    limit: risk.dewPointC - outsideC,
    sense: 'at least',
    broken: 'warn',
    reason: say`At ${temperatureC(outsideC)} outside and ${temperatureC(insideC)} inside the ${group.length > 1 ? 'panes have' : 'pane has'} ${temperatureC(risk.surfaceC)} on the inner face; water settles below ${temperatureC(risk.dewPointC)} (${words}).${covered}`,
    remedy: () => remedy(uValue, film, insideC, risk.surfaceC, risk.neededFactor),
    sources:
      pane.kind && pane.uValue === undefined
        ? [...(openingLoss(pane.kind)?.citations ?? []), ...citations]
        : citations,
  });
}

/** Own choice: three panes of coated glass with gas between them. */
const bestPaneU = 0.6;

function remedy(
  uValue: number,
  filmM2KPerW: number,
  insideC: number,
  surfaceC: number,
  neededFactor: number | undefined,
): Phrase {
  const airing = dryEnough(surfaceC, insideC, 1);
  const neededU = neededFactor === undefined ? 0 : Math.floor(((1 - neededFactor) / filmM2KPerW) * 10) / 10;
  const better = paneLosses.find((row) => row.uValue <= neededU && row.uValue < uValue);
  const dry = say` Lead the water into a channel, and dry it off in the morning.`;
  if (better) return say`To keep it dry ${airing}; or take a pane of ${better.id}.${dry}`;
  return neededU >= bestPaneU
    ? say`To keep it dry ${airing}; or it would take a pane of ${transmittance(neededU)}, which few vans have.${dry}`
    : say`No pane that is made stays warm enough for that: ${airing}, cook with a lid, and open more vents.${dry}`;
}
