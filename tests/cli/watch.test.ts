import { spawn, spawnSync } from 'node:child_process';
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  realpathSync,
  renameSync,
  rmSync,
  symlinkSync,
  truncateSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { overlapWaived, waivedPlan } from '../support/waived-plan.ts';
import { startWatch, startWatchAt, type Watched, watchedProcess } from '../support/watched.ts';

// The built tool is driven as its user does: with files that are written, replaced and taken away.
const launcher = fileURLToPath(new URL('../../bin/storystick.cjs', import.meta.url));

let folder: string;
let plan: string;
let running: Watched[];

beforeEach(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'storystick-watch-')));
  plan = join(folder, 'plan.yaml');
  running = [];
});
afterEach(async () => {
  for (const { child, end } of running) if (child.exitCode === null) await end('SIGKILL');
  rmSync(folder, { recursive: true });
});

/** A van of 2000 kg, and the mass that its plate allows. */
const van = (maxKg: number, name = 'Curlew'): string =>
  `storystick: 1\nname: ${name}\nvan: {max_mass: ${maxKg} kg, unladen: {front: 1000 kg, rear: 1000 kg}}\n`;

const counts = /^\d+ fail, .*\n.*\n/m;
const nothingFails = /^0 fail, .*\n.*\n/m;
const somethingFails = /^[1-9]\d* fail, .*\n.*\n/m;

function start(...args: readonly string[]): Watched {
  const watched = startWatch(folder, ...args);
  running.push(watched);
  return watched;
}

async function started(text = van(3500)): Promise<Watched> {
  writeFileSync(plan, text);
  const watched = start('plan.yaml');
  await watched.until(counts);
  return watched;
}

describe('a save', () => {
  test('is checked, and what it changed is told', async () => {
    const watched = await started();
    writeFileSync(plan, van(1500));
    const worse = await watched.until(somethingFails);
    expect(worse).toMatch(/^== \d\d:\d\d:\d\d {2}plan\.yaml$/m);
    expect(worse).toMatch(
      /^fail, was pass {2}mass\.total {2}whole van: At its heaviest the van is \d+ kg over/m,
    );
    expect(worse).toMatch(/^Caution$/m);
    writeFileSync(plan, van(3500));
    expect(await watched.until(nothingFails)).toMatch(/^pass, was fail {2}mass\.total/m);
  });

  test('that moves a value tells how far, and what that does to the margin', async () => {
    const watched = await started();
    writeFileSync(plan, van(3500).replace('rear: 1000 kg', 'rear: 1040 kg'));
    const printed = await watched.until(counts);
    expect(printed).toContain('No verdict changed');
    expect(printed).toMatch(/^mass\.total {2}whole van: .* kg, was .* kg; margin .* kg, 40 kg less$/m);
  });

  test('that changes no verdict says so', async () => {
    const watched = await started();
    appendFileSync(plan, '# the joiner rang\n');
    expect(await watched.until(counts)).toMatch(/No verdict changed since \d\d:\d\d:\d\d\./);
  });

  test('by an editor that puts a new file in the place of the old one is seen, again and again', async () => {
    const watched = await started();
    for (const maxKg of [1500, 3500, 1400, 3600]) {
      writeFileSync(join(folder, '.plan.yaml.swp'), van(maxKg));
      renameSync(join(folder, '.plan.yaml.swp'), plan);
      await watched.until(maxKg < 2000 ? somethingFails : nothingFails);
    }
  });

  test('by an editor that moves the old file away first is seen', async () => {
    const watched = await started();
    renameSync(plan, `${plan}~`);
    writeFileSync(plan, van(1500));
    expect(await watched.until(somethingFails)).not.toContain('is not there');
  });

  test('that leaves the text as it was is passed over', async () => {
    const watched = await started();
    writeFileSync(plan, van(3500));
    writeFileSync(plan, van(1500, 'Whimbrel'));
    const printed = await watched.until(somethingFails);
    expect(printed.match(/^== /gm)).toHaveLength(1);
  });
});

describe('a file that cannot be read for a while', () => {
  test('half written: the place is shown, and the last good result is what the next is compared with', async () => {
    const watched = await started();
    writeFileSync(plan, 'storystick: 1\nvan: {max_mass: 3500 kg,\n');
    const broken = await watched.until(/The last good result.*\n/);
    expect(broken).toMatch(/^plan\.yaml:\d+:\d+: /m);
    expect(broken).toMatch(/The last good result, of \d\d:\d\d:\d\d: 0 fail/);
    writeFileSync(plan, van(1500));
    expect(await watched.until(somethingFails)).toMatch(/^fail, was pass {2}mass\.total/m);
  });

  test('half written, on a narrow terminal: nothing is wider than it', async () => {
    writeFileSync(plan, van(3500).replace('}', '').padEnd(400, ' # and so on'));
    const watched = startWatchAt(60, folder, 'plan.yaml');
    running.push(watched);
    const printed = await watched.until(/could\s+not\s+be\s+understood/);
    expect(printed.split('\n').filter((line) => line.length > 60)).toEqual([]);
    expect(printed).toMatch(/^ {2}expected: /m);
  });

  test('truncated', async () => {
    const watched = await started();
    truncateSync(plan, 0);
    await watched.until(/the file is empty/);
    writeFileSync(plan, van(1500));
    await watched.until(somethingFails);
  });

  test('deleted, and made again', async () => {
    const watched = await started();
    for (const maxKg of [1500, 3500]) {
      unlinkSync(plan);
      await watched.until(/plan\.yaml is not there at the moment/);
      writeFileSync(plan, van(maxKg));
      await watched.until(maxKg < 2000 ? somethingFails : nothingFails);
    }
  });

  test('with its whole folder', async () => {
    mkdirSync(join(folder, 'stick'));
    writeFileSync(join(folder, 'stick/plan.yaml'), van(3500));
    const watched = start('stick/plan.yaml');
    await watched.until(counts);
    rmSync(join(folder, 'stick'), { recursive: true });
    await watched.until(/is not there at the moment/);
    mkdirSync(join(folder, 'stick'));
    writeFileSync(join(folder, 'stick/plan.yaml'), van(1500));
    await watched.until(somethingFails);
    writeFileSync(join(folder, 'stick/plan.yaml'), van(3500));
    await watched.until(nothingFails);
  });

  test('since it has become a folder', async () => {
    const watched = await started();
    unlinkSync(plan);
    mkdirSync(plan);
    await watched.until(/this is a directory/);
    rmSync(plan, { recursive: true });
    writeFileSync(plan, van(1500));
    await watched.until(somethingFails);
  });

  test('of any kind, from the first moment on', async () => {
    writeFileSync(plan, '');
    const watched = start('plan.yaml');
    await watched.until(/the file is empty/);
    writeFileSync(plan, van(1500));
    await watched.until(somethingFails);
  });
});

describe('a link', () => {
  test('in the place of the file is followed, and so is the file behind it, saved or replaced', async () => {
    const watched = await started();
    const behind = join(folder, 'elsewhere.yaml');
    writeFileSync(behind, van(1500));
    unlinkSync(plan);
    symlinkSync(behind, plan);
    await watched.until(somethingFails);
    writeFileSync(behind, van(3500));
    await watched.until(nothingFails);
    writeFileSync(join(folder, 'new.yaml'), van(1400));
    renameSync(join(folder, 'new.yaml'), behind);
    await watched.until(somethingFails);
  });

  test('that leads to another file at once is seen', async () => {
    writeFileSync(join(folder, 'light.yaml'), van(3500));
    writeFileSync(join(folder, 'heavy.yaml'), van(1500));
    symlinkSync('light.yaml', plan);
    const watched = start('plan.yaml');
    await watched.until(nothingFails);
    symlinkSync('heavy.yaml', join(folder, 'link'));
    renameSync(join(folder, 'link'), plan);
    await watched.until(somethingFails);
  });
});

describe('waivers', () => {
  // A bed and a stove in one place, and nothing else that fails.
  const withWaiver = (until: string, more = ''): string =>
    waivedPlan(overlapWaived.replace('2026-12-01', until)).replace(/^ {2}stone: .*\n/m, '') + more;
  const flat = (text: string): string => text.replace(/\s+/g, ' ');

  test('that end, are renewed and are left over are told of at the save', async () => {
    const watched = await started(withWaiver('2999-12-31'));
    writeFileSync(plan, withWaiver('2001-01-31'));
    const ended = await watched.until(somethingFails);
    expect(ended).toMatch(/^fail, was fail, waived {2}fit\.overlap {2}bed and stove: /m);
    expect(flat(ended)).toContain(
      'warn, was pass plan.waivers fit.overlap, bed and stove: This waiver ended on 2001-01-31; 1 failure counts again.',
    );
    appendFileSync(plan, '\n# thinking\n');
    const still = await watched.until(somethingFails);
    expect(still).toContain('No verdict changed');
    expect(still).toMatch(
      /^Waivers that do not hold\nwarn {2}plan\.waivers {2}fit\.overlap, bed and stove: /m,
    );
    writeFileSync(plan, withWaiver('2999-12-31'));
    const renewed = await watched.until(nothingFails);
    expect(renewed).toMatch(/^fail, waived, was fail {2}fit\.overlap /m);
    expect(renewed).toMatch(/^0 fail, \d+ warn, 1 waived, /m);
    writeFileSync(plan, withWaiver('2999-12-31').replace('from_front: 0.5 m', 'from_front: 2 m'));
    expect(flat(await watched.until(nothingFails))).toMatch(
      /warn, was pass plan\.waivers fit\.overlap, bed and stove: There is nothing to waive any more/,
    );
  });

  test('from the first run on, and what is waived stays in sight', async () => {
    writeFileSync(plan, withWaiver('2001-01-31'));
    const watched = start('plan.yaml');
    const first = await watched.until(somethingFails);
    expect(first).toMatch(/^fail {2}fit\.overlap {2}bed and stove: /m);
    expect(first).toMatch(/^Waivers that do not hold$/m);
    writeFileSync(plan, withWaiver('2999-12-31'));
    await watched.until(nothingFails);
    appendFileSync(plan, '\n# thinking\n');
    expect(await watched.until(nothingFails)).toMatch(/^fail, waived {2}fit\.overlap {2}bed and stove: /m);
  });

  test('of what is about life and limb acknowledge it, and it fails as before', async () => {
    const watched = await started(van(1500));
    appendFileSync(
      plan,
      'waivers: [{check: mass.total, reason: the plate is raised in spring, by: Robin, until: 2999-12-31}]\n',
    );
    const printed = await watched.until(/^1 fail \(1 acknowledged\), .*\n/m);
    expect(printed).toMatch(/^fail, acknowledged {2}mass\.total {2}whole van: /m);
    expect(flat(printed)).toContain('a check about life and limb is never waived');
  });
});

describe('the end', () => {
  test.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    'by %s has exit code 0, and nothing more is said',
    async (signal) => {
      const watched = await started();
      expect(await watched.end(signal)).toBe(0);
      expect(watched.unread()).toBe('');
    },
  );

  test('comes when nobody reads any more', async () => {
    const watched = await started();
    watched.child.stdout?.destroy();
    const ended = new Promise((resolve) => watched.child.on('exit', resolve));
    writeFileSync(plan, van(1500));
    expect(await ended).toBe(0);
  });

  test.each([
    ['a name that nothing bears', 'nowhere.yaml', /^nowhere\.yaml: there is no such file\n/],
    ['a folder', '.', /^\.: this is a directory\n/],
  ])('comes at once with code 2 for %s', (_, name, words) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [launcher, 'watch', name], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(words);
  });
});

// util-linux and BSD both have a program `script` that runs a command on a terminal, but start it differently.
const terminal = existsSync('/usr/bin/script') && process.platform === 'linux';

describe.runIf(terminal)('on a terminal', () => {
  const onTerminal = (...args: readonly string[]): Watched => {
    // A shell that stays in between hears Ctrl-C too, and some then report their own end in place of the watch's.
    const command = ['exec', process.execPath, launcher, 'watch', 'plan.yaml', ...args].join(' ');
    const watched = watchedProcess(
      spawn('/usr/bin/script', ['-qefc', command, '/dev/null'], {
        cwd: folder,
        env: { ...process.env, TERM: 'xterm', NODE_OPTIONS: '', NO_COLOR: '', FORCE_COLOR: '' },
        stdio: ['pipe', 'pipe', 'pipe'],
      }),
    );
    running.push(watched);
    return watched;
  };
  const cleared = '\u001B[2J\u001B[H';
  const someCounts = /\d+ fail, [^\n]*\n[^\n]*\n/;

  test('the screen is cleared before each run, and Ctrl-C leaves colours and cursor as they were', async () => {
    writeFileSync(plan, van(3500));
    const watched = onTerminal();
    const first = await watched.until(someCounts);
    expect(first.startsWith(cleared)).toBe(true);
    writeFileSync(plan, van(1500));
    expect(await watched.until(someCounts)).toContain(cleared);
    watched.child.stdin?.write('\u0003');
    expect(await watched.ended).toBe(0);
    expect(watched.unread()).toContain('\u001B[0m\u001B[?25h');
  });

  test('--no-clear leaves what was there', async () => {
    writeFileSync(plan, van(3500));
    const watched = onTerminal('--no-clear');
    expect(await watched.until(someCounts)).not.toContain(cleared);
    watched.child.stdin?.write('\u0003');
    expect(await watched.ended).toBe(0);
  });
});
