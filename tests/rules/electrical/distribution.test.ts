import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.distribution';
const things =
  'fixtures: {fridge: {mass: 1 kg, solid: false}, pump: {mass: 1 kg, solid: false}, panel: {mass: 1 kg, solid: false}}';

/** A fuse box behind a busbar, and what hangs on them. */
const text = (distribution: string, circuits: string, rest = '') =>
  plan(`${things}
electrical:
  voltage: 12 V
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah}
  distribution: {${distribution}}
  circuits: {${circuits}}
${rest}`);

const box = (keys = 'kind: fuse box, rating: 20 A') => `box: {${keys}}`;
const feed = (fuse = '') => `box feed: {from: battery, to: box${fuse}}`;
const fused = (ratingA: number) => `, fuse: {type: maxi blade, rating: ${ratingA} A}`;
const load = (name: string, amps: string, more = '') =>
  `${name} supply: {from: box, to: ${name}, load: ${amps}${more}}`;

describe('what goes through a point', () => {
  // 8 A + 12 A = 20 A.
  test('exactly its rating is kept', async () => {
    const finding = await findingOf(
      text(box(), [feed(), load('fridge', '8 A'), load('pump', '12 A')].join(', ')),
      id,
    );
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'box', utilisation: 1 });
    expect(measured(finding)).toBe(20);
  });

  test('more fails, with a rating to look for', async () => {
    const finding = await findingOf(
      text(box(), [feed(), load('fridge', '8 A'), load('pump', '13.5 A')].join(', ')),
      id,
    );
    expect(finding).toMatchObject({
      verdict: 'fail',
      path: ['electrical', 'distribution', 'box', 'rating'],
    });
    expect(words(finding.remedy)).toContain('Fit one that carries 22 A or more');
    expect(words(finding.remedy)).toContain('take 1.5 A of load off it');
    expect(words(finding.remedy)).toContain('`electrical.distribution.box.at_once`');
  });

  // 0.5 · (8 A + 0.5 · 40 A) = 14 A.
  test('the shares of circuits and of the point multiply', async () => {
    const finding = await findingOf(
      text(
        box('kind: fuse box, rating: 20 A, at_once: 50 %'),
        [feed(), load('fridge', '8 A'), load('pump', '40 A', ', at_once: 50 %')].join(', '),
      ),
      id,
    );
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(14, 12);
  });

  // The box carries its 20 A whole, though the bar counts half of them: 10 A.
  test('a share of a point counts before it, not behind it', async () => {
    const report = await reportOf(
      text(
        `bar: {kind: busbar, rating: 9 A, at_once: 50 %}, ${box('kind: fuse box, rating: 15 A')}`,
        `bar feed: {from: battery, to: bar}, box feed: {from: bar, to: box}, ${load('pump', '20 A')}`,
      ),
    );
    const found = report.findings.filter(({ rule }) => rule === id);
    expect(Object.fromEntries(found.map((each) => [each.subject, measured(each)]))).toEqual({
      bar: 10,
      box: 20,
    });
    expect(found.map(({ verdict }) => verdict)).toEqual(['fail', 'fail']);
  });

  // Loads 8 A and a charger of 18 A pass each for itself; 26 A would not.
  test('chargers do not add to loads', async () => {
    const charged = (amps: number) =>
      findingOf(
        text(
          box(),
          [feed(), load('fridge', '8 A'), 'sun: {from: box, to: panel}'].join(', '),
          `  solar: {roof: {modules: 1, power: 100 W, open_circuit: 22 V, short_circuit: 6 A, circuit: sun, controller: {kind: MPPT, current_limit: ${amps} A, voltage_limit: 100 V}}}`,
        ),
        id,
      );
    const kept = await charged(18);
    expect(kept.verdict).toBe('pass');
    expect(measured(kept)).toBe(18);
    expect(words(kept.reason)).toContain('Chargers push 18 A through the fuse box; its loads take 8.0 A');
    expect(await charged(21)).toMatchObject({ verdict: 'fail' });
  });

  test('an isolator says what a start asks of it', async () => {
    const finding = await findingOf(
      text(box('kind: isolator, rating: 20 A'), [feed(), load('pump', '10 A', ', surge: 30 A')].join(', ')),
      id,
    );
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toContain(
      'While pump supply starts it is 30 A for some seconds, more than',
    );
  });
});

describe('the fuse before a point', () => {
  test.each([
    { ratingA: 20, verdict: 'pass' },
    { ratingA: 30, verdict: 'warn' },
  ])('of $ratingA A for 20 A: $verdict', async ({ ratingA, verdict }) => {
    const finding = await findingOf(text(box(), `${feed(fused(ratingA))}, ${load('fridge', '8 A')}`), id);
    expect(finding.verdict).toBe(verdict);
    if (verdict === 'warn') {
      expect(measured(finding)).toBe(30);
      expect(words(finding.remedy)).toBe('Fit a 20 A fuse in box feed, or a fuse box rated 30 A or more.');
    }
  });

  // 18 A with the margin of 1.25 ask for 22.5 A: a fuse of 20 A would not carry them.
  test('no smaller fuse is named that does not carry the loads', async () => {
    const finding = await findingOf(text(box(), `${feed(fused(30))}, ${load('fridge', '18 A')}`), id);
    expect(words(finding.remedy)).toContain('would not carry its loads');
  });

  test('counts from further up where the feed has none', async () => {
    const finding = await findingOf(
      text(
        `bar: {kind: busbar, rating: 100 A}, ${box()}`,
        `bar feed: {from: battery, to: bar${fused(60)}}, box feed: {from: bar, to: box}, ${load('fridge', '8 A')}`,
      ),
      id,
      'box',
    );
    expect(finding).toMatchObject({ verdict: 'warn' });
    expect(words(finding.reason)).toContain('The 60 A fuse of bar feed');
  });
});

test('passes are one finding: the closest', async () => {
  const finding = await findingOf(
    text(
      `bar: {kind: busbar, rating: 100 A}, ${box()}`,
      `bar feed: {from: battery, to: bar}, box feed: {from: bar, to: box}, ${load('fridge', '8 A')}`,
    ),
    id,
  );
  expect(finding).toMatchObject({ verdict: 'pass', subject: 'box' });
  expect(words(finding.reason)).toContain('1 more point is no closer');
});

test('what is not known is one finding with the keys', async () => {
  const finding = await findingOf(
    text(
      `bar: {kind: busbar}, spare: {kind: busbar, rating: 50 A}, ${box()}`,
      `bar feed: {from: battery, to: bar}, box feed: {from: bar, to: box}, pump supply: {from: box, to: pump}`,
    ),
    id,
  );
  expect(finding.verdict).toBe('not checked');
  expect(finding.missing).toEqual([
    'electrical.distribution.bar.rating',
    'electrical.circuits.pump supply.load',
    'electrical.circuits.NAME.to',
  ]);
});

test('known loads that are too much fail though others are unknown', async () => {
  const finding = await findingOf(
    text(box(), [feed(), load('fridge', '30 A'), 'pump supply: {from: box, to: pump}'].join(', ')),
    id,
  );
  expect(finding.verdict).toBe('fail');
  expect(words(finding.reason)).toContain('and more whose current is not known');
});

test.each([
  { given: '', missing: ['electrical'] },
  { given: 'electrical: {voltage: 12 V}', missing: ['electrical.distribution'] },
])('not checked without: $missing', async ({ given, missing }) => {
  expect(await findingOf(plan(given), id)).toMatchObject({ verdict: 'not checked', missing });
});
