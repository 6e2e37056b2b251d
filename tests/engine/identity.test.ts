import { expect, test } from 'vitest';
import { identitiesOf } from '../../src/engine/identity.ts';

const finding = (rule: string, subject: string) => ({ rule, subject });

test('a finding is known by its rule and its subject', () => {
  expect(
    identitiesOf([finding('fit.shell', 'bed'), finding('fit.shell', 'hob'), finding('mass.total', 'bed')]),
  ).toEqual(['fit.shell bed', 'fit.shell hob', 'mass.total bed']);
});

test('and by a counter where a rule says more than one thing of a subject', () => {
  const twice = finding('fit.shell', 'bed');
  expect(identitiesOf([twice, finding('fit.shell', 'hob'), twice, twice])).toEqual([
    'fit.shell bed',
    'fit.shell hob',
    'fit.shell bed #2',
    'fit.shell bed #3',
  ]);
});
