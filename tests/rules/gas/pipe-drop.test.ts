import { expect, test } from 'vitest';
import { gasDropPa } from '../../../src/calc/gas/pipe-flow.ts';
import { gasProperties } from '../../../src/catalogue/gas/properties.ts';
import { combustionCaution, gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, reportOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.pipe-drop';
const pipe = (keys: string, name = 'to hob', ends = 'from: regulator, to: hob') =>
  `  pipes: {${name}: {${ends}, ${keys}}}`;
const tube = 'material: copper, size: 8 mm, wall: 1 mm, length: 3 m';

// A hob of 3.6 kW net takes 3600 / 46.1e6 kg/s; of vapour 0.5406 m³ each: 4.222e-5 m³/s.
const flowM3S = (3600 / 46.1e6) * 0.5406;

test('a short tube for one hob passes, with what the greatest of the formulas says', async () => {
  const found = await findingOf(gasPlan({ gas: pipe(tube) }), rule);
  expect(found).toMatchObject({ verdict: 'pass', subject: 'hob' });
  const { dropPa } = gasDropPa({ boreM: 0.006, lengthM: 3 }, flowM3S, gasProperties.propane);
  expect(found.measured?.value).toBeCloseTo(dropPa, 6);
  // At this bore the old formula alone would say less.
  const { polePa } = gasDropPa({ boreM: 0.006, lengthM: 3 }, flowM3S, gasProperties.propane);
  expect(dropPa).toBeGreaterThan(polePa);
});

test('a long thin tube loses too much; in the US that breaks a code', async () => {
  const long = pipe('material: copper, size: 6 mm, wall: 1 mm, length: 12 m');
  const uk = await findingOf(gasPlan({ gas: long }), rule);
  expect(uk).toMatchObject({ verdict: 'warn', limit: { measure: { value: 250 }, sense: 'at most' } });
  const us = await findingOf(gasPlan({ gas: long, codes: 'us' }), rule);
  expect(us.verdict).toBe('fail');
  expect(us.limit?.measure.value).toBeCloseTo(124.54, 1);
});

test('doing what the remedy says is enough', async () => {
  const found = await findingOf(
    gasPlan({ gas: pipe('material: copper, size: 6 mm, wall: 1 mm, length: 12 m') }),
    rule,
  );
  const [outside, wall] = (found.remedy ?? []).filter((part) => typeof part !== 'string');
  if (!outside || typeof outside === 'string' || !wall || typeof wall === 'string')
    throw new Error('no size');
  const wider = pipe(
    `material: copper, size: ${outside.value * 1000} mm, wall: ${wall.value * 1000} mm, length: 12 m`,
  );
  expect(await findingOf(gasPlan({ gas: wider }), rule)).toMatchObject({ verdict: 'pass' });
});

test('exactly at the limit passes', async () => {
  // The drop of a given bore and flow goes with the length.
  const { dropPa } = gasDropPa({ boreM: 0.006, lengthM: 1 }, flowM3S, gasProperties.propane);
  const lengthM = 250 / dropPa;
  const at = (metres: number) => findingOf(gasPlan({ gas: pipe(`bore: 6 mm, length: ${metres} m`) }), rule);
  expect((await at(lengthM)).verdict).toBe('pass');
  expect((await at(lengthM * 1.001)).verdict).toBe('warn');
});

test('all appliances on share the trunk, and bends and tees lengthen it', async () => {
  const two = (bends: string) =>
    gasPlan({
      appliances: '    fire: {use: cooking, input: 3.6 kW, heating_value: net}',
      gas: `  manifold: {}
  pipes:
    trunk: {from: regulator, to: manifold, ${tube}${bends}}
    to hob: {from: manifold, to: hob, ${tube}}
    to fire: {from: manifold, to: fire, ${tube}}`,
    });
  const found = (await reportOf(two(''))).findings.filter((each) => each.rule === rule);
  const one = gasDropPa({ boreM: 0.006, lengthM: 3 }, flowM3S, gasProperties.propane).dropPa;
  const both = gasDropPa({ boreM: 0.006, lengthM: 3 }, 2 * flowM3S, gasProperties.propane).dropPa;
  expect(found[0]?.measured?.value).toBeCloseTo(one + both, 6);
  const bent = await findingOf(two(', bends: 4, tees: 1'), rule, 'hob');
  expect(bent.measured?.value).toBeGreaterThan(one + both);
});

test('corrugated tube is judged by its own table', async () => {
  // DN12 carries 1.5 m³/h over 3 m at 2.5 mbar; the hob takes 0.152 m³/h: 250 · (0.152 / 1.5)² = 2.57 Pa.
  const found = await findingOf(
    gasPlan({ gas: pipe('material: corrugated stainless steel, size: 12 mm, length: 3 m') }),
    rule,
  );
  expect(found.measured?.value).toBeCloseTo(250 * ((flowM3S * 3600) / 1.5) ** 2, 6);
});

test('corrugated tube longer than its table loses as much more as it is longer', async () => {
  const at = async (metres: number) =>
    (
      await findingOf(
        gasPlan({ gas: pipe(`material: corrugated stainless steel, size: 12 mm, length: ${metres} m`) }),
        rule,
      )
    ).measured?.value ?? 0;
  // DN12 carries 0.34 m³/h over 30 m.
  expect(await at(30)).toBeCloseTo(250 * ((flowM3S * 3600) / 0.34) ** 2, 6);
  expect(await at(29.9)).toBeLessThanOrEqual(await at(30));
  const bent = await findingOf(
    gasPlan({
      gas: pipe('material: corrugated stainless steel, size: 12 mm, length: 10 m, bends: 100'),
    }),
    rule,
  );
  expect(bent.measured?.value).toBeGreaterThan(await at(30));
});

test('one thin pipe that starves two appliances is one finding', async () => {
  const thin = 'material: copper, size: 6 mm, wall: 1 mm, length: 12 m';
  const text = gasPlan({
    appliances: '    fire: {use: cooking, input: 3.6 kW, heating_value: net}',
    gas: `  manifold: {}
  pipes:
    trunk: {from: regulator, to: manifold, ${thin}}
    to hob: {from: manifold, to: hob, ${tube}}
    to fire: {from: manifold, to: fire, ${tube}, bends: 2}`,
  });
  const found = (await reportOf(text)).findings.filter((each) => each.rule === rule);
  expect(found).toMatchObject([{ verdict: 'warn', subject: 'fire' }]);
  expect(JSON.stringify(found[0]?.reason)).toContain('hob');
});

test('what is missing is asked for in one finding', async () => {
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.pipes'],
  });
  expect(await findingOf(gasPlan({ gas: pipe('material: copper') }), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.pipes.to hob.length', 'gas.pipes.to hob.size', 'gas.pipes.to hob.wall'],
  });
  const nowhere = pipe(tube, 'to valves', 'from: regulator, to: manifold').concat('\n  manifold: {}');
  expect(await findingOf(gasPlan({ gas: nowhere }), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.pipes.NAME: {from: regulator, to: hob}'],
  });
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    gasPlan({ gas: pipe(tube) }),
    gasPlan({ gas: pipe('material: copper, size: 6 mm, wall: 1 mm, length: 12 m') }),
    gasPlan({ gas: pipe('material: copper, size: 6 mm, wall: 1 mm, length: 12 m'), codes: 'us' }),
    gasPlan({}),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution, combustionCaution], texts)).toEqual([
    'fail',
    'not checked',
    'pass',
    'warn',
  ]);
});

test('what one pipe of a way loses is told as a share, so that the sentence has one unit of pressure', async () => {
  const text = gasPlan({
    gas: `  manifold: {}
  pipes:
    trunk: {from: regulator, to: manifold, ${tube}}
    to hob: {from: manifold, to: hob, ${tube}}`,
  });
  const { reason } = await findingOf(text, rule, 'hob');
  const numbers = reason.filter((part) => typeof part !== 'string');
  expect(numbers.map(({ kind }) => kind)).toEqual(['pressure', 'share', 'mass flow']);
  // Two pipes alike lose half each.
  expect(numbers[1]?.value).toBeCloseTo(0.5, 6);
});
