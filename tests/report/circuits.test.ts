import { stripVTControlCharacters } from 'node:util';
import fc from 'fast-check';
import stringWidth from 'fast-string-width';
import { describe, expect, test } from 'vitest';
import { type Finding, verdicts } from '../../src/engine/finding.ts';
import { current, share, voltage } from '../../src/engine/measure.ts';
import { say } from '../../src/engine/phrase.ts';
import type { Schedule, ScheduleRow } from '../../src/engine/schedule.ts';
import { renderCircuits } from '../../src/report/circuits.ts';
import { visible } from '../../src/report/visible.ts';
import { electricalCaution, mainsCaution } from '../../src/rules/cautions.ts';
import { scheduleOf } from '../../src/rules/schedule.ts';
import { buildOf, words } from '../support/check.ts';
import { electricalVan, wired } from '../support/electrical-plan.ts';
import { findingOf, reportOf } from './fixtures.ts';
import { nastyText } from './nasty-report.ts';

const widths = [60, 80, 99, 100, 120, 160, 200];

async function scheduleFrom(text: string, findings: readonly Finding[] = []): Promise<Schedule> {
  const { electrical, assumptions } = await buildOf(text);
  if (!electrical) throw new Error('the plan has no electrical part');
  return scheduleOf(electrical, reportOf({ findings, assumptions }));
}

const rowOf = ({ circuits }: Schedule, name: string): ScheduleRow => {
  const row = circuits.find((each) => each.name === name);
  if (!row) throw new Error(`no circuit is called ${name}`);
  return row;
};

const print = (schedule: Schedule, width = 160): string => renderCircuits(schedule, { width, colour: false });

const unwrapped = (text: string): string => text.normalize().replace(/\s+/g, '');

/** A finding of an electrical check about this place in the plan. */
const about = (verdict: Finding['verdict'], path: Finding['path'], more: Partial<Finding> = {}): Finding =>
  findingOf({ rule: 'electrical.trial', topic: 'electrical', verdict, path, subject: 'trial', ...more });

const ofCircuit = (name: string, ...keys: string[]) => ['electrical', 'circuits', name, ...keys];

describe('a row', () => {
  test('has what the plan says and what comes of it', async () => {
    // 6 A over 4 m and back of flexible copper of 4 mm² (4.95 mΩ/m at 20 °C; × 1.1965 at 70 °C): 6 × 8 × 0.005923 V.
    const schedule = await scheduleFrom(
      wired(`  voltage: 12 V
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah}
  circuits:
    cold box: {from: battery, to: fridge, load: 6 A, conductor: 4 mm2, strands: flexible, length: 4 m, fuse: {type: blade, rating: 10 A, from_source: 120 mm}}`),
    );
    const row = rowOf(schedule, 'cold box');
    expect(row).toMatchObject({ from: 'battery', to: 'fridge', designCurrent: current(6) });
    expect([row.load, row.conductor, row.length, row.fuse].map(words)).toEqual([
      '6.0 A',
      '4 mm² flexible',
      '4000 mm typed',
      'blade: 10 A, at 120 mm',
    ]);
    expect(row.drop?.voltage.value).toBeCloseTo(0.284, 3);
    expect(row.drop?.share.value).toBeCloseTo(0.284 / 12, 4);
    expect(print(schedule)).toMatch(
      /^cold box +battery → fridge +6\.0 A +6\.0 A +4 mm² flexible +4000 mm typed +blade: 10 A, at 120 mm +0\.28 V \(2\.4 %\) +\d+ A +– +1$/m,
    );
  });

  test('says a different way back, the sum of a feeder and what a charger gives', async () => {
    const schedule = await scheduleFrom(electricalVan);
    expect(words(rowOf(schedule, 'fridge').length)).toBe('3200 mm typed, back 1800 mm');
    expect(words(rowOf(schedule, 'fridge').fuse)).toBe('blade: 10 A, at its source');
    expect(words(rowOf(schedule, 'main feed').load)).toBe('sum');
    expect(words(rowOf(schedule, 'solar feed').load)).toBe('20 A in');
    expect(words(rowOf(schedule, 'pump').conductor)).toBe('12 AWG tinned, stranded');
  });

  test('takes a length from the route that the cable follows, and says so', async () => {
    const text = wired(`  voltage: 12 V
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah, thing: battery}
  circuits: {cold box: {from: battery, to: fridge, load: 6 A, conductor: 4 mm2, run: fridge supply}}
routes:
  points:
    rear: {at: {from_front: 3 m, from_left: 0.1 m, above_floor: 0 m}}
    front: {at: {from_front: 1 m, from_left: 0.1 m, above_floor: 0 m}}
  chases: {left: {between: [rear, front], carries: [cable]}}
  runs: {fridge supply: {carries: cable, from: battery, to: fridge}}`);
    expect(words(rowOf(await scheduleFrom(text), 'cold box').length)).toMatch(/^\d+ mm by route$/);
  });

  test('leaves blank what is not known, and the keys for it are named below', async () => {
    const schedule = await scheduleFrom(electricalVan);
    expect(rowOf(schedule, 'spare')).toEqual({
      name: 'spare',
      from: 'fuse box',
      to: 'sockets',
      verdict: 'not checked',
      notes: [say`has no fuse of its own: the one before it is that of ${'main feed'}, ${current(60)}`],
    });
    const text = print(schedule);
    expect(text).toMatch(/^spare +fuse box → +(?:– +){7}not checked +\d+$/m);
    expect(text).toContain('- electrical.circuits.spare: conductor, length, load\n');
    expect(text).toContain('- electrical.circuits.pump: fuse.from_source\n');
    expect(text).toContain('- electrical.circuits.solar feed: fuse\n');
    expect(text).toContain('- electrical.mains_circuits.sockets: length\n');
    expect(text).toContain('- electrical.charging_while_driving: circuit\n');
  });

  test('a drop that does not know all loads says so in a note', async () => {
    const note = (schedule: Schedule) => rowOf(schedule, 'fridge').notes.map(words).join('; ');
    expect(note(await scheduleFrom(electricalVan))).toContain('not every load');
    const whole = electricalVan.replace('to: sockets}', 'to: sockets, load: 1 A}');
    expect(note(await scheduleFrom(whole))).not.toContain('not every load');
  });

  test('a circuit that cannot bring its load is named by the others too', async () => {
    // 3 kW over 30 m of 1 mm² there and back at 12 V: nothing gets there.
    const schedule = await scheduleFrom(
      wired(`  voltage: 12 V
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah}
  circuits:
    oven: {from: battery, to: panel, load: 3 kW, conductor: 1 mm2, length: 30 m}
    cold box: {from: battery, to: fridge, load: 6 A, conductor: 4 mm2, length: 4 m}`),
    );
    const notes = (name: string) => rowOf(schedule, name).notes.map(words);
    expect(notes('oven')).toContain('its conductors cannot bring what is asked of them at any voltage');
    expect(notes('cold box')).toContain(
      'no drop is known, since oven cannot bring what is asked of it at any voltage',
    );
  });
});

describe('the verdict of a circuit', () => {
  const verdictOf = async (name: string, ...findings: Finding[]) =>
    rowOf(await scheduleFrom(electricalVan, findings), name).verdict;

  test('is the worst of all findings at its keys', async () => {
    const at = ofCircuit('fridge', 'fuse');
    expect(await verdictOf('fridge', about('pass', at), about('warn', at))).toBe('warn');
    expect(await verdictOf('fridge', about('warn', at), about('fail', ofCircuit('fridge')))).toBe('fail');
    expect(await verdictOf('fridge', about('not checked', at), about('pass', at))).toBe('not checked');
  });

  test('or of those that have its name', async () => {
    expect(await verdictOf('fridge', about('fail', ['electrical', 'battery'], { subject: 'fridge' }))).toBe(
      'fail',
    );
  });

  test('does not come from another circuit, nor from another topic', async () => {
    const pass = about('pass', ['electrical', 'battery']);
    expect(await verdictOf('fridge', pass, about('fail', ofCircuit('fridge light')))).toBe('pass');
    expect(await verdictOf('fridge', pass, about('fail', ofCircuit('fridge'), { topic: 'fit' }))).toBe(
      'pass',
    );
  });

  test('is not checked for each circuit whose keys one finding lists', async () => {
    const listed = about('not checked', ofCircuit('pump'), {
      missing: ['electrical.circuits.fridge.surge', 'electrical.circuits.pump.fuse.from_source'],
    });
    expect(await verdictOf('fridge', listed)).toBe('not checked');
    expect(await verdictOf('pump', listed)).toBe('not checked');
    expect(await verdictOf('inverter feed', listed)).toBeUndefined();
  });

  test('without a finding of its own it passes only if nothing is missing and something was checked', async () => {
    const pass = about('pass', ofCircuit('pump'));
    expect(await verdictOf('fridge', pass)).toBe('pass');
    expect(await verdictOf('fridge')).toBeUndefined();
    expect(await verdictOf('spare', pass)).toBe('not checked');
    // It has a load, a conductor and a length, but no fuse.
    expect(await verdictOf('solar feed', pass)).toBe('not checked');
  });
});

describe('a waiver of the plan', () => {
  const waiver = (as: 'waived' | 'acknowledged') => ({
    waived: { as, reason: 'it goes out in spring', by: 'Robin', until: '2026-12-01', path: ['waivers', 0] },
  });
  const at = ofCircuit('fridge', 'fuse');
  const set = waiver('waived');
  const known = waiver('acknowledged');
  const said = async (...findings: Finding[]) => {
    const { verdict, waived } = rowOf(await scheduleFrom(electricalVan, findings), 'fridge');
    return `${verdict} ${waived?.as ?? ''}`.trim();
  };

  test.each<[string, Finding[]]>([
    ['fail waived', [about('fail', at, set), about('pass', at)]],
    ['warn waived', [about('warn', at, set), about('not checked', at)]],
    ['fail acknowledged', [about('fail', at, known), about('warn', at)]],
    ['fail', [about('fail', at, known), about('fail', at)]],
    ['fail', [about('fail', at, set), about('fail', at)]],
    ['warn', [about('fail', at, set), about('warn', at)]],
  ])('%s', async (expected, findings) => {
    expect(await said(...findings)).toBe(expected);
    expect(await said(...findings.toReversed())).toBe(expected);
  });

  test.each(widths)('is said as in a table of findings, %i columns wide', async (width) => {
    const schedule = await scheduleFrom(electricalVan, [
      about('fail', at, set),
      about('fail', ofCircuit('pump'), known),
      about('warn', ['electrical', 'mains_circuits', 'sockets', 'breaker'], known),
    ]);
    const printed = unwrapped(print(schedule, width));
    expect(printed).toContain('fail,waived');
    // A narrow column has them on two lines.
    expect(printed).toMatch(/fail,.*acknowledged/);
    expect(printed).toContain('warn,acknowledged');
    expect(printed).toContain('awaiveroftheplanmakesitstandaside');
    for (const line of print(schedule, width).split('\n'))
      expect(stringWidth(line)).toBeLessThanOrEqual(width);
    expect(print(await scheduleFrom(electricalVan, [about('fail', at)]), width)).not.toContain('waive');
  });
});

test('a circuit without a fuse of its own says which one is before it', async () => {
  const schedule = await scheduleFrom(
    electricalVan.replace(
      'length_back: 1.8 m, fuse: {type: blade, rating: 10 A, from_source: 0 m}',
      'length_back: 1.8 m',
    ),
    [about('pass', ofCircuit('pump'))],
  );
  expect(rowOf(schedule, 'fridge').notes.map(words)).toContain(
    'has no fuse of its own: the one before it is that of main feed, 60 A',
  );
  expect(rowOf(schedule, 'fridge').verdict).toBe('pass');
  expect(print(schedule)).not.toContain('- electrical.circuits.fridge:');
});

describe('the cautions', () => {
  test('stand on top, before any circuit', async () => {
    const text = unwrapped(print(await scheduleFrom(electricalVan), 60));
    for (const caution of [electricalCaution, mainsCaution]) {
      expect(text.indexOf(unwrapped(caution))).toBeGreaterThan(0);
      expect(text.indexOf(unwrapped(caution))).toBeLessThan(text.indexOf('Circuitsofthebattery'));
    }
  });

  test('of mains voltage only where there is some', async () => {
    const cautions = async (more: string) => (await scheduleFrom(wired(`  voltage: 12 V${more}`))).cautions;
    expect(await cautions('')).toEqual([electricalCaution]);
    expect(await cautions('\n  shore: {current: 10 A}')).toContain(mainsCaution);
    expect(await cautions('\n  mains_circuits: {sockets: {from: shore, to: sockets}}')).toContain(
      mainsCaution,
    );
    expect(
      await cautions(
        '\n  circuits: {feed: {from: battery, to: inverter}}\n  inverter: {power: 1 kW, circuit: feed}',
      ),
    ).toContain(mainsCaution);
  });
});

test('the short tables show what else there is, and nothing of what there is not', async () => {
  const titles = (text: string) => text.match(/^.+(?=\n═)/gm);
  expect(titles(print(await scheduleFrom(electricalVan)))).toEqual([
    'Circuits of the battery',
    'Distribution',
    'Mains circuits',
    'Shore supply',
    'Battery',
    'Chargers',
    'Inverter',
  ]);
  const bare = await scheduleFrom(wired('  voltage: 24 V'));
  expect(titles(print(bare))).toBeNull();
  expect(print(bare)).toContain('- electrical: battery, circuits\n');
  expect(print(await scheduleFrom(electricalVan))).toMatch(
    /^sockets +shore or inverter → sockets +1,000 W +2\.5 mm² +– +10 A +30 mA +–$/m,
  );
});

test('notes that several circuits share are written once', async () => {
  const text = print(await scheduleFrom(electricalVan));
  expect(text.match(/insulation for 70 °C/g)).toHaveLength(2);
  expect(text).toMatch(/^\d+ +lies on the roof at up to 50 °C, insulation for 70 °C$/m);
});

test('lengths and temperatures are in the units of the plan', async () => {
  const { electrical } = await buildOf(electricalVan);
  if (!electrical) throw new Error('no electrical part');
  const text = print(scheduleOf(electrical, reportOf({ units: 'imperial' })));
  expect(text).toContain('insulation for 158 °F');
  expect(text).not.toMatch(/\d mm(?!²)/);
});

describe.each(widths)('at %i columns', (width) => {
  test('it fits, and is a table from 100 columns on', async () => {
    const text = print(await scheduleFrom(electricalVan), width);
    for (const line of text.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
    expect(/^circuit.+verdict +notes$/m.test(text)).toBe(width >= 100);
    const names = [
      ...text.matchAll(
        /^(?:(?:fail|warn|pass|not checked|–) {2,})?(main|fridge|pump|spare|inverter|solar)\b/gm,
      ),
    ];
    expect([...new Set(names.map(([, name]) => name))]).toEqual([
      'main',
      'fridge',
      'pump',
      'spare',
      'inverter',
      'solar',
    ]);
  });

  test('says the same without colour, and then without any escape', async () => {
    const schedule = await scheduleFrom(electricalVan, [about('fail', ofCircuit('fridge'))]);
    const plain = print(schedule, width);
    expect(plain.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
    const coloured = renderCircuits(schedule, { width, colour: true });
    expect(coloured).not.toBe(plain);
    expect(stripVTControlCharacters(coloured)).toBe(plain);
  });
});

test('no word is torn in the table: where one would be, each circuit is a block', async () => {
  const name = 'x'.repeat(60);
  const schedule = await scheduleFrom(electricalVan.replaceAll('fridge: {from', `${name}: {from`));
  expect(print(schedule, 120)).toContain(`  ${name}: fuse box → fridge\n`);
  expect(print(schedule, 200)).toMatch(new RegExp(`^${name} `, 'm'));
});

const rows: fc.Arbitrary<ScheduleRow> = fc.record(
  {
    name: nastyText,
    from: nastyText,
    to: nastyText,
    load: nastyText.map((text) => say`${text}`),
    designCurrent: fc.double({ min: 0, max: 1e6, noNaN: true }).map(current),
    conductor: nastyText.map((text) => say`${text}`),
    length: nastyText.map((text) => say`${text}`),
    fuse: nastyText.map((text) => say`${text}`),
    drop: fc
      .double({ min: 0, max: 1e6, noNaN: true })
      .map((value) => ({ voltage: voltage(value), share: share(value / 12) })),
    ampacity: fc.double({ min: 0, max: 1e6, noNaN: true }).map(current),
    verdict: fc.constantFrom(...verdicts),
    notes: fc.array(
      nastyText.map((text) => say`${text}`),
      { maxLength: 3 },
    ),
  },
  { requiredKeys: ['name', 'from', 'to', 'notes'] },
);

const schedules: fc.Arbitrary<Schedule> = fc.record({
  file: nastyText,
  name: nastyText,
  units: fc.constantFrom('metric' as const, 'imperial' as const),
  cautions: fc.array(nastyText, { minLength: 1, maxLength: 3 }),
  circuits: fc.array(rows, { maxLength: 4 }),
  legend: nastyText.map((text) => say`${text}`),
  tables: fc.array(
    fc.record({
      title: fc.constantFrom('Battery', 'Chargers'),
      columns: fc.array(nastyText, { minLength: 1, maxLength: 10 }),
      rows: fc.array(
        fc.array(
          nastyText.map((text) => say`${text}`),
          { maxLength: 10 },
        ),
        { maxLength: 3 },
      ),
    }),
    { maxLength: 2 },
  ),
  missing: fc.array(
    fc.record({
      path: fc.array(nastyText, { maxLength: 3 }),
      keys: fc.array(nastyText, { minLength: 1, maxLength: 3 }),
    }),
    { maxLength: 2 },
  ),
  assumed: fc.integer({ min: 0, max: 20 }),
});

test('whatever the names, no line is too wide, nothing steers the terminal, and every caution is there', () => {
  fc.assert(
    fc.property(schedules, fc.integer({ min: 60, max: 200 }), (schedule, width) => {
      const text = print(schedule, width);
      for (const line of text.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
      expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cs}\p{Bidi_Control}]/u);
      for (const caution of schedule.cautions) expect(unwrapped(text)).toContain(unwrapped(visible(caution)));
      const openings = schedule.circuits.filter(({ verdict }) => verdict === 'fail').length;
      expect(text.match(/(?<![\w])fail(?![\w])/g)?.length ?? 0).toBeGreaterThanOrEqual(openings);
    }),
    { numRuns: 200 },
  );
});
