import type { Bank, Electrical } from '../build/electrical.ts';
import {
  chargeAh,
  count,
  current,
  length,
  power,
  resistance,
  share,
  temperatureC,
} from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import type { ScheduleTable } from '../engine/schedule.ts';
import { type Judged, verdictText } from '../engine/waive.ts';
import { sizeText } from './conductor-text.ts';

export const hasMains = ({ shore, inverter, mains }: Electrical): boolean =>
  shore !== undefined || inverter !== undefined || mains.length > 0;

type VerdictOf = (path: readonly (string | number)[]) => Judged | undefined;

/** The short tables of what is not a circuit of the battery; none for what the plan does not have. */
export function tablesOf(electrical: Electrical, verdictOf: VerdictOf): readonly ScheduleTable[] {
  return [
    distributionOf(electrical),
    mainsOf(electrical, verdictOf),
    shoreOf(electrical),
    batteryOf(electrical),
    chargersOf(electrical),
    inverterOf(electrical),
  ].filter(({ rows }) => rows.length > 0);
}

/** As people say it: 12 V, not 12.00 V. */
export const plainVolts = (voltageV: number): string => `${Number(voltageV.toPrecision(6))} V`;

/** A cell for what may not be known. */
const cell = <T>(value: T | undefined, write: (value: T) => Phrase): Phrase =>
  value === undefined ? [] : write(value);

const amperes = (value: number | undefined): Phrase => cell(value, (known) => [current(known)]);

const distributionOf = ({ distribution }: Electrical): ScheduleTable => ({
  title: 'Distribution',
  columns: ['point', 'kind', 'rating', 'where', 'at once'],
  rows: distribution.map(({ name, kind, ratingA, thing, atOnce }) => [
    [name],
    [kind],
    amperes(ratingA),
    cell(thing, (known) => [known]),
    [share(atOnce)],
  ]),
});

const mainsOf = ({ mains }: Electrical, verdictOf: VerdictOf): ScheduleTable => ({
  title: 'Mains circuits',
  columns: [
    'circuit',
    'from → to',
    'load',
    'conductor',
    'length one way',
    'breaker',
    'residual current',
    'verdict',
  ],
  rows: mains.map(({ name, path, from, to, loadW, size, lengthM, breakerA, residualCurrentA }) => [
    [name],
    [`${from === 'both' ? 'shore or inverter' : from} → ${to}`],
    cell(loadW, (known) => [power(known)]),
    cell(size, (known) => sizeText(known)),
    cell(lengthM, (known) => [length(known)]),
    amperes(breakerA),
    cell(residualCurrentA, milliamperes),
    cell(verdictOf(path), (known) => [verdictText(known)]),
  ]),
});

/** As it stands on the device: 30 mA, not 0.0 A. */
const milliamperes = (currentA: number): Phrase => [`${Number((1000 * currentA).toPrecision(6))} mA`];

const shoreOf = ({ shore }: Electrical): ScheduleTable => ({
  title: 'Shore supply',
  columns: ['voltage', 'current', 'lead', 'breaker', 'poles', 'residual current', 'bonding'],
  rows: shore
    ? [
        [
          [plainVolts(shore.voltageV)],
          [current(shore.currentA)],
          cell(
            shore.lead,
            ({ lengthM, size, coiled }) =>
              say`${length(lengthM)}, ${sizeText(size)}${coiled ? ', coiled' : ''}`,
          ),
          amperes(shore.breakerA),
          cell(shore.doublePole, (both) => [both ? 'both broken' : 'one broken']),
          cell(shore.residualCurrentA, milliamperes),
          cell(shore.bonding, (known) => sizeText(known)),
        ],
      ]
    : [],
});

const batteryOf = ({ bank }: Electrical): ScheduleTable => ({
  title: 'Battery',
  columns: [
    'chemistry',
    'blocks',
    'voltage',
    'capacity',
    'usable',
    'discharge limit',
    'surge limit',
    'charge limit',
    'charges from',
    'internal resistance',
  ],
  rows: bank ? [batteryRow(bank)] : [],
});

const batteryRow = (bank: Bank): readonly Phrase[] => [
  [bank.chemistry.name],
  blocksText(bank),
  [plainVolts(bank.voltageV)],
  say`${chargeAh(bank.capacityAh)} over ${String(bank.ratingHours)} h`,
  [share(bank.usableShare)],
  limitText(bank.dischargeLimitA, bank.limitsFrom.discharge),
  amperes(bank.surgeLimitA),
  limitText(bank.chargeLimitA, bank.limitsFrom.charge),
  cell(bank.chargesFromC, (known) => [temperatureC(known)]),
  cell(
    bank.resistance,
    ({ leastOhm, source }) => say`${resistance(leastOhm)}${source === 'typed' ? '' : ' (guidance)'}`,
  ),
];

const blocksText = ({ inSeries, inParallel, blockCapacityAh }: Bank): Phrase =>
  inSeries * inParallel === 1
    ? say`1 of ${chargeAh(blockCapacityAh)}`
    : say`${count(inSeries)} in series, ${count(inParallel)} in parallel, of ${chargeAh(blockCapacityAh)}`;

const limitText = (limitA: number | undefined, from: 'typed' | 'catalogue'): Phrase =>
  cell(limitA, (known) => say`${current(known)}${from === 'typed' ? '' : ' (guidance)'}`);

const chargersOf = ({ solar, drivingCharger, shore }: Electrical): ScheduleTable => ({
  title: 'Chargers',
  columns: ['charger', 'gives at most', 'circuit', 'source'],
  rows: [
    ...solar.map(({ name, modules, strings, modulePowerW, openCircuitV, controller, circuit }) => [
      [`solar: ${name}`],
      amperes(controller?.currentLimitA),
      cell(circuit, (known) => [known]),
      say`${count(modules)} × ${power(modulePowerW)}, strings: ${count(strings)} of ${plainVolts((openCircuitV * modules) / strings)} open circuit${
        controller ? say`; ${controller.kind} controller up to ${plainVolts(controller.voltageLimitV)}` : ''
      }`,
    ]),
    ...(drivingCharger
      ? [
          [
            ['while driving'],
            [current(drivingCharger.currentA)],
            cell(drivingCharger.circuit, (known) => [known]),
            cell(drivingCharger.alternatorA, (known) => say`alternator of ${current(known)}`),
          ],
        ]
      : []),
    ...(shore?.charger
      ? [
          [
            ['from shore'],
            [current(shore.charger.currentA)],
            cell(shore.charger.circuit, (known) => [known]),
            say`shore, ${current(shore.currentA)} at ${plainVolts(shore.voltageV)}`,
          ],
        ]
      : []),
  ],
});

const inverterOf = ({ inverter }: Electrical): ScheduleTable => ({
  title: 'Inverter',
  columns: ['power', 'surge', 'efficiency', 'idle', 'circuit', 'changeover to shore'],
  rows: inverter
    ? [
        [
          [power(inverter.powerW)],
          [power(inverter.surgeW)],
          say`${share(inverter.efficiency)}${inverter.efficiencyAssumed ? ' (assumed)' : ''}`,
          cell(inverter.idleW, (known) => [power(known)]),
          [inverter.circuit],
          cell(inverter.changeover, (known) => [known]),
        ],
      ]
    : [],
});
