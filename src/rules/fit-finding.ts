import type { Citation } from '../catalogue/citation.ts';
import { lengthLimit } from '../catalogue/fit-limits.ts';
import type { Finding } from '../engine/finding.ts';
import { count, length, type Measure } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import type { RuleText } from '../engine/rule.ts';

/** Bodies are compared as shapes, not as one number with a limit; this is what all such checks rest on. */
export const shapesMethod: readonly Citation[] = [
  {
    title:
      'Every thing as an upright body: its outline on the plan, from its bottom to its top; outlines are cut exactly, to a micrometre',
    provenance: 'computed',
  },
  ...lengthLimit('overlap-tolerance').citations,
];

type Said = Pick<Finding, 'subject' | 'path' | 'verdict' | 'reason'> & {
  readonly remedy?: Phrase | undefined;
  readonly missing?: readonly string[];
  readonly measured?: Measure;
};

/** A finding about shapes: it has a verdict of its own, because no single number meets a limit. */
export const fitFinding = (rule: RuleText, { remedy, ...said }: Said): Finding => ({
  rule: rule.id,
  topic: rule.topic,
  title: rule.title,
  ...said,
  ...(remedy && { remedy }),
  sources: rule.sources,
  cautions: rule.cautions,
});

/** "1 thing", "12 things". */
export const things = (howMany: number): Phrase =>
  say`${count(howMany)} ${howMany === 1 ? 'thing' : 'things'}`;

/** "40 mm long, 300 mm wide and 600 mm high" */
export const piece = (size: {
  readonly lengthM: number;
  readonly widthM: number;
  readonly heightM: number;
}): Phrase => say`${length(size.lengthM)} long, ${length(size.widthM)} wide and ${length(size.heightM)} high`;

/** "a", "a and b", "a, b and c" */
export const listed = (parts: readonly Phrase[]): Phrase =>
  parts.reduce<Phrase>((text, part, index) => {
    if (index === 0) return part;
    return index === parts.length - 1 ? say`${text} and ${part}` : say`${text}, ${part}`;
  }, []);
