// Laws that hold for every circuit.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ambientFactor, conductorTemperature } from '../../../src/calc/electrical/ampacity.ts';
import {
  type ConductorDemand,
  judgeConductor,
  smallestConductor,
} from '../../../src/calc/electrical/choose-conductor.ts';
import { type PointLoad, type Segment, solveDropTree } from '../../../src/calc/electrical/drop-tree.ts';
import { copperTemperatureFactor, loopResistance } from '../../../src/calc/electrical/resistance.ts';
import { dropOfCurrent, dropOfPower } from '../../../src/calc/electrical/voltage-drop.ts';
import { ampacityOf, ampacityTables } from '../../../src/catalogue/electrical/ampacity.ts';
import {
  conductorBuilds,
  conductorFinishes,
  conductorSystems,
  conductorsOf,
} from '../../../src/catalogue/electrical/conductors.ts';
import {
  ambientLists,
  groupingFactor,
  groupingLists,
  listedAmbientFactor,
} from '../../../src/catalogue/electrical/derating.ts';

// Evenly spread: doubles of fast-check crowd at the small end, where every load is delivered.
const ohms = fc.integer({ min: 1, max: 200 }).map((each) => each / 1000);
const amperes = fc.integer({ min: 0, max: 400 }).map((each) => each / 10);
const watts = fc.integer({ min: 0, max: 1500 }).map((each) => each / 10);

describe('drop', () => {
  test('of a current is linear in length', () => {
    fc.assert(
      fc.property(
        amperes,
        ohms,
        fc.double({ min: 0, max: 30, noNaN: true }),
        (currentA, ohmPerM, lengthM) => {
          const once = dropOfCurrent(currentA, loopResistance(lengthM, ohmPerM));
          expect(dropOfCurrent(currentA, loopResistance(3 * lengthM, ohmPerM))).toBeCloseTo(3 * once, 9);
        },
      ),
    );
  });

  test('of a power solves its equation, is the smaller of the two, and never falls with the load', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 60, noNaN: true }),
        watts,
        watts,
        ohms,
        (sourceV, powerW, more, loopOhm) => {
          const one = dropOfPower(sourceV, powerW, loopOhm);
          const two = dropOfPower(sourceV, powerW + more, loopOhm);
          if (!one.delivers) {
            expect(powerW).toBeGreaterThan(one.mostPowerW * (1 - 1e-12));
            expect(two.delivers).toBe(false);
            return;
          }
          expect(one.loadV * one.currentA).toBeCloseTo(powerW, 9);
          expect(one.loadV + one.dropV).toBeCloseTo(sourceV, 9);
          expect(one.dropV).toBeLessThanOrEqual(sourceV / 2 + 1e-9);
          if (two.delivers) expect(two.dropV).toBeGreaterThanOrEqual(one.dropV - 1e-12);
        },
      ),
    );
  });
});

/** Each point hangs on an earlier one; the first is the source, `p0`. */
const tree = fc
  .array(fc.record({ parent: fc.nat(), loopOhm: ohms, currentA: amperes, powerW: watts }), {
    minLength: 1,
    maxLength: 9,
  })
  .map((rows) => {
    const segments = rows.map(({ parent, loopOhm }, index): Segment => {
      return { id: `s${index + 1}`, from: `p${parent % (index + 1)}`, to: `p${index + 1}`, loopOhm };
    });
    const loads = rows.map(({ currentA, powerW }, index): Required<PointLoad> => {
      return { at: `p${index + 1}`, currentA: currentA / rows.length, powerW };
    });
    return { segments, loads };
  });

/** x of a · x = b by elimination with pivoting. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, index) => [...row, right[index] ?? 0]);
  for (let column = 0; column < rows.length; column += 1) {
    const size = (row: number) => Math.abs(rows[row]?.[column] ?? 0);
    let best = column;
    for (let row = column; row < rows.length; row += 1) if (size(row) > size(best)) best = row;
    const pivotRow = rows[best] ?? [];
    rows[best] = rows[column] ?? [];
    rows[column] = pivotRow;
    for (const [index, row] of rows.entries()) {
      if (index === column) continue;
      const factor = (row[column] ?? 0) / (pivotRow[column] ?? Number.NaN);
      for (let each = column; each < row.length; each += 1)
        row[each] = (row[each] ?? 0) - factor * (pivotRow[each] ?? 0);
    }
  }
  return rows.map((row, index) => (row[rows.length] ?? 0) / (row[index] ?? Number.NaN));
}

/**
 * The same circuit by its matrix of nodal conductances, and the currents of the loads corrected until they stand:
 * voltages of p1, p2, … ; `collapsed` if one falls to nothing; undefined if it has not settled (close to the limit).
 */
function byNodes(sourceV: number, segments: readonly Segment[], loads: readonly Required<PointLoad>[]) {
  const count = segments.length;
  const conductances = Array.from({ length: count }, () => new Array<number>(count).fill(0));
  const fromSource = new Array<number>(count).fill(0);
  const add = (row: number, column: number, value: number) => {
    const cells = conductances[row];
    if (cells !== undefined) cells[column] = (cells[column] ?? 0) + value;
  };
  for (const { from, to, loopOhm } of segments) {
    const [near, far] = [Number(from.slice(1)) - 1, Number(to.slice(1)) - 1];
    add(far, far, 1 / loopOhm);
    if (near < 0) fromSource[far] = (fromSource[far] ?? 0) + sourceV / loopOhm;
    else {
      add(near, near, 1 / loopOhm);
      add(near, far, -1 / loopOhm);
      add(far, near, -1 / loopOhm);
    }
  }
  // Ohms from node to node: one elimination, then only products.
  const inverse = fromSource.map((_, column) =>
    solve(
      conductances,
      fromSource.map((_value, row) => (row === column ? 1 : 0)),
    ),
  );
  const voltagesFor = (injected: readonly number[]) =>
    fromSource.map((_, row) =>
      injected.reduce((sum, each, column) => sum + (inverse[column]?.[row] ?? 0) * each, 0),
    );
  let voltages = fromSource.map(() => sourceV);
  for (let round = 0; round < 20_000; round += 1) {
    const next = voltagesFor(
      fromSource.map((injected, node) => {
        const { currentA, powerW } = loads[node] ?? { currentA: 0, powerW: 0 };
        return injected - currentA - powerW / (voltages[node] ?? sourceV);
      }),
    );
    if (next.some((voltageV) => voltageV <= 0)) return 'collapsed';
    const moved = Math.max(...next.map((voltageV, node) => Math.abs(voltageV - (voltages[node] ?? 0))));
    voltages = next;
    if (moved < 1e-13 * sourceV) return voltages;
  }
  return undefined;
}

describe('tree of segments', () => {
  const sources = fc.constantFrom(12, 24, 48);

  test('agrees with the nodal matrix, and on what cannot be delivered', () => {
    let delivered = 0;
    let collapsed = 0;
    fc.assert(
      fc.property(sources, tree, (sourceV, { segments, loads }) => {
        const nodes = byNodes(sourceV, segments, loads);
        fc.pre(nodes !== undefined);
        const result = solveDropTree('p0', sourceV, segments, loads);
        expect(result.delivers).toBe(nodes !== 'collapsed');
        if (!result.delivers || nodes === 'collapsed') {
          collapsed += 1;
          return;
        }
        delivered += 1;
        for (const [node, voltageV] of nodes.entries())
          expect(Math.abs((result.points.get(`p${node + 1}`)?.voltageV ?? 0) - voltageV)).toBeLessThan(
            1e-9 * sourceV,
          );
      }),
      { numRuns: 300 },
    );
    // The cases are of both kinds, or the test says little.
    expect(delivered).toBeGreaterThan(50);
    expect(collapsed).toBeGreaterThan(50);
  });

  test('power is kept: source = loads + losses', () => {
    fc.assert(
      fc.property(sources, tree, (sourceV, { segments, loads }) => {
        const result = solveDropTree('p0', sourceV, segments, loads);
        fc.pre(result.delivers);
        if (!result.delivers) return;
        let given = 0;
        let lost = 0;
        for (const { id, from } of segments) {
          const flow = result.segments.get(id);
          if (from === 'p0') given += sourceV * (flow?.currentA ?? 0);
          lost += flow?.lossW ?? 0;
        }
        const used = loads.reduce(
          (sum, { at, currentA, powerW }) => sum + powerW + currentA * (result.points.get(at)?.voltageV ?? 0),
          0,
        );
        expect(Math.abs(given - lost - used)).toBeLessThan(1e-9 * Math.max(1, given));
      }),
    );
  });

  test('one segment is the closed form', () => {
    fc.assert(
      fc.property(sources, ohms, watts, (sourceV, loopOhm, powerW) => {
        const closed = dropOfPower(sourceV, powerW, loopOhm);
        const limitW = (sourceV * sourceV) / (4 * loopOhm);
        fc.pre(Math.abs(powerW - limitW) > 1e-6 * limitW);
        const result = solveDropTree(
          'p0',
          sourceV,
          [{ id: 's', from: 'p0', to: 'p1', loopOhm }],
          [{ at: 'p1', powerW }],
        );
        expect(result.delivers).toBe(closed.delivers);
        if (result.delivers && closed.delivers)
          expect(Math.abs((result.points.get('p1')?.dropV ?? 0) - closed.dropV)).toBeLessThan(1e-9 * sourceV);
      }),
    );
  });

  test('more load anywhere never lessens a drop anywhere', () => {
    fc.assert(
      fc.property(sources, tree, fc.nat(), watts, (sourceV, { segments, loads }, where, moreW) => {
        const before = solveDropTree('p0', sourceV, segments, loads);
        const after = solveDropTree('p0', sourceV, segments, [
          ...loads,
          { at: `p${1 + (where % segments.length)}`, powerW: moreW },
        ]);
        if (!before.delivers) expect(after.delivers).toBe(false);
        if (!before.delivers || !after.delivers) return;
        for (const [name, { dropV }] of before.points)
          expect(after.points.get(name)?.dropV ?? 0).toBeGreaterThanOrEqual(dropV - 1e-9 * sourceV);
      }),
    );
  });

  test('the order of segments and loads does not matter', () => {
    fc.assert(
      fc.property(sources, tree, (sourceV, { segments, loads }) => {
        const one = solveDropTree('p0', sourceV, segments, loads);
        const other = solveDropTree('p0', sourceV, segments.toReversed(), loads.toReversed());
        expect(other.delivers).toBe(one.delivers);
        if (!one.delivers || !other.delivers) return;
        for (const [name, { dropV }] of one.points)
          expect(other.points.get(name)?.dropV).toBeCloseTo(dropV, 9);
      }),
    );
  });
});

describe('catalogue', () => {
  const families = conductorSystems.flatMap((system) =>
    conductorBuilds.flatMap((build) =>
      conductorFinishes
        .map((finish) => conductorsOf(system, build, finish))
        .filter((rows) => rows.length > 0),
    ),
  );

  test('a bigger conductor of a family never has more resistance', () => {
    expect(families.length).toBe(7);
    for (const rows of families)
      for (const [index, row] of rows.entries()) {
        const next = rows[index + 1];
        if (next === undefined) continue;
        expect(next.areaMm2).toBeGreaterThan(row.areaMm2);
        const at = (each: typeof row) =>
          each.resistanceOhmPerM * copperTemperatureFactor(60, each.resistanceAtC);
        expect(at(next)).toBeLessThan(at(row));
      }
  });

  test('a bigger conductor, or better insulation, never carries less', () => {
    const area = fc.double({ min: 0.2, max: 200, noNaN: true });
    const temperature = fc.integer({ min: 50, max: 220 });
    const id = fc.constantFrom(...ampacityTables.map((table) => table.id));
    fc.assert(
      fc.property(id, area, area, temperature, temperature, (table, area1, area2, warm1, warm2) => {
        const less = ampacityOf(table, Math.min(area1, area2), Math.min(warm1, warm2));
        const more = ampacityOf(table, Math.max(area1, area2), Math.max(warm1, warm2));
        if (less === undefined) return;
        expect(more?.currentA ?? 0).toBeGreaterThanOrEqual(less.currentA);
        expect(less.row.areaMm2).toBeLessThanOrEqual(Math.min(area1, area2) * (1 + 1e-4));
        expect(less.insulationC).toBeLessThanOrEqual(Math.min(warm1, warm2));
      }),
      { numRuns: 500 },
    );
  });

  test('hotter, or in more company, never carries more', () => {
    const list = fc.constantFrom(...ambientLists);
    fc.assert(
      fc.property(
        list,
        fc.integer({ min: 60, max: 200 }),
        fc.nat(90),
        fc.nat(40),
        (each, bearsC, ambientC, hotter) => {
          const cool = listedAmbientFactor(each.id, bearsC, ambientC);
          const hot = listedAmbientFactor(each.id, bearsC, ambientC + hotter);
          expect(hot ?? 0).toBeLessThanOrEqual(cool ?? 0);
        },
      ),
    );
    for (const { id } of groupingLists)
      for (let count = 1; count < 60; count += 1)
        expect(groupingFactor(id, count + 1) ?? 0).toBeLessThanOrEqual(groupingFactor(id, count) ?? 0);
  });
});

test('a conductor warms with its current, from its ambient to its limit', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      fc.integer({ min: 60, max: 125 }),
      fc.integer({ min: 30, max: 55 }),
      share,
      share,
      (bearsC, ambientC, one, two) => {
        const factor = ambientFactor(bearsC, ambientC, 30);
        const at = (load: number) =>
          conductorTemperature({
            insulationC: bearsC,
            tableAmbientC: 30,
            tabulatedA: 50,
            currentA: 50 * factor * load,
            ambientFactor: factor,
            groupingFactor: 1,
          });
        expect(at(Math.max(one, two))).toBeGreaterThanOrEqual(at(Math.min(one, two)) - 1e-9);
        expect(at(one)).toBeGreaterThan(ambientC - 1e-9);
        expect(at(one)).toBeLessThan(bearsC + 1e-9);
      },
    ),
  );
});

describe('smallest conductor', () => {
  const offered = conductorsOf('mm²', 'flexible', 'plain').map((row) => ({
    ...row,
    ohmPerM: row.resistanceOhmPerM * copperTemperatureFactor(70, row.resistanceAtC),
    ampacityA: ampacityOf('clipped to a surface', row.areaMm2, 70)?.currentA,
  }));
  const length = fc.double({ min: 0, max: 15, noNaN: true });
  const demand: fc.Arbitrary<ConductorDemand> = fc.record({
    load: fc.oneof(fc.record({ currentA: amperes }), fc.record({ powerW: watts })),
    sourceV: fc.constantFrom(11, 22, 44),
    outM: length,
    backM: length,
    connectionsOhm: fc.constantFrom(0, 0.002),
    permittedDropV: fc.double({ min: 0.1, max: 2, noNaN: true }),
    neededAmpacityA: fc.double({ min: 0, max: 150, noNaN: true }),
    leastAreaMm2: fc.constantFrom(0, 0.75, 1, 1.5),
  });

  test('it passes, every smaller one fails, every bigger one passes', () => {
    fc.assert(
      fc.property(demand, (wanted) => {
        const found = smallestConductor(offered, wanted);
        for (const choice of offered) {
          const passes = judgeConductor(choice, wanted).shortfalls.length === 0;
          if (found === undefined || choice.areaMm2 < found.fits.choice.areaMm2) expect(passes).toBe(false);
          // Beyond the ampacity table nothing changes: the last listed row holds.
          else expect(passes).toBe(true);
        }
        if (found?.nextDown !== undefined) expect(found.nextDown.shortfalls.length).toBeGreaterThan(0);
      }),
      { numRuns: 300 },
    );
  });
});
