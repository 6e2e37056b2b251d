import { describe, expect, test } from 'vitest';
import { vapourPressurePa } from '../../../src/calc/air/moisture.ts';
import { glaserProfile, glaserYear, type VapourMonth } from '../../../src/calc/heat/glaser.ts';
import { tautBelow } from '../../../src/calc/heat/hull.ts';
import {
  accepted,
  changedLayers,
  clearingRemedies,
  type RemedySearch,
  type WeighedLayer,
} from '../../../src/calc/heat/remedy.ts';
import {
  coldestDryFaceC,
  faceRisk,
  factorOfSurface,
  temperatureFactor,
} from '../../../src/calc/heat/surface.ts';
import { equivalentAir } from '../../../src/calc/heat/vapour.ts';
import { yearBetween } from '../../../src/calc/heat/year-of-cold.ts';
import { vapourFoils } from '../../../src/catalogue/heat/vapour-layers.ts';

const films = { insideM2KPerW: 0.13, outsideM2KPerW: 0.04 };
const steel: WeighedLayer = { resistanceM2KPerW: 0.001 / 50, equivalentAirM: 100, massKgPerM2: 7.8 };
const wool: WeighedLayer = { resistanceM2KPerW: 0.05 / 0.045, equivalentAirM: 0.05, massKgPerM2: 1 };
const foam: WeighedLayer = { resistanceM2KPerW: 0.025 / 0.05, equivalentAirM: 175, massKgPerM2: 1.75 };
const ply: WeighedLayer = { resistanceM2KPerW: 0.006 / 0.15, equivalentAirM: 0.42, massKgPerM2: 2.7 };

/** A winter lived in, a summer aired: inside 20 °C or as warm as outside. */
const months: VapourMonth[] = yearBetween(-10, 32, 10).map((outsideC) => {
  const insideC = Math.max(20, outsideC);
  const outsidePa = vapourPressurePa(outsideC, 0.8);
  return {
    durationS: (365 / 12) * 86_400,
    outsideC,
    outsidePa,
    insideC,
    insidePa: Math.min(outsidePa + Math.max(0, 600 - 30 * outsideC), vapourPressurePa(insideC, 0.9)),
  };
});
const january = months[0] ?? { durationS: 1, outsideC: 0, outsidePa: 500, insideC: 20, insidePa: 1200 };

describe('the taut thread', () => {
  const at = (...pressures: readonly number[]) => pressures.map((pressurePa, airM) => ({ airM, pressurePa }));
  test('touches what hangs lowest, not what is on the way', () => {
    expect(tautBelow(at(0, 10, 10, 3))).toEqual([0, 3]);
    expect(tautBelow(at(0, -5, 10, 3))).toEqual([0, 1, 3]);
    expect(tautBelow(at(0, -5, -5.5, 3))).toEqual([0, 1, 2, 3]);
    expect(tautBelow(at(0, 1, 2, 3))).toEqual([0, 3]);
    expect(tautBelow(at(1, 2))).toEqual([0, 1]);
  });
});

describe('a month', () => {
  test('wool against steel: water on the skin', () => {
    const { flows } = glaserProfile({ ...films, layers: [steel, wool, ply] }, january);
    expect(flows.map(({ plane }) => plane)).toContainEqual({ layer: 1, depth: 0 });
    expect(flows.every(({ rateKgPerM2S }) => rateKgPerM2S > 0)).toBe(true);
  });
  test('insulation is cut into slices of 0.25', () => {
    const { planes } = glaserProfile({ ...films, layers: [steel, wool, ply] }, january);
    expect(planes.filter(({ layer }) => layer === 1).map(({ depth }) => depth)).toEqual([
      0, 0.2, 0.4, 0.6, 0.8,
    ]);
    // Exactly one slice is not cut in two.
    const exact = glaserProfile({ ...films, layers: [steel, { ...wool, resistanceM2KPerW: 0.25 }] }, january);
    expect(exact.planes).toEqual([{ layer: 1, depth: 0 }]);
  });
  test('a wet plane in dry weather dries', () => {
    const dry = { ...january, insidePa: 300, outsidePa: 200, outsideC: 15 };
    const [flow] = glaserProfile({ ...films, layers: [steel, wool, ply] }, dry, [0]).flows;
    expect(flow?.plane).toEqual({ layer: 1, depth: 0 });
    expect(flow?.rateKgPerM2S).toBeLessThan(0);
  });
  test.each([
    [[]],
    [[{ resistanceM2KPerW: 1, equivalentAirM: 0 }]],
    [[{ resistanceM2KPerW: -1, equivalentAirM: 1 }]],
  ])('impossible layers %#', (layers) => {
    expect(() => glaserProfile({ ...films, layers }, january)).toThrow(RangeError);
    expect(() => glaserYear({ ...films, layers }, months)).toThrow(RangeError);
  });
  test('impossible weather and slices', () => {
    const wall = { ...films, layers: [steel, wool] };
    expect(() => glaserYear(wall, [])).toThrow(RangeError);
    expect(() => glaserYear(wall, [{ ...january, durationS: 0 }])).toThrow(RangeError);
    expect(() => glaserProfile(wall, { ...january, insidePa: -1 })).toThrow(RangeError);
    expect(() => glaserProfile(wall, january, [], { greatestSliceM2KPerW: 0 })).toThrow(RangeError);
  });
});

describe('a year', () => {
  const bare = glaserYear({ ...films, layers: [steel, wool, ply] }, months);
  test('wool behind thin plywood gathers water in winter and gives it up in summer', () => {
    expect(bare.peakKgPerM2).toBeGreaterThan(0.5);
    expect(bare.worst?.plane).toEqual({ layer: 1, depth: 0 });
    expect(bare.everyMonth).toBe(false);
    expect(bare.driesOut).toBe(true);
    expect(bare.leftKgPerM2).toBe(0);
    // It begins in autumn, the first wet month after a dry one, and goes once round.
    expect(bare.months[0]?.month).toBeGreaterThan(6);
    expect(new Set(bare.months.map(({ month }) => month)).size).toBe(12);
  });
  test('changes add up to what is left', () => {
    const sum = bare.months.reduce((total, { changeKgPerM2 }) => total + changeKgPerM2, 0);
    expect(sum).toBeCloseTo(bare.leftKgPerM2, 9);
  });
  test('closed-cell foam against steel stays dry', () => {
    const year = glaserYear({ ...films, layers: [steel, foam] }, months);
    expect(year.peakKgPerM2).toBeLessThan(0.002);
  });
  test('weather that is always wet has no right month to begin with', () => {
    const year = glaserYear(
      { ...films, layers: [steel, wool, ply] },
      Array.from({ length: 12 }, () => january),
    );
    expect(year.everyMonth).toBe(true);
    expect(year.driesOut).toBe(false);
    expect(year.leftKgPerM2).toBeCloseTo(year.peakKgPerM2, 12);
    expect(year.months[0]?.month).toBe(0);
  });
  test('no water, no planes', () => {
    const year = glaserYear({ ...films, layers: [ply] }, months);
    expect(year).toMatchObject({ peakKgPerM2: 0, worst: undefined, driesOut: true, everyMonth: false });
  });
  test('a month cut where a plane dries: two halves are one whole', () => {
    const halves = months.flatMap((month) => [
      { ...month, durationS: month.durationS / 2 },
      { ...month, durationS: month.durationS / 2 },
    ]);
    const year = glaserYear({ ...films, layers: [steel, wool, ply] }, halves);
    expect(year.peakKgPerM2).toBeCloseTo(bare.peakKgPerM2, 9);
    expect(year.leftKgPerM2).toBeCloseTo(bare.leftKgPerM2, 9);
  });
});

describe('remedies', () => {
  const search: RemedySearch = {
    ...films,
    layers: [steel, wool, ply],
    months,
    foils: vapourFoils.map(({ id, equivalentAirM, massKgPerM2 }) => ({
      name: id,
      layer: { resistanceM2KPerW: 0, equivalentAirM, massKgPerM2 },
      insideOf: 1,
    })),
    thickenings: [
      { name: 'half as much wool again', layer: 1, times: 1.5 },
      { name: 'twice the wool', layer: 1, times: 2 },
    ],
    accept: { peakKgPerM2: 0.2, leftKgPerM2: 0 },
  };
  const found = clearingRemedies(search);
  test('lightest first, and each of them clears', () => {
    expect(found.length).toBeGreaterThan(0);
    for (const { year } of found) expect(accepted(year, search.accept)).toBe(true);
    const masses = found.map(({ addedKgPerM2 }) => addedKgPerM2);
    expect(masses).toEqual([...masses].sort((a, b) => a - b));
    // More wool lets in as much vapour as less wool: it clears nothing by itself.
    expect(found[0]?.changes).toHaveLength(1);
    expect(vapourFoils.map(({ id }) => id)).toContain(found[0]?.changes[0]);
    expect(found.some(({ changes }) => changes.length === 1 && changes[0] === 'twice the wool')).toBe(false);
  });
  test('what may be left after a year decides too', () => {
    const damp = {
      ...search,
      foils: search.foils.slice(1, 2),
      months: Array.from({ length: 12 }, () => january),
    };
    expect(clearingRemedies({ ...damp, accept: { peakKgPerM2: 5, leftKgPerM2: 0 } })).toEqual([]);
    expect(clearingRemedies({ ...damp, accept: { peakKgPerM2: 5, leftKgPerM2: 5 } }).length).toBeGreaterThan(
      0,
    );
  });
  test('none where none is enough', () => {
    expect(clearingRemedies({ ...search, foils: [] })).toEqual([]);
    expect(clearingRemedies({ ...search, foils: [], thickenings: [] })).toEqual([]);
  });
  test('where the layers go', () => {
    const added = {
      name: 'foil',
      layer: { resistanceM2KPerW: 0, equivalentAirM: 50, massKgPerM2: 0.2 },
      insideOf: 1,
    };
    expect(changedLayers([steel, wool, ply], [added], [])[2]).toEqual(added.layer);
    expect(changedLayers([steel], [{ ...added, insideOf: -1 }], [])[0]).toEqual(added.layer);
    const thick = changedLayers([steel, wool], [], [{ name: 'thick', layer: 1, times: 2 }])[1];
    expect(thick).toEqual({ resistanceM2KPerW: (2 * 0.05) / 0.045, equivalentAirM: 0.1, massKgPerM2: 2 });
    expect(() => changedLayers([steel], [{ ...added, insideOf: 3 }], [])).toThrow(RangeError);
    expect(() => changedLayers([steel], [], [{ name: '', layer: 1, times: 2 }])).toThrow(RangeError);
    expect(() => changedLayers([steel], [], [{ name: '', layer: 0, times: 1 }])).toThrow(RangeError);
  });
});

describe('faces', () => {
  const room = { insideC: 20, vapourPressurePa: vapourPressurePa(20, 0.6) };
  test('single glass is wet at −10 °C, a good wall is not', () => {
    const pane = faceRisk(temperatureFactor(5.75, 0.13), room, -10);
    expect(pane.wet).toBe(true);
    expect(pane.marginK).toBeLessThan(0);
    expect(pane.humidityAtFace).toBe(1);
    expect(pane.neededFactor).toBeGreaterThan(temperatureFactor(5.75, 0.13));
    const wall = faceRisk(temperatureFactor(0.9, 0.13), room, -10);
    expect(wall.wet).toBe(false);
    expect(wall.humidityAtFace).toBeLessThan(0.8);
  });
  test('on the edge: a face at the dew point is wet or dry by a hair', () => {
    const dew = coldestDryFaceC(room.vapourPressurePa, 1);
    const edge = factorOfSurface(dew, 20, -10);
    expect(faceRisk(edge - 1e-6, room, -10).wet).toBe(true);
    expect(faceRisk(edge + 1e-6, room, -10).wet).toBe(false);
  });
  test('as warm outside: no factor helps or is needed', () => {
    expect(faceRisk(0.5, room, 20).neededFactor).toBeUndefined();
  });
  test.each([
    [() => temperatureFactor(9, 0.13)],
    [() => temperatureFactor(-1, 0.13)],
    [() => factorOfSurface(10, 5, 5)],
    [() => coldestDryFaceC(1000, 1.2)],
    [() => coldestDryFaceC(0, 1)],
    [() => equivalentAir(0, 10)],
  ])('impossible input %#', (act) => {
    expect(act).toThrow(RangeError);
  });
});
