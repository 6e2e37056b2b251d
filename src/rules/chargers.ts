import type { Bank, Electrical } from '../build/electrical.ts';
import { chargeVoltages } from '../catalogue/electrical/charging-practice.ts';
import type { PlanPath } from '../engine/finding.ts';
import { given, missing, type Need } from '../engine/rule.ts';
import { electrical } from './circuits.ts';

/** Something that brings current to the battery. */
export interface Charger {
  readonly name: string;
  /** The key that says its current. */
  readonly path: PlanPath;
  readonly currentA: number;
}

export interface Chargers {
  readonly known: readonly Charger[];
  readonly togetherA: number;
  /** Keys of chargers that the plan names without their current. */
  readonly missing: readonly string[];
}

export const bank: Need<Bank> = (build) => {
  const found = electrical(build);
  if (!found.ok) return found;
  return found.value.bank ? given(found.value.bank) : missing('electrical.battery');
};

/** Every charger of the plan: solar controllers, the one that runs off the alternator, and the one on the mains. */
export const chargers: Need<Chargers> = (build) => {
  const found = electrical(build);
  if (!found.ok) return found;
  const all = chargersOf(found.value);
  return all.known.length + all.missing.length > 0
    ? given(all)
    : missing('electrical.solar', 'electrical.charging_while_driving', 'electrical.shore.charger');
};

function chargersOf({ solar, drivingCharger, shore }: Electrical): Chargers {
  const known: Charger[] = solar.flatMap(({ name, path, controller }) =>
    controller
      ? [
          {
            name: `the solar controller of ${name}`,
            path: [...path, 'controller', 'current_limit'],
            currentA: controller.currentLimitA,
          },
        ]
      : [],
  );
  if (drivingCharger)
    known.push({
      name: 'the charger while driving',
      path: [...drivingCharger.path, 'current'],
      currentA: drivingCharger.currentA,
    });
  if (shore?.charger)
    known.push({
      name: 'the shore charger',
      path: [...shore.path, 'charger', 'current'],
      currentA: shore.charger.currentA,
    });
  return {
    known,
    togetherA: known.reduce((sum, { currentA }) => sum + currentA, 0),
    missing: solar
      .filter(({ controller }) => !controller)
      .map(({ path }) => [...path, 'controller'].join('.')),
  };
}

/** While it is charged in earnest; a voltage without a row of its own takes that of 12 V in proportion. */
export const chargeVoltageOf = (nominalV: number): number =>
  chargeVoltages.find((row) => row.nominalV === nominalV)?.chargeV ?? nominalV * 1.2;
