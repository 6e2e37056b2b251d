import type { Vent } from '../../build/air.ts';
import type { Build } from '../../build/build.ts';
import type { Solid } from '../../build/layout.ts';
import { ventHeightM } from '../../build/night-air.ts';
import type { Citation } from '../../catalogue/citation.ts';
import type { Codes } from '../../catalogue/codes.ts';
import type { Finding, PlanPath, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { airLimit, vents } from '../air-facts.ts';
import { airCaution, gasCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { surfaceOf } from '../lying-surface.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { upToMillimetre } from '../whole-millimetres.ts';

const text: RuleText = {
  id: 'air.vent-heights',
  topic: 'air',
  title: 'height of vents in walls',
  why: 'Warm, used air gathers under the roof and gas on the floor: a vent half way up lets out neither.',
  formula:
    'low: z ≤ 0.10 m above the floor (0.15 m in Australia); high: z ≥ 1.8 m and 0.3 m above the top mattress (in Australia within 0.15 m of the roof)',
  sources: [
    { title: 'Vents in the ceiling are high and vents in the floor are low', provenance: 'own choice' },
  ],
  cautions: [gasCaution, airCaution],
  fix: 'Move the vent to the height at which it counts, or double its area where the table allows.',
  lifeSafety: true,
  limits: [
    'low-vent-top',
    'low-vent-top-au-nz',
    'high-vent-below-roof-au-nz',
    'high-wall-vent-height',
    'high-vent-above-mattress',
  ],
  place: ['air', 'vents'],
};

/** Fixed vents of the room that stand in a wall, and the height that the plan gives them. */
interface Walled {
  readonly vent: Vent;
  readonly zM: number;
}

const walled: Need<readonly Walled[]> = (build) => {
  const found = vents(build);
  if (!found.ok) return found;
  const fixed = found.value.vents.filter(({ closes, serves }) => closes === false && serves === undefined);
  if (fixed.length === 0) return missing('air.vents.NAME.closes');
  const inWalls = fixed.filter(({ surface }) => surface !== 'ceiling' && surface !== 'floor');
  const heightOf = ventHeightM(build.vehicle.bay?.heightM);
  const keys = inWalls.flatMap((vent) => [
    ...(vent.level === undefined ? [`${vent.path.join('.')}.level`] : []),
    ...(heightOf(vent) === undefined ? [`${vent.path.join('.')}.at.above_floor`] : []),
  ]);
  if (keys.length > 0) return missing(...keys);
  return given(inWalls.map((vent) => ({ vent, zM: heightOf(vent) ?? 0 })));
};

export default defineRule({
  ...text,
  needs: { walled },
  check: ({ build, facts }) => ({
    findings:
      facts.walled.length === 0
        ? [noneInWalls(build)]
        : foldPasses(
            facts.walled.map((each) => findingFor(each, build)),
            'vent',
          ),
  }),
  work: ({ build, facts }, { subject }) => {
    const found = facts.walled.find(({ vent }) => vent.name === subject);
    return found && steps(found, build);
  },
});

const limitFor = ({ vent }: Walled, build: Build): HeightLimit =>
  vent.level === 'high' ? highLimit(build) : lowLimit(build.codes);

function steps({ vent, zM }: Walled, build: Build): readonly Step[] {
  const { value, sense, working, paths } = limitFor({ vent, zM }, build);
  const typed =
    vent.aboveFloorM === undefined ? say`the plan gives a place and no height: at the floor` : undefined;
  return [
    {
      what: `What counts as ${vent.level ?? ''} in a wall: ${sense}`,
      sum: working,
      result: length(value),
      paths,
    },
    {
      what: `Height of ${vent.name} above the floor: z`,
      ...(typed && { sum: typed }),
      result: length(zM),
      paths: [[...vent.path, 'at', 'above_floor']],
    },
  ];
}

const noneInWalls = ({ air }: Build): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: 'vents',
    path: text.place,
    reason: say`The fixed vents, ${namesOf((air?.vents ?? []).filter(({ closes, serves }) => closes === false && serves === undefined).map(({ name }) => name))}, are in the ceiling and the floor; no height has to be kept in a wall.`,
  });

function findingFor({ vent, zM }: Walled, build: Build): Finding {
  const { value, sense, of, sources, cautions } = limitFor({ vent, zM }, build);
  return judge({
    rule: text,
    subject: vent.name,
    path: [...vent.path, 'at'],
    kind: 'length',
    measured: { value: zM, standard: 0 },
    limit: value,
    sense,
    broken: 'warn',
    reason: say`${vent.name} is ${length(zM)} above the floor; to count as ${vent.level ?? ''} it is ${sense} ${length(value)} above it${of}.`,
    remedy: (byM) =>
      say`${sense === 'at most' ? 'Lower' : 'Raise'} it by ${length(upToMillimetre(byM))}, or do not count it as ${vent.level ?? ''}.`,
    sources,
    cautions,
  });
}

interface HeightLimit {
  readonly value: number;
  readonly sense: 'at most' | 'at least';
  readonly sources: readonly Citation[];
  readonly cautions: readonly string[];
  readonly of: Phrase | string;
  /** How the value comes about, and from where in the plan. */
  readonly working: Phrase;
  readonly paths: readonly PlanPath[];
}

/** Without codes the strictest: the European height. */
function lowLimit(codes: Codes | undefined): HeightLimit {
  const row = airLimit(codes === 'au' ? 'low-vent-top-au-nz' : 'low-vent-top');
  return {
    value: row.value,
    sense: 'at most',
    of: '',
    sources: row.citations,
    cautions: row.cautions,
    working: say`${length(row.value)}, ${codes === 'au' ? 'the height for Australia and New Zealand' : 'the European height'}`,
    paths: [],
  };
}

function highLimit(build: Build): HeightLimit {
  const { codes, vehicle } = build;
  if (codes === 'au') {
    const row = airLimit('high-vent-below-roof-au-nz');
    const roofM = vehicle.bay?.heightM ?? 0;
    return {
      value: roofM - row.value,
      working: say`${length(roofM)} under the roof − ${length(row.value)}`,
      paths: [['van', 'load_bay', 'height']],
      sense: 'at least',
      of: say`, ${length(row.value)} below the roof`,
      sources: row.citations,
      cautions: row.cautions,
    };
  }
  const wall = airLimit('high-wall-vent-height');
  const over = airLimit('high-vent-above-mattress');
  const mattressM = topMattressM(build);
  const aboveBedM = mattressM === undefined ? 0 : mattressM + over.value;
  return {
    value: Math.max(wall.value, aboveBedM),
    working:
      mattressM === undefined
        ? say`${length(wall.value)}; the plan has no bed with a place`
        : say`the larger of ${length(wall.value)} and ${length(mattressM)} to the top mattress + ${length(over.value)}`,
    paths: beds(build).map(({ path }) => path),
    sense: 'at least',
    of: aboveBedM > wall.value ? say`, which is ${length(over.value)} above the top mattress` : '',
    sources: [...wall.citations, ...over.citations],
    cautions: [...wall.cautions, 'Two restatements differ; the higher of their heights is taken.'],
  };
}

/** The top of the highest bed. */
export function topMattressM(build: Build): number | undefined {
  const { layout } = build;
  const all = beds(build);
  return layout && all.length > 0
    ? Math.max(...all.map((bed) => surfaceOf(bed, layout).box.topM))
    : undefined;
}

const beds = ({ layout }: Build): readonly Solid[] => layout?.solids.filter(({ use }) => use === 'bed') ?? [];
