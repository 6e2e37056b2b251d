import { describe, expect, test } from 'vitest';
import { hasPlanName, isPlan } from '../../src/plan/is-plan.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const utf16 = (text: string): Uint8Array => Buffer.from(`\uFEFF${text}`, 'utf16le');

describe('a plan', () => {
  test.each([
    ['begins with the key', 'storystick: 1\nvan: {}\n'],
    ['has comments and directives before it', '%YAML 1.2\n---\n# Curlew\n\nstorystick: 1\n'],
    ['has other keys before it', 'name: Curlew\nvan: {max_mass: 3500 kg}\nstorystick: 1\n'],
    ['has the line ends of Windows', '# Curlew\r\nstorystick: 1\r\n'],
    ['has a byte order mark', '\uFEFFstorystick: 1\n'],
    ['has the key in quotes', '"storystick": 1\n'],
    ['has the key in single quotes', "'storystick' : 1\n"],
    ['is written in braces', '{storystick: 1, van: {}}'],
    ['is broken elsewhere', 'storystick: 1\nvan: {\n'],
    ['has a value of another version, or none', 'storystick:\n'],
  ])('%s', (_, text) => {
    expect(isPlan(bytes(text))).toBe(true);
    expect(isPlan(utf16(text.replace('\uFEFF', '')))).toBe(true);
    expect(isPlan(Buffer.from(utf16(text.replace('\uFEFF', ''))).swap16())).toBe(true);
  });
});

describe('no plan', () => {
  test.each([
    ['has the key further in', 'services:\n  storystick: {image: x}\n'],
    ['names it in a comment', '# storystick: 1\n'],
    ['names it in a value', 'name: storystick: 1\n'],
    ['has a key that begins or ends like it', 'storystick_version: 1\nmystorystick: 1\n'],
    ['opens the key with one quote and closes it with another', '"storystick\': 1\n'],
    ['is empty', ''],
  ])('%s', (_, text) => {
    expect(isPlan(bytes(text))).toBe(false);
  });

  test('is a view of a part of other bytes that hold the key', () => {
    expect(isPlan(bytes('storystick: 1\nvan: 1').subarray(13))).toBe(false);
  });
});

test.each([
  ['plan.yaml', true],
  ['van/plan.YML', true],
  ['plan.yaml.orig', false],
  ['yaml', false],
  ['plan.json', false],
])('%s has the name of a plan: %s', (path, expected) => {
  expect(hasPlanName(path)).toBe(expected);
});
