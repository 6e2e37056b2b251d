import fc from 'fast-check';
import { curlewData, planText } from './edited-curlew.ts';

/*
 * Plans as odd as a hand can make them of the examples, of which most are still read: whole sections away, keys away,
 * quantities out of all proportion, other words where a key has a closed list of them, entries twice.
 */

type Data = Record<string, unknown>;

const isData = (value: unknown): value is Data =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const kinds = ['remove', 'scale', 'swap', 'duplicate', 'together'] as const;

export interface Slip {
  readonly kind: (typeof kinds)[number];
  /** Which of the places that there are. */
  readonly pick: number;
  readonly by: number;
}

export interface Spoilt {
  readonly example: string;
  /** Sections that the plan does without, and whoever refers to them too. */
  readonly without: readonly string[];
  readonly slips: readonly Slip[];
}

const examples = ['curlew', 'oak', 'crowded', 'thin-cables', 'tangled', 'winter'];
const droppable = ['routes', 'electrical', 'water', 'gas', 'air', 'heat', 'living', 'people', 'build_ups'];
const factors = [0, 0.01, 0.1, 0.5, 0.9, 1.1, 2, 10, 100];

const slip: fc.Arbitrary<Slip> = fc.record({
  kind: fc.constantFrom(...kinds),
  pick: fc.nat(100_000),
  by: fc.nat(100_000),
});

/** Such plans, mostly without the sections that take longest to work out. */
export const spoiltPlans = (most = 8): fc.Arbitrary<Spoilt> =>
  fc.record({
    example: fc.constantFrom(...examples),
    without: fc.oneof(
      { weight: 1, arbitrary: fc.constant<string[]>([]) },
      { weight: 2, arbitrary: fc.constantFrom(['routes'], ['electrical'], ['routes', 'electrical']) },
      { weight: 2, arbitrary: fc.subarray(droppable, { maxLength: 4 }) },
    ),
    slips: fc.array(slip, { minLength: 1, maxLength: most }),
  });

/** Words that a key may take, where any of them leaves a plan that can be read. */
const words: Readonly<Record<string, readonly string[]>> = {
  codes: ['uk', 'eu', 'us', 'au'],
  chemistry: ['AGM', 'flooded lead', 'gel', 'lithium iron phosphate'],
  contents: ['butane', 'propane', 'fresh', 'waste', 'diesel', 'petrol'],
  fuel: ['diesel', 'petrol'],
  heated_by: ['battery', 'diesel', 'engine', 'gas', 'mains'],
  heating_value: ['gross', 'net'],
  flue: ['flueless', 'open-flued', 'room-sealed'],
  blows: ['exhaust', 'intake'],
  opens: ['inside', 'outside'],
  closed_by: ['bulkhead', 'curtain', 'insulated cover', 'open'],
  drop_limits: ['aircraft', 'boats', 'buildings', 'leisure vehicles'],
  drop: ['critical', 'lighting', 'ordinary'],
  at_once: ['0 %', '100 %'],
  lies: ['engine space', 'in insulation', 'inside', 'roof'],
  runs: ['heated', 'inside', 'outside', 'under floor'],
  is: ['bed', 'cooker', 'seat', 'shower', 'sink', 'table', 'toilet', 'wardrobe', 'worktop'],
  use: ['tap', 'shower', 'toilet', 'outside', 'cooking', 'refrigerator', 'room heating', 'water heating'],
  kind: [
    'storage',
    'instant',
    'drain',
    'isolating',
    'non-return',
    'single acrylic',
    'double glass',
    'MPPT',
    'PWM',
    'gas alarm',
    'smoke alarm',
    'foam',
  ],
  material: [
    'copper',
    'PEX',
    'hose',
    'steel',
    'rigid plastic',
    'XPS',
    'sheep wool',
    'elastomeric foam',
    'oak',
    'aluminium',
    'expanded cork',
  ],
  of: ['bulkhead', 'ceiling', 'floor', 'left wall', 'walls', 'rear doors'],
  stored_in: ['cylinders', 'fixed tank'],
  when: ['always', 'day', 'evening', 'night'],
  changeover: ['automatic', 'manual'],
};

/** What belongs together, said at once: a plan with one of these alone is mostly refused. */
const together: readonly ((data: Data, by: number) => void)[] = [
  (data) => {
    delete data.codes;
  },
  (data) => {
    data.units = 'imperial';
  },
  (data, by) => {
    sectionOf(data, 'living').winter_low = `${(by % 60) - 45} degC`;
  },
  (data, by) => {
    sectionOf(data, 'living').summer_high = `${by % 50} degC`;
  },
  (data, by) => {
    sectionOf(data, 'people').sleepers = Array.from({ length: by % 7 }, () => ({ stature: '1.7 m' }));
  },
  (data, by) => {
    sectionOf(sectionOf(data, 'electrical'), 'battery').voltage = ['6 V', '25.6 V', '51.2 V'][by % 3];
  },
  (data) => {
    for (const entry of Object.values(sectionOf(sectionOf(data, 'air'), 'vents')))
      if (isData(entry)) delete entry.closes;
  },
  (data) => {
    sectionOf(sectionOf(data, 'water'), 'heater').kind = 'instant';
  },
  (data, by) => {
    sectionOf(data, 'gas').in_use = (by % 4) + 1;
  },
  (data, by) => {
    sectionOf(data, 'heat').air_changes_per_hour = [0, 0.1, 5, 40][by % 4];
  },
  (data, by) => {
    Object.assign(sectionOf(data, 'living'), {
      showers_per_person_day: [0, 0.5, 3][by % 3],
      litres_per_shower: ['1 L', '18 L', '90 L'][by % 3],
    });
  },
  (data, by) => {
    sectionOf(sectionOf(data, 'heat'), 'heater').heated_by = ['gas', 'mains', 'battery'][by % 3];
  },
  (data) => {
    sectionOf(sectionOf(data, 'heat'), 'ribs').depth = '20 mm';
  },
  (data, by) => {
    for (const entry of Object.values(sectionOf(sectionOf(data, 'gas'), 'appliances')))
      if (isData(entry)) entry.flue = ['flueless', 'open-flued'][by % 2];
  },
];

const sectionOf = (data: Data, key: string): Data => {
  const section = data[key];
  return isData(section) ? section : {};
};

/** A place in the data: what holds it, and its key there. */
interface Place {
  readonly holder: Data | unknown[];
  readonly key: string;
  readonly value: unknown;
}

function placesIn(value: unknown): readonly Place[] {
  if (Array.isArray(value))
    return value.flatMap((each, at): Place[] => [
      { holder: value, key: String(at), value: each },
      ...placesIn(each),
    ]);
  if (!isData(value)) return [];
  return Object.entries(value).flatMap(([key, each]): Place[] => [
    { holder: value, key, value: each },
    ...placesIn(each),
  ]);
}

const amount = /^(-?[\d.]+)( ?[^\d±*]*)(±.*)?$/;

/** Things of the van's body; a slip among them is as likely as among all the rest together, or they would drown it. */
const bulk = ['fixtures', 'van', 'build_ups', 'routes', 'stores', 'weighed', 'load_states', 'params'];

function placesFor(data: Data, pick: number): readonly Place[] {
  const isBulk = pick % 4 === 0;
  const keys = Object.keys(data).filter((key) => bulk.includes(key) === isBulk);
  const places = keys.flatMap((key) => placesIn(data[key]));
  return keys.length === 0 ? placesIn(data) : places;
}

/** The same data with one slip more; undefined where there is nothing of that kind. */
function slipped(before: Data, { kind, pick, by }: Slip): Data | undefined {
  const data = structuredClone(before);
  if (kind === 'together') {
    together[pick % together.length]?.(data, by);
    return data;
  }
  const places = placesFor(data, pick);
  const fitting = places.filter((place) => canBe(kind, place));
  const place = fitting[pick % Math.max(1, fitting.length)];
  if (!place) return undefined;
  put(place, kind, by);
  return data;
}

function canBe(kind: Slip['kind'], { key, value, holder }: Place): boolean {
  if (kind === 'remove') return !Array.isArray(holder);
  if (kind === 'duplicate') return isData(value) && !Array.isArray(holder);
  if (kind === 'swap') return typeof value === 'boolean' || (typeof value === 'string' && key in words);
  return typeof value === 'number' || (typeof value === 'string' && amount.test(value));
}

function put({ holder, key, value }: Place, kind: Slip['kind'], by: number): void {
  if (Array.isArray(holder)) {
    const changed = kind === 'swap' ? swapped(key, value, by) : scaled(value, by);
    holder[Number(key)] = changed;
    return;
  }
  if (kind === 'remove') delete holder[key];
  else if (kind === 'scale') holder[key] = scaled(value, by);
  else if (kind === 'swap') holder[key] = swapped(key, value, by);
  else holder[`${key} no. 2`] = structuredClone(value);
}

function scaled(value: unknown, by: number): unknown {
  const times = factors[by % factors.length] ?? 1;
  if (typeof value === 'number') return value * times;
  const [, number = '0', unit = ''] = amount.exec(String(value)) ?? [];
  return `${Number((Number(number) * times).toPrecision(6))}${unit.trimEnd()}`;
}

function swapped(key: string, value: unknown, by: number): unknown {
  if (typeof value === 'boolean') return !value;
  const those = words[key] ?? [];
  return those[by % those.length];
}

/** Without some sections, and without the keys that would then refer to nothing. */
function lacking(data: Data, without: readonly string[]): Data {
  const kept: Data = Object.fromEntries(Object.entries(data).filter(([key]) => !without.includes(key)));
  const gone = [
    ...(without.includes('routes') ? ['run'] : []),
    ...(without.includes('electrical') ? ['circuit'] : []),
  ];
  for (const { holder, key } of placesIn(kept))
    if (!Array.isArray(holder) && gone.includes(key)) delete holder[key];
  if (without.length > 0) delete kept.weighed;
  if (without.includes('people')) delete kept.load_states;
  return kept;
}

/** The plan as written, with the first so many of its slips. */
export function spoiltText({ example, without, slips }: Spoilt, count = slips.length): string {
  const data = lacking(curlewData(`examples/curlew/${example}.yaml`), without);
  return planText(slips.slice(0, count).reduce((before, slip) => slipped(before, slip) ?? before, data));
}
