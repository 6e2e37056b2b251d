import type { Citation } from '../citation.ts';
import type { Force } from '../limits.ts';
import {
  growthRange,
  hotColdSystems,
  hotWaterDelivery,
  parkingLean,
  partFilledTanks,
  pipeMakerFaq,
  scaldingAdvice,
  smallTankDeadLeg,
  tankHygiene,
  trapBylaw,
  trapSealsRemembered,
  usableTankShare,
  ventPressureChoice,
  warmingUp,
} from './sources.ts';

/*
 * The limits of a water system, in SI units. None is law for a vehicle: what was read is for houses, workplaces or
 * dangerous goods. Where sources differ about the same thing the stricter is the value and the others stand beside it.
 */

export const waterLimitIds = [
  'hot-water-wait',
  'hot-water-wait-longest',
  'dead-leg-volume',
  'dead-leg-volume-house',
  'run-off-volume-house',
  'store-warm-again',
  'cold-water-temperature',
  'hot-store-temperature',
  'hot-outlet-temperature',
  'legionella-growth-from',
  'legionella-growth-to',
  'scald-temperature',
  'parking-lean',
  'trap-bore-basin',
  'trap-bore-sink',
  'trap-seal-least',
  'trap-seal-greatest',
  'vent-bore',
  'vent-pressure',
  'vent-mesh',
  'tank-usable-share',
  'part-fill-from',
  'part-fill-to',
  'disinfection-chlorine',
  'disinfection-time',
  'flushed-chlorine',
] as const;
export type WaterLimitId = (typeof waterLimitIds)[number];

export const isWaterLimitId = (id: string): id is WaterLimitId => waterLimitIds.some((each) => each === id);

export type WaterUnit = 's' | 'm' | 'm³' | '°C' | '°' | 'Pa' | 'share' | 'kg/m³';

export interface WaterLimit {
  readonly value: number;
  readonly unit: WaterUnit;
  readonly sense: 'at most' | 'at least';
  readonly force: Force;
  /** What the value is a number of, in words. */
  readonly of: string;
  readonly citations: readonly Citation[];
  readonly caution?: string;
}

const houses = 'From rules for houses, which stand on the mains.';
const workplaces = 'From rules for workplaces and houses.';
const remembered = 'From memory; ask the local authority.';

export const waterLimits: Readonly<Record<WaterLimitId, WaterLimit>> = {
  'hot-water-wait': {
    value: 30,
    unit: 's',
    sense: 'at most',
    force: 'published guide',
    of: 'until hot water reaches an outlet',
    citations: [pipeMakerFaq, hotColdSystems],
    caution: `${houses} The other source grants 60 s.`,
  },
  'hot-water-wait-longest': {
    value: 60,
    unit: 's',
    sense: 'at most',
    force: 'published guide',
    of: 'until hot water reaches an outlet',
    citations: [hotColdSystems],
    caution: workplaces,
  },
  'dead-leg-volume': {
    value: 0.001,
    unit: 'm³',
    sense: 'at most',
    force: 'own choice',
    of: 'of water held between heater and outlet',
    citations: [smallTankDeadLeg, hotWaterDelivery],
  },
  'dead-leg-volume-house': {
    value: 0.0019,
    unit: 'm³',
    sense: 'at most',
    force: 'published guide',
    of: 'of water held between heater and outlet of a house',
    citations: [hotWaterDelivery],
    caution: houses,
  },
  'run-off-volume-house': {
    value: 0.0023,
    unit: 'm³',
    sense: 'at most',
    force: 'published guide',
    of: 'of water run off before it is hot, in a house',
    citations: [hotWaterDelivery],
    caution: houses,
  },
  'store-warm-again': {
    value: 3600,
    unit: 's',
    sense: 'at most',
    force: 'own choice',
    of: 'until a store that was drawn empty is hot again',
    citations: [warmingUp],
  },
  'cold-water-temperature': {
    value: 20,
    unit: '°C',
    sense: 'at most',
    force: 'published guide',
    of: 'of stored cold water; at 20 °C legionella begins to grow',
    citations: [hotColdSystems, growthRange],
    caution: workplaces,
  },
  'hot-store-temperature': {
    value: 60,
    unit: '°C',
    sense: 'at least',
    force: 'published guide',
    of: 'of stored hot water',
    citations: [hotColdSystems],
    caution: `${workplaces} Water this hot scalds: a mixing valve is needed.`,
  },
  'hot-outlet-temperature': {
    value: 50,
    unit: '°C',
    sense: 'at least',
    force: 'published guide',
    of: 'of hot water at an outlet, before a mixing valve',
    citations: [hotColdSystems, pipeMakerFaq],
    caution: `${workplaces} Water this hot scalds: a mixing valve is needed.`,
  },
  'legionella-growth-from': {
    value: 20,
    unit: '°C',
    sense: 'at most',
    force: 'published guide',
    of: 'below which legionella does not multiply',
    citations: [growthRange, hotColdSystems],
  },
  'legionella-growth-to': {
    value: 45,
    unit: '°C',
    sense: 'at least',
    force: 'published guide',
    of: 'above which legionella does not multiply',
    citations: [growthRange],
  },
  'scald-temperature': {
    value: 43,
    unit: '°C',
    sense: 'at most',
    force: 'published guide',
    of: 'of mixed water at a shower or tap; hotter water scalds',
    citations: [scaldingAdvice, hotColdSystems],
    caution: remembered,
  },
  'parking-lean': {
    value: 1,
    unit: '°',
    sense: 'at least',
    force: 'own choice',
    of: 'of lean either way that drains should bear when the plan states none',
    citations: [parkingLean],
  },
  'trap-bore-basin': {
    value: 0.032,
    unit: 'm',
    sense: 'at least',
    force: 'published guide',
    of: 'as the bore of the trap of a basin',
    citations: [trapBylaw],
    caution: houses,
  },
  'trap-bore-sink': {
    value: 0.04,
    unit: 'm',
    sense: 'at least',
    force: 'published guide',
    of: 'as the bore of the trap of a sink, bath or shower',
    citations: [trapBylaw],
    caution: houses,
  },
  'trap-seal-least': {
    // The US 51 mm (2 in) and the 50 mm at basins and showers of the UK; the by-law asks 40 mm of two-pipe systems.
    value: 0.05,
    unit: 'm',
    sense: 'at least',
    force: 'published guide',
    of: 'of water standing in a trap',
    citations: [trapSealsRemembered, trapBylaw],
    caution: `${remembered} Driving shakes a trap dry: a waterless trap or a closed valve at the waste tank is the usual substitute.`,
  },
  'trap-seal-greatest': {
    value: 0.1,
    unit: 'm',
    sense: 'at most',
    force: 'published guide',
    of: 'of water standing in a trap',
    citations: [trapBylaw, trapSealsRemembered],
    caution: houses,
  },
  'vent-bore': {
    value: 0.01,
    unit: 'm',
    sense: 'at least',
    force: 'common practice',
    of: 'as the inner diameter of the vent of a tank; a filling hose of 20 to 25 l/min takes 10 to 16 mm, and it is no narrower than the suction of the pump',
    citations: [tankHygiene],
    caution: remembered,
  },
  'vent-pressure': {
    value: 500,
    unit: 'Pa',
    sense: 'at most',
    force: 'own choice',
    of: 'in a tank that fills or empties through its vent',
    citations: [ventPressureChoice],
  },
  'vent-mesh': {
    value: 0.00065,
    unit: 'm',
    sense: 'at most',
    force: 'common practice',
    of: 'as the mesh of the insect screen of a vent',
    citations: [tankHygiene],
    caution: remembered,
  },
  'tank-usable-share': {
    value: 0.9,
    unit: 'share',
    sense: 'at most',
    force: 'common practice',
    of: 'of the whole volume of a tank that can be drawn, where the plan states none (0.9 to 0.97)',
    citations: [usableTankShare],
    caution: remembered,
  },
  'part-fill-from': {
    value: 0.2,
    unit: 'share',
    sense: 'at most',
    force: 'published guide',
    of: 'of a tank without surge plates up to which it may travel part filled',
    citations: [partFilledTanks],
    caution: 'A rule for dangerous goods in far larger tanks: advice only.',
  },
  'part-fill-to': {
    value: 0.8,
    unit: 'share',
    sense: 'at least',
    force: 'published guide',
    of: 'of a tank without surge plates from which it may travel filled',
    citations: [partFilledTanks],
    caution: 'A rule for dangerous goods in far larger tanks: advice only.',
  },
  'disinfection-chlorine': {
    value: 0.05,
    unit: 'kg/m³',
    sense: 'at least',
    force: 'common practice',
    of: 'of free chlorine to disinfect a tank (50 mg/l)',
    citations: [tankHygiene],
    caution: `${remembered} Not to be drunk; rinse before use.`,
  },
  'disinfection-time': {
    value: 3600,
    unit: 's',
    sense: 'at least',
    force: 'common practice',
    of: 'that the chlorine stays in the tank',
    citations: [tankHygiene],
    caution: remembered,
  },
  'flushed-chlorine': {
    value: 0.0005,
    unit: 'kg/m³',
    sense: 'at most',
    force: 'common practice',
    of: 'of free chlorine left after rinsing (0.5 mg/l)',
    citations: [tankHygiene],
    caution: remembered,
  },
};
