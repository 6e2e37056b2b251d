// What the water calculations refuse, and what happens at the ends of their ranges.
import { describe, expect, test } from 'vitest';
import { accumulatorUsableM3 } from '../../../src/calc/water/accumulator.ts';
import { deadLeg } from '../../../src/calc/water/dead-leg.ts';
import { drainSlope, drainSlopeLeaning, fallNeededM } from '../../../src/calc/water/drain.ts';
import {
  pipeSecondsToFreezing,
  tankSecondsOfFreezing,
  tankSecondsToFreezing,
} from '../../../src/calc/water/freezing.ts';
import { colebrookFrictionFactor, frictionFactor } from '../../../src/calc/water/friction.ts';
import * as heating from '../../../src/calc/water/heating.ts';
import { pipeLossPa, seriesLossPa } from '../../../src/calc/water/pipe-loss.ts';
import { waterProperties } from '../../../src/calc/water/properties.ts';
import {
  beyondPumpCurve,
  hydraulicPowerW,
  pumpElectricalPowerW,
  pumpPressure,
  straightPumpCurve,
} from '../../../src/calc/water/pump.ts';
import { type OpenOutlets, solveFlow } from '../../../src/calc/water/solve-flow.ts';
import { dailyWater, tankDays } from '../../../src/calc/water/supply.ts';
import * as tank from '../../../src/calc/water/tank.ts';
import { ventPressurePa } from '../../../src/calc/water/vent.ts';

const cold = waterProperties(10);
const litresPerMinute = (flow: number): number => flow / 60_000;
const pipe = { lengthM: 3, innerDiameterM: 0.01, roughnessM: 7e-6, minorK: 3 };
const shower = { nominalFlowM3S: litresPerMinute(6), nominalPressurePa: 100_000 };
const plumbing: OpenOutlets = {
  liquid: cold,
  pump: straightPumpCurve(litresPerMinute(10), 240_000),
  trunk: [pipe],
  branches: [{ segments: [pipe], riseM: 1.5, outlet: shower }],
};

describe('refusals', () => {
  test.each<{ name: string; run: () => unknown; says: RegExp }>([
    { name: 'ice', run: () => waterProperties(-0.1), says: /liquid from 0 to 100/ },
    { name: 'steam', run: () => waterProperties(100.1), says: /liquid from 0 to 100/ },
    { name: 'Reynolds 0', run: () => frictionFactor(0, 0), says: /Reynolds number must be greater/ },
    { name: 'roughness 0.2', run: () => colebrookFrictionFactor(1e4, 0.2), says: /not be more than 0.1/ },
    { name: 'laminar and too rough', run: () => frictionFactor(100, 0.2), says: /not be more than 0.1/ },
    {
      name: 'bore 0',
      run: () => pipeLossPa(1e-4, { ...pipe, innerDiameterM: 0 }, cold),
      says: /diameter must be/,
    },
    { name: 'flow back', run: () => pipeLossPa(-1e-4, pipe, cold), says: /flow must not be less/ },
    {
      name: 'length −1',
      run: () => pipeLossPa(0, { ...pipe, lengthM: -1 }, cold),
      says: /length of the pipe/,
    },
    {
      name: 'one pump point',
      run: () => pumpPressure([{ flowM3S: 0, pressurePa: 1 }]),
      says: /at least two/,
    },
    {
      name: 'flat pump curve',
      run: () =>
        pumpPressure([
          { flowM3S: 0, pressurePa: 1 },
          { flowM3S: 1, pressurePa: 1 },
        ]),
      says: /fall to the next pressure/,
    },
    {
      name: 'pump points out of order',
      run: () =>
        pumpPressure([
          { flowM3S: 1, pressurePa: 2 },
          { flowM3S: 0, pressurePa: 1 },
        ]),
      says: /next flow/,
    },
    { name: 'no cut-out', run: () => straightPumpCurve(1e-4, 0), says: /cut-out pressure/ },
    { name: 'no outlet', run: () => solveFlow({ ...plumbing, branches: [] }), says: /at least one/ },
    {
      name: 'outlet without pressure',
      run: () =>
        solveFlow({
          ...plumbing,
          branches: [{ segments: [], riseM: 0, outlet: { ...shower, nominalPressurePa: 0 } }],
        }),
      says: /nominal pressure/,
    },
    { name: 'efficiency 2', run: () => pumpElectricalPowerW(30, 2), says: /not be more than 1/ },
    {
      name: 'pressure −1',
      run: () => hydraulicPowerW({ flowM3S: 1, pressurePa: -1 }),
      says: /pressure must/,
    },
    {
      name: 'cut-out under cut-in',
      run: () => accumulatorUsableM3({ volumeM3: 1, prechargePa: 0, cutInPa: 2, cutOutPa: 1 }),
      says: /cut-in to cut-out/,
    },
    {
      name: 'wait without flow',
      run: () => deadLeg({ pipes: [], flowM3S: 0 }),
      says: /flow must be greater/,
    },
    {
      name: 'cooling by heating',
      run: () => heating.heatingEnergyJ({ volumeM3: 1, fromC: 20, toC: 10 }),
      says: /rise in temperature/,
    },
    { name: 'no power', run: () => heating.heatingSeconds(1, 0), says: /power must be greater/ },
    {
      name: 'mix no warmer than the cold',
      run: () => heating.mixedFromLayered({ storeM3: 1, hotC: 60, coldC: 38, mixedC: 38 }),
      says: /warmer than the cold/,
    },
    { name: 'mix out of reach', run: () => heating.hotShare(40, 10, 45), says: /No mix of 10 and 40/ },
    {
      name: 'share 1.2',
      run: () => dailyWater(1, [{ m3PerPersonDay: 1, drainedShare: 1.2 }]),
      says: /drained share/,
    },
    { name: 'usable 0', run: () => tankDays(0.09, 0, 0.01), says: /usable share must be greater/ },
    { name: 'no use', run: () => tankDays(0.09, 1, 0), says: /daily use must be greater/ },
    {
      name: 'drain of no length',
      run: () => drainSlope({ rearwardM: 0, rightwardM: 0, fallM: 0 }),
      says: /drain/,
    },
    { name: 'on its side', run: () => drainSlopeLeaning(0.02, 1, 45), says: /less than 45/ },
    { name: 'steeper than 1', run: () => fallNeededM(1, 1.5), says: /least slope must not/ },
    {
      name: 'water below 0 °C',
      run: () => pipeSecondsToFreezing({ innerDiameterM: 0.01, resistanceMKW: 1, waterC: -1, airC: -5 }),
      says: /temperature of the water/,
    },
    {
      name: 'more ice than water',
      run: () => tankSecondsOfFreezing({ massKg: 1, conductanceWK: 1, airC: -5 }, 2),
      says: /share of ice/,
    },
    { name: 'deeper than round', run: () => tank.lyingCylinderVolumeM3(0.1, 1, 0.3), says: /depth must not/ },
    { name: 'arch too big', run: () => tank.boxOverArchVolumeM3(0.6, 0.3, 0.4, 0.35), says: /sticks out/ },
    { name: 'half a strap', run: () => tank.strapForceN(80, 0.8, 1.5), says: /whole number of straps/ },
    { name: 'no vent', run: () => ventPressurePa(1e-4, 0), says: /inner diameter of the vent/ },
  ])('$name', ({ run, says }) => {
    expect(run).toThrow(RangeError);
    expect(run).toThrow(says);
  });
});

describe('flow through outlets', () => {
  test('a shower gets less than its nominal flow from a small pump', () => {
    const { totalM3S, branches, pumpPa, junctionPa, beyondPumpCurve: beyond } = solveFlow(plumbing);
    expect(totalM3S * 60_000).toBeGreaterThan(3);
    expect(totalM3S * 60_000).toBeLessThan(10);
    expect(branches[0]?.nominalShare).toBeCloseTo((totalM3S * 60_000) / 6, 9);
    expect(pumpPa).toBeGreaterThan(junctionPa);
    expect(beyond).toBe(false);
  });

  test('a pump too weak to reach the outlet gives nothing', () => {
    const solved = solveFlow({ ...plumbing, pump: straightPumpCurve(litresPerMinute(10), 10_000) });
    expect(solved.totalM3S).toBe(0);
    expect(solved.branches).toMatchObject([{ flowM3S: 0, lossPa: 0, outletPa: 0, fastestMS: 0 }]);
  });

  test('the higher of two outlets may get nothing while the lower runs', () => {
    const low = { segments: [], riseM: -1, outlet: { nominalFlowM3S: 1e-3, nominalPressurePa: 10_000 } };
    const high = { segments: [pipe], riseM: 6, outlet: shower };
    const solved = solveFlow({ ...plumbing, branches: [low, high] });
    expect(solved.branches[0]?.flowM3S).toBeGreaterThan(0);
    expect(solved.branches[1]?.flowM3S).toBe(0);
  });

  test('gravity alone runs from a tank above the outlet, and not from one below', () => {
    const { pump: _pump, ...byGravity } = plumbing;
    const outletLower = { segments: [pipe], riseM: -2, outlet: shower };
    expect(solveFlow({ ...byGravity, branches: [outletLower] }).totalM3S).toBeGreaterThan(0);
    expect(solveFlow(byGravity)).toMatchObject({ totalM3S: 0, pumpPa: 0, beyondPumpCurve: false });
  });

  test('without pipes two equal outlets share the open flow to the nominal pressure', () => {
    const outlet = { nominalFlowM3S: litresPerMinute(5), nominalPressurePa: 120_000 };
    const tap = { segments: [], riseM: 0, outlet };
    const solved = solveFlow({ ...plumbing, trunk: [], branches: [tap, tap] });
    // The line from 10 l/min to 2.4 bar meets 2 × 5 l/min at (Q/10)² · 1.2 bar: Q/10 = (√3 − 1).
    expect(solved.totalM3S * 60_000).toBeCloseTo(10 * (Math.sqrt(3) - 1), 9);
    expect(solved.branches[0]?.flowM3S).toBeCloseTo(solved.branches[1]?.flowM3S ?? 0, 12);
  });
});

describe('ends of ranges', () => {
  test('water at 0 and 100 °C', () => {
    expect(waterProperties(0).densityKgM3).toBeCloseTo(999.84, 1);
    expect(waterProperties(0).heatCapacityJKgK).toBe(4219.4);
    expect(waterProperties(100).heatCapacityJKgK).toBe(4212.8);
  });

  test('from laminar to turbulent: alone up to 1800, the larger from 2000, nothing jumps', () => {
    expect(frictionFactor(1800, 0)).toBe(64 / 1800);
    expect(frictionFactor(2000, 0)).toBeCloseTo(colebrookFrictionFactor(2000, 0), 15);
    expect(frictionFactor(3000, 0)).toBeCloseTo(colebrookFrictionFactor(3000, 0), 15);
    expect(frictionFactor(1900, 0)).toBeCloseTo((64 / 1900 + colebrookFrictionFactor(1900, 0)) / 2, 12);
  });

  test('nothing flows, nothing is lost', () => {
    expect(pipeLossPa(0, pipe, cold)).toBe(0);
    expect(seriesLossPa(litresPerMinute(6), [], cold)).toBe(0);
    expect(pipeLossPa(1e-4, { ...pipe, lengthM: 0, minorK: 0 }, cold)).toBe(0);
  });

  test('a pump outside its points', () => {
    const curve = [
      { flowM3S: 1e-4, pressurePa: 200_000 },
      { flowM3S: 2e-4, pressurePa: 100_000 },
    ];
    const pressureOf = pumpPressure(curve);
    expect(pressureOf(0)).toBe(200_000);
    expect(pressureOf(3.5e-4)).toBeCloseTo(-50_000, 6);
    expect([0, 1e-4, 2e-4, 2.1e-4].map((flow) => beyondPumpCurve(curve, flow))).toEqual([
      true,
      false,
      false,
      true,
    ]);
  });

  test('an accumulator pumped up too hard waits for its pre-charge, or holds nothing', () => {
    const vessel = { volumeM3: 0.001, prechargePa: 200_000, cutInPa: 150_000, cutOutPa: 250_000 };
    expect(accumulatorUsableM3(vessel)).toBeCloseTo(accumulatorUsableM3({ ...vessel, cutInPa: 200_000 }), 15);
    expect(accumulatorUsableM3({ ...vessel, prechargePa: 260_000 })).toBe(0);
  });

  test('air at 0 °C freezes nothing, water at 0 °C has no time left', () => {
    const still = { massKg: 60, conductanceWK: 2, waterC: 10, airC: 0 };
    expect(tankSecondsToFreezing(still)).toBe(Number.POSITIVE_INFINITY);
    expect(tankSecondsOfFreezing(still, 0.05)).toBe(Number.POSITIVE_INFINITY);
    expect(tankSecondsToFreezing({ ...still, waterC: 0, airC: -5 })).toBe(0);
    expect(tankSecondsOfFreezing({ ...still, airC: -5 }, 0)).toBe(0);
  });

  test('a store cooler than the shower mixes nothing', () => {
    const store = { storeM3: 0.01, hotC: 30, coldC: 10, mixedC: 38 };
    expect(heating.mixedFromLayered(store).mixedM3).toBe(0);
    expect(heating.mixedFromStirred(store).mixedM3).toBe(0);
    expect(heating.mixedFromLayered({ ...store, hotC: 38 })).toEqual({
      mixedM3: 0.01,
      hotM3: 0.01,
      coldM3: 0,
    });
  });

  test('standing losses, and their sign', () => {
    expect(heating.standingLossW(1.5, 60, 20)).toBe(60);
    expect(heating.standingLossW(1.5, 10, 20)).toBe(-15);
  });

  test('a drain upright, level, and uphill', () => {
    expect(drainSlope({ rearwardM: 0, rightwardM: 0, fallM: 0.3 })).toBe(Number.POSITIVE_INFINITY);
    expect(drainSlope({ rearwardM: 1, rightwardM: 0, fallM: 0 })).toBe(0);
    expect(drainSlope({ rearwardM: 0, rightwardM: -2, fallM: -0.02 })).toBeCloseTo(-0.01, 12);
  });

  test('nose up helps what runs to the rear, left up what runs to the right', () => {
    const level = { noseUpDeg: 0, leftUpDeg: 0 };
    const rearward = { rearwardM: 1, rightwardM: 0, fallM: 0.02 };
    const rightward = { rearwardM: 0, rightwardM: 1, fallM: 0.02 };
    expect(drainSlope(rearward, { ...level, noseUpDeg: 2 })).toBeGreaterThan(0.05);
    expect(drainSlope(rearward, { ...level, noseUpDeg: -2 })).toBeLessThan(0);
    expect(drainSlope(rightward, { ...level, leftUpDeg: 2 })).toBeGreaterThan(0.05);
    expect(drainSlope(rightward, { ...level, leftUpDeg: -2 })).toBeLessThan(0);
  });
});
