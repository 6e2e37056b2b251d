import type { Build } from '../build/build.ts';
import { nearest } from '../plan/nearest.ts';
import { quote } from '../plan/quote.ts';
import type { OverrideTrouble } from './overrides.ts';
import type { Rule } from './rule.ts';

/** Waivers of checks that there are not, or that cannot be waived. */
export function waiverTroubles(
  rules: readonly Rule[],
  { waivers }: Pick<Build, 'waivers'>,
): OverrideTrouble[] {
  const waivable = rules.filter((rule) => !rule.informationOnly && !rule.review).map(({ id }) => id);
  return waivers.flatMap(({ check, path }): OverrideTrouble[] => {
    if (waivable.includes(check)) return [];
    const at = { path: [...path, 'check'], onKey: false };
    const rule = rules.find(({ id }) => id === check);
    if (rule)
      return [
        {
          ...at,
          message: `${check} cannot be waived`,
          expected: rule.review
            ? 'the waivers themselves mended or taken out'
            : 'no waiver: it gives no verdict, only a table',
        },
      ];
    const meant = nearest(check, waivable);
    return [
      {
        ...at,
        message: `${quote(check)} is not a check that can be waived`,
        expected: 'the id of a check as the report prints it; `storystick explain` lists them all',
        ...(meant === undefined ? {} : { meant }),
      },
    ];
  });
}
