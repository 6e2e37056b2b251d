// Worked examples and tables of thermal transmittance, timber and steel bridges among them.
import { describe, expect, test } from 'vitest';
import { type Band, bridgedResistance, even } from '../../src/calc/heat/bridged.ts';
import { layerResistance, uValueOf, wallResistance } from '../../src/calc/heat/layers.ts';
import { ribbedResistance, ribWeight } from '../../src/calc/heat/metal-ribs.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import {
  elementCatalogue,
  filmsAndLayers,
  surfaceFilms,
  timberComponents,
} from '../../src/catalogue/heat/heat-sources.ts';
import {
  metalBridgeCitations,
  studIncreaseCitation,
  studIncreaseExample,
  usStudCitation,
  usStudFactors,
} from '../../src/catalogue/heat/metal-bridges.ts';
import { openingLoss, paneLosses } from '../../src/catalogue/heat/openings.ts';
import {
  airGapResistance,
  heatDirections,
  insideFilmM2KPerW,
  outsideFilmM2KPerW,
  slightlyVentilatedShare,
} from '../../src/catalogue/heat/surface-films.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

const printed = (value: number, lastPlace: number): Published => ({
  value,
  within: lastPlace / 2,
  because: 'half a unit in the last printed place',
});

const layer = (thicknessMm: number, conductivity: number): Band =>
  even(layerResistance(thicknessMm / 1000, conductivity));

/** A layer with something standing in it. */
const across = (thicknessMm: number, fill: number, bridge: number, share: number): Band => [
  { share: 1 - share, layersM2KPerW: [layerResistance(thicknessMm / 1000, fill)] },
  { share, layersM2KPerW: [layerResistance(thicknessMm / 1000, bridge)] },
];

describe('the combined method', () => {
  const source: Citation = {
    title: 'Scottish building standards, supporting tables, worked example 6.B.2: timber framed wall',
    readAt:
      'https://www.gov.scot (tables of U-values and thermal conductivity, 6.B), quoted in a test of an open program',
    provenance: 'read',
  };
  const wall = bridgedResistance({
    insideM2KPerW: 0.13,
    outsideM2KPerW: 0.04,
    bands: [layer(102, 0.77), even(0.18), layer(9, 0.13), across(140, 0.04, 0.12, 0.15), layer(12.5, 0.21)],
  });
  test('upper 3.435, lower 3.304, U 0.297', () => {
    expectPublished(wall.upperM2KPerW, printed(3.435, 0.001), source);
    // 3.3035 sits on the edge of the last place, hence the whole unit.
    expectPublished(
      wall.lowerM2KPerW,
      { value: 3.304, within: 0.001, because: 'one unit in the last printed place' },
      source,
    );
    expectPublished(wall.uValue, printed(0.297, 0.001), source);
    expect(wall.ratio).toBeLessThan(1.5);
  });

  test.each([
    [160, 0.13],
    [200, 0.12],
    [240, 0.11],
  ])('a rendered timber wall with studs of %d mm: U %d', (studsMm, published) => {
    const { uValue } = bridgedResistance({
      insideM2KPerW: 0.13,
      outsideM2KPerW: 0.04,
      bands: [
        layer(7, 1),
        layer(80, 0.042),
        layer(22, 0.12),
        across(studsMm, 0.035, 0.12, 60 / 625),
        layer(22, 0.12),
        across(40, 0.035, 0.12, 60 / 400),
        layer(19, 0.12),
      ],
    });
    const because = 'two printed places, and the width of the battens is not printed (60 mm taken)';
    expectPublished(uValue, { value: published, within: 0.01, because }, timberComponents);
  });

  test('a ventilated facade with studs of 160 mm: U 0.25', () => {
    const { uValue } = bridgedResistance({
      insideM2KPerW: 0.13,
      outsideM2KPerW: 0.13,
      bands: [
        layer(12.5, 0.32),
        across(160, 0.04, 0.12, 60 / 625),
        layer(15, 0.13),
        even(0.18),
        layer(12.5, 0.32),
      ],
    });
    expectPublished(uValue, printed(0.25, 0.01), {
      ...timberComponents,
      title: 'Austrian catalogue of tested timber components, awrhhi08a variant 02',
      readAt: 'https://www.dataholz.eu/en/components/external-wall/detail/kz/awrhhi08a.htm',
    });
  });
});

describe('steel across insulation', () => {
  const sheet: Citation = {
    title:
      'A technical centre’s calculation sheet (2020): light steel frame, studs of 100 mm at 400 mm, p 0.168, U 0.80',
    readAt: 'https://www.scribd.com/document/492678643/8CD7C74D-4FC7-49D9-BED3-89D9996480E7',
    provenance: 'read',
    caution:
      'The conductivity of its mortar is not printed (0.94 taken), nor the flange beyond "not exceeding 80 mm".',
  };
  const wall = bridgedResistance({
    insideM2KPerW: 0.13,
    outsideM2KPerW: 0.04,
    bands: [
      across(103, 0.77, 0.94, 0.17185),
      even(0.18),
      layer(10, 0.13),
      // The steel runs through what is left of the cavity and through the batt.
      [
        { share: 0.995, layersM2KPerW: [0.18, 2.05] },
        { share: 0.005, layersM2KPerW: [layerResistance(0.025, 50), layerResistance(0.075, 50)] },
      ],
      layer(12.5, 0.25),
    ],
  });
  test('its bounds are 2.785 and 0.932', () => {
    expectPublished(
      wall.upperM2KPerW,
      { value: 2.785, within: 0.002, because: 'three places of layers printed to three' },
      sheet,
    );
    expectPublished(
      wall.lowerM2KPerW,
      { value: 0.932, within: 0.002, because: 'three places of layers printed to three' },
      sheet,
    );
  });
  const weight = ribWeight({ lowerOverUpper: 0.932 / 2.785, flangeM: 0.08, spacingM: 0.4, depthM: 0.1 });
  test('its weight is 0.168', () => {
    expectPublished(weight, printed(0.168, 0.001), sheet);
  });
  test('its U is 0.805', () => {
    const uValue = 1 / (weight * wall.upperM2KPerW + (1 - weight) * wall.lowerM2KPerW);
    expectPublished(uValue, { value: 0.805, within: 0.002, because: 'it adds 0.001 for screws' }, sheet);
  });
  test('the plain mean would call it 0.54 and is outside the method', () => {
    expect(wall.uValue).toBeLessThan(0.55);
    expect(wall.ratio).toBeGreaterThan(1.5);
  });

  test.each(usStudFactors)(
    'US studs leave about $share of R $fillM2KPerW',
    ({ fillM2KPerW, depthM, share }) => {
      const films = 0.17 + 0.2;
      const ribbed = ribbedResistance({
        insideM2KPerW: 0.13,
        outsideM2KPerW: 0.04,
        outerLayersM2KPerW: [0.1],
        fillM2KPerW,
        innerLayersM2KPerW: [0.1],
        ribs: { depthM, metalM: 0.0012, spacingM: 0.406, metalWPerMK: 50, flangeM: 0.041 },
      });
      const left = (ribbed.resistanceM2KPerW - films) / fillM2KPerW;
      const because =
        'another method, from memory, and the board on both faces is not stated; ours must not be milder by more than 0.03';
      expectPublished(left, { value: share, within: 0.12, because }, usStudCitation);
      expect(left).toBeLessThan(share + 0.03);
    },
  );

  test('studs raise the loss by the order of 75 %', () => {
    const { increase } = ribbedResistance({
      insideM2KPerW: 0.13,
      outsideM2KPerW: 0.04,
      outerLayersM2KPerW: [0.1],
      fillM2KPerW: 1.937,
      innerLayersM2KPerW: [0.1],
      ribs: { depthM: 0.089, metalM: 0.0012, spacingM: 0.406, metalWPerMK: 50, flangeM: 0.041 },
    });
    expectPublished(
      increase,
      { value: studIncreaseExample, within: 0.4, because: 'an order: its wall is not stated' },
      studIncreaseCitation,
    );
    expect(metalBridgeCitations.length).toBeGreaterThan(0);
  });
});

describe('films and gaps of air', () => {
  test.each([
    ['upward', 0.1],
    ['horizontal', 0.13],
    ['downward', 0.17],
  ] as const)('inner film %s: %d', (direction, published) => {
    expectPublished(insideFilmM2KPerW[direction], exactly(published), surfaceFilms);
  });
  test('outer film: 0.04', () => expectPublished(outsideFilmM2KPerW, exactly(0.04), surfaceFilms));

  // Ours is the lower of two tables, so it may not exceed what is printed, nor fall short by more than 0.02.
  test.each([
    [10, 'upward', 0.15],
    [20, 'upward', 0.16],
    [50, 'upward', 0.16],
    [100, 'upward', 0.18],
    [10, 'horizontal', 0.15],
    [20, 'horizontal', 0.17],
    [50, 'horizontal', 0.18],
    [100, 'horizontal', 0.19],
  ] as const)('a gap of %d mm, heat going %s: %d', (thicknessMm, direction, published) => {
    const ours = airGapResistance(thicknessMm / 1000, direction);
    const because = 'the lower of two tables is kept';
    expectPublished(ours, { value: published, within: 0.02, because }, elementCatalogue);
    expect(ours).toBeLessThanOrEqual(published);
  });
  test('a gap with small openings is worth half', () => {
    expectPublished(0.18 * slightlyVentilatedShare, exactly(0.09), elementCatalogue);
    expectPublished(0.17 * slightlyVentilatedShare, exactly(0.085), elementCatalogue);
  });
  test('every direction has a film', () => {
    expect(Object.keys(insideFilmM2KPerW)).toEqual([...heatDirections]);
  });
});

describe('skins and panes by their films', () => {
  const plain = (...layersM2KPerW: readonly number[]) =>
    uValueOf(wallResistance({ insideM2KPerW: 0.13, outsideM2KPerW: 0.04, layersM2KPerW }));

  test('4 mm of glass 5.75, 1 mm of bare steel 5.88, steel with 30 mm of XPS and 3 mm of plywood 0.93', () => {
    expectPublished(plain(0.004), printed(5.75, 0.01), filmsAndLayers('glass'));
    expectPublished(plain(0.001 / 50), printed(5.88, 0.01), filmsAndLayers('steel'));
    expectPublished(
      plain(0.001 / 50, 0.03 / 0.034, 0.003 / 0.13),
      printed(0.93, 0.01),
      filmsAndLayers('XPS'),
    );
  });
  test('the rows of the catalogue are no milder than what their films give', () => {
    for (const [id, least] of [
      ['single glass', plain(0.004)],
      ['single acrylic', plain(0.003 / 0.2)],
      ['double acrylic', plain(0.006 / 0.2, 0.15)],
      ['bare steel door', plain(0.001 / 50)],
    ] as const) {
      expect(openingLoss(id)?.uValue, id).toBeGreaterThan(least - 0.02);
    }
  });

  const page: Citation = {
    title: 'Page of a self-sufficiency guide on U-values and shutters',
    readAt: 'https://secrets-of-self-sufficiency.com/u-values-and-double-glazing',
    provenance: 'read',
  };
  // Its averages of shuttered single glass (5.6) follow from its own figures by the hours.
  test.each([
    [8, 1.14, 2.6],
    [8, 0.82, 2.4],
    [8, 0.53, 2.2],
    [12, 1.14, 3.4],
    [12, 0.82, 3.2],
    [12, 0.53, 3.1],
  ])('open for %d hours of 24, shut %d: on average %d', (hours, shut, published) => {
    expectPublished((hours * 5.6 + (24 - hours) * shut) / 24, printed(published, 0.1), page);
  });
  test('our double glass is its 3.4, our single glass no milder than its 5.6', () => {
    const of = (id: string) => paneLosses.find((row) => row.id === id)?.uValue ?? Number.NaN;
    expectPublished(of('double glass'), exactly(3.4), page);
    expect(of('single glass')).toBeGreaterThanOrEqual(5.6);
  });
});
