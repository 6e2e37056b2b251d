import type { ChargeStep, YearBattery } from '../calc/energy/year.ts';
import { lithiumRates } from '../catalogue/electrical/lithium-rates.ts';
import type { Assumption } from '../engine/finding.ts';
import { share, temperatureC } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { Bank } from './electrical.ts';

/** In a van that somebody lives in and heats, cells get no colder than this on the mean of a month: own choice. */
const coldestCellC = 5;

/** The bank as the year sees it: from full down to the end of its usable part. */
export function yearBattery(bank: Bank, airC: readonly number[], assumptions: Assumption[]): YearBattery {
  const { chemistry, capacityAh, voltageV, path } = bank;
  const wholeWh = capacityAh * voltageV;
  const efficiency = chemistry.energyEfficiency;
  assumptions.push(
    {
      path,
      text: say`battery: gives back ${share(efficiency.value)} of the energy put in, and loses ${share(chemistry.selfDischargePerMonth.value)} a month by itself`,
      ...(efficiency.citations[0] && { source: efficiency.citations[0] }),
    },
    {
      path,
      text: say`battery: as warm as the mean air of the month, but not below ${temperatureC(coldestCellC)}, since the van is lived in`,
    },
  );
  if (bank.chemistry.lead)
    assumptions.push({
      path,
      text: say`battery: takes its charge as fast until it is full, which lead does not: the last fifth takes hours longer`,
    });
  const exponent = chemistry.peukertExponent.value;
  return {
    windowWh: wholeWh * bank.usableShare,
    mostChargeW: (bank.chargeLimitA ?? capacityAh) * voltageV,
    mostDischargeW: bank.dischargeLimitA === undefined ? Number.MAX_VALUE : bank.dischargeLimitA * voltageV,
    roundTripEfficiency: efficiency.value,
    selfDischargeAMonth: chemistry.selfDischargePerMonth.value,
    standingW: 0,
    ...(chemistry.lead && { peukert: { exponent, ratedPowerW: wholeWh / bank.ratingHours } }),
    cellC: airC.map((air) => Math.max(coldestCellC, air)),
    chargeSteps: chargeSteps(bank),
  };
}

/** Lithium follows its table; a temperature that the plan gives is where charging begins, whatever the battery is. */
function chargeSteps({ chemistry, chargesFromC, chargeLimitA, capacityAh }: Bank): readonly ChargeStep[] {
  if (chemistry.lead) return chargesFromC === undefined ? [] : [{ fromC: chargesFromC, share: 1 }];
  const allowedOf = (ratePerHour: number): number =>
    Math.min(1, (ratePerHour * capacityAh) / (chargeLimitA ?? capacityAh));
  const steps = lithiumRates.standardCharge
    .filter(({ fromC }) => Number.isFinite(fromC))
    .map(({ fromC, ratePerHour }) => ({ fromC, share: allowedOf(ratePerHour) }));
  if (chargesFromC === undefined) return steps;
  const above = steps.filter(({ fromC }) => fromC > chargesFromC);
  const below = steps.filter(({ fromC }) => fromC <= chargesFromC).at(-1) ?? steps[0];
  return [{ fromC: chargesFromC, share: below?.share ?? 1 }, ...above];
}
