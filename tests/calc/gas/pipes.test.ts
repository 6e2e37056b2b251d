import { describe, expect, test } from 'vitest';
import {
  boreOf,
  codeDropPa,
  codeFlowM3S,
  dropConstantOf,
  gasDropPa,
  laminarDropPa,
  leastBoreM,
  poleDropPa,
  poleFlowM3S,
} from '../../../src/calc/gas/pipe-flow.ts';
import { type GasSection, gasTreeOf } from '../../../src/calc/gas/pipe-tree.ts';

const propane = { gravity: 1.5, viscosityPaS: 8e-6 };
const tube = { boreM: 0.0064, lengthM: 3 };

describe('one tube', () => {
  test('no flow, no drop, and the other way round', () => {
    expect(gasDropPa(tube, 0, propane).dropPa).toBe(0);
    expect(codeFlowM3S(tube, 0, 1.2462)).toBe(0);
    expect(poleFlowM3S(tube, 0, 1.5)).toBe(0);
  });

  test('the drop is that of the strictest of the three', () => {
    // 400 g/h: turbulent, the equation of the code leads.
    const fast = gasDropPa(tube, (0.4 * 0.5406) / 3600, propane);
    expect(fast.dropPa).toBe(fast.codePa);
    // 60 g/h: laminar, where the equation would say less.
    const slow = gasDropPa(tube, (0.06 * 0.5406) / 3600, propane);
    expect(slow.dropPa).toBe(slow.laminarPa);
    expect(slow.codePa).toBeLessThan(slow.laminarPa);
    // A wide main: Pole is the strictest.
    const wide = gasDropPa({ boreM: 0.1, lengthM: 10 }, 0.1, propane);
    expect(wide.dropPa).toBe(wide.polePa);
  });

  test('laminar by hand: 128 · 8e-6 · 3 · 1e-5 / (π · 0.0064⁴)', () => {
    expect(laminarDropPa(tube, 1e-5, 8e-6)).toBeCloseTo(5.8284, 4);
  });

  test.each([
    [{ boreM: 0, lengthM: 1 }, 1e-5],
    [{ boreM: 0.01, lengthM: 0 }, 1e-5],
    [{ boreM: 0.01, lengthM: Number.NaN }, 1e-5],
    [{ boreM: 0.01, lengthM: 1 }, -1e-5],
  ])('%j with %d m³/s is refused', (bad, flow) => {
    expect(() => codeDropPa(bad, flow, 1.2462)).toThrow(RangeError);
    expect(() => poleDropPa(bad, flow, 1.5)).toThrow(RangeError);
    expect(() => laminarDropPa(bad, flow, 8e-6)).toThrow(RangeError);
  });

  test('a gas without weight or viscosity is refused', () => {
    expect(() => dropConstantOf({ gravity: 0, viscosityPaS: 8e-6 })).toThrow(RangeError);
    expect(() => dropConstantOf({ gravity: 1.5, viscosityPaS: 0 })).toThrow(RangeError);
  });

  test('bores: 8 × 0.8 has 6.4 mm, 10 × 1 has 8 mm, 8 × 4 has none', () => {
    expect(boreOf(0.008, 0.0008)).toBeCloseTo(0.0064, 12);
    expect(boreOf(0.01, 0.001)).toBeCloseTo(0.008, 12);
    expect(() => boreOf(0.008, 0.004)).toThrow(RangeError);
  });

  test('the least bore just keeps the drop; none is wide enough for a storm', () => {
    const flowM3S = 0.2 / 3600;
    const boreM = leastBoreM({ lengthM: 5, flowM3S, dropPa: 125, vapour: propane }) ?? Number.NaN;
    expect(gasDropPa({ boreM, lengthM: 5 }, flowM3S, propane).dropPa).toBeCloseTo(125, 0);
    expect(leastBoreM({ lengthM: 5, flowM3S: 0, dropPa: 125, vapour: propane })).toBe(0.001);
    expect(leastBoreM({ lengthM: 1000, flowM3S: 100, dropPa: 1, vapour: propane })).toBeUndefined();
    expect(() => leastBoreM({ lengthM: 5, flowM3S, dropPa: 0, vapour: propane })).toThrow(RangeError);
  });
});

describe('branching pipe', () => {
  const section = (name: string, from: string, to: string, lengthM: number, boreM = 0.0064): GasSection => ({
    name,
    from,
    to,
    lengthM,
    boreM,
  });
  const sections = [
    section('to the hob', 'manifold', 'hob', 1),
    section('main', 'regulator', 'manifold', 2, 0.008),
    section('to the heater', 'manifold', 'heater', 3),
  ];
  const demands = new Map([
    ['hob', 3e-5],
    ['heater', 6e-5],
  ]);

  test('the main carries both, and losses add up on the way', () => {
    const { dropPaAt, sections: flows, unfed } = gasTreeOf('regulator', sections, demands, propane);
    const drop = (lengthM: number, boreM: number, flow: number) =>
      gasDropPa({ lengthM, boreM }, flow, propane).dropPa;
    expect(flows.map(({ name }) => name)).toEqual(['to the hob', 'main', 'to the heater']);
    expect(flows[1]?.flowM3S).toBeCloseTo(9e-5, 15);
    const main = drop(2, 0.008, 9e-5);
    expect(dropPaAt.get('regulator')).toBe(0);
    expect(dropPaAt.get('manifold')).toBeCloseTo(main, 9);
    expect(dropPaAt.get('hob')).toBeCloseTo(main + drop(1, 0.0064, 3e-5), 9);
    expect(dropPaAt.get('heater')).toBeCloseTo(main + drop(3, 0.0064, 6e-5), 9);
    expect(unfed).toEqual([]);
  });

  test('what no pipe reaches is named, and its gas is not counted', () => {
    const cut = gasTreeOf('regulator', sections.slice(0, 2), demands, propane);
    expect(cut.unfed).toEqual(['heater']);
    expect(cut.sections[1]?.flowM3S).toBeCloseTo(3e-5, 15);
  });

  test('a loop apart is never reached and never hangs', () => {
    const loop = [section('there', 'a', 'b', 1), section('back', 'b', 'a', 1)];
    const { sections: flows, unfed } = gasTreeOf(
      'regulator',
      [...sections, ...loop],
      new Map([...demands, ['a', 1e-5]]),
      propane,
    );
    expect(flows).toHaveLength(3);
    expect(unfed).toEqual(['a']);
  });

  test('a point fed twice and a pipe back into the regulator are refused', () => {
    expect(() =>
      gasTreeOf('regulator', [...sections, section('again', 'manifold', 'hob', 1)], demands, propane),
    ).toThrow(/"hob" is fed twice/);
    expect(() =>
      gasTreeOf('regulator', [...sections, section('back', 'hob', 'regulator', 1)], demands, propane),
    ).toThrow(RangeError);
    expect(() => gasTreeOf('regulator', sections, new Map([['hob', -1]]), propane)).toThrow(RangeError);
  });
});
