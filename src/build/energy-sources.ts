import type { DrivingSource, ShoreSource, SolarSource } from '../calc/energy/year.ts';
import {
  arrayLosses,
  controllerEfficiency,
  usualModule,
  workingOverOpenVoltage,
} from '../catalogue/electrical/array-losses.ts';
import type { Assumption } from '../engine/finding.ts';
import { share } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { Plan } from '../plan/schema.ts';
import type { Bank, Electrical, SolarArray } from './electrical.ts';

const twelveTimes = (value: number): readonly number[] => Array.from({ length: 12 }, () => value);
const secondsAnHour = 3600;
const { soiling, mismatch, wiring, connections, lightInduced, nameplate } = arrayLosses;
const usualLosses = [soiling, mismatch, wiring, connections, lightInduced, nameplate];

/** An array that the plan does not have: flat on the roof, without shade, on a tracking controller. */
export const plainArray = (peakW: number): SolarSource => ({
  peakW,
  tiltDeg: 0,
  azimuthDeg: 180,
  losses: usualLosses,
  shadedShare: 0,
  temperatureCoefficient: usualModule.temperatureCoefficient,
  noctC: usualModule.noctC,
  hotterK: usualModule.hotterFlatK,
  controllerEfficiency: controllerEfficiency.tracking,
});

export function solarSources(
  given: NonNullable<Plan['electrical']>,
  { solar }: Electrical,
  bank: Bank,
  latitudeDeg: number,
  assumptions: Assumption[],
): readonly SolarSource[] {
  // Towards the equator.
  const [side, azimuthDeg] = latitudeDeg >= 0 ? ['south', 180] : ['north', 0];
  return solar.map((array) => {
    const own = given.solar?.[array.name];
    const tiltDeg = own?.tilt_degrees?.value ?? 0;
    if (!own?.tilt_degrees) assumptions.push({ path: array.path, text: say`${array.name}: lies flat` });
    if (tiltDeg > 0 && !own?.facing_degrees)
      assumptions.push({
        path: array.path,
        text: say`${array.name}: looks ${side} (${String(azimuthDeg)} degrees)`,
      });
    if (!own?.shaded) assumptions.push({ path: array.path, text: say`${array.name}: nothing shades it` });
    if (!own?.losses)
      assumptions.push({
        path: array.path,
        text: say`${array.name}: loses ${share(1 - usualLosses.reduce((left, loss) => left * (1 - loss), 1))} to dirt, wires and unlike modules, besides heat and its controller`,
        source: arrayLosses.citation,
      });
    if (!array.controller)
      assumptions.push({
        path: array.path,
        text: say`${array.name}: has a controller that tracks and is large enough`,
      });
    return {
      ...plainArray(array.modules * array.modulePowerW),
      tiltDeg,
      azimuthDeg: own?.facing_degrees?.value ?? azimuthDeg,
      losses: own?.losses ? [own.losses.value] : usualLosses,
      shadedShare: own?.shaded?.value ?? 0,
      hotterK: tiltDeg === 0 ? usualModule.hotterFlatK : 0,
      controllerEfficiency: passedOn(array, bank),
      ...(array.controller && { controllerMostW: array.controller.currentLimitA * bank.voltageV }),
    };
  });
}

/** A controller that only switches holds the modules at the battery's voltage, and what they could do above it is lost. */
function passedOn({ controller, openCircuitV, inSeries }: SolarArray, { voltageV }: Bank): number {
  if (controller?.kind !== 'PWM') return controllerEfficiency.tracking;
  return Math.min(
    controllerEfficiency.switching,
    voltageV / (workingOverOpenVoltage * openCircuitV * inSeries),
  );
}

/** When engines run and hook-ups are plugged in, hours of the clock: own choice. */
const drivingFromHour = 10;
const shoreSpan = { startHour: 18, hours: 14 } as const;

export function drivingSource(
  living: NonNullable<Plan['living']>,
  { drivingCharger }: Electrical,
  bank: Bank,
  assumptions: Assumption[],
): DrivingSource | undefined {
  if (!drivingCharger) return undefined;
  const { path } = drivingCharger;
  if (!living.driving) {
    assumptions.push({ path, text: say`driving charges nothing, since the plan has no \`living.driving\`` });
    return undefined;
  }
  assumptions.push({
    path,
    text: say`driving: every day from 10:00, charging at the charger's full current`,
  });
  return {
    powerW: drivingCharger.currentA * bank.voltageV,
    startHour: drivingFromHour,
    hours: twelveTimes(living.driving.value / secondsAnHour),
    daysPerWeek: 7,
  };
}

export function shoreSource(
  living: NonNullable<Plan['living']>,
  { shore }: Electrical,
  bank: Bank,
  assumptions: Assumption[],
): ShoreSource | undefined {
  if (!shore?.charger) return undefined;
  const { path } = shore;
  if (!living.shore_nights) {
    assumptions.push({
      path,
      text: say`a hook-up charges nothing, since the plan has no \`living.shore_nights\``,
    });
    return undefined;
  }
  assumptions.push({ path, text: say`hook-up: from 18:00 to 8:00, its nights spread over the month` });
  return {
    powerW: shore.charger.currentA * bank.voltageV,
    nights: twelveTimes(living.shore_nights.value),
    span: shoreSpan,
  };
}
