import type { ShellOpening } from '../../build/layout.ts';
import { escapeOpening, escapeOpeningLeast, opensAsWideAs } from '../../catalogue/fit-limits.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { escapeCaution } from '../cautions.ts';
import { upToMillimetre } from '../clearing.ts';
import { fitFinding } from '../fit-finding.ts';
import { told } from '../told.ts';
import { missingKeys, openingKeys } from '../ways.ts';

const text: RuleText = {
  id: 'movement.escape-opening',
  topic: 'movement',
  title: 'size of the ways out',
  why: 'A window is a way out only if shoulders and hips come through it, in the dark and in a hurry.',
  formula: 'shorter side ≥ s, longer side ≥ l, with both clear of the frame, in m',
  sources: escapeOpeningLeast.citations,
  cautions: [escapeCaution, ...(escapeOpeningLeast.caution ? [escapeOpeningLeast.caution] : [])],
  fix: 'Fit a larger window or hatch, or mark another opening as a way out.',
  lifeSafety: true,
  place: ['van', 'openings'],
};

const escapes: Need<readonly ShellOpening[]> = ({ layout }) =>
  layout
    ? missingKeys(
        layout.openings.filter((opening) => opening.escape),
        ...openingKeys(layout, 'escape'),
      )
    : missing('van.load_bay');

export default defineRule({
  ...text,
  needs: { escapes },
  check: ({ facts }) => ({ findings: facts.escapes.map(findingFor) }),
  work: ({ facts }, { subject }) => {
    const opening = facts.escapes.find(({ name }) => name === subject);
    return opening && stepsFor(opening);
  },
});

/** Both sides must be long enough; the shorter one is what is told. */
function stepsFor({ path, sidesM: [longerM, shorterM] }: ShellOpening): readonly Step[] {
  const { shorterSideM, longerSideM } = escapeOpeningLeast;
  const paths = ['length', 'width', 'height'].map((side) => [...path, side]);
  const sides = say`of ${told(longerM)} and ${told(shorterM)}`;
  return [
    {
      what: 'The longer of its clear sides',
      sum: say`the greater ${sides}; at least ${told(longerSideM)} is asked for`,
      result: length(longerM),
      paths,
    },
    {
      what: 'The shorter of its clear sides',
      sum: say`the lesser ${sides}; at least ${told(shorterSideM)} is asked for`,
      result: length(shorterM),
      paths,
    },
  ];
}

function findingFor({ name, path, sidesM: [longerM, shorterM] }: ShellOpening): Finding {
  const { shorterSideM, longerSideM } = escapeOpeningLeast;
  const isEnough = opensAsWideAs(escapeOpeningLeast, longerM, shorterM);
  const isStrict = opensAsWideAs(escapeOpening, longerM, shorterM);
  const size = say`${name} is ${length(shorterM)} × ${length(longerM)} clear`;
  const asked = say`${length(shorterSideM)} × ${length(upToMillimetre(longerSideM))}`;
  const said = {
    subject: name,
    path,
    measured: { kind: 'length', value: shorterM },
  } as const;
  if (!isEnough) {
    // Of a narrow slit the short side is what lacks, of a small square the long one too.
    const width = Math.max(shorterM, shorterSideM);
    const height = upToMillimetre(Math.max(longerM, longerSideM));
    return fitFinding(text, {
      ...said,
      verdict: 'warn',
      reason: say`${size}; as a way out it should be at least ${asked}, either way up.`,
      remedy: say`Fit one that opens to ${length(width)} × ${length(height)} or more, or mark another opening as a way out.`,
    });
  }
  const remark = isStrict
    ? ''
    : say` The strictest guide asks for ${length(escapeOpening.shorterSideM)} × ${length(escapeOpening.longerSideM)}.`;
  const finding = fitFinding(text, {
    ...said,
    verdict: 'pass',
    reason: say`${size}; the guides for leisure vehicles ask for at least ${asked}, either way up.${remark}`,
  });
  return isStrict ? finding : { ...finding, sources: [...finding.sources, ...escapeOpening.citations] };
}
