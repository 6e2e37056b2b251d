import type { Build } from '../../build/build.ts';
import type { Bank } from '../../build/electrical.ts';
import type { Heat, Heater } from '../../build/heat.ts';
import { fuelFor } from '../../calc/heat/fuel.ts';
import { heatingValueOf } from '../../catalogue/gas/properties.ts';
import {
  dieselHeatCitations,
  dieselHeatJPerM3,
  efficiencyCitations,
  fuelLeftByHeater,
  fuelLeftCitation,
  usualEfficiencies,
} from '../../catalogue/heat/heating.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import {
  chargeAh,
  energyWh,
  type Measure,
  mass,
  power,
  share,
  temperatureC,
  voltage,
  volume,
} from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, warmthCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { downToShown, litresPerM3, upToShown } from '../shown-digits.ts';
import { demand, heat, heater, winterLow } from '../warmth.ts';
import { meanDaySteps } from '../working/fuel.ts';

const text: RuleText = {
  id: 'heat.fuel',
  topic: 'heat',
  title: 'fuel for a day of heating',
  why: 'A heater that runs dry or empties the battery in the coldest night leaves people and water pipes in the cold.',
  formula:
    'B = Q · 24 h / (η · h); Q mean heat of a day at the winter low in W, less that of people, η efficiency, h heating value: J/L of diesel, J/kg of gas',
  sources: [
    { title: 'Efficiency and heating value by their definitions', provenance: 'computed' },
    ...efficiencyCitations,
  ],
  cautions: [combustionCaution, warmthCaution],
  fix: 'Carry more fuel, fill up more often, or insulate better.',
  place: ['heat', 'heater'],
};

type Kind = NonNullable<Heater['heatedBy']>;

const heatedBy: Need<Kind> = (build) => {
  const kind = build.heat?.heater?.heatedBy;
  return kind === undefined ? missing('heat.heater.heated_by') : given(kind);
};

interface HeatOfDay {
  readonly build: Build;
  readonly heater: Heater;
  readonly meanW: number;
}

interface Day extends HeatOfDay {
  /** "At −8 °C outside a day of heating takes …". */
  readonly at: Phrase;
}

const secondsADay = 86_400;
const joulesAWattHour = 3600;

export default defineRule({
  ...text,
  needs: { heat, demand, heater, heatedBy, winterLowC: winterLow },
  check: ({ build, facts: { heat, heater, demand, heatedBy, winterLowC } }) => {
    const meanW = demand.meanDayW(winterLowC);
    if (meanW === 0) return { findings: [nothingToHeat(winterLowC, heat)] };
    const day: Day = {
      build,
      heater,
      meanW,
      at: say`At ${temperatureC(winterLowC)} outside the heater gives ${power(meanW)} on the mean of a day, people asleep and awake counted`,
    };
    return { findings: [{ ...findingOf(day, heatedBy), assumptions: demand.assumptions }] };
  },
  work: ({ build, facts: { demand, heater, heatedBy, winterLowC } }, { measured }) => [
    ...meanDaySteps(build, demand, winterLowC),
    ...(measured ? amountSteps({ build, heater, meanW: demand.meanDayW(winterLowC) }, heatedBy) : []),
  ],
});

const nothingToHeat = (winterLowC: number, { insideC, asleepC }: Heat): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: 'heater',
    path: ['living', 'winter_low'],
    reason:
      winterLowC >= Math.max(insideC, asleepC)
        ? say`The plan's winter low of ${temperatureC(winterLowC)} is no colder than it is inside: there is nothing to heat.`
        : say`At the plan's winter low of ${temperatureC(winterLowC)} people keep the living space warm by themselves: there is nothing to heat.`,
  });

/** From the mean heat of a day to what it takes, and what there is of it. */
function amountSteps(day: HeatOfDay, kind: Kind): readonly Step[] {
  switch (kind) {
    case 'engine':
      return [];
    case 'diesel':
      return dieselSteps(day);
    case 'gas': {
      const gas = gasOf(day);
      return [
        amountStep(
          day,
          usualEfficiencies.gas,
          [heatingValueOf(gas), mass],
          say`${(heatingValueOf(gas) / 1e6).toFixed(2)} MJ/kg of ${gas}), and 1 MJ is 277.8 Wh`,
        ),
      ];
    }
    case 'battery':
    case 'mains': {
      const { bank } = day.build.electrical ?? {};
      const perDay = amountStep(day, usualEfficiencies.electric, [joulesAWattHour, energyWh], say`1)`);
      return kind === 'battery' && bank ? [usableStep(bank), perDay] : [perDay];
    }
  }
}

/** B = Q · 24 h / (η · h), closed by the words for h. */
function amountStep(
  day: HeatOfDay,
  usual: number,
  [valueJPerUnit, measure]: readonly [number, (amount: number) => Measure],
  perUnit: Phrase,
): Step {
  const { heater, meanW } = day;
  return {
    what: `What that takes in a day: B = Q·24 h / (η·h)${heater.efficiency === undefined ? ', with a usual efficiency' : ''}`,
    sum: say`${power(meanW)} · 24 h / (${share(efficiencyOf(heater, usual))} · ${perUnit}`,
    result: measure(amountOf(day, usual, valueJPerUnit)),
    paths: [
      ['heat', 'heater', 'efficiency'],
      ['heat', 'heater', 'heated_by'],
    ],
  };
}

function dieselSteps(day: HeatOfDay): readonly Step[] {
  const { nightsOffGrid } = day.build.habits;
  const tankM3 = dieselInTankM3(day.build);
  const perDayM3 = amountOf(day, usualEfficiencies.diesel, dieselHeatJPerM3.net);
  const perDay = amountStep(
    day,
    usualEfficiencies.diesel,
    [dieselHeatJPerM3.net, volume],
    say`${String(dieselHeatJPerM3.net / 3.6e6)} Wh/L of diesel)`,
  );
  if (tankM3 === undefined || nightsOffGrid === undefined) return [perDay];
  return [
    perDay,
    {
      what: 'What the heater gets of a full tank: its pipe leaves the rest for driving on',
      sum: say`${volume(tankM3)} · (1 − ${share(fuelLeftByHeater)})`,
      result: volume(tankM3 * (1 - fuelLeftByHeater)),
      paths: [['van', 'fuel_tank']],
    },
    {
      what: 'What all nights without a stop take',
      sum: say`${nightsText(nightsOffGrid)} · ${volume(perDayM3)}`,
      result: volume(perDayM3 * nightsOffGrid),
      paths: [['living', 'nights_off_grid']],
    },
  ];
}

const usableStep = (bank: Bank): Step => ({
  what: 'What the full battery gives',
  sum: say`${chargeAh(bank.capacityAh)} · ${voltage(bank.voltageV)} · ${share(bank.usableShare)} that may be drawn`,
  result: energyWh(usableWh(bank)),
  paths: [['electrical', 'battery']],
});

function findingOf(day: Day, kind: Kind): Finding {
  switch (kind) {
    case 'diesel':
      return ofDiesel(day);
    case 'gas':
      return ofGas(day);
    case 'battery':
      return ofBattery(day);
    case 'mains':
      return ofMains(day);
    case 'engine':
      return observed(text, {
        verdict: 'warn',
        subject: 'heater',
        path: ['heat', 'heater', 'heated_by'],
        measured: power(day.meanW),
        reason: say`${day.at}. A heater on the engine's water gives none while the van stands.`,
        remedy: say`Plan a second heater of ${power(Math.ceil(day.meanW / 100) * 100)} or more that works without the engine.`,
      });
  }
}

const efficiencyOf = ({ efficiency }: Heater, usual: number): number => Math.max(0.01, efficiency ?? usual);

const amountOf = ({ heater, meanW }: HeatOfDay, usual: number, heatingValueJPerUnit: number): number =>
  fuelFor({
    meanHeatW: meanW,
    durationS: secondsADay,
    efficiency: efficiencyOf(heater, usual),
    heatingValueJPerUnit,
  });

const efficiencyText = ({ heater }: Day, usual: number): Phrase =>
  heater.efficiency === undefined ? say` (at an efficiency of ${share(usual)})` : [];

function ofDiesel(day: Day): Finding {
  const { build, at } = day;
  const perDayM3 = amountOf(day, usualEfficiencies.diesel, dieselHeatJPerM3.net);
  const takes = say`${at}, which takes ${volume(perDayM3)} of diesel a day${efficiencyText(day, usualEfficiencies.diesel)}`;
  const tankM3 = dieselInTankM3(build);
  const { nightsOffGrid } = build.habits;
  if (tankM3 === undefined || nightsOffGrid === undefined)
    return lacking(say`${takes}.`, volume(perDayM3), [
      ...(tankM3 === undefined ? ['van.fuel_tank'] : []),
      ...(nightsOffGrid === undefined ? ['living.nights_off_grid'] : []),
    ]);
  const forHeatM3 = tankM3 * (1 - fuelLeftByHeater);
  return judge({
    rule: text,
    subject: 'diesel',
    path: ['van', 'fuel_tank'],
    kind: 'volume',
    measured: { value: perDayM3 * nightsOffGrid, standard: 0 },
    limit: forHeatM3,
    sense: 'at most',
    broken: 'warn',
    reason: say`${takes} and ${volume(perDayM3 * nightsOffGrid)} for the ${nightsText(nightsOffGrid)} without a stop. Of a full tank of ${volume(tankM3)} a heater gets ${volume(forHeatM3)}, since its pipe leaves ${share(fuelLeftByHeater)} for driving on.`,
    remedy: () =>
      say`Plan a tank of ${volume(upToShown((perDayM3 * nightsOffGrid) / (1 - fuelLeftByHeater), litresPerM3))}, or stay at most ${nightsText(Math.floor((10 * forHeatM3) / perDayM3) / 10)}.`,
    sources: [...dieselHeatCitations, fuelLeftCitation],
  });
}

const nightsText = (nights: number): string => `${nights} ${nights === 1 ? 'night' : 'nights'}`;

const dieselInTankM3 = ({ bodies }: Build): number | undefined => {
  const tank = bodies.find(({ variable, origin }) => variable?.group === 'fuel' && origin === 'catalogue');
  const { mostKg, densityKgM3 } = tank?.variable ?? {};
  return mostKg === undefined || densityKgM3 === undefined ? undefined : mostKg / densityKgM3;
};

const lacking = (reason: Phrase, measured: Finding['measured'], keys: readonly string[]): Finding =>
  observed(text, {
    verdict: 'not checked',
    subject: 'heater',
    path: ['heat', 'heater'],
    reason,
    measured,
    remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
    missing: keys,
  });

const gasOf = ({ build }: HeatOfDay) => build.gas?.stores[0]?.gas ?? 'propane';

/** The gas checks count it with the hob and the hot water, and set it against the cylinders. */
function ofGas(day: Day): Finding {
  const gas = gasOf(day);
  const perDayKg = amountOf(day, usualEfficiencies.gas, heatingValueOf(gas));
  const reason = say`${day.at}, which takes ${mass(perDayKg)} of ${gas} a day${efficiencyText(day, usualEfficiencies.gas)}`;
  if (!day.build.gas) return lacking(say`${reason}.`, mass(perDayKg), ['gas']);
  return observed(text, {
    verdict: 'pass',
    subject: gas,
    path: ['heat', 'heater'],
    measured: mass(perDayKg),
    reason: say`${reason}. The checks of gas add it to what cooking and hot water take, and set it against the cylinders.`,
  });
}

const usableWh = ({ capacityAh, voltageV, usableShare }: Bank): number => capacityAh * voltageV * usableShare;

function ofBattery(day: Day): Finding {
  const perDayWh = amountOf(day, usualEfficiencies.electric, joulesAWattHour);
  const takes = say`${day.at}, which takes ${energyWh(perDayWh)} a day from the battery`;
  const bank = day.build.electrical?.bank;
  if (!bank) return lacking(say`${takes}.`, energyWh(perDayWh), ['electrical.battery']);
  return judge({
    rule: text,
    subject: 'battery',
    path: ['heat', 'heater', 'heated_by'],
    kind: 'energy',
    measured: { value: perDayWh * joulesAWattHour, standard: 0 },
    limit: usableWh(bank) * joulesAWattHour,
    sense: 'at most',
    broken: 'warn',
    reason: say`${takes}; full, it gives ${energyWh(usableWh(bank))}.`,
    remedy: () =>
      say`Heat with diesel or gas (about ${volume(fuelFor({ meanHeatW: day.meanW, durationS: secondsADay, efficiency: usualEfficiencies.diesel, heatingValueJPerUnit: dieselHeatJPerM3.net }))} of diesel a day), or cut the loss to ${power(downToShown(usableWh(bank) / 24))}.`,
  });
}

function ofMains(day: Day): Finding {
  const perDayWh = amountOf(day, usualEfficiencies.electric, joulesAWattHour);
  const { nightsOffGrid } = day.build.habits;
  const takes = say`${day.at}, which takes ${energyWh(perDayWh)} a day from the hook-up`;
  const away = nightsOffGrid !== undefined && nightsOffGrid > 0;
  return observed(text, {
    verdict: away ? 'warn' : 'pass',
    subject: 'hook-up',
    path: ['heat', 'heater', 'heated_by'],
    measured: energyWh(perDayWh),
    reason: away
      ? say`${takes}. The plan spends ${nightsText(nightsOffGrid)} without one, and has no heat then.`
      : say`${takes}.`,
    ...(away && {
      remedy: say`Plan a heater of ${power(Math.ceil(day.meanW / 100) * 100)} or more that burns diesel or gas for the nights without a hook-up.`,
    }),
  });
}
