import type { Circuit, Electrical } from '../build/electrical.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { Schedule } from '../engine/schedule.ts';
import type { CircuitFigures } from './circuits.ts';
import { fusesBefore } from './fused.ts';

type Missing = Schedule['missing'][number];

/** Keys without which a schedule has blanks, each under the section where it goes. */
export function missingOf(electrical: Electrical, figures: readonly CircuitFigures[]): readonly Missing[] {
  return [
    absent(electrical.path, {
      battery: electrical.bank,
      circuits: electrical.circuits[0],
    }),
    ...figures.map(circuitKeys),
    ...electrical.distribution.map(({ path, ratingA, thing }) => absent(path, { rating: ratingA, thing })),
    ...electrical.mains.map(({ path, loadW, size, lengthM, breakerA, residualCurrentA }) =>
      absent(path, {
        load: loadW,
        conductor: size,
        length: lengthM,
        breaker: breakerA,
        residual_current: residualCurrentA,
      }),
    ),
    ...shoreKeys(electrical),
    ...batteryKeys(electrical),
    ...chargerKeys(electrical),
    ...inverterKeys(electrical),
  ].filter(({ keys }) => keys.length > 0);
}

/** The keys whose values are not known. */
const absent = (path: PlanPath, values: Readonly<Record<string, unknown>>): Missing => ({
  path,
  keys: Object.entries(values).flatMap(([key, value]) => (value === undefined ? [key] : [])),
});

/** Behind a fuse: its own, or one on the way from the battery. Whether that one suits is for the checks to say. */
export const isFused = (figures: CircuitFigures): boolean =>
  figures.circuit.fuse !== undefined || fusesBefore(figures).length > 0;

function circuitKeys(figures: CircuitFigures): Missing {
  const { circuit, missing } = figures;
  const start = `${circuit.path.join('.')}.`;
  const own = missing.filter((key) => key.startsWith(start)).map((key) => key.slice(start.length));
  return { path: circuit.path, keys: [...own, ...(isFused(figures) ? distanceKeys(circuit) : ['fuse'])] };
}

const distanceKeys = ({ fuse }: Circuit): readonly string[] =>
  fuse && fuse.fromSourceM === undefined ? ['fuse.from_source'] : [];

const shoreKeys = ({ shore }: Electrical): readonly Missing[] =>
  shore
    ? [
        absent(shore.path, {
          lead: shore.lead,
          breaker: shore.breakerA,
          double_pole: shore.doublePole,
          residual_current: shore.residualCurrentA,
          bonding: shore.bonding,
        }),
      ]
    : [];

const batteryKeys = ({ bank }: Electrical): readonly Missing[] =>
  bank
    ? [
        absent(bank.path, {
          discharge_limit: bank.dischargeLimitA,
          surge_limit: bank.surgeLimitA,
          charge_limit: bank.chargeLimitA,
          charges_from: bank.chargesFromC,
          internal_resistance: bank.resistance,
        }),
      ]
    : [];

const chargerKeys = ({ solar, drivingCharger, shore }: Electrical): readonly Missing[] => [
  ...solar.map(({ path, controller, circuit }) => absent(path, { controller, circuit })),
  ...(drivingCharger
    ? [
        absent(drivingCharger.path, {
          circuit: drivingCharger.circuit,
          alternator: drivingCharger.alternatorA,
        }),
      ]
    : []),
  ...(shore?.charger ? [absent([...shore.path, 'charger'], { circuit: shore.charger.circuit })] : []),
];

/** Without a shore supply there is nothing to change over to. */
const inverterKeys = ({ inverter, shore }: Electrical): readonly Missing[] =>
  inverter
    ? [
        absent(inverter.path, {
          idle: inverter.idleW,
          changeover: shore ? inverter.changeover : 'none',
        }),
      ]
    : [];
