// Friction factors, losses in pipes and fittings, pumps and accumulators: worked examples and their slips.
import { describe, expect, test } from 'vitest';
import { accumulatorUsableM3 } from '../../src/calc/water/accumulator.ts';
import {
  colebrookFrictionFactor,
  frictionFactor,
  laminarFrictionFactor,
} from '../../src/calc/water/friction.ts';
import { pipeLossPa, reynoldsNumber, velocityMS } from '../../src/calc/water/pipe-loss.ts';
import { waterProperties } from '../../src/calc/water/properties.ts';
import { hydraulicPowerW, pumpElectricalPowerW } from '../../src/calc/water/pump.ts';
import { type FittingName, lossTables } from '../../src/catalogue/water/fittings.ts';
import { pipeRoughness } from '../../src/catalogue/water/pipes.ts';
import {
  colebrookPaper,
  fluidPowerExample,
  frictionBenchmark,
  hazenWilliamsGlossary,
  laminarQuestion,
  networkManual,
  nozzleExample,
  smallPumpDuty,
  surgeProblem,
  textbookCompilation,
} from '../../src/catalogue/water/sources.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

const printed = (value: number, lastPlace: number): Published => ({
  value,
  within: lastPlace / 2,
  because: 'half a unit in the last printed place',
});

/** The sources take 9.81 or 9.8 m/s² for gravity, the calculation 9.80665. */
const headM = (pa: number, densityKgM3: number, gravity: number): number => pa / (densityKgM3 * gravity);

describe('friction factor', () => {
  test('benchmark at Re 1e5, ε/D 1e-4, and smooth', () => {
    expectPublished(colebrookFrictionFactor(1e5, 1e-4), exactly(0.018513866077471648), frictionBenchmark);
    expectPublished(colebrookFrictionFactor(1e5, 0), exactly(0.01798977308427384), frictionBenchmark);
    expectPublished(frictionFactor(1e5, 1e-4), exactly(0.018513866077471648), frictionBenchmark);
  });

  test('the explicit formulas give nearly the same', () => {
    for (const explicit of [0.018452424431901808, 0.018265053014793857])
      expectPublished(
        colebrookFrictionFactor(1e5, 1e-4),
        { value: explicit, within: 0.015 * explicit, because: 'explicit formulas are good to 1 or 2 %' },
        frictionBenchmark,
      );
  });

  test('the constant 3.71 of some books is not ours', () => {
    const other = 1 / (-2 * Math.log10(1e-4 / 3.71 + 2.51 / (1e5 * Math.sqrt(0.018509)))) ** 2;
    expect(Math.abs(other - colebrookFrictionFactor(1e5, 1e-4)), colebrookPaper.title).toBeGreaterThan(1e-6);
  });

  test('laminar at Re 800: 0.08', () => {
    expectPublished(laminarFrictionFactor(800), exactly(0.08), laminarQuestion);
    expectPublished(frictionFactor(800, 0), exactly(0.08), laminarQuestion);
  });
});

describe('loss in a pipe', () => {
  const flowM3S = (2 * Math.PI * 0.3 ** 2) / 4;
  const water = { densityKgM3: 1000, kinematicViscosityM2S: 1e-6 };

  test('6 m of 0.3 m pipe at 2 m/s: Re 599 993, f 0.0169, 0.0689 m', () => {
    const reynolds = reynoldsNumber(flowM3S, 0.3, 1e-6);
    expectPublished(
      reynolds,
      { value: 599_993, within: 10, because: 'its speed of 2 m/s comes from a rounded flow' },
      surgeProblem,
    );
    expectPublished(
      frictionFactor(reynolds, 0.00012 / 0.3),
      { value: 0.0169, within: 0.0001, because: 'Colebrook 0.01684 for the explicit 0.01695 of the source' },
      surgeProblem,
    );
    const lossPa = pipeLossPa(
      flowM3S,
      { lengthM: 6, innerDiameterM: 0.3, roughnessM: 0.00012, minorK: 0 },
      water,
    );
    expectPublished(
      headM(lossPa, 1000, 9.81),
      { value: 0.0689, within: 0.0004, because: 'the factor was rounded to 0.0169 before use' },
      surgeProblem,
    );
  });

  test('laminar, 66.1 m in a kilometre', () => {
    expectPublished(velocityMS(0.01, 0.1), printed(1.27324, 0.00001), laminarQuestion);
    const viscosity = (velocityMS(0.01, 0.1) * 0.1) / 800;
    const lossPa = pipeLossPa(
      0.01,
      { lengthM: 1000, innerDiameterM: 0.1, roughnessM: 0, minorK: 0 },
      { densityKgM3: 1000, kinematicViscosityM2S: viscosity },
    );
    expectPublished(headM(lossPa, 1000, 9.81), printed(66.1, 0.1), laminarQuestion);
  });

  test('the Reynolds number of that question is not one of water', () => {
    expect(reynoldsNumber(0.01, 0.1, 1e-6)).toBeGreaterThan(1e5);
  });

  test('10 l/min in 10 mm plastic at 10 °C: 0.656 m/m, a sixth more than Hazen–Williams', () => {
    const cold = waterProperties(10);
    const lossPa = pipeLossPa(
      10 / 60_000,
      {
        lengthM: 1,
        innerDiameterM: 0.01,
        roughnessM: pipeRoughness.plastic.roughnessM,
        minorK: 0,
      },
      cold,
    );
    const head = headM(lossPa, cold.densityKgM3, 9.80665);
    expectPublished(head, printed(0.656, 0.001), hazenWilliamsGlossary);
    const hazenWilliams = (10.67 * (10 / 60_000) ** 1.852) / (150 ** 1.852 * 0.01 ** 4.87);
    expectPublished(hazenWilliams, printed(0.5507, 0.0001), hazenWilliamsGlossary);
    expect(hazenWilliams / head).toBeCloseTo(0.84, 2);
  });

  test.each<[FittingName, number, number | undefined]>([
    ['globe valve', 10, 10],
    ['angle valve', 5, 2],
    ['check valve', 2.5, 2],
    ['gate valve', 0.2, 0.15],
    ['elbow 90', 0.9, 1.5],
    ['elbow 90 long', 0.6, 0.7],
    ['elbow 45', 0.4, 0.4],
    ['return bend', 2.2, 1.5],
    ['tee straight', 0.6, 0.9],
    ['tee branch', 1.8, 2],
    ['entrance', 0.5, undefined],
  ])('K of %s', (name, manual, compiled) => {
    const lossOf = (k: number): number =>
      pipeLossPa(0.01, { lengthM: 0, innerDiameterM: 0.1, roughnessM: 0, minorK: k }, water) /
      ((1000 * velocityMS(0.01, 0.1) ** 2) / 2);
    expectPublished(lossOf(lossTables['network manual'][name].k), exactly(manual), networkManual);
    if (compiled !== undefined)
      expectPublished(
        lossOf(lossTables['textbook compilation'][name].k),
        exactly(compiled),
        textbookCompilation,
      );
  });
});

describe('pumps', () => {
  test('0.92 MPa at 0.04 m³/s: 36.8 kW', () => {
    expectPublished(
      hydraulicPowerW({ pressurePa: 920_000, flowM3S: 0.04 }),
      exactly(36_800),
      fluidPowerExample,
    );
  });

  test('a fire hose: 12.4 and 56.6 m/s, and all its pressure goes into speed and height', () => {
    expectPublished(velocityMS(0.04, 0.064), printed(12.4, 0.1), nozzleExample);
    expectPublished(velocityMS(0.04, 0.03), printed(56.6, 0.1), nozzleExample);
    const given = hydraulicPowerW({
      pressurePa: 1_620_000,
      velocityMS: velocityMS(0.04, 0.064),
      flowM3S: 0.04,
    });
    const used = hydraulicPowerW({
      pressurePa: 0,
      velocityMS: velocityMS(0.04, 0.03),
      riseM: 10,
      flowM3S: 0.04,
    });
    expectPublished(
      (given - used) / 0.04,
      { value: 0, within: 5000, because: '1.62 MPa is rounded to 10 kPa' },
      nozzleExample,
    );
  });

  test('10 l/min at 2 bar: 33 W to the water, 75 to 130 W from the battery', () => {
    const hydraulicW = hydraulicPowerW({ pressurePa: 2e5, flowM3S: 10 / 60_000 });
    expectPublished(hydraulicW, printed(33, 1), smallPumpDuty);
    expectPublished(
      pumpElectricalPowerW(hydraulicW, 0.45),
      { value: 75, within: 2.5, because: 'rounded to 5 W' },
      smallPumpDuty,
    );
    expectPublished(
      pumpElectricalPowerW(hydraulicW, 0.25),
      { value: 130, within: 5, because: 'rounded to 10 W' },
      smallPumpDuty,
    );
  });

  test('an accumulator of a litre gives 0.1824 l', () => {
    expectPublished(
      accumulatorUsableM3({
        volumeM3: 0.001,
        prechargePa: 140_000,
        cutInPa: 170_000,
        cutOutPa: 240_000,
        atmospherePa: 101_300,
      }) * 1000,
      printed(0.1824, 0.0001),
      smallPumpDuty,
    );
  });
});
