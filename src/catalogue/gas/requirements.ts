import type { Citation } from '../citation.ts';
import type { Codes } from '../codes.ts';
import type { GasForce } from './limits.ts';
import {
  applianceValveArticle,
  brusselsRules,
  compartmentKeyPoints,
  dutchDecree,
  extinguisherHandbook,
  flameFailureRemembered,
  fluelessRemembered,
  hiddenJointsRemembered,
  inspectorChecklist,
  lockerVentRule,
  monoxideAlarmScope,
  monoxideSiting,
  noFloorOpening,
  oneAreaPractice,
  smokeAlarmUs,
  supplyPressureRule,
  supplyPressureUk,
  tightnessSummary,
  tunnelRules,
  usContainers,
} from './sources.ts';
import { strictestTaken } from './undecided.ts';

/*
 * What a gas installation must have or must not have, without a number. `force` as in limits.ts.
 */

export const gasRequirementIds = [
  'locker-sealed',
  'locker-opens-outside',
  'locker-no-ignition',
  'locker-vent-place',
  'cylinder-upright',
  'cylinder-restrained',
  'pipe-material',
  'hidden-joints',
  'appliance-valve',
  'working-pressure',
  'fixed-regulator',
  'flame-failure',
  'flueless-heater',
  'drop-out',
  'no-floor-opening-over-exhaust',
  'monoxide-alarm',
  'monoxide-alarm-place',
  'gas-alarm',
  'smoke-alarm',
  'fire-blanket',
  'filled-from-outside',
] as const;
export type GasRequirementId = (typeof gasRequirementIds)[number];

export interface GasRequirement {
  readonly id: GasRequirementId;
  readonly codes: readonly Codes[];
  readonly force: GasForce;
  /** What is asked for, as a sentence without its full stop. */
  readonly words: string;
  readonly citations: readonly Citation[];
  readonly cautions: readonly string[];
}

type Text = Pick<GasRequirement, 'id' | 'words' | 'citations'>;

const european: readonly Codes[] = ['uk', 'eu'];
const elsewhere: readonly Codes[] = ['us', 'au'];
const everywhere: readonly Codes[] = ['uk', 'eu', 'us', 'au'];
const secondHand = 'Read in a restatement, not in the standard itself.';
const abroad =
  "A European rule: no rule of the plan's region was read. Ask the local authority and a gas engineer.";

const europeanRule = (text: Text, ...cautions: readonly string[]): readonly GasRequirement[] => [
  { ...text, codes: european, force: 'standard', cautions: [secondHand, ...cautions] },
  { ...text, codes: elsewhere, force: 'published guide', cautions: [abroad, ...cautions] },
];
const forAll = (text: Text, force: GasForce, ...cautions: readonly string[]): GasRequirement => ({
  ...text,
  codes: everywhere,
  force,
  cautions,
});
/** European and US texts that say the same. */
const bothSides = (text: Text, usCitation: Citation): readonly GasRequirement[] => [
  { ...text, codes: european, force: 'standard', cautions: [secondHand] },
  {
    ...text,
    citations: [usCitation, ...text.citations],
    codes: ['us'],
    force: 'standard',
    cautions: ['From one US state’s code for mobile structures.'],
  },
  { ...text, codes: ['au'], force: 'published guide', cautions: [abroad] },
];
const rememberedCaution = 'From memory; no text of it was read.';

export const gasRequirements: readonly GasRequirement[] = [
  ...bothSides(
    {
      id: 'locker-sealed',
      words: 'the cylinder locker is sealed from the living space',
      citations: [compartmentKeyPoints, dutchDecree, brusselsRules],
    },
    usContainers,
  ),
  {
    id: 'locker-opens-outside',
    codes: european,
    force: 'published guide',
    words:
      'the cylinder locker opens to the outside only; in a motor caravan whose approved body would have to be cut, through a sealed door from inside with a sill',
    citations: [compartmentKeyPoints, inspectorChecklist],
    cautions: [secondHand],
  },
  {
    id: 'locker-opens-outside',
    codes: ['us'],
    force: 'standard',
    words: 'the compartment of the containers opens from outside only',
    citations: [usContainers],
    cautions: ['From one US state’s code for mobile structures.'],
  },
  {
    id: 'locker-opens-outside',
    codes: ['au'],
    force: 'published guide',
    words: 'the cylinder locker opens to the outside only',
    citations: [compartmentKeyPoints, usContainers],
    cautions: [abroad],
  },
  ...europeanRule({
    id: 'locker-no-ignition',
    words:
      'no battery, terminal, pump, switch, lamp, socket, transformer or other source of ignition in the cylinder locker',
    citations: [inspectorChecklist, compartmentKeyPoints],
  }),
  ...bothSides(
    {
      id: 'locker-vent-place',
      words:
        'the low vent of the locker is in its floor or in a wall directly above it, leads to the open air, and no cylinder stands on it',
      citations: [lockerVentRule],
    },
    usContainers,
  ),
  ...europeanRule({
    id: 'cylinder-upright',
    words: 'cylinders stand upright with the valve uppermost',
    citations: [compartmentKeyPoints],
  }),
  ...europeanRule({
    id: 'cylinder-restrained',
    words: 'cylinders are secured low and high, and released without tools',
    citations: [compartmentKeyPoints, inspectorChecklist, brusselsRules],
  }),
  ...europeanRule({
    id: 'pipe-material',
    words: 'gas pipes are copper, steel or stainless steel, never plastic',
    citations: [inspectorChecklist],
  }),
  forAll(
    {
      id: 'hidden-joints',
      words: 'no joint of a gas pipe lies where it cannot be seen and reached',
      citations: [hiddenJointsRemembered],
    },
    'published guide',
    rememberedCaution,
  ),
  ...europeanRule({
    id: 'appliance-valve',
    words: 'each appliance has an isolating valve of its own, quickly reached',
    citations: [applianceValveArticle],
  }),
  ...europeanRule({
    id: 'working-pressure',
    words: 'all appliances on together still get the pressure on their plates',
    citations: [inspectorChecklist],
  }),
  ...europeanRule({
    id: 'fixed-regulator',
    words: 'the regulator is fixed at its pressure, not adjustable, and appliances are for that pressure',
    citations: [supplyPressureRule, supplyPressureUk],
  }),
  forAll(
    {
      id: 'flame-failure',
      words: 'each burner closes its gas when its flame goes out',
      citations: [flameFailureRemembered],
    },
    'standard',
    rememberedCaution,
  ),
  forAll(
    {
      id: 'flueless-heater',
      words: 'no room heater without a flue where people sleep; a room heater is room-sealed',
      citations: [fluelessRemembered],
    },
    'standard',
    rememberedCaution,
  ),
  forAll(
    {
      id: 'drop-out',
      words: 'each space with gas fittings has an opening low down through which escaped gas falls outside',
      citations: [oneAreaPractice],
    },
    'common practice',
    'Common practice, no source; local codes decide.',
  ),
  ...europeanRule(
    {
      id: 'no-floor-opening-over-exhaust',
      words: 'no opening in the floor if an appliance gives its exhaust off below the vehicle',
      citations: [noFloorOpening],
    },
    'From an older edition of a German sheet; what EN 1949 says was not read.',
  ),
  forAll(
    {
      id: 'monoxide-alarm',
      words: 'a carbon monoxide alarm of the type for vehicles (EN 50291-2) wherever fuel is burnt',
      citations: [monoxideAlarmScope],
    },
    'published guide',
    'The scope of the standard was read, not a duty to fit one.',
  ),
  forAll(
    {
      id: 'monoxide-alarm-place',
      words:
        'at the height where people breathe in a room apart; not above heat, steam or a sink, not shut in, not beside a door, window, fan or vent; one serves a single space, a separate sleeping room needs its own',
      citations: [monoxideSiting],
    },
    'published guide',
    'The instructions of the alarm come first.',
  ),
  forAll(
    {
      id: 'gas-alarm',
      words: 'a gas alarm low down where gas is used or stored',
      citations: [{ title: 'LPG is heavier than air and gathers low', provenance: 'computed' }],
    },
    'common practice',
    'Common practice, no source.',
  ),
  {
    id: 'smoke-alarm',
    codes: ['us'],
    force: 'standard',
    words: 'a smoke alarm outside the bedrooms, on or near the ceiling',
    citations: [smokeAlarmUs],
    cautions: ['From one US state’s code for mobile structures.'],
  },
  {
    id: 'smoke-alarm',
    codes: ['uk', 'eu', 'au'],
    force: 'published guide',
    words: 'a smoke alarm on or near the ceiling',
    citations: [smokeAlarmUs],
    cautions: ['A US rule; no rule of the region was read.'],
  },
  forAll(
    {
      id: 'fire-blanket',
      words: 'a fire blanket near the kitchen',
      citations: [extinguisherHandbook, applianceValveArticle],
    },
    'published guide',
    'From a handbook of one maker; national rules differ.',
  ),
  forAll(
    {
      id: 'filled-from-outside',
      words: 'a fixed gas tank is filled from outside',
      citations: [oneAreaPractice],
    },
    'common practice',
    'Common practice, no source; local codes decide.',
  ),
];

/**
 * What is asked for under these codes; without codes the row with the most force (the first of a kind), which says so and
 * whose it is where there is more than one.
 *
 * @throws Error when the table has no row for the pair, which would be a defect of the table.
 */
export function gasRequirementFor(id: GasRequirementId, codes?: Codes): GasRequirement {
  const rows = gasRequirements.filter(
    (row) => row.id === id && (codes === undefined || row.codes.includes(codes)),
  );
  const row = rows.find(({ force }) => force === 'standard') ?? rows[0];
  if (row === undefined)
    throw new Error(`The table of gas requirements has no row "${id}" for "${codes ?? 'any codes'}".`);
  return rows.length === 1 || codes !== undefined
    ? row
    : { ...row, cautions: [...row.cautions, strictestTaken(row)] };
}

// --- Supply pressures ---

export interface SupplyPressure {
  readonly codes: readonly Codes[];
  readonly pressurePa: number;
  readonly of: string;
  /** What new vehicles have, where one is known. */
  readonly forNew: boolean;
  readonly citations: readonly Citation[];
}

const usStandardPressure: Citation = {
  title: 'International Fuel Gas Code 2018, tables for propane: inlet of 11 in of water',
  provenance: 'read',
};
const australianPressure: Citation = {
  title: 'AS/NZS 5601: LPG supplied at 2.75 kPa',
  provenance: 'memory',
  caution: 'From memory, not looked up.',
};

export const supplyPressures: readonly SupplyPressure[] = [
  {
    codes: european,
    pressurePa: 3000,
    of: 'propane and butane alike, in new leisure vehicles since 2005',
    forNew: true,
    citations: [supplyPressureRule],
  },
  {
    codes: ['eu'],
    pressurePa: 5000,
    of: 'older leisure vehicles',
    forNew: false,
    citations: [supplyPressureRule],
  },
  {
    codes: ['uk'],
    pressurePa: 3700,
    of: 'propane, in houses and older caravans',
    forNew: false,
    citations: [supplyPressureUk],
  },
  {
    codes: ['uk'],
    pressurePa: 2800,
    of: 'butane, in houses and older caravans',
    forNew: false,
    citations: [supplyPressureUk],
  },
  {
    codes: ['us'],
    pressurePa: 11 * 249.08891,
    of: 'propane',
    forNew: true,
    citations: [usStandardPressure],
  },
  { codes: ['au'], pressurePa: 2750, of: 'propane', forNew: true, citations: [australianPressure] },
];

export const supplyPressuresFor = (codes?: Codes): readonly SupplyPressure[] =>
  supplyPressures.filter((row) => codes === undefined || row.codes.includes(codes));

// --- For information ---

/** A tightness test by a gas engineer, as a line of a list; a plan cannot show its result. */
export const tightnessTest = {
  testPa: 15_000,
  medium: 'air',
  mostDropPa: 1000,
  leastVolumeM3: 700e-6,
  extraVolumeM3: 600e-6,
  settlesS: 300,
  watchedS: 300,
  highPressureSide: 'leak spray after EN 14291, no bubbles in 30 s',
  citations: [tightnessSummary],
} as const;

/** What places on the way ask for. */
export interface PlaceNote {
  readonly place: string;
  readonly words: string;
  readonly most?: { readonly value: number; readonly unit: 'kg' | 'm' | 'share' };
  readonly citations: readonly Citation[];
}
export const placeNotes: readonly PlaceNote[] = [
  {
    place: 'Channel Tunnel',
    words: 'gas in a single fixed container',
    most: { value: 47, unit: 'kg' },
    citations: [tunnelRules],
  },
  {
    place: 'Channel Tunnel',
    words: 'gas in several fixed containers together',
    most: { value: 50, unit: 'kg' },
    citations: [tunnelRules],
  },
  {
    place: 'Channel Tunnel',
    words: 'filled share of a fixed container',
    most: { value: 0.8, unit: 'share' },
    citations: [tunnelRules],
  },
  {
    place: 'Netherlands',
    words: 'pipe from the regulator to an appliance',
    most: { value: 10, unit: 'm' },
    citations: [dutchDecree],
  },
  {
    place: 'Netherlands',
    words: 'filled share of a container',
    most: { value: 0.8, unit: 'share' },
    citations: [dutchDecree],
  },
  {
    place: 'Brussels',
    words:
      'cylinders fixed firmly, apart from each other and from the walls, in a tight compartment vented to the outside',
    citations: [brusselsRules],
  },
];
