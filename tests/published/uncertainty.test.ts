// Tolerances and probabilities, against worked uncertainty budgets and tables of the normal distribution.
import { describe, expect, test } from 'vitest';
import {
  combineCorrelated,
  expandedUncertainty,
  probabilityAbove,
  rootSumSquare,
  standardUncertainty,
} from '../../src/calc/uncertainty.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

describe('a simple weighing: repeatability, drift, readability', () => {
  const source: Citation = {
    title: 'University of Tartu, GUM examples, "Uncertainty of Simple Weighing"',
    readAt: 'http://www.ut.ee/katsekoda/GUM_examples/weighing.smu',
    provenance: 'read',
  };
  const repeatability = 0.00017; // g, a standard deviation with 15 degrees of freedom
  const combined = rootSumSquare([repeatability, standardUncertainty(0.0002), standardUncertainty(0.00005)]);

  test('combined standard uncertainty', () => {
    const published: Published = {
      value: 0.000207525098883645,
      within: 1e-17,
      because: 'the source prints fifteen digits',
    };
    expectPublished(combined, published, source);
  });
  test('effective degrees of freedom (Welch–Satterthwaite; the rectangular terms have infinitely many)', () => {
    const effective = combined ** 4 / (repeatability ** 4 / 15);
    expectPublished(Math.floor(effective), exactly(33), source);
  });
});

describe('calibration of a 10 kg weight', () => {
  const source: Citation = {
    title:
      'EA-4/02, example S2, "Calibration of a weight of nominal value 10 kg", budget as computed by a metrology program',
    readAt: 'http://www.metrodata.de/examples/s02_en.html',
    provenance: 'read',
  };
  const certificate = 0.045 / 2; // g: an expanded uncertainty with k = 2
  const comparison = 0.0142; // g: printed standard uncertainty of the comparison
  const drift = standardUncertainty(0.015);
  const eccentricity = standardUncertainty(0.01);
  const buoyancy = standardUncertainty(0.01);
  const combined = rootSumSquare([certificate, drift, comparison, eccentricity, buoyancy]);

  test.each([
    {
      name: 'drift within ± 15 mg',
      u: drift,
      value: 0.00866,
      within: 0.000005,
      because: 'printed to 0.01 mg',
    },
    {
      name: 'eccentricity within ± 10 mg',
      u: eccentricity,
      value: 0.00577,
      within: 0.000005,
      because: 'printed to 0.01 mg',
    },
    { name: 'combined', u: combined, value: 0.0291, within: 0.00005, because: 'printed to 0.1 mg' },
    {
      name: 'combined, in full',
      u: combined,
      value: 0.0291465131827805,
      within: 0.000025,
      because: 'the comparison is known to 0.05 mg only, times its share 0.0142 / 0.0291',
    },
    {
      name: 'expanded',
      u: expandedUncertainty(combined),
      value: 0.058,
      within: 0.0005,
      because: 'printed to 1 mg',
    },
  ])('$name', ({ u, value, within, because }) => {
    expectPublished(u, { value, within, because }, source);
  });
});

describe('a tolerance without a distribution', () => {
  test('a chemist’s factor between 7 and 10', () => {
    const source: Citation = {
      title:
        'Eurachem/CITAC guide "Quantifying uncertainty in analytical measurement", appendix E.1, example, read in a copy',
      provenance: 'read',
    };
    expectPublished(
      standardUncertainty(1.5),
      { value: 0.87, within: 0.005, because: 'printed to 0.01' },
      source,
    );
  });

  const probe: Citation = {
    title: 'field probe user manual, 1.6.2 notes, temperature added to the calibration uncertainty',
    provenance: 'read',
  };
  test('3.04 % drift with temperature', () => {
    const published: Published = { value: 1.755, within: 0.0005, because: 'printed to 0.001 %' };
    expectPublished(standardUncertainty(3.04), published, probe);
  });
  test('together with an expanded uncertainty of 2.4 % (that manual uses k = 1.96)', () => {
    const combined = 1.96 * rootSumSquare([2.4 / 1.96, standardUncertainty(3.04)]);
    expectPublished(combined, { value: 4.2, within: 0.05, because: 'printed to 0.1 %' }, probe);
  });
});

describe('five masses with tolerances (answers computed from the definition)', () => {
  const source: Citation = {
    title: 'JCGM 100:2008, 5.1.2 equation (10), rectangular tolerances',
    provenance: 'computed',
  };
  const halfWidthsKg = [5, 8, 3, 4, 2];
  const combined = rootSumSquare(halfWidthsKg.map(standardUncertainty));

  test('combined', () => {
    expectPublished(combined, { value: 6.2716, within: 0.00005, because: 'given to 0.0001 kg' }, source);
  });
  test('expanded', () => {
    const published: Published = { value: 12.543, within: 0.0005, because: 'given to 0.001 kg' };
    expectPublished(expandedUncertainty(combined), published, source);
  });
  test('expanded stays below the worst case of 22 kg', () => {
    expect(expandedUncertainty(combined)).toBeLessThan(halfWidthsKg.reduce((sum, value) => sum + value, 0));
  });
});

describe('errors that share a source', () => {
  // JCGM 100:2008, 5.2.2, example (memory): ten resistors calibrated against one standard of u = 100 mΩ, in series.
  const source: Citation = { title: 'JCGM 100:2008, 5.2.2, example of ten resistors', provenance: 'memory' };
  const resistors = Array.from({ length: 10 }, () => 0.1);

  test('they add linearly: 1 Ω', () => {
    expectPublished(combineCorrelated([resistors]), exactly(1), source);
  });
  test('as if independent they would come to 0.32 Ω, which the guide calls wrong here', () => {
    const published: Published = { value: 0.32, within: 0.005, because: 'printed to 0.01 Ω' };
    expectPublished(rootSumSquare(resistors), published, source);
    expect(combineCorrelated(resistors.map((u) => [u]))).toBeCloseTo(rootSumSquare(resistors), 12);
  });
  test('within a group opposite effects cancel, between groups they do not (from the definition)', () => {
    expect(combineCorrelated([[3, -3]])).toBe(0);
    expect(combineCorrelated([[3], [-4]])).toBe(5);
  });
});

describe('tables of the normal distribution', () => {
  const table: Citation = {
    title: 'z-distribution table, area below z',
    readAt: 'http://www.math.com/tables/stat/distributions/z-dist.htm',
    provenance: 'read',
  };
  const tail: Citation = {
    title: 'Rosner, Fundamentals of Biostatistics, appendix table 3, column B, Pr(X > x)',
    readAt: 'https://vi.scribd.com/document/318922188/2-Tabel-z-Rosner',
    provenance: 'read',
  };
  const coverage: Citation = {
    title: 'coverage of ± k standard uncertainties, documentation of a library for physical quantities',
    readAt: 'https://pub.dev/documentation/quantity/latest/quantity/Quantity/calcExpandedUncertainty.html',
    provenance: 'read',
  };

  test.each([
    { z: -4, below: 0.00003 },
    { z: -3, below: 0.00135 },
    { z: -2.8, below: 0.00256 },
    { z: -2.5, below: 0.00621 },
    { z: -2.43, below: 0.00755 },
  ])('area below z = $z', ({ z, below }) => {
    // A value with mean z above a limit of 0: the mirrored tail.
    const published: Published = { value: below, within: 0.000005, because: 'printed to 0.00001' };
    expectPublished(probabilityAbove(0, z, 1), published, table);
  });

  test.each([
    { z: 0, above: 0.5 },
    { z: 0.1, above: 0.4602 },
    { z: 0.25, above: 0.4013 },
    { z: 0.5, above: 0.3085 },
    { z: 0.6, above: 0.2743 },
  ])('area above z = $z, for a mass of 3000 kg ± 15 kg', ({ z, above }) => {
    const published: Published = { value: above, within: 0.00005, because: 'printed to 0.0001' };
    expectPublished(probabilityAbove(3000 + z * 15, 3000, 15), published, tail);
  });

  test.each([
    { k: 1.645, percent: 90, within: 0.05 },
    { k: 2, percent: 95.45, within: 0.005 },
    { k: 2.576, percent: 99, within: 0.05 },
    { k: 3, percent: 99.73, within: 0.005 },
  ])('within ± $k standard uncertainties', ({ k, percent, within }) => {
    const because = 'printed to 0.01 %, or the factor to three decimals';
    expectPublished(100 * (1 - 2 * probabilityAbove(k, 0, 1)), { value: percent, within, because }, coverage);
  });

  test('without uncertainty it is a step, and exactly at the limit is not above it (from the definition)', () => {
    expect(probabilityAbove(3500, 3500.001, 0)).toBe(1);
    expect(probabilityAbove(3500, 3500, 0)).toBe(0);
    expect(probabilityAbove(3500, 3499.999, 0)).toBe(0);
  });
});
