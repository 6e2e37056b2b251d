import {
  amount,
  listOf,
  named,
  oneOf,
  positive,
  quantity,
  type ReadQuantity,
  section,
  trueOrFalse,
  words,
} from './fields.ts';

/** What pipes for water are made of: the same size holds twice as much in one as in another. */
export const waterPipeMaterials = ['copper', 'PEX', 'rigid plastic', 'hose'] as const;
/** What a loss coefficient is printed for. */
export const fittingKinds = [
  'elbow',
  'long elbow',
  'tee, straight on',
  'tee, to the side',
  'valve',
  'non-return valve',
  'entrance',
] as const;
export const outletUses = ['tap', 'shower', 'toilet', 'outside'] as const;
export const heaterKinds = ['storage', 'instant'] as const;
/** What warms air or water: electricity from the battery, or from a hook-up. */
export const heatSources = ['gas', 'diesel', 'battery', 'mains', 'engine'] as const;
export const valveKinds = ['drain', 'isolating', 'non-return', 'frost'] as const;

/** A wrap about a pipe, or the coat of a tank. */
export const wrapSchema = (read: ReadQuantity) =>
  section(
    { material: words('elastomeric foam'), thickness: positive(read, 'length') },
    '{material: elastomeric foam, thickness: 13 mm}',
  );

/** The water of a plan. The tanks stand under `tanks`; pipes say by name what they join. */
export function waterSchema(read: ReadQuantity) {
  const flow = positive(read, 'flow');
  const pressure = positive(read, 'pressure');
  const temperature = quantity(read, 'temperature');
  const pump = section(
    {
      thing: words('pump').optional(),
      flow: flow.optional(),
      cut_out: pressure.optional(),
      cut_in: pressure.optional(),
      curve: listOf(
        section(
          { flow: amount(read, 'flow'), pressure: amount(read, 'pressure') },
          '{flow: 6 L/min, pressure: 1.4 bar}',
        ),
        '[{flow: 0 L/min, pressure: 2.4 bar}, {flow: 10 L/min, pressure: 0 bar}]',
      ).optional(),
      circuit: words('pump').optional(),
    },
    '{thing: pump, flow: 10 L/min, cut_out: 2.4 bar, cut_in: 1.7 bar}',
  );
  const heater = section(
    {
      thing: words('water heater').optional(),
      kind: oneOf(heaterKinds),
      holds: positive(read, 'volume').optional(),
      power: positive(read, 'power').optional(),
      temperature: temperature.optional(),
      heated_by: oneOf(heatSources).optional(),
      efficiency: amount(read, 'share').optional(),
      circuit: words('water heater').optional(),
      relief_valve: trueOrFalse.optional(),
      mixing_valve: trueOrFalse.optional(),
    },
    '{thing: water heater, kind: storage, holds: 10 L, power: 1.5 kW, temperature: 60 degC, heated_by: gas}',
  );
  const pipe = section(
    {
      from: words('pump'),
      to: words('sink'),
      run: words('cold to sink').optional(),
      length: positive(read, 'length').optional(),
      material: oneOf(waterPipeMaterials).optional(),
      size: positive(read, 'length').optional(),
      bore: positive(read, 'length').optional(),
      fittings: named(amount(read, 'number'), '{elbow: 3}').optional(),
      loss: amount(read, 'number').optional(),
      rise: quantity(read, 'length').optional(),
      insulation: wrapSchema(read).optional(),
      heated: trueOrFalse.optional(),
      drinking_water: trueOrFalse.optional(),
    },
    '{from: pump, to: sink, run: cold to sink, material: PEX, size: 15 mm}',
  );
  const outlet = section(
    {
      thing: words('sink').optional(),
      use: oneOf(outletUses).optional(),
      flow: flow.optional(),
      pressure: pressure.optional(),
      above_floor: quantity(read, 'length').optional(),
      waste_above_floor: quantity(read, 'length').optional(),
      trap: positive(read, 'length').optional(),
      drains: trueOrFalse.optional(),
    },
    '{thing: sink, use: tap, flow: 5 L/min, trap: 50 mm}',
  );
  return section(
    {
      cold: temperature.optional(),
      pump: pump.optional(),
      accumulator: section(
        { holds: positive(read, 'volume'), charged_to: pressure.optional() },
        '{holds: 1 L, charged_to: 1.4 bar}',
      ).optional(),
      heater: heater.optional(),
      pipes: named(pipe, '{cold to sink: {from: pump, to: sink, material: PEX, size: 15 mm}}').optional(),
      tees: listOf(words('tee at the sink'), '[tee at the sink]').optional(),
      outlets: named(outlet, '{sink: {thing: sink, use: tap, flow: 5 L/min}}').optional(),
      valves: named(
        section(
          {
            kind: oneOf(valveKinds),
            pipe: words('cold to sink').optional(),
            thing: words('water heater').optional(),
          },
          '{kind: drain, pipe: cold to sink}',
        ),
        '{low point drain: {kind: drain, pipe: cold to sink}}',
      ).optional(),
    },
    '{pump: {flow: 10 L/min, cut_out: 2.4 bar}, outlets: {sink: {thing: sink, flow: 5 L/min}}}',
  );
}
