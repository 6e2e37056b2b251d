import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Citation } from '../../src/catalogue/citation.ts';
import { codes, personMass } from '../../src/catalogue/codes.ts';
import { fluidNames, fluids } from '../../src/catalogue/fluids.ts';
import {
  type LicenceClass,
  licenceCautions,
  licenceClasses,
  lowestClassFor,
} from '../../src/catalogue/licences.ts';
import { limitFor, limitIds, regionalLimits } from '../../src/catalogue/limits.ts';
import { materialNamed, materials } from '../../src/catalogue/materials.ts';
import { overloadCitations } from '../../src/catalogue/penalties.ts';
import { birchPlywoodCitations } from '../../src/catalogue/sheets.ts';

const cited: readonly (readonly [string, readonly Citation[]])[] = [
  ...materials.map((row) => [`material ${row.name}`, row.citations] as const),
  ...fluidNames.map((name) => [`fluid ${name}`, fluids[name].citations] as const),
  ...regionalLimits.map((row) => [`limit ${row.id} for ${row.codes.join(', ')}`, row.citations] as const),
  ...licenceClasses.map((row) => [`licence ${row.codes} ${row.category}`, row.citations] as const),
  ...codes.map((region) => [`person ${region}`, [personMass[region].citation]] as const),
  ['overload penalties', overloadCitations],
  ['birch plywood sheets', birchPlywoodCitations],
];

describe('citations', () => {
  test.each(cited)('%s', (_row, citations) => {
    expect(citations.length).toBeGreaterThan(0);
    for (const { title, readAt, provenance } of citations) {
      expect(title.trim()).not.toBe('');
      expect(title).not.toContain('http');
      // What was read was read somewhere; what was not read must not claim an own place of reading, but for a heading.
      if (provenance === 'read') expect(readAt).toMatch(/\w\.\w/);
      if (provenance === 'common practice' || provenance === 'own choice') expect(readAt).toBeUndefined();
    }
  });

  test('what is from memory says in a caution that it was not read', () => {
    const remembered = cited
      .flatMap(([, citations]) => citations)
      .filter((row) => row.provenance === 'memory');
    expect(remembered.length).toBeGreaterThan(3);
    for (const { caution } of remembered) expect(caution).toMatch(/not looked up|memory|not found/i);
  });
});

describe('materials', () => {
  test('names are unique, other names included', () => {
    const names = materials.flatMap((row) => [row.name, ...row.otherNames]);
    const folded = names.map((name) => name.toLowerCase().replace(/[\s_-]+/g, ''));
    expect(folded.filter((name, index) => folded.indexOf(name) !== index)).toEqual([]);
  });

  // Nothing that goes into a van lies outside; a slipped decimal point does.
  test('densities are of the right order', () => {
    for (const row of materials) {
      const [least, most] = row.purposes.includes('metal') ? [2000, 9000] : [5, 3000];
      expect(row.lowKgM3, row.name).toBeGreaterThan(least);
      expect(row.highKgM3, row.name).toBeLessThan(most);
      expect(row.lowKgM3, row.name).toBeLessThanOrEqual(row.densityKgM3);
      expect(row.densityKgM3, row.name).toBeLessThanOrEqual(row.highKgM3);
    }
  });

  // Tighter, by what the thing is: this tells 40 from 400.
  test.each([
    ['insulation', 5, 210],
    ['cushion', 20, 100],
    ['timber', 150, 950],
    ['floor covering', 150, 2000],
    ['underlay', 100, 300],
  ] as const)('%s lies between %d and %d kg/m³', (purpose, least, most) => {
    const rows = materials.filter((row) => row.purposes.includes(purpose));
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) {
      expect(row.lowKgM3, row.name).toBeGreaterThan(least);
      expect(row.highKgM3, row.name).toBeLessThan(most);
    }
  });

  test.each([
    ['Birch-Plywood', 'birch plywood'],
    ['BIRCH PLYWOOD', 'birch plywood'],
    ['birch_ply', 'birch plywood'],
    ['sheepwool', 'sheep wool'],
    ['xps', 'XPS'],
    ['chipboard', 'particleboard'],
    ['stone wool', 'rock wool'],
    ['aluminum', 'aluminium'],
    ['foam core 80', 'foam core 80'],
    ['  oak ', 'oak'],
  ])('"%s" is found as "%s"', (written, name) => {
    expect(materialNamed(written)?.name).toBe(name);
  });

  test.each(['', 'unobtainium', 'oak!', 'foam core 85', 'constructor'])('"%s" is not known', (written) => {
    expect(materialNamed(written)).toBeUndefined();
  });

  test('case, spaces and hyphens never matter', () => {
    const names = materials.flatMap((row) => [row.name, ...row.otherNames].map((name) => ({ row, name })));
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.array(fc.constantFrom('', ' ', '-', '_', ' - '), { minLength: 1 }),
        fc.infiniteStream(fc.boolean()),
        ({ row, name }, joints, upper) => {
          const written = [...name]
            .map((letter, index) => {
              const cased = upper.next().value === true ? letter.toUpperCase() : letter.toLowerCase();
              return cased + (joints[index % joints.length] ?? '');
            })
            .join('');
          expect(materialNamed(written)).toBe(row);
        },
      ),
    );
  });
});

test('fluids are ordered low, value, high and between 400 and 1100 kg/m³', () => {
  for (const name of fluidNames) {
    const { lowKgM3, densityKgM3, highKgM3 } = fluids[name];
    expect(lowKgM3).toBeGreaterThan(400);
    expect(lowKgM3).toBeLessThanOrEqual(densityKgM3);
    expect(densityKgM3).toBeLessThanOrEqual(highKgM3);
    expect(highKgM3).toBeLessThan(1100);
  }
});

describe('limits', () => {
  test('every limit has exactly one row for every region', () => {
    for (const id of limitIds) {
      for (const region of codes) {
        const rows = regionalLimits.filter((row) => row.id === id && row.codes.includes(region));
        expect(rows, `${id} ${region}`).toHaveLength(1);
        expect(limitFor(id, region)).toBe(rows[0]);
      }
    }
  });

  test('what is not law says so in a caution', () => {
    for (const row of regionalLimits.filter(({ force }) => force !== 'law')) {
      expect(row.caution, row.id).toBeTruthy();
    }
  });
});

describe('licences', () => {
  test('every region has a caution and a class without further training', () => {
    for (const region of codes) {
      expect(licenceCautions[region].length).toBeGreaterThan(0);
      expect(licenceClasses.some((row) => row.codes === region && !row.needsTraining)).toBe(true);
    }
  });

  // The search for the lowest class takes the first that covers the van.
  test('classes stand lightest first, and before an equal one that needs training', () => {
    const rank = (row: LicenceClass): number => (row.maxMassKg ?? Infinity) + (row.needsTraining ? 0.5 : 0);
    for (const region of codes) {
      const ranks = licenceClasses.filter((row) => row.codes === region).map(rank);
      expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
    }
  });

  const region = fc.constantFrom(...codes);
  const massKg = fc.integer({ min: 1, max: 20_000 });
  const testPassed = fc.constantFrom('1980-01-01', '1996-12-31', '1997-01-01', '2020-01-01');

  test('a heavier van never needs less', () => {
    fc.assert(
      fc.property(
        region,
        massKg,
        fc.integer({ min: 0, max: 5000 }),
        testPassed,
        (codes, kg, more, passed) => {
          const light = lowestClassFor({ codes, massKg: kg, energy: 'any', testPassed: passed });
          const heavy = lowestClassFor({ codes, massKg: kg + more, energy: 'any', testPassed: passed });
          expect(heavy?.maxMassKg ?? Infinity).toBeGreaterThanOrEqual(light?.maxMassKg ?? Infinity);
          if (light?.needsTraining) expect(heavy?.needsTraining).toBe(true);
        },
      ),
    );
  });

  test('the class found covers the van, and an earlier test or a cleaner drive never needs more', () => {
    fc.assert(
      fc.property(region, massKg, testPassed, (codes, kg, passed) => {
        const plain = lowestClassFor({ codes, massKg: kg, energy: 'any' });
        const dated = lowestClassFor({ codes, massKg: kg, energy: 'any', testPassed: passed });
        const clean = lowestClassFor({ codes, massKg: kg, energy: 'zero emission', testPassed: passed });
        expect(plain?.maxMassKg ?? Infinity).toBeGreaterThanOrEqual(kg);
        if (plain?.needsTraining === false) expect(dated?.needsTraining).toBe(false);
        if (dated?.needsTraining === false) expect(clean?.needsTraining).toBe(false);
      }),
    );
  });
});
