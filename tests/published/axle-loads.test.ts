// Axle loads and the position of the centre of gravity, against worked examples of textbooks and body builder manuals.
import { describe, expect, test } from 'vitest';
import { axleLoads, centreBehindFrontAxle, rearShare } from '../../src/calc/axle-loads.ts';
import { wheelLoads } from '../../src/calc/wheel-loads.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

const gravity = 9.8; // m/s², as the school and university problems take it

describe('a mass at a known place', () => {
  const bodyBuilderManual: Citation = {
    title: 'Medium-duty truck body builder manual, Appendix B Weight Distribution, Figure B-5',
    provenance: 'read',
    caution: 'the printed caption gives another centre of gravity, which belongs to a different figure',
  };
  const [bodyLengthIn, frontAxleToBodyIn, wheelbaseIn, loadLb] = [168, 72, 214, 14500];
  const load = { massKg: loadLb, behindFrontAxleM: bodyLengthIn / 2 + frontAxleToBodyIn };

  test('an evenly loaded van body loads the rear axle', () => {
    const published: Published = { value: 10570, within: 0.5, because: 'printed to 1 lb' };
    expectPublished(axleLoads([load], wheelbaseIn).rearKg, published, bodyBuilderManual);
  });
  test('an evenly loaded van body loads the front axle', () => {
    const published: Published = { value: 3929.9, within: 0.05, because: 'printed to 0.1 lb' };
    expectPublished(axleLoads([load], wheelbaseIn).frontKg, published, bodyBuilderManual);
  });
});

describe('the misprinted point load (negative reference)', () => {
  // Medium-duty truck body builder manual, Appendix B, Figure B-2 (read): 100 lb, 133 in behind the front axle, wheelbase
  // 214 in. Printed: rear 62.14, front 38.86, which add up to 101. Its own formula gives 62.1495 and 37.8505.
  const { frontKg, rearKg } = axleLoads([{ massKg: 100, behindFrontAxleM: 133 }], 214);

  test('the front axle differs from the misprint by the pound that was added', () => {
    expect(Math.abs(frontKg - 38.86)).toBeGreaterThan(1);
  });
  test('the front axle equals what the source’s own formula gives', () => {
    expect(frontKg).toBeCloseTo(100 - (133 / 214) * 100, 12);
  });
  test('the rear axle equals the printed figure, which is cut off after two decimals', () => {
    expect(Math.floor(rearKg * 100) / 100).toBe(62.14);
  });
  test('the axles together carry the load, which the printed pair does not', () => {
    expect(frontKg + rearKg).toBeCloseTo(100, 12);
    expect(62.14 + 38.86).not.toBeCloseTo(100, 1);
  });
});

describe('the load on each wheel of a car', () => {
  const school: Citation = {
    title: 'NCERT Physics class XI, exercise "A car weighs 1800 kg", worked solution',
    provenance: 'read',
  };
  const exercise: Citation = {
    title: 'textbook exercise with worked answer: 1490 kg car, wheelbase 3.1 m',
    provenance: 'read',
  };
  const solved961: Citation = {
    title: 'static equilibrium of an automobile, 961 kg, worked answer',
    readAt:
      'https://documen.tv/question/an-automobile-with-a-mass-of-961-000-kg-has-3-27-m-between-the-front-and-rear-ales-its-center-of-23210487-43/',
    provenance: 'read',
  };
  const universityCar: Citation = {
    title: 'Halliday, Resnick, Walker, Fundamentals of Physics, chapter 12, the 1360 kg automobile',
    provenance: 'memory',
    caution: 'problem statement read in a forum, the printed answers 2.77 kN and 3.89 kN are from memory',
  };
  const rounded = (value: number, within: number, because: string): Published => ({ value, within, because });
  const exact = 'the division comes out even';
  const viaFactor = 'the source rounds a factor to 2.818 on the way, so allow 1 N';
  const threeDigits = 'printed to three significant digits';

  test.each([
    {
      name: '1800 kg on 1.8 m',
      massKg: 1800,
      wheelbaseM: 1.8,
      behindM: 1.05,
      g: gravity,
      front: rounded(3675, 1e-6, exact),
      rear: rounded(5145, 1e-6, exact),
      source: school,
    },
    {
      name: '1490 kg on 3.1 m',
      massKg: 1490,
      wheelbaseM: 3.1,
      behindM: 1.1,
      g: gravity,
      front: rounded(4711, 1, viaFactor),
      rear: rounded(2591, 1, viaFactor),
      source: exercise,
    },
    {
      name: '961 kg on 3.27 m',
      massKg: 961,
      wheelbaseM: 3.27,
      behindM: 0.615,
      g: 9.81,
      front: rounded(3830, 5, threeDigits),
      rear: rounded(887, 0.5, threeDigits),
      source: solved961,
    },
    {
      name: '1360 kg on 3.05 m (inputs read, printed answer from memory)',
      massKg: 1360,
      wheelbaseM: 3.05,
      behindM: 1.78,
      g: gravity,
      front: rounded(2770, 5, threeDigits),
      rear: rounded(3890, 5, threeDigits),
      source: universityCar,
    },
  ])('$name', ({ massKg, wheelbaseM, behindM, g, front, rear, source }) => {
    const axles = axleLoads([{ massKg, behindFrontAxleM: behindM }], wheelbaseM);
    const frontWheels = wheelLoads(axles.frontKg, 0, 1.5);
    const rearWheels = wheelLoads(axles.rearKg, 0, 1.5);
    expectPublished(frontWheels.leftKg * g, front, source);
    expectPublished(frontWheels.rightKg * g, front, source);
    expectPublished(rearWheels.leftKg * g, rear, source);
    expectPublished(rearWheels.rightKg * g, rear, source);
  });

  test('1160 kg on 2.54 m (inputs read, answer recomputed)', () => {
    // Cutnell, Johnson, Physics, chapter 9, problem read in a question forum without its printed answer.
    const axles = axleLoads([{ massKg: 1160, behindFrontAxleM: 1.02 }], 2.54);
    expect((axles.frontKg * gravity) / 2).toBeCloseTo(3401.45, 2);
    expect((axles.rearKg * gravity) / 2).toBeCloseTo(2282.55, 2);
  });
});

describe('a delivery truck loaded close to its rear axle', () => {
  const source: Citation = {
    title: 'Cutnell, Johnson, Physics, 10th edition, chapter 9, problem 14, page 244, worked answer',
    readAt:
      'https://www.gradesaver.com/textbooks/science/physics/physics-10th-edition/chapter-9-rotational-dynamics-problems-page-244/14',
    provenance: 'read',
  };
  const axles = axleLoads([{ massKg: 7460, behindFrontAxleM: 2.3 }], 2.3 + 0.63);
  test.each([
    { axle: 'front', newtons: axles.frontKg * gravity, value: 1.57e4 },
    { axle: 'rear', newtons: axles.rearKg * gravity, value: 5.74e4 },
  ])('the $axle axle', ({ newtons, value }) => {
    expectPublished(newtons, { value, within: 50, because: 'printed to three significant digits' }, source);
  });
});

describe('a box on a three-wheeled truck', () => {
  // One wheel C on one axle, wheels A and B on the other: lengthwise moments, then crosswise ones.
  const source: Citation = {
    title: 'statics exercise, three-wheel truck with a 103 kg box, worked answer',
    readAt:
      'https://homeworksource.com/p/1024868/the-three-wheel-truck-is-used-to-carry-the-103kg-box-as-show',
    provenance: 'read',
  };
  const because = 'printed to 0.01 N; the last two are carried on from rounded figures';
  const boxN = 103 * gravity;
  const axles = axleLoads([{ massKg: boxN, behindFrontAxleM: 0.625 }], 0.625 + 0.54);
  const [leftOfBoxM, rightOfBoxM] = [0.515, 0.195];
  const trackM = leftOfBoxM + rightOfBoxM;
  const pair = wheelLoads(axles.frontKg, (leftOfBoxM - rightOfBoxM) / 2, trackM);

  test.each([
    { wheel: 'C', newtons: axles.rearKg, value: 541.52, within: 0.005 },
    { wheel: 'A and B', newtons: axles.frontKg, value: 467.88, within: 0.005 },
    { wheel: 'A', newtons: pair.leftKg, value: 128.5, within: 0.01 },
    { wheel: 'B', newtons: pair.rightKg, value: 339.38, within: 0.02 },
  ])('wheel $wheel', ({ newtons, value, within }) => {
    expectPublished(newtons, { value, within, because }, source);
  });
});

describe('the centre of gravity from two axle readings', () => {
  const roundedTo = (value: number, decimals: number): Published => ({
    value,
    within: 0.5 * 10 ** -decimals,
    because: `printed to ${decimals} decimals`,
  });
  test.each([
    {
      name: '60 % on the front axle of 3.0 m',
      front: 600,
      rear: 400,
      wheelbaseM: 3,
      published: roundedTo(1.2, 1),
      source: {
        title: 'OpenStax University Physics Volume 1, chapter 12, problem 30, answer of a solutions page',
        provenance: 'read',
      } satisfies Citation,
    },
    {
      name: '4500 N and 3500 N on 2.4 m',
      front: 4500,
      rear: 3500,
      wheelbaseM: 2.4,
      published: exactly(1.05),
      source: {
        title: 'school physics exercise with worked answer (Romanian)',
        provenance: 'read',
      } satisfies Citation,
    },
    {
      name: '5800 N and 6500 N on 3.20 m, one axle on the scale at a time',
      front: 5800,
      rear: 6500,
      wheelbaseM: 3.2,
      published: roundedTo(1.69, 2),
      source: {
        title: 'textbook exercise with worked answer: truck over a weigh-station scale',
        provenance: 'read',
        caution: 'the printed equation swaps its symbols although the number is right',
      } satisfies Citation,
    },
  ])('$name', ({ front, rear, wheelbaseM, published, source }) => {
    expectPublished(centreBehindFrontAxle(front, rear, wheelbaseM), published, source);
  });

  test('4500 N and 3500 N on 2.4 m, measured from the rear axle', () => {
    const source: Citation = {
      title: 'school physics exercise with worked answer (Romanian)',
      provenance: 'read',
    };
    expectPublished(2.4 - centreBehindFrontAxle(4500, 3500, 2.4), exactly(1.35), source);
  });

  test('52 % on the front axle of 2.5 m (inputs read, answer recomputed)', () => {
    // OpenStax University Physics Volume 1, section 12.1, Example 12.1, read in a plain-text copy without the equations.
    const behindFrontM = centreBehindFrontAxle(0.52, 0.48, 2.5);
    expect(behindFrontM).toBeCloseTo(1.2, 12);
    expect(2.5 - behindFrontM).toBeCloseTo(1.3, 12);
  });
});

describe('the wheelbase that contradicts itself (negative reference)', () => {
  // A question-and-answer page (read): 57 % on the rear axle, centre of gravity 1.44 m ahead of it, "wheelbase 1.90 m". Its
  // working multiplies the rear share with the rear lever. By moments 0.43 · L = 1.44 m, so L = 3.349 m.
  test('on the printed wheelbase the centre would be elsewhere', () => {
    expect(1.9 - centreBehindFrontAxle(0.43, 0.57, 1.9)).toBeLessThan(0.9);
  });
  test('on the wheelbase by moments it is where the problem says', () => {
    expect(3.3488 - centreBehindFrontAxle(0.43, 0.57, 3.3488)).toBeCloseTo(1.44, 4);
  });
});

describe('the sign convention of the mounting directives', () => {
  // Body and equipment mounting directives for a light truck, issue 20.10.2020, clause 9.1 (formula and signs read, the
  // numbers are ours): distances count behind the front axle's centre as +, ahead of it as −.
  const wheelbaseM = 3.6;

  test('behind the rear axle the rear axle takes more than the mass and the front axle is relieved', () => {
    const { frontKg, rearKg } = axleLoads([{ massKg: 60, behindFrontAxleM: 4.5 }], wheelbaseM);
    expect(rearShare(4.5, wheelbaseM)).toBeCloseTo(1.25, 12);
    expect(rearKg).toBeCloseTo(75, 12);
    expect(frontKg).toBeCloseTo(-15, 12);
  });
  test('ahead of the front axle the rear axle is relieved', () => {
    const { frontKg, rearKg } = axleLoads([{ massKg: 60, behindFrontAxleM: -0.9 }], wheelbaseM);
    expect(rearShare(-0.9, wheelbaseM)).toBeCloseTo(-0.25, 12);
    expect(rearKg).toBeCloseTo(-15, 12);
    expect(frontKg).toBeCloseTo(75, 12);
  });
});
