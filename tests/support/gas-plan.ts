import { plan } from './test-van.ts';

interface Parts {
  /** Keys of `gas` beside the appliances, each on a line of its own. */
  readonly gas?: string;
  readonly hob?: string;
  readonly appliances?: string;
  readonly cylinder?: string;
  readonly tanks?: string;
  readonly living?: string;
  readonly fixtures?: string;
  readonly rest?: string;
  readonly codes?: string;
  readonly van?: Readonly<Record<string, string>>;
}

const then = (keys: string): string => (keys === '' ? '' : `, ${keys}`);

/** 3.6 kW net: 3600 / 46.1e6 kg/s of propane, 281.1 g/h. */
export const hobInput = 'input: 3.6 kW, heating_value: net';

/**
 * The test van, 4 m by 2 m by 2 m, with a cupboard at the front right. In it are a locker of 400 mm by 300 mm with a cylinder
 * of 6 kg of propane, and a hob.
 */
export function gasPlan({
  gas = '',
  hob = `use: cooking, ${hobInput}`,
  appliances = '',
  cylinder = 'contents: propane, holds: 6 kg',
  tanks = '',
  living = '',
  fixtures = '',
  rest = '',
  codes = 'uk',
  van = {},
}: Parts = {}): string {
  return plan(
    `fixtures:
  cupboard: {mass: 20 kg, size: {length: 1 m, width: 500 mm, height: 900 mm}, at: {from_front: 0 mm, from_right: 0 mm, above_floor: 0 mm}}
  locker: {mass: 5 kg, in: cupboard, size: {length: 400 mm, width: 300 mm, height: 600 mm}, at: {from_front: 0 mm, from_right: 0 mm, above_floor: 0 mm}}
  hob: {mass: 3 kg, in: cupboard, size: {length: 400 mm, width: 300 mm, height: 100 mm}, at: {from_front: 500 mm, from_left: 0 mm, above_floor: 700 mm}}
${fixtures}
tanks:
${cylinder === '' ? '' : `  cylinder: {${cylinder}, mass: 7 kg, in: locker, size: {length: 300 mm, width: 300 mm, height: 500 mm}, at: {from_front: 0 mm, from_right: 0 mm, above_floor: 0 mm}}`}
${tanks === '' ? '  water: {contents: fresh, holds: 20 L}' : tanks}
gas:
  appliances:
    hob: {thing: hob${then(hob)}}
${appliances}
${gas}
${living === '' ? '' : `living: {${living}}`}
${rest}`,
    van,
    codes,
  );
}
