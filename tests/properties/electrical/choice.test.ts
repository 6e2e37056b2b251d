import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Electrical } from '../../../src/build/electrical.ts';
import { fuseMargin } from '../../../src/catalogue/electrical/fuses.ts';
import { choiceFor, sizesFor } from '../../../src/rules/circuit-choice.ts';
import { figuresOf } from '../../../src/rules/circuits.ts';
import { buildOf, only, reportOf } from '../../support/check.ts';
import { wired } from '../../support/electrical-plan.ts';

const sizes = ['0.75', '1', '1.5', '2.5', '4', '6', '10', '16', '25', '35', '50', '70', '95'] as const;

interface Draft {
  readonly load: number;
  readonly isPower: boolean;
  readonly lengthM: number;
  readonly size: number;
  readonly insulationC: number;
  readonly lies: string;
  readonly bundled: number;
  readonly dropClass: string;
  readonly practice: string;
  readonly feederM: number;
  readonly feederMm2: string;
}

const drafts: fc.Arbitrary<Draft> = fc.record({
  load: fc.double({ min: 0.2, max: 60, noNaN: true }),
  isPower: fc.boolean(),
  lengthM: fc.double({ min: 0.1, max: 12, noNaN: true }),
  size: fc.nat(sizes.length - 1),
  insulationC: fc.constantFrom(60, 70, 75, 85, 90, 105),
  lies: fc.constantFrom('inside', 'engine space', 'roof', 'in insulation'),
  bundled: fc.integer({ min: 1, max: 4 }),
  dropClass: fc.constantFrom('critical', 'ordinary', 'lighting'),
  practice: fc.constantFrom('boats', 'leisure vehicles', 'buildings'),
  feederM: fc.double({ min: 0.1, max: 2, noNaN: true }),
  // A thin feeder loses most of what the circuit may, so that its own loss alone would choose too small.
  feederMm2: fc.constantFrom('4', '10', '35'),
});

/** One circuit under test behind a feeder, with a neighbour beside it. */
const write = (draft: Draft, conductor = `${sizes[draft.size]} mm2`, fuse = ''): string =>
  wired(`  voltage: 12 V
  drop_limits: ${draft.practice}
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah}
  distribution: {fuse box: {kind: fuse box}}
  circuits:
    feed: {from: battery, to: fuse box, conductor: ${draft.feederMm2} mm2, strands: flexible, insulation: 105 degC, length: ${draft.feederM} m}
    pump: {from: fuse box, to: pump, load: 60 W, conductor: 10 mm2, strands: flexible, length: 1 m}
    it: {from: fuse box, to: fridge, load: ${draft.isPower ? `${draft.load * 12} W` : `${draft.load} A`}, conductor: ${conductor}, strands: flexible, insulation: ${draft.insulationC} degC, lies: ${draft.lies}, bundled: ${draft.bundled}, drop: ${draft.dropClass}, length: ${draft.lengthM} m${fuse}}`);

const electricalOf = async (text: string): Promise<Electrical> => {
  const { electrical } = await buildOf(text);
  if (!electrical) throw new Error('no electrical part');
  return electrical;
};

const itOf = (electrical: Electrical) => {
  const found = figuresOf(electrical).get('it');
  if (!found) throw new Error('no circuit');
  return found;
};

const rules = ['electrical.voltage-drop', 'electrical.ampacity', 'electrical.least-section'];

/** Which checks the circuit breaks as the plan says it, with its fuse. */
async function broken(text: string, fuseA?: number): Promise<readonly string[]> {
  const { findings } = await reportOf(text);
  const { ampacity, designA = Number.POSITIVE_INFINITY } = itOf(await electricalOf(text));
  return [
    ...rules.filter((rule) =>
      findings.some(
        (each) =>
          each.rule === rule && each.subject === 'it' && (each.verdict === 'fail' || each.verdict === 'warn'),
      ),
    ),
    ...(fuseA !== undefined && fuseA > (ampacity?.deratedA ?? 0) * (1 + 1e-9) ? ['fuse above ampacity'] : []),
    ...(fuseA !== undefined && fuseA < fuseMargin.value * designA * (1 - 1e-9) ? ['fuse below design'] : []),
  ];
}

test('the choice passes every check, and the next size down fails one', async () => {
  let tried = 0;
  await fc.assert(
    fc.asyncProperty(drafts, async (draft) => {
      const electrical = await electricalOf(write(draft));
      const { circuit } = itOf(electrical);
      const choice = choiceFor(electrical, circuit);
      const all = sizesFor(circuit.wire);
      const smaller = choice ? all[all.indexOf(choice.conductor) - 1] : all.at(-1);
      if (choice) {
        tried += 1;
        expect(await broken(write(draft, `${choice.conductor.size} mm2`), choice.fuseA)).toEqual([]);
      }
      if (!smaller) return;
      // The next size down with the smallest fuse that its own current allows: no greater one would help.
      const text = write(draft, `${smaller.size} mm2`);
      const { designA = 0 } = itOf(await electricalOf(text));
      const family = choice?.family.ratingsA ?? [];
      const fuseA = family.find((each) => each >= fuseMargin.value * designA * (1 - 1e-9));
      if (choice) expect(await broken(text, fuseA)).not.toEqual([]);
    }),
    { numRuns: 60 },
  );
  expect(tried).toBeGreaterThan(15);
});

test('the loss of a current grows in proportion with the length', async () => {
  await fc.assert(
    fc.asyncProperty(drafts, fc.double({ min: 1, max: 2.4, noNaN: true }), async (draft, times) => {
      const own = async (lengthM: number) =>
        itOf(await electricalOf(write({ ...draft, isPower: false, lengthM }))).ownDropV;
      const [once, more] = [await own(draft.lengthM), await own(draft.lengthM * times)];
      if (once === undefined || more === undefined) return;
      expect(more).toBeCloseTo(once * times, 9);
    }),
    { numRuns: 40 },
  );
});

test('the loss never falls with the load', async () => {
  await fc.assert(
    fc.asyncProperty(drafts, fc.double({ min: 1, max: 3, noNaN: true }), async (draft, times) => {
      const dropOf = async (load: number) => itOf(await electricalOf(write({ ...draft, load }))).dropV;
      const [less, more] = [await dropOf(draft.load), await dropOf(draft.load * times)];
      // A greater load that cannot be supplied has no loss at all; one that can leaves the smaller supplied too.
      if (more === undefined) return;
      expect(less ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(more * (1 + 1e-9));
    }),
    { numRuns: 40 },
  );
});

test('a bigger conductor never turns pass into fail on ampacity or drop', async () => {
  const badness = { pass: 0, 'not checked': 0, warn: 1, fail: 2 } as const;
  await fc.assert(
    fc.asyncProperty(drafts, fc.nat(sizes.length - 1), async (draft, other) => {
      const [small, big] = draft.size <= other ? [draft.size, other] : [other, draft.size];
      const [thin, thick] = [
        await reportOf(write({ ...draft, size: small })),
        await reportOf(write({ ...draft, size: big })),
      ];
      for (const rule of ['electrical.voltage-drop', 'electrical.ampacity']) {
        const verdictOf = (report: typeof thin) =>
          report.findings.find((each) => each.rule === rule && each.subject === 'it')?.verdict ?? 'pass';
        expect(badness[verdictOf(thick)]).toBeLessThanOrEqual(badness[verdictOf(thin)]);
      }
    }),
    { numRuns: 40 },
  );
});

test('a plan in which a load is not known has no choice for that circuit', async () => {
  const text = wired(
    '  voltage: 12 V\n  battery: {chemistry: AGM, voltage: 12 V, capacity: 100 Ah}\n  circuits: {it: {from: battery, to: fridge, conductor: 4 mm2, length: 2 m}}',
  );
  const electrical = await electricalOf(text);
  expect(choiceFor(electrical, itOf(electrical).circuit)).toBeUndefined();
  expect(only(await reportOf(text), 'electrical.voltage-drop').verdict).toBe('not checked');
});

// The feeder, 2 m of 10 mm²: 4 · 1.91 · 1.1965 = 9.14 mΩ, at 15 A 0.137 V of the 0.36 V. Of its own the circuit may lose
// 0.223 V at 10 A over 4 m: 5.57 mΩ/m hot, 4.66 cold: 6 mm² (3.3), not 4 mm² (4.95), which would do alone.
test('what is lost before a circuit makes its conductor bigger', async () => {
  const text = wired(`  voltage: 12 V
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah}
  distribution: {fuse box: {kind: fuse box}}
  circuits:
    feed: {from: battery, to: fuse box, conductor: 10 mm2, strands: flexible, length: 2 m}
    pump: {from: fuse box, to: pump, load: 5 A, conductor: 10 mm2, strands: flexible, length: 1 m}
    it: {from: fuse box, to: fridge, load: 10 A, conductor: 2.5 mm2, strands: flexible, drop: critical, length: 2 m}`);
  const electrical = await electricalOf(text);
  const choice = choiceFor(electrical, itOf(electrical).circuit);
  expect(choice?.conductor.size).toBe('6');
  expect(choice?.fuseA).toBe(15);
  // 3.5 mm² more over 4 m: 14e-6 m³ of 8890 kg/m³.
  expect(choice?.extraMassKg).toBeCloseTo(0.12446, 9);
});
