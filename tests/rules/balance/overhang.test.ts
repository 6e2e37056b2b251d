import { describe, expect, test } from 'vitest';
import { noteOf, reportOf, words } from '../../support/check.ts';
import { fixtureAt, plan } from '../../support/test-van.ts';

async function rows(text: string): Promise<readonly (readonly string[])[]> {
  const note = await noteOf(text, 'balance.overhang');
  if (!note) throw new Error('there is no table of leverage');
  return note.rows.map((row) => row.map(words));
}

// x / L = 1/4, 3/4 and 5/4: 10 kg put 2.5, 7.5 and 12.5 kg on the rear axle, the rest on the front.
test('what ten kilograms do', async () => {
  const found = await rows(plan());
  expect(found.map((row) => row.slice(0, 3))).toEqual([
    ['front of the load bay', '+7.5 kg', '+2.5 kg'],
    ['middle of the load bay', '+2.5 kg', '+7.5 kg'],
    ['rear doors', '-2.5 kg', '+13 kg'],
  ]);
});

// A medium van: the bay begins 1130 mm behind the front axle and is 3270 mm long, the wheelbase is 3640 mm.
// x / L = 4400 / 3640 = 1.2088: 10 kg at the doors are + 12.09 kg at the rear and − 2.09 kg in front.
test('the doors of a medium van', async () => {
  const note = await noteOf(
    plan('', {
      wheelbase: '3640 mm',
      load_bay: '{behind_front_axle: 1130 mm, length: 3270 mm, width: 1760 mm, height: 1890 mm}',
    }),
    'balance.overhang',
  );
  const values = note?.rows[2]
    ?.slice(1, 3)
    .map((cell) => cell.flatMap((part) => (typeof part === 'string' ? [] : [part.value]))[0] ?? 0);
  expect(values?.[0]).toBeCloseTo(10 - 44000 / 3640, 12);
  expect(values?.[1]).toBeCloseTo(44000 / 3640, 12);
  expect(values?.map((kg) => kg.toFixed(1))).toEqual(['-2.1', '12.1']);
});

/** 1000 kg are left on the plate, 500 kg in front and 800 kg at the rear. */
describe('the room there', () => {
  // In front: 500 / 0.75 = 667 kg before the front axle is full. In the middle: 800 / 0.75 = 1067 kg for the rear
  // axle, so the plate decides: 1000 kg. At the doors: 800 / 1.25 = 640 kg.
  test('is what the first limit leaves', async () => {
    expect((await rows(plan())).map((row) => row[3])).toEqual(['667 kg', '1,000 kg', '640 kg']);
  });

  // 1200 kg in the middle: total 3200 of 3000 kg.
  test('is never less than nothing', async () => {
    const found = await rows(plan(fixtureAt('1 m', '1200 kg')));
    expect(found.map((row) => row[3])).toEqual(['0.0 kg', '0.0 kg', '0.0 kg']);
  });

  // A bay that begins ahead of the front axle, x = −1 m: 10 kg take 2.5 kg off the rear axle, which is no limit there.
  // 1000 kg on the plate, 500 / 1.25 = 400 kg in front.
  test('ahead of the front axle only the front axle and the plate count', async () => {
    const found = await rows(
      plan('', { load_bay: '{behind_front_axle: -1 m, length: 4 m, width: 2 m, height: 2 m}' }),
    );
    expect(found[0]).toEqual(['front of the load bay', '+13 kg', '-2.5 kg', '400 kg']);
  });
});

test('it is information: no verdict, and silence where something is missing', async () => {
  const report = await reportOf(plan());
  expect(report.findings.filter(({ rule }) => rule === 'balance.overhang')).toEqual([]);
  for (const key of ['wheelbase', 'load_bay', 'axle_limits', 'max_mass', 'unladen'])
    expect(await noteOf(plan('', { [key]: undefined }), 'balance.overhang')).toBeUndefined();
});
