import type { Citation } from '../citation.ts';
import type { Codes } from '../codes.ts';
import type { Force } from '../limits.ts';
import {
  boatFlues,
  brusselsRules,
  burnerHole,
  compartmentKeyPoints,
  dropOutDistanceChoice,
  dropPracticeUk,
  dropRuleAustralia,
  dropRuleUs,
  dutchDecree,
  extinguisherHandbook,
  fillFacts,
  gasAlarmPractice,
  hoseAgePage,
  hoseTradePage,
  inspectorChecklist,
  lockerVentRule,
  monoxideSiting,
  secondSupplySummary,
  tunnelRules,
  usContainers,
  workingPressureRule,
} from './sources.ts';
import { strictestTaken } from './undecided.ts';

/*
 * The limits of a gas installation in a vehicle, in SI units, by codes. A row is `standard` where it restates a standard
 * or code of protection for vehicles of those codes, and no more than a guide elsewhere. None shows that an installation
 * is sound: a gas engineer does.
 */

export const gasLimitIds = [
  'fill-share',
  'locker-low-vent-share',
  'locker-low-vent-least',
  'locker-split-vent-share',
  'locker-split-vent-least',
  'locker-cylinders',
  'locker-cylinder-mass',
  'locker-sill',
  'locker-vent-above-exhaust',
  'locker-vent-beside-exhaust',
  'small-box-cylinders',
  'small-box-mass',
  'small-box-vent-bore',
  'cylinder-fixings',
  'drop-out-area',
  'drop-out-from-exhaust',
  'drop-out-from-ignition',
  'drop-out-from-drain',
  'flue-terminal-from-opening',
  'pipe-drop',
  'pipe-wall-share',
  'pipe-clips-copper',
  'pipe-clips-steel',
  'hose-length',
  'hose-length-slide-out',
  'hose-age',
  'regulator-age',
  'inspection-interval',
  'one-supply-consumption',
  'extinguisher-mass',
  'monoxide-alarm-nearest',
  'monoxide-alarm-furthest',
  'monoxide-alarm-below-ceiling',
  'monoxide-alarm-from-wall',
  'monoxide-alarm-coldest',
  'monoxide-alarm-warmest',
  'gas-alarm-above-floor',
] as const;
export type GasLimitId = (typeof gasLimitIds)[number];

export type GasUnit = 'm²' | 'm' | 'kg' | 'kg/s' | 'Pa' | 'share' | 'number' | 'years' | '°C';

/** As for other limits, and `standard`: a standard or code of protection for vehicles of these codes. */
export type GasForce = Force | 'standard';

export interface GasLimit {
  readonly id: GasLimitId;
  readonly codes: readonly Codes[];
  readonly value: number;
  readonly unit: GasUnit;
  readonly sense: 'at most' | 'at least';
  readonly force: GasForce;
  /** What the value is a number of, in words. */
  readonly of: string;
  readonly citations: readonly Citation[];
  readonly cautions: readonly string[];
}

type Rule = Omit<GasLimit, 'codes' | 'force' | 'cautions'>;

const everywhere: readonly Codes[] = ['uk', 'eu', 'us', 'au'];
const secondHand = 'Read in a restatement, not in the standard itself.';
const abroad =
  "A European rule: no figure of the plan's region was read. Ask the local authority and a gas engineer.";

/** EN 1949 and its German sheet: a standard in Europe, a guide elsewhere. */
const european = (rule: Rule, ...cautions: readonly string[]): readonly GasLimit[] => [
  { ...rule, codes: ['uk', 'eu'], force: 'standard', cautions: [secondHand, ...cautions] },
  { ...rule, codes: ['us', 'au'], force: 'published guide', cautions: [abroad, ...cautions] },
];
/** As above, where the US has a row of its own. */
const europeanNotUs = (rule: Rule, ...cautions: readonly string[]): readonly GasLimit[] => [
  { ...rule, codes: ['uk', 'eu'], force: 'standard', cautions: [secondHand, ...cautions] },
  { ...rule, codes: ['au'], force: 'published guide', cautions: [abroad, ...cautions] },
];
const american = (rule: Rule): GasLimit => ({
  ...rule,
  codes: ['us'],
  force: 'standard',
  cautions: ['From one US state’s code for mobile structures.'],
});
/** The US text has shares of the floor and no least area. */
const lockerLeast = (rule: Rule): readonly GasLimit[] => [
  ...europeanNotUs(rule),
  {
    ...rule,
    codes: ['us'],
    force: 'published guide',
    cautions: ['A European rule: the US text that was read asks for a share of the floor only.'],
  },
];
const guide = (rule: Rule, ...cautions: readonly string[]): GasLimit => ({
  ...rule,
  codes: everywhere,
  force: 'published guide',
  cautions,
});
const unsourced = (rule: Rule, force: 'common practice' | 'own choice', caution: string): GasLimit => ({
  ...rule,
  codes: everywhere,
  force,
  cautions: [caution],
});

const dropOf = 'lost between the regulator and any appliance, all appliances on';
const waterInchPa = 249.08891;
const poundKg = 0.45359237;

export const gasLimits: readonly GasLimit[] = [
  guide(
    {
      id: 'fill-share',
      value: 0.8,
      unit: 'share',
      sense: 'at most',
      of: 'the inside of a cylinder or tank, filled with liquid',
      citations: [fillFacts, tunnelRules, dutchDecree],
    },
    'A valve in the tank must stop the filling there; a full tank bursts when it warms.',
  ),
  ...europeanNotUs({
    id: 'locker-low-vent-share',
    value: 0.02,
    unit: 'share',
    sense: 'at least',
    of: 'the floor of the cylinder locker, as free area of low vents alone',
    citations: [lockerVentRule, inspectorChecklist],
  }),
  american({
    id: 'locker-low-vent-share',
    value: 0.02,
    unit: 'share',
    sense: 'at least',
    of: 'the floor of the cylinder locker, as free area of both vents, half at the floor, half at the ceiling',
    citations: [usContainers],
  }),
  ...lockerLeast({
    id: 'locker-low-vent-least',
    value: 0.01,
    unit: 'm²',
    sense: 'at least',
    of: 'free area of low vents of the cylinder locker, if it has no high ones',
    citations: [lockerVentRule, inspectorChecklist],
  }),
  ...europeanNotUs({
    id: 'locker-split-vent-share',
    value: 0.01,
    unit: 'share',
    sense: 'at least',
    of: 'the floor of the cylinder locker, as free area of the low vents and again of the high ones',
    citations: [lockerVentRule],
  }),
  american({
    id: 'locker-split-vent-share',
    value: 0.01,
    unit: 'share',
    sense: 'at least',
    of: 'the floor of the cylinder locker, as free area of the low vent and again of the high one',
    citations: [usContainers],
  }),
  ...lockerLeast({
    id: 'locker-split-vent-least',
    value: 0.005,
    unit: 'm²',
    sense: 'at least',
    of: 'free area of the low vents of the cylinder locker and again of the high ones',
    citations: [lockerVentRule],
  }),
  ...europeanNotUs({
    id: 'locker-cylinders',
    value: 2,
    unit: 'number',
    sense: 'at most',
    of: 'cylinders in a locker',
    citations: [inspectorChecklist],
  }),
  american({
    id: 'locker-cylinders',
    value: 2,
    unit: 'number',
    sense: 'at most',
    of: 'containers in a locker',
    citations: [usContainers],
  }),
  ...europeanNotUs(
    {
      id: 'locker-cylinder-mass',
      value: 16,
      unit: 'kg',
      sense: 'at most',
      of: 'gas in each cylinder of a locker',
      citations: [inspectorChecklist],
    },
    'An older text has 15 kg.',
  ),
  american({
    id: 'locker-cylinder-mass',
    value: 45 * poundKg,
    unit: 'kg',
    sense: 'at most',
    of: 'gas in each container, about 45 lb of one that holds 105 lb of water',
    citations: [usContainers],
  }),
  ...european({
    id: 'locker-sill',
    value: 0.05,
    unit: 'm',
    sense: 'at least',
    of: 'height of the sill of the locker door above the locker floor',
    citations: [inspectorChecklist, lockerVentRule],
  }),
  ...european({
    id: 'locker-vent-above-exhaust',
    value: 0.3,
    unit: 'm',
    sense: 'at least',
    of: 'from the locker or its vent down to an exhaust below it',
    citations: [inspectorChecklist],
  }),
  ...european({
    id: 'locker-vent-beside-exhaust',
    value: 0.25,
    unit: 'm',
    sense: 'at least',
    of: 'from the locker or its vent to an exhaust beside it',
    citations: [inspectorChecklist],
  }),
  ...european({
    id: 'small-box-cylinders',
    value: 2,
    unit: 'number',
    sense: 'at most',
    of: 'cylinders in a small box inside',
    citations: [inspectorChecklist],
  }),
  ...european({
    id: 'small-box-mass',
    value: 7,
    unit: 'kg',
    sense: 'at most',
    of: 'gas in all cylinders of a small box inside',
    citations: [inspectorChecklist],
  }),
  ...european({
    id: 'small-box-vent-bore',
    value: 0.02,
    unit: 'm',
    sense: 'at least',
    of: 'inside diameter of the falling duct from a small box to the outside',
    citations: [inspectorChecklist],
  }),
  ...european({
    id: 'cylinder-fixings',
    value: 2,
    unit: 'number',
    sense: 'at least',
    of: 'fixings of each cylinder, low and high, released without tools',
    citations: [inspectorChecklist, lockerVentRule, compartmentKeyPoints, brusselsRules],
  }),
  guide(
    {
      id: 'drop-out-area',
      value: 0.0013,
      unit: 'm²',
      sense: 'at least',
      of: 'free area of a drop-out through the floor of a space with gas fittings',
      citations: [burnerHole],
    },
    'From instructions for a refrigerator; no standard with a size for a drop-out was read. The instructions of the appliance come first.',
  ),
  guide(
    {
      id: 'drop-out-from-exhaust',
      value: 0.5,
      unit: 'm',
      sense: 'at least',
      of: 'from a drop-out to an exhaust of a heater or the engine',
      citations: [boatFlues, inspectorChecklist],
    },
    'From rules for boats, about openings near flues; a German checklist has 300 mm above and 250 mm beside an exhaust for the locker. An older German sheet forbids every floor opening if an appliance exhausts below the vehicle.',
  ),
  unsourced(
    {
      id: 'drop-out-from-ignition',
      value: 0.25,
      unit: 'm',
      sense: 'at least',
      of: 'from a drop-out to a source of ignition under the vehicle',
      citations: [dropOutDistanceChoice],
    },
    'own choice',
    'No source for this distance was read.',
  ),
  unsourced(
    {
      id: 'drop-out-from-drain',
      value: 0.25,
      unit: 'm',
      sense: 'at least',
      of: 'from a drop-out to a drain or its tank opening, in which gas would gather',
      citations: [dropOutDistanceChoice],
    },
    'own choice',
    'No source for this distance was read.',
  ),
  guide(
    {
      id: 'flue-terminal-from-opening',
      value: 0.5,
      unit: 'm',
      sense: 'at least',
      of: 'from a flue terminal to vents, windows, hatches, fuel filler and fuel vent',
      citations: [boatFlues],
    },
    'For room-sealed flues of boats; the instructions of the heater come first.',
  ),
  {
    id: 'pipe-drop',
    codes: ['uk'],
    value: 250,
    unit: 'Pa',
    sense: 'at most',
    force: 'published guide',
    of: dropOf,
    citations: [dropPracticeUk, workingPressureRule],
    cautions: ['Practice in houses. Every appliance must get the pressure on its plate with all of them on.'],
  },
  {
    id: 'pipe-drop',
    codes: ['eu'],
    value: 250,
    unit: 'Pa',
    sense: 'at most',
    force: 'published guide',
    of: dropOf,
    citations: [workingPressureRule, dropPracticeUk],
    cautions: [
      'EN 1949 asks only that every appliance gets its working pressure with all on; the figure is UK practice.',
    ],
  },
  {
    id: 'pipe-drop',
    codes: ['us'],
    value: 0.5 * waterInchPa,
    unit: 'Pa',
    sense: 'at most',
    force: 'standard',
    of: dropOf,
    citations: [dropRuleUs],
    cautions: ['From one US state’s code for mobile structures.'],
  },
  {
    id: 'pipe-drop',
    codes: ['au'],
    value: 250,
    unit: 'Pa',
    sense: 'at most',
    force: 'published guide',
    of: dropOf,
    citations: [dropRuleAustralia, dropPracticeUk],
    cautions: ['The Australian figure is from memory; UK practice is the same.'],
  },
  ...european({
    id: 'pipe-wall-share',
    value: 0.1,
    unit: 'share',
    sense: 'at least',
    of: 'the outside diameter, as wall of the pipe',
    citations: [inspectorChecklist],
  }),
  ...european({
    id: 'pipe-clips-copper',
    value: 0.5,
    unit: 'm',
    sense: 'at most',
    of: 'between clips of copper gas pipe',
    citations: [inspectorChecklist],
  }),
  ...european({
    id: 'pipe-clips-steel',
    value: 1,
    unit: 'm',
    sense: 'at most',
    of: 'between clips of steel gas pipe',
    citations: [inspectorChecklist],
  }),
  ...european(
    {
      id: 'hose-length',
      value: 0.4,
      unit: 'm',
      sense: 'at most',
      of: 'length of the hose from cylinder to regulator or pipe',
      citations: [inspectorChecklist, hoseTradePage],
    },
    'A trade page has 350 to 450 mm.',
  ),
  ...european({
    id: 'hose-length-slide-out',
    value: 0.75,
    unit: 'm',
    sense: 'at most',
    of: 'length of the hose of a cylinder on a slide-out',
    citations: [inspectorChecklist, hoseTradePage],
  }),
  ...european(
    {
      id: 'hose-age',
      value: 10,
      unit: 'years',
      sense: 'at most',
      of: 'age of a gas hose, from the date on it',
      citations: [inspectorChecklist, hoseAgePage],
    },
    'Some countries and makers ask for less: the date or life printed on it comes first.',
  ),
  ...european(
    {
      id: 'regulator-age',
      value: 10,
      unit: 'years',
      sense: 'at most',
      of: 'age of the regulator, from the date on it',
      citations: [inspectorChecklist, hoseAgePage],
    },
    'Some countries and makers ask for less: the date or life printed on it comes first.',
  ),
  ...european({
    id: 'inspection-interval',
    value: 2,
    unit: 'years',
    sense: 'at most',
    of: 'between inspections of the gas installation',
    citations: [inspectorChecklist],
  }),
  ...european({
    id: 'one-supply-consumption',
    value: 1.5 / 3600,
    unit: 'kg/s',
    sense: 'at most',
    of: 'consumption of all appliances on one supply; more, and with a gas generator, allows a second one, never connected to the first',
    citations: [secondSupplySummary],
  }),
  guide(
    {
      id: 'extinguisher-mass',
      value: 1,
      unit: 'kg',
      sense: 'at least',
      of: 'dry powder in a fire extinguisher',
      citations: [extinguisherHandbook],
    },
    'From a handbook of one maker; national rules differ.',
  ),
  ...(
    [
      [
        'monoxide-alarm-nearest',
        1,
        'm',
        'at least',
        'across, from what burns fuel to the carbon monoxide alarm',
      ],
      [
        'monoxide-alarm-furthest',
        3,
        'm',
        'at most',
        'across, from what burns fuel to the carbon monoxide alarm',
      ],
      [
        'monoxide-alarm-below-ceiling',
        0.15,
        'm',
        'at least',
        'from the ceiling down to an alarm on a wall, above all doors and windows',
      ],
      ['monoxide-alarm-from-wall', 0.3, 'm', 'at least', 'from any wall to an alarm on the ceiling'],
      ['monoxide-alarm-coldest', -5, '°C', 'at least', 'where the alarm is'],
      ['monoxide-alarm-warmest', 40, '°C', 'at most', 'where the alarm is'],
    ] as const
  ).map(([id, value, unit, sense, of]) =>
    guide(
      { id, value, unit, sense, of, citations: [monoxideSiting] },
      'Written for houses and used in vehicles: where no ideal place exists, keep 1 to 3 m from what burns and not above heat or steam. The instructions of the alarm come first.',
    ),
  ),
  unsourced(
    {
      id: 'gas-alarm-above-floor',
      value: 0.3,
      unit: 'm',
      sense: 'at most',
      of: 'from the floor to the gas alarm',
      citations: [gasAlarmPractice],
    },
    'common practice',
    'Common practice, no source; the instructions of the alarm come first.',
  ),
];

/**
 * The limit under these codes; without codes the strictest row, which says so where the rows differ. Of equal rows the
 * first, which is the one with the most force.
 *
 * @throws Error when the table has no row for the pair, which would be a defect of the table.
 */
export function gasLimitFor(id: GasLimitId, codes?: Codes): GasLimit {
  const rows = gasLimits.filter((row) => row.id === id && (codes === undefined || row.codes.includes(codes)));
  const [first] = rows;
  if (first === undefined)
    throw new Error(`The table of gas limits has no row "${id}" for "${codes ?? 'any codes'}".`);
  const strictest = rows.reduce((best, row) => (isStricter(row, best) ? row : best), first);
  const areAlike = rows.every(({ value, force }) => value === first.value && force === first.force);
  return areAlike
    ? strictest
    : { ...strictest, cautions: [...strictest.cautions, strictestTaken(strictest)] };
}

const isStricter = (row: GasLimit, than: GasLimit): boolean =>
  row.sense === 'at most' ? row.value < than.value : row.value > than.value;
