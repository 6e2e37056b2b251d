import { describe, expect, test } from 'vitest';
import { only, reportOf, words } from '../../support/check.ts';
import { axleWaived, overlapWaived, waivedPlan } from '../../support/waived-plan.ts';

const checked = (waivers: string, today = '2026-06-01') => reportOf(waivedPlan(waivers), today);
const said = async (waivers: string, today?: string) => only(await checked(waivers, today), 'plan.waivers');

test('a plan without waivers is told nothing of them', async () => {
  const { findings } = await checked('');
  expect(findings.filter(({ rule }) => rule === 'plan.waivers')).toEqual([]);
});

describe('a waiver that holds', () => {
  test('passes, covers the finding, and leaves its verdict', async () => {
    const report = await checked(overlapWaived);
    const waiver = only(report, 'plan.waivers');
    expect(waiver).toMatchObject({
      verdict: 'pass',
      subject: 'fit.overlap, bed and stove',
      path: ['waivers', 0],
    });
    expect(words(waiver.reason)).toBe(
      'Covers 1 failure until 2026-12-01, by Robin: the stove goes out in spring.',
    );
    expect(waiver.cautions.join()).toContain('as broken as before');
    expect(only(report, 'fit.overlap')).toMatchObject({
      verdict: 'fail',
      waived: { as: 'waived', by: 'Robin', until: '2026-12-01', reason: 'the stove goes out in spring' },
    });
  });

  test('without a subject covers all that the check finds', async () => {
    const report = await checked(
      '  - {check: fit.overlap, reason: it all goes out, by: Robin, until: 2026-12-01}',
    );
    expect(only(report, 'fit.overlap').waived?.as).toBe('waived');
  });

  test('neither capitals nor doubled spaces make another subject', async () => {
    const report = await checked(overlapWaived.replace('bed and stove', '"Bed  and STOVE"'));
    expect(only(report, 'fit.overlap').waived?.as).toBe('waived');
  });

  test('of a check about life and limb is acknowledged only', async () => {
    const report = await checked(axleWaived);
    expect(only(report, 'balance.rear-axle')).toMatchObject({
      verdict: 'fail',
      waived: { as: 'acknowledged' },
    });
    expect(words(only(report, 'plan.waivers').reason)).toContain('it is acknowledged, and fails as before.');
  });
});

describe('its last day', () => {
  test('counts', async () => {
    const report = await checked(overlapWaived, '2026-12-01');
    expect(only(report, 'plan.waivers').verdict).toBe('pass');
    expect(only(report, 'fit.overlap').waived).toBeDefined();
  });

  test('past it nothing is covered', async () => {
    const report = await checked(overlapWaived, '2026-12-02');
    const waiver = only(report, 'plan.waivers');
    expect(waiver.verdict).toBe('warn');
    expect(words(waiver.reason)).toBe('This waiver ended on 2026-12-01; 1 failure counts again.');
    expect(words(waiver.remedy)).toContain('ask Robin for a new `until`');
    expect(only(report, 'fit.overlap').waived).toBeUndefined();
  });

  test.each([
    { today: '2026-10-31', noted: false },
    { today: '2026-11-01', noted: true },
    { today: '2026-12-01', noted: true },
    { today: '2026-12-02', noted: false },
  ])('within 30 days there is a note: $today', async ({ today, noted }) => {
    const { notes } = await checked(overlapWaived, today);
    const note = notes.find(({ rule }) => rule === 'plan.waivers');
    expect(note !== undefined).toBe(noted);
    if (today === '2026-11-01') expect(note?.rows[0]?.map(words).at(-1)).toBe('30');
  });
});

describe('a waiver without a reason', () => {
  test.each(['', 'reason: ok, '])('covers nothing: "%s"', async (reason) => {
    const report = await checked(`  - {check: fit.overlap, ${reason}by: Robin, until: 2026-12-01}`);
    expect(only(report, 'plan.waivers').verdict).toBe('warn');
    expect(words(only(report, 'plan.waivers').reason)).toContain('gives no reason');
    expect(only(report, 'fit.overlap').waived).toBeUndefined();
  });
});

describe('a waiver that covers nothing warns', () => {
  const waiver = (check: string, subject = '') =>
    `  - {check: ${check}, ${subject === '' ? '' : `subject: ${subject}, `}reason: long since mended, by: Robin, until: 2026-12-01}`;

  test.each([
    { of: 'a check that passes', waivers: waiver('mass.total'), says: 'finds no fault here' },
    { of: 'a check that is not made', waivers: waiver('movement.passage'), says: 'could not be checked' },
    {
      of: 'another subject',
      waivers: waiver('fit.overlap', 'bed and stone'),
      says: 'it does with bed and stove',
    },
    {
      of: 'a subject that passes',
      waivers: waiver('balance.rear-axle', 'front axle'),
      says: 'it does with rear axle',
    },
  ])('$of', async ({ waivers, says }) => {
    const finding = await said(waivers);
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toContain(says);
  });

  test('a subject that is nearly right is told', async () => {
    expect(words((await said(waiver('fit.overlap', 'bed and stoves'))).remedy)).toContain(
      '`subject: bed and stove`',
    );
  });

  test('that has ended too is said once', async () => {
    const finding = await said(waiver('mass.total'), '2027-01-01');
    expect(words(finding.reason)).toContain('nothing to waive any more');
  });

  test('since another one covers it: the one with the subject goes first', async () => {
    const report = await checked(`${waiver('fit.overlap')}\n${overlapWaived}`);
    expect(only(report, 'fit.overlap').waived?.reason).toBe('the stove goes out in spring');
    const general = report.findings.find(({ path }) => path[1] === 0 && path[0] === 'waivers');
    expect(general?.verdict).toBe('warn');
    expect(general && words(general.reason)).toBe('Another waiver covers all of it already.');
  });

  test.each([
    ['has ended', overlapWaived.replace('2026-12-01', '2026-03-01')],
    ['has no reason', overlapWaived.replace(/reason: .*?, /, '')],
  ])('since it %s and another one holds, wherever it stands', async (_, old) => {
    for (const waivers of [`${old}\n${overlapWaived}`, `${overlapWaived}\n${old}`]) {
      const report = await checked(waivers);
      expect(only(report, 'fit.overlap').waived?.until).toBe('2026-12-01');
      const said = report.findings.filter(({ rule }) => rule === 'plan.waivers');
      expect(said.map(({ verdict }) => verdict).toSorted()).toEqual(['pass', 'warn']);
      expect(said.map(({ reason }) => words(reason))).toContain('Another waiver covers all of it already.');
    }
  });

  test('with doubled spaces in its subject, since another one covers it', async () => {
    const report = await checked(
      `${overlapWaived}\n${overlapWaived.replace('bed and stove', '"Bed  and STOVE"')}`,
    );
    expect(
      report.findings.filter(({ rule }) => rule === 'plan.waivers').map(({ reason }) => words(reason)),
    ).toContain('Another waiver covers all of it already.');
  });
});
