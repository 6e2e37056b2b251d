import { expect, test } from 'vitest';
import { saturationPressurePa } from '../../../src/calc/air/saturation.ts';
import { airy, twoAsleep, twoVents } from '../../support/air-plan.ts';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.humidity';
const inWinter = (text: string) => findingOf(text, id, 'humidity');
const onMildNight = (text: string) => findingOf(text, id, 'mild night');
const winter = (more = '') => `${twoAsleep}living: {winter_low: -10 degC, cooking: 30 min${more}}\n`;

test('dry winter air through large vents carries the water out', async () => {
  const finding = await inWinter(airy(twoVents(100, 100), winter()));
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toContain(
    "A winter's day sets 2.7 kg of water free (people 2.4 kg, cooking 0.3 kg)",
  );
});

test('asleep: the balance by hand', async () => {
  const finding = await inWinter(airy(twoVents(40, 40), winter(', wet_clothes: 0 L')));
  // Asleep at 15 °C and −10 °C outside, equal vents 2 m apart: h = 2 / (1 + 288.15 / 263.15) = 0.95467 m,
  // Q = 0.65 · 0.004 · √(2 · 9.81 · 0.95467 · 25 / 288.15) = 0.0033144 m³/s; 100 g/h.
  const flow = 0.65 * 0.004 * Math.sqrt((2 * 9.81 * (2 / (1 + 288.15 / 263.15)) * 25) / 288.15);
  const inside = 0.9 * saturationPressurePa(-10) + ((0.1 / 3600) * 461.524 * 288.15) / flow;
  expect(measured(finding)).toBeCloseTo(inside / saturationPressurePa(15), 6);
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain('While people are asleep');
  expect(words(finding.remedy)).toMatch(
    /It takes 1\d m³\/h for 60 %: run a fan, .* more low and .* more high/,
  );
});

test('exactly at 60 % is kept, a little less air is not', async () => {
  const flow =
    ((0.1 / 3600) * 461.524 * 288.15) / (0.6 * saturationPressurePa(15) - 0.9 * saturationPressurePa(-10));
  const cm2 = (flow / 0.65 / Math.sqrt((2 * 9.81 * (2 / (1 + 288.15 / 263.15)) * 25) / 288.15)) * 1e4;
  expect((await inWinter(airy(twoVents(cm2, cm2), winter()))).verdict).toBe('pass');
  expect((await inWinter(airy(twoVents(cm2 * 0.99, cm2 * 0.99), winter()))).verdict).toBe('warn');
});

test('wet clothes and showers make the day the damper part', async () => {
  const finding = await inWinter(
    airy(twoVents(60, 60), winter(', wet_clothes: 3 L, showers_per_person_day: 2')),
  );
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain('showers 2.4 kg, wet clothes 3.0 kg');
  expect(words(finding.reason)).toContain('Over the day');
});

test('more than the air can hold settles', async () => {
  const finding = await inWinter(airy(twoVents(5, 5), winter()));
  expect(measured(finding)).toBe(1);
  expect(words(finding.reason)).toContain('the air cannot hold it');
});

test('damp outside air wants warmth, not more of it', async () => {
  const mild = `${twoAsleep}living: {winter_low: 14 degC, cooking: 30 min}\n`;
  const finding = await inWinter(airy(twoVents(300, 300), mild));
  expect(finding.verdict).toBe('warn');
  expect(words(finding.remedy)).toMatch(/warm the room by more than 5\.\d K/);
});

test('a mild wet night is damper than the coldest: the balance by hand', async () => {
  const text = airy(twoVents(400, 400), winter());
  expect((await inWinter(text)).verdict).toBe('pass');
  const finding = await onMildNight(text);
  // 15 °C inside, 10 °C outside: Q = 0.65 · 0.04 · √(2 · 9.81 · h · 5 / 288.15), h = 2 / (1 + 288.15 / 283.15).
  const flow = 0.65 * 0.04 * Math.sqrt((2 * 9.81 * (2 / (1 + 288.15 / 283.15)) * 5) / 288.15);
  const inside = 0.9 * saturationPressurePa(10) + ((0.1 / 3600) * 461.524 * 288.15) / flow;
  expect(measured(finding)).toBeCloseTo(inside / saturationPressurePa(15), 6);
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toContain(
    'Of the still nights from -10 °C outside up, with the heating on, the mildest is the dampest: at 10 °C',
  );
});

test('on a mild night exactly 80 % is kept, a little less air is not', async () => {
  const flow =
    ((0.1 / 3600) * 461.524 * 288.15) / (0.8 * saturationPressurePa(15) - 0.9 * saturationPressurePa(10));
  const cm2 = (flow / 0.65 / Math.sqrt((2 * 9.81 * (2 / (1 + 288.15 / 283.15)) * 5) / 288.15)) * 1e4;
  expect((await onMildNight(airy(twoVents(cm2, cm2), winter()))).verdict).toBe('pass');
  const finding = await onMildNight(airy(twoVents(cm2 * 0.9, cm2 * 0.9), winter()));
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain('Mould grows where it stays above 80 %');
  expect(words(finding.remedy)).toMatch(
    /It takes \d+ m³\/h for 80 %: sleep with a window ajar or a quiet fan on, or fit fixed vents of/,
  );
});

test('the area that the remedy of a mild night asks for is enough', async () => {
  const { remedy = [] } = await onMildNight(airy(twoVents(60, 90), winter()));
  const [low = 0, high = 0] = remedy.flatMap((part) =>
    typeof part !== 'string' && part.kind === 'free area' ? [part.value * 1e4] : [],
  );
  const mended = await onMildNight(airy(twoVents(60 + low + 0.1, 90 + high + 0.1), winter()));
  expect(mended.verdict).toBe('pass');
});

test('it names the month of the year of the place', async () => {
  const there = winter(', place: {latitude: 55.9, longitude: -3.2}');
  const finding = await onMildNight(airy(twoVents(60, 60), there));
  expect(words(finding.reason)).toMatch(/at 10 °C \(about as in October: .+ away\) and 15 °C inside/);
  expect(finding.sources.some(({ title }) => title.includes('5 K colder outside'))).toBe(true);
});

test('it cites what its figures come from, and nothing else that a still night is reckoned with', async () => {
  const there = winter(', place: {latitude: 55.9, longitude: -3.2}');
  const { sources } = await onMildNight(airy(twoVents(60, 60), there));
  const chosen = sources.filter(({ provenance }) => provenance === 'own choice').map(({ title }) => title);
  expect(chosen).toEqual([
    expect.stringContaining('5 K colder outside'),
    expect.stringContaining('limit against mould'),
    expect.stringContaining('Outside air at 90 %'),
    expect.stringContaining('`closes: false`'),
  ]);
});

test('where the coldest night is as mild, it is the only one', async () => {
  const mild = `${twoAsleep}living: {winter_low: 10 degC, cooking: 30 min}\n`;
  const { findings } = await reportOf(airy(twoVents(60, 60), mild));
  expect(findings.filter(({ rule }) => rule === id).map(({ subject }) => subject)).toEqual(['humidity']);
});

test('not checked without the coldest weather, vents and sleepers', async () => {
  expect((await findingOf(airy(twoVents(50, 50)), id)).missing).toEqual(['living.winter_low']);
  expect((await findingOf(plan(), id)).missing).toEqual([
    'people.sleepers',
    'air.vents',
    'living.winter_low',
  ]);
});
