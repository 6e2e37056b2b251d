import type { Build } from '../../build/build.ts';
import type { Box3 } from '../../build/layout.ts';
import type { PlaceInVan } from '../../calc/space/route.ts';
import { gasLimitFor } from '../../catalogue/gas/limits.ts';
import type { Finding, PlanPath } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { boxAt, metresToBox } from '../apart.ts';
import { combustionCaution, heatCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { burnsFuel } from '../warmth.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { distanceSteps } from '../working/distance.ts';

const text: RuleText = {
  id: 'heat.heater-exhaust',
  topic: 'heat',
  title: 'heater exhaust and openings',
  why: 'Fumes from under the van come in again through a vent, a window or a door nearby, most of all when the air stands still.',
  formula:
    'd = distance from the end of the exhaust to the nearest edge of the opening ≥ d_min, straight through the air, m; drop-outs for gas are checked with the gas',
  sources: [{ title: 'Distance between a point and a box', provenance: 'computed' }],
  cautions: [combustionCaution, heatCaution],
  fix: 'Lead the exhaust further away from doors, windows and vents.',
  lifeSafety: true,
  limits: ['flue-terminal-from-opening'],
  place: ['heat', 'heater', 'exhaust'],
};

/** Where the exhaust ends; of a heater that burns nothing there is none. */
const exhaust: Need<PlaceInVan | 'none'> = ({ heat }: Build) => {
  const heater = heat?.heater;
  if (!heater) return missing('heat.heater');
  if ((heater.heatedBy !== undefined && !burnsFuel(heater)) || heater.flue === 'flueless')
    return given('none');
  return heater.exhaust ? given(heater.exhaust) : missing('heat.heater.exhaust');
};

interface Hole {
  readonly name: string;
  readonly path: PlanPath;
  readonly box: Box3;
  readonly distanceM: number;
}

const openings: Need<Build> = (build) => (build.layout ? given(build) : missing('van.load_bay'));

export default defineRule({
  ...text,
  needs: { exhaust, openings },
  check: ({ build, facts: { exhaust, openings } }) => {
    if (exhaust === 'none') return { findings: [] };
    const { value, citations, cautions } = gasLimitFor('flue-terminal-from-opening', build.codes);
    const findings = holesOf(openings, exhaust).map(({ name, path, distanceM }): Finding => {
      return judge({
        rule: text,
        subject: name,
        path,
        kind: 'length',
        measured: { value: distanceM, standard: 0 },
        limit: value,
        sense: 'at least',
        // A guide for boats: no figure for vehicles was read.
        broken: 'warn',
        reason: say`The heater's exhaust ends ${length(distanceM)} from the ${name}.`,
        remedy: (shortfallM) =>
          say`Lead the exhaust ${length(upToMillimetre(shortfallM))} or more farther away from it.`,
        sources: citations,
        cautions,
      });
    });
    return { findings: foldPasses(findings, 'opening') };
  },
  work: ({ facts: { exhaust, openings } }, { subject, path }) => {
    if (exhaust === 'none') return undefined;
    const hole = holesOf(openings, exhaust).find(
      ({ name, path: own }) => name === subject && own.join() === path.join(),
    );
    return (
      hole &&
      distanceSteps({
        from: 'the end of the exhaust',
        place: exhaust,
        to: `the nearest edge of the ${hole.name}`,
        box: hole.box,
        paths: [['heat', 'heater', 'exhaust'], hole.path],
      })
    );
  },
});

/** Openings of the van and vents of their own; those in a bulkhead do not lead outside. */
function holesOf({ layout, air }: Build, from: PlaceInVan): readonly Hole[] {
  const holeOf = (name: string, path: PlanPath, box: Box3): Hole => ({
    name,
    path,
    box,
    distanceM: metresToBox(from, box),
  });
  const ofVan = (layout?.openings ?? [])
    .filter(({ surface }) => surface !== 'bulkhead')
    .map(({ name, path, box }) => holeOf(name, path, box));
  const vents = (air?.vents ?? []).flatMap(({ name, path, place, opening, serves }): Hole[] =>
    place === undefined || opening !== undefined
      ? []
      : [holeOf(serves === undefined ? name : `${name} of the ${serves}`, path, boxAt(place))],
  );
  return [...ofVan, ...vents];
}
