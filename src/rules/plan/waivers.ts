import type { Waiver } from '../../build/build.ts';
import type { Finding } from '../../engine/finding.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineReview, type RuleText } from '../../engine/rule.ts';
import { foldedSubject } from '../../engine/waive.ts';
import type { WaiverUse } from '../../engine/waiver.ts';
import { nearest } from '../../plan/nearest.ts';
import { waiverCaution } from '../cautions.ts';

/** So many days before it ends, a waiver is brought to mind: own choice, a month in which to mend things. */
const noticeDays = 30;

const text: RuleText = {
  id: 'plan.waivers',
  topic: 'plan',
  title: 'waivers of the plan',
  why: 'A waiver that nobody looks at again turns a decision for the winter into the way the van stays.',
  formula:
    'day of the check ≤ until; at least one failure or warning of the check, about its subject if it names one',
  sources: [
    {
      title: `A waiver needs a reason, and is brought to mind ${noticeDays} days before it ends`,
      provenance: 'own choice',
    },
  ],
  cautions: [waiverCaution],
  fix: 'Mend what is waived, or write down a new day and why it may stay until then; take out a waiver that covers nothing.',
  place: ['waivers'],
};

export default defineReview({
  ...text,
  review: ({ uses, today }) => {
    const ending = uses.filter(
      ({ state, waiver }) => state === 'covers' && daysFrom(today, waiver.until) <= noticeDays,
    );
    return {
      findings: uses.map((use) => findingOf(use)),
      notes:
        ending.length === 0
          ? []
          : [
              {
                rule: text.id,
                topic: text.topic,
                title: 'waivers that end soon',
                detailOnly: false,
                columns: ['check', 'by', 'until', 'days left'],
                rows: ending.map(({ waiver }) => [
                  say`${nameOf(waiver)}`,
                  say`${waiver.by}`,
                  say`${waiver.until}`,
                  say`${String(daysFrom(today, waiver.until))}`,
                ]),
                text: say`What they cover fails or warns again after that day.`,
                sources: text.sources,
                cautions: text.cautions,
              },
            ],
    };
  },
});

/** Whole days from one day to another; both are of the calendar, so that no hour is lost in spring. */
const daysFrom = (today: string, until: string): number =>
  Math.round((Date.parse(`${until}T00:00:00Z`) - Date.parse(`${today}T00:00:00Z`)) / 86_400_000);

const nameOf = ({ check, subject }: Waiver): string =>
  subject === undefined ? check : `${check}, ${subject}`;

function findingOf(use: WaiverUse): Finding {
  const { waiver, state } = use;
  return {
    rule: text.id,
    topic: text.topic,
    title: text.title,
    verdict: state === 'covers' ? 'pass' : 'warn',
    subject: nameOf(waiver),
    path: waiver.path,
    ...said(use),
    sources: text.sources,
    cautions: text.cautions,
  };
}

function said(use: WaiverUse): { readonly reason: Phrase; readonly remedy?: Phrase } {
  const { waiver, state, findings } = use;
  switch (state) {
    case 'covers': {
      const stays = findings.some(({ waived }) => waived?.as === 'acknowledged')
        ? say` It is about life and limb: it is acknowledged, and fails as before.`
        : say``;
      return {
        reason: say`Covers ${counted(findings)} until ${waiver.until}, by ${waiver.by}: ${waiver.reason ?? ''}.${stays}`,
      };
    }
    case 'has ended':
      return {
        reason: say`This waiver ended on ${waiver.until}; ${counted(findings)} ${findings.length === 1 ? 'counts' : 'count'} again.`,
        remedy: say`Mend what it was for, or ask ${waiver.by} for a new \`until\`.`,
      };
    case 'has no reason':
      return {
        reason: say`This waiver gives no reason, so it covers nothing; without one nobody can tell in a year whether it still holds.`,
        remedy: say`Add \`reason\`: a sentence that still makes sense on ${waiver.until}.`,
      };
    case 'covers nothing':
      return unused(use);
  }
}

const counted = (findings: readonly Finding[]): string => {
  const of = (verdict: Finding['verdict'], one: string, many: string) => {
    const number = findings.filter((finding) => finding.verdict === verdict).length;
    return number === 0 ? [] : [`${number} ${number === 1 ? one : many}`];
  };
  return [...of('fail', 'failure', 'failures'), ...of('warn', 'warning', 'warnings')].join(' and ');
};

/** Why it covers nothing: the check found nothing of the kind, or speaks of another subject. */
function unused({ waiver, ofCheck }: WaiverUse): { readonly reason: Phrase; readonly remedy: Phrase } {
  const { check, subject } = waiver;
  const isBroken = ({ verdict }: Finding) => verdict === 'fail' || verdict === 'warn';
  const broken = ofCheck.filter(isBroken);
  const sameSubject = ofCheck.filter(
    (each) => subject !== undefined && foldedSubject(each.subject) === foldedSubject(subject),
  );
  const takeOut = say`Take the waiver out of the plan.`;
  if (broken.length > 0 && (subject === undefined || sameSubject.some(isBroken)))
    return { reason: say`Another waiver covers all of it already.`, remedy: takeOut };
  const [first] = subject === undefined ? ofCheck : sameSubject;
  if (first?.verdict === 'not checked')
    return {
      reason: say`There is nothing to waive: ${check} could not be checked.`,
      remedy: say`Give the check what it needs, or take the waiver out.`,
    };
  if (subject === undefined || sameSubject.length > 0 || broken.length === 0)
    return {
      reason: say`There is nothing to waive any more: ${check} finds no fault here.`,
      remedy: takeOut,
    };
  const names = broken.map((each) => each.subject);
  const meant = nearest(subject, names) ?? (names.length === 1 ? names[0] : undefined);
  return {
    reason: say`${check} finds no fault with ${subject}; it does with ${names.join(', ')}.`,
    remedy:
      meant === undefined
        ? takeOut
        : say`Write \`subject: ${meant}\` if that is meant; otherwise take the waiver out.`,
  };
}
