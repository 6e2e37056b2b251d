import type { Citation } from '../../src/catalogue/citation.ts';
import type { Finding, Note, PlanPath } from '../../src/engine/finding.ts';
import { factor, length, mass, share } from '../../src/engine/measure.ts';
import { say } from '../../src/engine/phrase.ts';
import type { Report, Spot } from '../../src/engine/report.ts';

export const plate: Citation = {
  title: 'EU 2021/535, Annex XIII, Part 2, section A',
  readAt: 'https://example.org/535',
  provenance: 'read',
};
export const ownChoice: Citation = {
  title: 'Warning threshold for the mass in hand',
  provenance: 'own choice',
};
export const fromMemory: Citation = {
  title: 'ISO 3833, 3.1.2',
  provenance: 'memory',
  caution: 'an older edition',
};
export const trade: Citation = { title: 'A litre of water weighs a kilogram', provenance: 'common practice' };

export const massCaution =
  'Have the finished van weighed, axle by axle, before it goes on the road; only the weighbridge and the plate count.';
export const balanceCaution =
  'How a laden van handles depends on more than these numbers; a qualified person must judge a van near a limit.';

export const fullWater = {
  text: 'fresh full, waste empty, 2 aboard, stores full',
  fills: [
    { name: 'fresh', massKg: 70, share: 1 },
    { name: 'waste', massKg: 0, share: 0 },
  ],
};

/** A finding that passes, with what a test wants different. */
export const findingOf = (changes: Partial<Finding>): Finding => ({
  rule: 'mass.total',
  topic: 'mass',
  title: 'Total mass',
  verdict: 'pass',
  subject: 'van',
  path: ['van', 'max_mass'],
  reason: say`The van is within its plated mass.`,
  sources: [plate],
  cautions: [],
  ...changes,
});

export const noteOf = (changes: Partial<Note>): Note => ({
  rule: 'mass.swaps',
  topic: 'mass',
  title: 'Lighter materials',
  detailOnly: false,
  columns: ['part', 'now', 'instead', 'saves'],
  rows: [],
  sources: [],
  cautions: [],
  ...changes,
});

/** Places paths that are listed, and no others. */
export const spotsOf =
  (spots: Readonly<Record<string, Spot>>) =>
  (path: PlanPath): Spot | undefined =>
    spots[path.join('.')];

export const reportOf = (changes: Partial<Report>): Report => ({
  file: 'curlew.yaml',
  name: 'Curlew, revision 4',
  codes: 'uk',
  units: 'metric',
  findings: [],
  notes: [],
  assumptions: [],
  spot: spotsOf({}),
  ...changes,
});

/** One of each verdict, small enough to be read in a test. */
export const smallReport: Report = reportOf({
  findings: [
    findingOf({
      verdict: 'fail',
      measured: mass(3612.4),
      limit: { measure: mass(3500), sense: 'at most' },
      margin: mass(-112.4),
      utilisation: 3612.4 / 3500,
      tolerance: mass(24),
      probability: 0.9999,
      worstState: fullWater,
      reason: say`The van weighs ${mass(3612.4)}, ${mass(112.4)} more than its plate allows.`,
      remedy: say`Leave out ${mass(112.4)}, or carry less water.`,
      cautions: [massCaution],
    }),
    findingOf({
      rule: 'mass.reserve',
      title: 'Mass in hand',
      verdict: 'not checked',
      path: ['van', 'reserve'],
      reason: say`The plan does not say what is to be kept free.`,
      missing: ['van.reserve'],
      sources: [ownChoice],
    }),
    findingOf({
      rule: 'balance.rear-axle',
      topic: 'balance',
      title: 'Axle load',
      verdict: 'warn',
      subject: 'rear axle',
      path: ['van', 'axle_limits', 'rear'],
      measured: mass(2155),
      limit: { measure: mass(2240), sense: 'at most' },
      margin: mass(85),
      utilisation: 2155 / 2240,
      tolerance: mass(90),
      probability: 0.03,
      worstState: fullWater,
      reason: say`The rear axle carries ${mass(2155)} and may carry ${mass(2240)}, but the masses in the plan are not sure enough to tell.`,
      remedy: say`Weigh the heaviest fixtures, or move ${mass(20)} ahead of the rear axle.`,
      assumptions: ['the driver weighs 75 kg'],
      sources: [plate, fromMemory],
      cautions: [balanceCaution],
    }),
    findingOf({
      rule: 'balance.front-share',
      topic: 'balance',
      title: 'Share of the front axle',
      subject: 'front axle',
      path: ['van', 'wheelbase'],
      measured: share(0.403),
      limit: { measure: share(0.25), sense: 'at least' },
      margin: share(0.153),
      utilisation: 0.25 / 0.403,
      reason: say`The front axle carries ${share(0.403)} of the van.`,
      sources: [fromMemory],
      cautions: [balanceCaution],
    }),
  ],
  assumptions: [
    { path: ['people', 'seats', 'driver', 'mass'], text: say`the driver weighs ${mass(75)}`, source: plate },
    { path: ['van', 'fuel', 'density'], text: say`diesel is taken as full` },
  ],
  spot: spotsOf({
    'van.max_mass': { line: 5, column: 3 },
    'van.reserve': { line: 4, column: 1 },
    'van.axle_limits.rear': { line: 6, column: 38 },
    'van.wheelbase': { line: 8, column: 3 },
    'people.seats.driver.mass': { line: 13, column: 5 },
  }),
});

const passing = (
  topic: Finding['topic'],
  rule: string,
  title: string,
  subject: string,
  changes: Partial<Finding>,
): Finding =>
  findingOf({ topic, rule, title, subject, path: ['fixtures', subject], sources: [trade], ...changes });

const atMost = (measuredKg: number, limitKg: number): Partial<Finding> => ({
  measured: mass(measuredKg),
  limit: { measure: mass(limitKg), sense: 'at most' },
  margin: mass(limitKg - measuredKg),
  utilisation: measuredKg / limitKg,
  tolerance: mass(12),
});

/** As many findings as a real plan has; for looking at, and for the length of a screenful. */
export const longReport: Report = {
  ...smallReport,
  findings: [
    ...smallReport.findings.filter(({ topic, verdict }) => topic === 'mass' && verdict !== 'pass'),
    passing('mass', 'mass.payload', 'Payload', 'van', atMost(1126, 1440)),
    passing('mass', 'mass.fixture', 'Fixture without a place', 'fixture bed', {}),
    passing('mass', 'mass.towing', 'Train mass', 'van and trailer', atMost(3612, 6000)),
    passing('mass', 'mass.licence', 'Driving licence', 'driver', atMost(3412, 3500)),
    passing('mass', 'mass.roof-load', 'Roof load', 'roof rack', atMost(61, 150)),
    passing('mass', 'mass.tank', 'Tank', 'fresh', atMost(70, 95)),
    ...smallReport.findings.filter(({ topic }) => topic === 'balance'),
    findingOf({
      rule: 'balance.side',
      topic: 'balance',
      title: 'Wheel loads left and right',
      verdict: 'warn',
      subject: 'left side',
      path: ['fixtures', 'kitchen', 'at'],
      measured: share(0.531),
      limit: { measure: share(0.53), sense: 'at most' },
      margin: share(-0.001),
      utilisation: 0.531 / 0.53,
      worstState: fullWater,
      reason: say`The left wheels carry ${share(0.531)} of the van: it leans, and wears its left tyres and brakes faster.`,
      remedy: say`Move ${mass(38)} from the left to the right, for example the battery by ${length(0.92)}.`,
      sources: [ownChoice],
      cautions: [balanceCaution],
    }),
    passing('balance', 'balance.front-axle', 'Axle load', 'front axle', atMost(1457, 1850)),
    passing('balance', 'balance.stability', 'Static stability factor', 'van', {
      measured: factor(1.08),
      limit: { measure: factor(0.8), sense: 'at least' },
      margin: factor(0.28),
      utilisation: 0.8 / 1.08,
      tolerance: factor(0.04),
    }),
    passing('balance', 'balance.centre', 'Centre of mass between the axles', 'van', {
      measured: length(2.171),
      limit: { measure: length(3.64), sense: 'at most' },
      margin: length(1.469),
      utilisation: 2.171 / 3.64,
      tolerance: length(0.024),
    }),
    passing('balance', 'balance.overhang', 'Rear overhang', 'van', {
      measured: length(1.12),
      limit: { measure: length(2.184), sense: 'at most' },
      margin: length(1.064),
      utilisation: 1.12 / 2.184,
    }),
    passing('balance', 'balance.tail', 'Tail-heavy when empty', 'van', {}),
  ],
  notes: [
    noteOf({
      detailOnly: true,
      rows: [
        [
          say`wall lining`,
          say`birch plywood, ${length(0.006)}`,
          say`poplar plywood, ${length(0.006)}`,
          [mass(14.6)],
        ],
        [say`worktop`, say`oak, ${length(0.027)}`, say`bamboo, ${length(0.019)}`, [mass(8.2)]],
      ],
      text: say`Each row stands alone; the savings may be added.`,
      sources: [trade],
    }),
    noteOf({
      rule: 'balance.states',
      topic: 'balance',
      title: 'Load states',
      columns: ['state', 'front', 'rear', 'total'],
      rows: [
        [say`fresh full, waste empty, 2 aboard`, [mass(1457)], [mass(2155)], [mass(3612)]],
        [say`fresh empty, waste full, 2 aboard`, [mass(1502)], [mass(2040)], [mass(3542)]],
        [say`as weighed`, [mass(1190)], [mass(870)], [mass(2060)]],
      ],
    }),
  ],
};
