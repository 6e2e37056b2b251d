import type { Build } from '../../build/build.ts';
import type { Flame } from '../../build/flames.ts';
import type { Protection } from '../../build/gas.ts';
import type { PlaceInVan } from '../../calc/space/route.ts';
import { protectionReach } from '../../catalogue/air/still-night.ts';
import { type GasLimit, gasLimitFor } from '../../catalogue/gas/limits.ts';
import { type GasRequirement, gasRequirementFor } from '../../catalogue/gas/requirements.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { flames, isGasAboard } from '../air-facts.ts';
import { airCaution, combustionCaution, gasCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { joined, namesOf } from '../routed.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { topMattressM } from './vent-heights.ts';

const text: RuleText = {
  id: 'air.alarms',
  topic: 'air',
  title: 'gas, carbon monoxide and smoke alarms',
  why: 'Nobody smells carbon monoxide, and nobody asleep smells gas or smoke: an alarm in the right place is the one thing that wakes people.',
  formula:
    'carbon monoxide: across, 1 m ≤ a ≤ 3 m from what burns, above the mattress and 0.15 m below the ceiling; gas: z ≤ 0.3 m; smoke: within 0.3 m of the ceiling',
  sources: [
    {
      title: 'Carbon monoxide is as heavy as air and mixes with it; propane and butane sink; smoke rises',
      provenance: 'computed',
    },
  ],
  cautions: [
    combustionCaution,
    gasCaution,
    airCaution,
    'The instructions of each alarm come first. Test it when it is fitted and before every journey; nothing here shows that one will sound.',
  ],
  fix: 'Fit the alarms that are missing, of the kind for vehicles, where their instructions say.',
  lifeSafety: true,
  limits: [
    'gas-alarm-above-floor',
    'monoxide-alarm-nearest',
    'monoxide-alarm-furthest',
    'monoxide-alarm-below-ceiling',
  ],
  place: ['protection', 'alarms'],
};

type Alarm = Protection['alarms'][number];

const protection: Need<Protection> = (build) =>
  build.protection ? given(build.protection) : missing('protection.alarms');

export default defineRule({
  ...text,
  needs: { protection, flames },
  check: ({ build, facts }) => {
    const { alarms } = facts.protection;
    const wanted = wantedOf(build, [
      ...facts.flames.map(({ name }) => name),
      ...waterFlame(build, facts.flames),
    ]);
    const absent = wanted.filter(({ kind }) => alarms.every((alarm) => alarm.kind !== kind));
    const seen = alarms.map((alarm) => placedWell(alarm, build, facts.flames));
    return {
      findings: [
        ...absent.map(absence),
        ...seen.flatMap(({ alarm, faults }) => misplaced(alarm, faults)),
        ...farOff(alarms, facts.flames, build),
        ...notSaid(seen),
        ...wellPlaced(seen),
      ],
    };
  },
  work: ({ build, facts }, finding) => {
    const { alarms } = facts.protection;
    const flame = finding.measured && indoors(facts.flames).find(({ name }) => name === finding.subject);
    return flame && acrossSteps(alarms, flame, (build.vehicle.bay?.widthM ?? 0) / 2);
  },
});

// --- Which there must be ---

interface Wanted {
  readonly kind: Alarm['kind'];
  readonly why: Phrase;
  readonly row: GasRequirement;
  readonly verdict: 'fail' | 'warn';
}

/** A water heater that burns something and is none of the appliances; of its flue the plan has no word. */
const waterFlame = ({ water }: Build, burning: readonly Flame[]): readonly string[] => {
  const { heatedBy, thing } = water?.heater ?? {};
  const isListed = burning.some(
    (flame) => flame.use === 'water heating' || (thing !== undefined && flame.thing === thing),
  );
  return (heatedBy === 'gas' || heatedBy === 'diesel') && !isListed ? [thing ?? 'the water heater'] : [];
};

function wantedOf(build: Build, burning: readonly string[]): readonly Wanted[] {
  const { codes, habits } = build;
  const row = (id: Parameters<typeof gasRequirementFor>[0]) => gasRequirementFor(id, codes);
  const byForce = (id: Parameters<typeof gasRequirementFor>[0]): Pick<Wanted, 'row' | 'verdict'> => ({
    row: row(id),
    verdict: row(id).force === 'standard' ? 'fail' : 'warn',
  });
  return [
    ...(burning.length > 0
      ? [
          {
            kind: 'carbon monoxide alarm',
            why: say`${namesOf(burning)} ${burning.length === 1 ? 'burns' : 'burn'} fuel`,
            row: row('monoxide-alarm'),
            // No more than a guide was read, but this is what nobody notices without an alarm.
            verdict: 'fail',
          } as const,
        ]
      : []),
    ...(isGasAboard(build)
      ? [{ kind: 'gas alarm', why: say`There is gas aboard`, ...byForce('gas-alarm') } as const]
      : []),
    ...((habits.people ?? 0) > 0
      ? [{ kind: 'smoke alarm', why: say`People sleep here`, ...byForce('smoke-alarm') } as const]
      : []),
  ];
}

const absence = ({ kind, why, row, verdict }: Wanted): Finding =>
  observed(text, {
    verdict,
    subject: kind,
    path: text.place,
    reason: say`${why}, and the plan has no ${kind}.`,
    remedy: say`Fit 1 ${kind} ${places[kind]}, and add it under \`protection.alarms\` with its place.`,
    sources: row.citations,
    cautions: row.cautions,
  });

const places: Record<Alarm['kind'], Phrase> = {
  'carbon monoxide alarm': say`of the type for vehicles (EN 50291-2), ${length(1)} to ${length(3)} across from what burns and at the height of the sleepers' heads`,
  'gas alarm': say`within ${length(0.3)} of the floor`,
  'smoke alarm': say`on the ceiling`,
};

// --- Where they are ---

interface Fault {
  readonly reason: Phrase;
  readonly remedy: Phrase;
  readonly rows: readonly Pick<GasLimit, 'citations' | 'cautions'>[];
}

interface Seen {
  readonly alarm: Alarm;
  readonly faults: readonly Fault[];
  readonly missing: readonly string[];
  /** What its place shows. */
  readonly words: Phrase;
  /** What its place is held against. */
  readonly rows: Fault['rows'];
}

function placedWell(alarm: Alarm, build: Build, burning: readonly Flame[]): Seen {
  const { place, kind, path } = alarm;
  const ceilingM = build.vehicle.bay?.heightM;
  if (!place || ceilingM === undefined)
    return {
      alarm,
      faults: [],
      missing: ceilingM === undefined ? ['van.load_bay'] : [`${path.join('.')}.at`],
      words: [],
      rows: [],
    };
  if (kind === 'gas alarm') return { alarm, missing: [], ...gasSeen(place, build) };
  if (kind === 'smoke alarm') return { alarm, missing: [], ...smokeSeen(place, ceilingM) };
  return { alarm, missing: [], ...monoxideSeen(place, ceilingM, build, burning) };
}

type Looked = Pick<Seen, 'faults' | 'words' | 'rows'>;

function gasSeen({ zM }: PlaceInVan, { codes }: Build): Looked {
  const row = gasLimitFor('gas-alarm-above-floor', codes);
  return {
    rows: [row],
    words: say`${length(zM)} above the floor`,
    faults: exceeds(zM, row.value)
      ? [
          {
            reason: say`is ${length(zM)} above the floor; gas gathers below ${length(row.value)}.`,
            remedy: say`Lower it by ${length(upToMillimetre(zM - row.value))} or more.`,
            rows: [row],
          },
        ]
      : [],
  };
}

function smokeSeen({ zM }: PlaceInVan, ceilingM: number): Looked {
  const { smokeBelowCeilingM, citations } = protectionReach;
  const belowM = ceilingM - zM;
  return {
    rows: [{ citations, cautions: [] }],
    words: say`${length(Math.max(0, belowM))} below the ceiling`,
    faults: exceeds(belowM, smokeBelowCeilingM)
      ? [
          {
            reason: say`is ${length(belowM)} below the ceiling; smoke gathers in the top ${length(smokeBelowCeilingM)} first.`,
            remedy: say`Raise it by ${length(upToMillimetre(belowM - smokeBelowCeilingM))} or more.`,
            rows: [{ citations, cautions: [] }],
          },
        ]
      : [],
  };
}

/** What stands in the rooms where people are: the gases of what hangs outside do not rise beside the alarm. */
const indoors = (burning: readonly Flame[]) =>
  burning.flatMap((flame) =>
    flame.place && (flame.whereabouts === 'inside' || flame.whereabouts === 'in the cab')
      ? [{ ...flame, place: flame.place }]
      : [],
  );

const acrossM = (one: PlaceInVan, other: PlaceInVan): number =>
  Math.hypot(one.xM - other.xM, one.yM - other.yM);

function monoxideSeen(place: PlaceInVan, ceilingM: number, build: Build, burning: readonly Flame[]): Looked {
  const nearest = gasLimitFor('monoxide-alarm-nearest', build.codes);
  const below = gasLimitFor('monoxide-alarm-below-ceiling', build.codes);
  const siting = gasRequirementFor('monoxide-alarm-place', build.codes);
  const tooNear = indoors(burning)
    .map((flame) => ({ name: flame.name, apartM: acrossM(place, flame.place) }))
    .filter(({ apartM }) => exceeds(nearest.value, apartM))
    .map(
      ({ name, apartM }): Fault => ({
        reason: say`is ${length(apartM)} across from ${name}; nearer than ${length(nearest.value)} it sounds for every start and soon for nobody.`,
        remedy: say`Move it ${length(upToMillimetre(nearest.value - apartM))} or more away from ${name}.`,
        rows: [nearest],
      }),
    );
  const mattressM = topMattressM(build);
  const height =
    mattressM !== undefined && exceeds(mattressM, place.zM)
      ? [
          {
            reason: say`is ${length(place.zM)} above the floor, below the mattress at ${length(mattressM)}: not at the height where sleepers breathe.`,
            remedy: say`Raise it by ${length(upToMillimetre(mattressM - place.zM))} or more.`,
            rows: [siting],
          },
        ]
      : exceeds(place.zM, ceilingM - below.value)
        ? [
            {
              reason: say`is ${length(ceilingM - place.zM)} below the ceiling; an alarm on a wall is at least ${length(below.value)} below it, and at the height where sleepers breathe.`,
              remedy: say`Lower it by ${length(upToMillimetre(place.zM - ceilingM + below.value))} or more.`,
              rows: [below, siting],
            },
          ]
        : [];
  const apartM = indoors(burning).map((flame) => acrossM(place, flame.place));
  return {
    words:
      apartM.length > 0
        ? say`${length(Math.min(...apartM))} across from what burns nearest, ${length(place.zM)} above the floor`
        : say`${length(place.zM)} above the floor`,
    rows: [nearest, siting, below],
    faults: [...tooNear, ...height],
  };
}

type PlacedFlame = ReturnType<typeof indoors>[number];

interface NearAlarm {
  readonly alarm: Alarm;
  readonly place: PlaceInVan;
  readonly apartM: number;
  /** How many carbon monoxide alarms with a place there are. */
  readonly of: number;
}

/** Of the carbon monoxide alarms with a place. */
function nearestAlarm(alarms: readonly Alarm[], flame: PlacedFlame): NearAlarm | undefined {
  const placed = alarms.flatMap((alarm) =>
    alarm.kind === 'carbon monoxide alarm' && alarm.place
      ? [{ alarm, place: alarm.place, apartM: acrossM(alarm.place, flame.place) }]
      : [],
  );
  const [nearest] = [...placed].sort((one, other) => one.apartM - other.apartM);
  return nearest && { ...nearest, of: placed.length };
}

function acrossSteps(
  alarms: readonly Alarm[],
  flame: PlacedFlame,
  halfWidthM: number,
): readonly Step[] | undefined {
  const nearest = nearestAlarm(alarms, flame);
  if (!nearest) return undefined;
  const { alarm, place, apartM, of } = nearest;
  const alongM = Math.abs(place.xM - flame.place.xM);
  const asideM = Math.abs(place.yM - flame.place.yM);
  const which = of > 1 ? `, the nearest of ${of} carbon monoxide alarms` : '';
  const paths = [alarm.path, flame.thing === undefined ? flame.path : ['fixtures', flame.thing]];
  return [
    {
      what: `How far apart along the van: a${which}`,
      sum: say`${longerLess(place.xM, flame.place.xM)}, from the front of the load bay`,
      result: length(alongM),
      paths,
    },
    {
      what: 'How far apart across it: b',
      sum: say`${longerLess(place.yM + halfWidthM, flame.place.yM + halfWidthM)}, from the left`,
      result: length(asideM),
      paths,
    },
    {
      what: 'In a straight line over the floor: √(a² + b²)',
      sum: say`√(${length(alongM)}² + ${length(asideM)}²)`,
      result: length(apartM),
    },
  ];
}

/** The larger less the smaller. */
const longerLess = (one: number, other: number): Phrase =>
  say`${length(Math.max(one, other))} − ${length(Math.min(one, other))}`;

/** What burns inside and has no carbon monoxide alarm within reach. */
function farOff(alarms: readonly Alarm[], burning: readonly Flame[], { codes }: Build): readonly Finding[] {
  const row = gasLimitFor('monoxide-alarm-furthest', codes);
  return indoors(burning)
    .flatMap((flame) => {
      const nearest = nearestAlarm(alarms, flame);
      return nearest ? [{ flame, apartM: nearest.apartM }] : [];
    })
    .filter(({ apartM }) => exceeds(apartM, row.value))
    .map(({ flame, apartM }) =>
      observed(text, {
        verdict: 'warn',
        subject: flame.name,
        path: flame.path,
        measured: length(apartM),
        reason: say`The nearest carbon monoxide alarm is ${length(apartM)} across from ${flame.name}; one belongs within ${length(row.value)} of what burns.`,
        remedy: say`Move it ${length(upToMillimetre(apartM - row.value))} or more towards ${flame.name}, or fit another.`,
        sources: row.citations,
        cautions: row.cautions,
      }),
    );
}

function misplaced({ name, kind, path, replaceBy }: Alarm, faults: readonly Fault[]): readonly Finding[] {
  if (faults.length === 0) return [];
  const rows = faults.flatMap((fault) => fault.rows);
  return [
    observed(text, {
      verdict: 'warn',
      subject: subjectOf(name, kind),
      path: [...path, 'at'],
      reason: say`The ${kind} ${joined(
        faults.map(({ reason }) => reason),
        ' It ',
      )}${dateOf(replaceBy)}`,
      remedy: joined(
        faults.map(({ remedy }) => remedy),
        ' ',
      ),
      sources: rows.flatMap(({ citations }) => citations),
      cautions: [...new Set(rows.flatMap(({ cautions }) => cautions))],
    }),
  ];
}

const subjectOf = (name: string, kind: Alarm['kind']): string =>
  kind.startsWith(name) || name === kind ? kind : `${kind} ${name}`;

const dateOf = (replaceBy: string | undefined): string =>
  replaceBy === undefined ? '' : ` It is to be replaced by ${replaceBy}.`;

function notSaid(seen: readonly Seen[]): readonly Finding[] {
  const keys = [...new Set(seen.flatMap(({ missing: lacking }) => lacking))];
  const unclear = seen.filter(({ missing: lacking }) => lacking.length > 0);
  const [first] = unclear;
  if (!first) return [];
  const names = namesOf(unclear.map(({ alarm }) => subjectOf(alarm.name, alarm.kind)));
  return [
    observed(text, {
      verdict: 'not checked',
      subject: names,
      path: first.alarm.path,
      reason: say`Where the ${names} ${unclear.length === 1 ? 'is' : 'are'} the plan does not say.`,
      remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
      missing: keys,
    }),
  ];
}

function wellPlaced(seen: readonly Seen[]): readonly Finding[] {
  const good = seen.filter(({ faults, missing: lacking }) => faults.length + lacking.length === 0);
  const [first] = good;
  if (!first) return [];
  const undated = good.filter(({ alarm }) => alarm.replaceBy === undefined);
  const parts = good.map(({ alarm, words }) => say`the ${alarm.kind} ${words}`);
  const rows = good.flatMap((each) => each.rows);
  const dates = good
    .filter(({ alarm }) => alarm.replaceBy !== undefined)
    .map(({ alarm }) => ` The ${alarm.kind} is to be replaced by ${alarm.replaceBy ?? ''}.`)
    .join('');
  const noDates =
    undated.length === 0
      ? ''
      : ` Of the ${namesOf(undated.map(({ alarm }) => alarm.kind))} the plan gives no date (\`replace_by\`).`;
  return [
    observed(text, {
      verdict: 'pass',
      subject: namesOf(good.map(({ alarm }) => alarm.kind)),
      path: first.alarm.path,
      reason: say`The plan shows ${joined(parts, '; ')}.${dates}${noDates}`,
      sources: [...new Set(rows.flatMap(({ citations }) => citations))],
      cautions: [...new Set(rows.flatMap(({ cautions }) => cautions))],
    }),
  ];
}
