import type { EnvelopePart, Heat } from '../../build/heat.ts';
import {
  clearWall,
  directionOf,
  type Films,
  nameOfPath,
  type PassedLayer,
  passedLayers,
} from '../../build/u-values.ts';
import { type Plane, planesOf } from '../../build/wall-planes.ts';
import { bridgedResistance, pathsThrough } from '../../calc/heat/bridged.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { heatResistance, share, transmittance } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';

/*
 * How well a wall holds heat back: layer by layer, and where something stands beside the insulation (battens, air) as the
 * mean of two sums, one with heat that goes straight and one with heat that spreads.
 */

const row = (name: string): Pick<Part, 'name' | 'path' | 'origin'> => ({
  name,
  path: [],
  origin: 'computed',
});

/** One after the other. */
export const passedStep = (
  what: string,
  layers: readonly PassedLayer[],
  paths: NonNullable<Step['paths']>,
): Step => ({
  what,
  result: heatResistance(layers.reduce((sum, { m2KPerW }) => sum + m2KPerW, 0)),
  parts: {
    columns: ['holds back'],
    rows: layers.map(({ name, m2KPerW }) => ({
      ...row(name),
      values: [],
      adds: heatResistance(m2KPerW),
    })),
  },
  paths,
});

/** The U-value of a wall away from ribs, by the combined method. */
export function clearWallSteps(part: EnvelopePart, heat: Heat, films: Films): readonly Step[] {
  const { planes } = planesOf(part.layers, directionOf(part.surface));
  const wall = clearWall(planes, heat, films);
  const { upperM2KPerW, lowerM2KPerW, uValue } = bridgedResistance(wall);
  const paths = [part.path, ['heat', 'skin']];
  const layers = passedLayers(planes, wall);
  const isEven = planes.every((plane) => plane.paths.length === 1);
  if (isEven)
    return [
      passedStep('What holds heat back, one after the other: R = Σ d/λ and the films', layers, paths),
      {
        what: 'So much goes through: U = 1 / R',
        sum: say`1 / ${heatResistance(lowerM2KPerW)}`,
        result: transmittance(uValue),
      },
    ];
  const ways = pathsThrough(wall).map(
    ({ share: part_, m2KPerW, taken }): Part => ({
      ...row(wayName(planes, taken)),
      values: [share(part_), heatResistance(m2KPerW)],
      adds: transmittance(part_ / m2KPerW),
    }),
  );
  return [
    {
      what: 'If heat goes straight through, each way by itself (R = Σ d/λ and the films): Σ f / R = 1 / R′',
      result: transmittance(1 / upperM2KPerW),
      parts: { columns: ['f', 'R', 'f / R'], rows: ways },
      paths,
    },
    passedStep('If it spreads freely in every layer (1 / Σ f/R in each): R″', layers, paths),
    {
      what: 'The mean of both, since neither is so: U = 1 / ((R′ + R″) / 2)',
      sum: say`1 / ((1 / ${transmittance(1 / upperM2KPerW)} + ${heatResistance(lowerM2KPerW)}) / 2)`,
      result: transmittance(uValue),
    },
  ];
}

/** The skin is the first band and has one way; planes follow. Only what differs between ways is named. */
function wayName(planes: readonly Plane[], taken: readonly number[]): string {
  const names = planes.flatMap(({ paths }, index) => {
    const path = paths[taken[index + 1] ?? 0];
    return paths.length > 1 && path ? [nameOfPath(path)] : [];
  });
  return names.join(', then ');
}
