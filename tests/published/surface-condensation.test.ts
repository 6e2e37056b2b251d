// Temperature factors of inner faces against printed values.
import { expect, test } from 'vitest';
import { dewPointC, magnusConstants, magnusPressurePa } from '../../src/calc/air/saturation.ts';
import {
  coldestDryFaceC,
  factorOfSurface,
  surfaceTemperatureC,
  temperatureFactor,
} from '../../src/calc/heat/surface.ts';
import { condensationProgram } from '../../src/catalogue/heat/heat-sources.ts';
import { mouldFilmM2KPerW, mouldHumidity } from '../../src/catalogue/heat/surface-films.ts';
import { expectPublished } from './agreement.ts';

test('U 0.80368578 behind a film of 0.25: f 0.79907855', () => {
  expectPublished(
    temperatureFactor(0.80368578, mouldFilmM2KPerW),
    { value: 0.79907855, within: 1e-8, because: 'one unit in the last printed place' },
    condensationProgram,
  );
});

test('least f against mould at 20 °C and 55 % inside, 5 °C outside: 0.60574531', () => {
  const insidePa = 0.55 * magnusPressurePa(20, magnusConstants.iso13788Water);
  const face = coldestDryFaceC(insidePa, mouldHumidity);
  expectPublished(
    factorOfSurface(face, 20, 5),
    {
      value: 0.60574531,
      within: 0.002,
      because: 'another formula for saturation (0.03 K); the program rounds its inverse',
    },
    condensationProgram,
  );
});

// Faces of the same program's wall: what lies between them and the inside air is the inner film alone.
test('its inner face is at 18.43281272 °C', () => {
  expectPublished(
    surfaceTemperatureC(temperatureFactor(0.80368578, 0.13), 20, 5),
    { value: 18.43281272, within: 1e-6, because: 'U is printed to eight places' },
    condensationProgram,
  );
});

// Whole degrees of a printed table of dew points, often cut off rather than rounded.
test.each([
  [25, 60, 16],
  [25, 50, 13],
  [15, 80, 11],
  [10, 70, 4],
  [30, 40, 14],
])('air of %d °C and %d %%: a face must be at least %d °C', (airC, humidity, published) => {
  const face = coldestDryFaceC((humidity / 100) * magnusPressurePa(airC), 1);
  expectPublished(
    face,
    { value: published, within: 1.1, because: 'whole degrees, cut off' },
    {
      title: 'Table of dew points and absolute humidity',
      readAt: 'https://ru.scribd.com/doc/39380596/Dew-Point-Table',
      provenance: 'read',
    },
  );
  expect(face).toBeCloseTo(dewPointC((humidity / 100) * magnusPressurePa(airC)), 9);
});
