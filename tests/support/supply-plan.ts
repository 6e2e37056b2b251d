import { plan } from './test-van.ts';

/** A tank whose bottom is on the floor. */
export const freshTank =
  'fresh tank: {contents: fresh, holds: 70 L, size: {length: 500 mm, width: 500 mm, height: 300 mm}, at: {from_front: 3.4 m, from_right: 0 mm, above_floor: 0 mm}}';

/** Pipes so wide that they lose nothing that could be seen. */
export const wide = 'bore: 1 m, length: 1 m';

interface Parts {
  readonly pump?: string;
  readonly outlets?: string;
  readonly pipes?: string;
  /** More keys of the water. */
  readonly more?: string;
  /** More keys of the plan. */
  readonly rest?: string;
  readonly tanks?: string;
}

/** A tank, a pump of 2 bar and 10 L/min, and a sink on the floor that takes 5 L/min at 1 bar: what it wants, exactly. */
export const waterPlan = ({
  pump = '{flow: 10 L/min, cut_out: 2 bar, cut_in: 1.2 bar}',
  outlets = '{sink: {use: tap, flow: 5 L/min, pressure: 1 bar, above_floor: 0 m}}',
  pipes = `{suction: {from: fresh tank, to: pump, ${wide}}, cold: {from: pump, to: sink, ${wide}}}`,
  more = '',
  rest = '',
  tanks = freshTank,
}: Parts = {}): string =>
  plan(
    [
      `tanks: {${tanks}}`,
      'water:',
      '  cold: 10 degC',
      ...(pump === '' ? [] : [`  pump: ${pump}`]),
      ...(outlets === '' ? [] : [`  outlets: ${outlets}`]),
      ...(pipes === '' ? [] : [`  pipes: ${pipes}`]),
      ...(more === '' ? [] : [`  ${more}`]),
      rest,
    ].join('\n'),
  );
