import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { stringify } from 'yaml';
import { parseDocument } from '../../src/plan/document.ts';

type Data = Record<string, unknown>;

const isData = (value: unknown): value is Data =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The example's data, fresh for whoever edits it. */
export const curlewData = (file = 'examples/curlew/curlew.yaml'): Data => {
  const { data } = parseDocument(readFileSync(file, 'utf8')).document;
  if (!isData(data)) throw new Error(`${file} is no plan`);
  return data;
};

export const planText = (data: Data): string => stringify(data, { lineWidth: 0 });

const sectionOf = (data: Data, key: string): Data => {
  const section = data[key];
  return isData(section) ? section : {};
};

/** One edit as a builder makes it. The numbers choose what is edited, and by how much. */
export interface RandomEdit {
  readonly kind:
    | 'weigh'
    | 'shift'
    | 'rename'
    | 'remove'
    | 'add'
    | 'plate'
    | 'layer'
    | 'tank'
    | 'wire'
    | 'drop key';
  readonly pick: number;
  readonly by: number;
}

export const randomEdits = fc.array(
  fc.record({
    kind: fc.constantFrom<RandomEdit['kind']>(
      'weigh',
      'shift',
      'rename',
      'remove',
      'add',
      'plate',
      'layer',
      'tank',
      'wire',
      'drop key',
    ),
    pick: fc.nat(1000),
    by: fc.integer({ min: 1, max: 400 }),
  }),
  { minLength: 1, maxLength: 4 },
);

/** Things that nothing else refers to, so that a plan without them is still one. */
const alone = [
  'bicycles',
  'outdoor gear',
  'books and papers',
  'bedding',
  'tools',
  'clothes',
  'food and drink',
];

export function edited(edits: readonly RandomEdit[]): string {
  const data = curlewData();
  for (const edit of edits) apply(data, edit);
  return planText(data);
}

function apply(data: Data, { kind, pick, by }: RandomEdit): void {
  const fixtures = sectionOf(data, 'fixtures');
  const names = Object.keys(fixtures);
  const fixture = sectionOf(fixtures, names[pick % names.length] ?? '');
  const stores = sectionOf(data, 'stores');
  const storeNames = Object.keys(stores).filter((name) => alone.includes(name));
  const store = storeNames[pick % Math.max(1, storeNames.length)] ?? '';
  switch (kind) {
    case 'weigh':
      if ('mass' in fixture) fixture.mass = `${by} kg ± 1 kg`;
      break;
    case 'shift': {
      const at = sectionOf(fixture, 'at');
      const key = ['from_front', 'from_rear', 'from_left', 'from_right', 'above_floor'].find(
        (each) => each in at,
      );
      if (key !== undefined) at[key] = `${by} mm`;
      break;
    }
    case 'rename':
      if (store !== '') renameEverywhere(data, store, `${store} ${by}`);
      break;
    case 'remove':
      if (store !== '') {
        delete stores[store];
        for (const state of Object.values(sectionOf(data, 'load_states')))
          if (isData(state)) delete state[store];
      }
      break;
    case 'add':
      fixtures[`thing no. ${by}`] = { mass: `${by} kg`, at: { from_front: `${pick} mm`, centred: true } };
      break;
    case 'plate':
      sectionOf(data, 'van').max_mass = `${3000 + by * 2} kg`;
      break;
    case 'layer': {
      const { layers } = sectionOf(sectionOf(data, 'build_ups'), 'floor');
      if (Array.isArray(layers))
        layers.splice(pick % (layers.length + 1), pick % 2, {
          material: 'expanded cork',
          thickness: `${by} mm`,
        });
      break;
    }
    case 'tank':
      sectionOf(sectionOf(data, 'tanks'), 'waste tank').holds = `${by} L`;
      break;
    case 'wire': {
      const circuits = sectionOf(sectionOf(data, 'electrical'), 'circuits');
      const circuit = Object.keys(circuits)[pick % Object.keys(circuits).length] ?? '';
      sectionOf(circuits, circuit).conductor = ['1.5 mm2', '6 mm2', '25 mm2'][by % 3];
      break;
    }
    case 'drop key':
      delete sectionOf(data, 'van')[['track', 'overall_length', 'centre_limits'][pick % 3] ?? ''];
  }
}

/** A name in keys and in all that refers to it. */
function renameEverywhere(data: Data, from: string, to: string): void {
  for (const key of Object.keys(data)) {
    const value = data[key];
    if (isData(value)) renameEverywhere(value, from, to);
    else if (Array.isArray(value)) data[key] = value.map((each) => (each === from ? to : each));
    else if (value === from) data[key] = to;
    if (key === from) {
      data[to] = data[key];
      delete data[key];
    }
  }
}
