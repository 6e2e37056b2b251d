import { describe, expect, test } from 'vitest';
import { mass, share } from '../../src/engine/measure.ts';
import { closestText } from '../../src/report/closest-text.ts';
import { findingOf } from './fixtures.ts';

const text = (of: Partial<Parameters<typeof findingOf>[0]>, utilisation: number): string =>
  closestText({ ...findingOf({ verdict: 'pass', subject: 'the van', ...of }), utilisation }, 'metric');

describe('the finding closest to its limit', () => {
  test('of a greatest value: the part of it that is used', () => {
    const limit = { measure: mass(2240), sense: 'at most' } as const;
    const said = text({ measured: mass(2155), limit, margin: mass(85) }, 2155 / 2240);
    expect(said).toBe('closest to its limit: the van, 96 % of 2,240 kg, 85 kg left (mass.total)');
  });

  test('of a greatest share: no share of a share', () => {
    const limit = { measure: share(0.8), sense: 'at most' } as const;
    const said = text({ measured: share(0.995), limit, margin: share(-0.195) }, 0.995 / 0.8);
    expect(said).toBe('furthest past its limit: the van, 100 %, at most 80 %, 20 % over (mass.total)');
  });

  test('of a least value: both', () => {
    const limit = { measure: share(0.4), sense: 'at least' } as const;
    const said = text({ measured: share(0.43), limit, margin: share(0.03) }, 0.4 / 0.43);
    expect(said).toBe('closest to its limit: the van, 43 %, at least 40 %, 3.0 % to spare (mass.total)');
  });
});
