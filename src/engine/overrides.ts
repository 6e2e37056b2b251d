import type { Build, Override } from '../build/build.ts';
import { nearest } from '../plan/nearest.ts';
import { dimensions } from '../plan/units.ts';
import type { PlanPath } from './finding.ts';
import type { Rule } from './rule.ts';

/** A limit under `rules` that cannot be taken: of an unknown rule, of one whose limit is fixed, or of a wrong kind. */
export interface OverrideTrouble {
  readonly path: PlanPath;
  readonly onKey: boolean;
  readonly message: string;
  readonly expected?: string;
  readonly meant?: string;
}

export function overrideTroubles(rules: readonly Rule[], build: Build): OverrideTrouble[] {
  return build.overrides.flatMap((override) => troubleOf(override, rules) ?? []);
}

function troubleOf(
  { rule: id, path, limit, reason }: Override,
  rules: readonly Rule[],
): OverrideTrouble | undefined {
  const rule = rules.find((each) => each.id === id);
  const adjustable = rules.filter((each) => each.override).map((each) => each.id);
  if (!rule) {
    const meant = nearest(id, adjustable);
    return {
      path,
      onKey: true,
      message: `\`${id}\` is not a check`,
      expected: `one of ${adjustable.join(', ')}`,
      ...(meant === undefined ? {} : { meant }),
    };
  }
  const { override } = rule;
  if (!override) {
    return {
      path,
      onKey: true,
      message: `the limit of ${id} is not for the plan to set`,
      expected: `the plate, the maker or the law sets it; these can be set: ${adjustable.join(', ')}`,
    };
  }
  if (!override.kinds.some((kind) => kind === limit.kind)) {
    const wanted = override.kinds.map(
      (kind) => `${dimensions[kind].called}, such as \`${dimensions[kind].example}\``,
    );
    return {
      path: [...path, 'limit'],
      onKey: false,
      message: `the limit of ${id} is another kind of quantity`,
      expected: wanted.join(', or '),
    };
  }
  if (reason.trim().length < 5) {
    return {
      path: [...path, 'reason'],
      onKey: false,
      message: "a limit of one's own needs a reason",
      expected: 'a sentence that still makes sense in a year',
    };
  }
  return undefined;
}
