import type { Layout, Rib, ShellOpening } from '../../build/layout.ts';
import { TOUCH_TOLERANCE_M } from '../../calc/space/plane.ts';
import type { Citation } from '../../catalogue/citation.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { count, length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { fitCaution, structureCaution } from '../cautions.ts';
import { isLying } from '../covering.ts';
import { fitFinding, listed } from '../fit-finding.ts';
import { downToMillimetre } from '../whole-millimetres.ts';
import { inBrackets } from '../working/box.ts';

const method: Citation = {
  title:
    'What an opening and a rib share along the van; that ribs are kept whole is common practice, no source',
  provenance: 'common practice',
};

const text: RuleText = {
  id: 'fit.rib',
  topic: 'fit',
  title: 'openings across ribs',
  why: 'Ribs keep the sheet metal stiff and carry the roof; a window cut through one needs a frame that does the same.',
  formula: 'cut = min(end of opening, end of rib) − max(start of opening, start of rib), m, along the van',
  sources: [method],
  cautions: [structureCaution, fitCaution],
  fix: 'Move the opening between two ribs.',
  place: ['van', 'load_bay', 'ribs'],
};

interface Cuttable {
  readonly layout: Layout;
  /** Windows, vents and hatches in surfaces that can have ribs; the doors are the van's own. */
  readonly openings: readonly ShellOpening[];
}

const ribbed: Need<Cuttable> = ({ layout }) => {
  if (!layout) return missing('van.load_bay');
  const openings = layout.openings.filter(
    ({ kind, surface }) => kind !== 'door' && surface !== 'bulkhead' && surface !== 'rear doors',
  );
  const lacking = layout.unplacedOpenings.flatMap(({ name, missing: keys }) =>
    keys.map((key) => `van.openings.${name}.${key}`),
  );
  const keys = [
    ...(layout.ribs.length > 0 ? [] : ['van.load_bay.ribs']),
    ...(openings.length > 0 ? [] : lacking.length > 0 ? lacking : ['van.openings.NAME']),
  ];
  return keys.length > 0 ? missing(...keys) : given({ layout, openings });
};

export default defineRule({
  ...text,
  needs: { ribbed },
  check: ({
    facts: {
      ribbed: { layout, openings },
    },
  }) => ({
    findings: openings.map((opening) => findingOf(opening, layout)),
  }),
  work: (
    {
      facts: {
        ribbed: { layout, openings },
      },
    },
    finding,
  ) => {
    const opening = openings.find(({ name }) => name === finding.subject);
    return opening && stepsOf(opening, ribsOf(opening, layout));
  },
});

const ribsOf = ({ surface }: ShellOpening, { ribs }: Layout): readonly Rib[] =>
  ribs.filter((rib) => rib.surface === surface).sort((a, b) => a.fromM - b.fromM);

/** What an opening and a rib share along the van; below nothing where they lie apart. */
const sharedM = ({ box }: ShellOpening, { fromM, toM }: Rib): number =>
  Math.min(box.mostXM, toM) - Math.max(box.leastXM, fromM);

/** Where the opening is, and what it shares with the rib that it cuts into most or comes nearest to. */
function stepsOf(opening: ShellOpening, ribs: readonly Rib[]): readonly Step[] | undefined {
  const { name, surface, box, path } = opening;
  const worst = ribs.reduce<Rib | undefined>(
    (most, rib) => (most && sharedM(opening, most) >= sharedM(opening, rib) ? most : rib),
    undefined,
  );
  if (!worst) return undefined;
  const byM = sharedM(opening, worst);
  const isCut = byM > TOUCH_TOLERANCE_M;
  const [endM, startM] = [Math.min(box.mostXM, worst.toM), Math.max(box.leastXM, worst.fromM)];
  const apart = isCut ? '' : byM < -TOUCH_TOLERANCE_M ? ', so they lie apart' : ', so they touch at most';
  return [
    {
      what: `Where ${name} ends along the van, counted from the front of the load bay`,
      sum: say`begins at ${inBrackets(box.leastXM)} + ${length(box.mostXM - box.leastXM)} long`,
      result: length(box.mostXM),
      paths: [
        [...path, 'at'],
        [...path, 'length'],
      ],
    },
    {
      what: `Where the rib of the ${surface} ends that it ${isCut ? 'cuts into most' : 'comes nearest to'}${ribs.length > 1 ? `, of ${ribs.length}` : ''}`,
      sum: say`begins at ${inBrackets(worst.fromM)} + ${length(worst.toM - worst.fromM)} wide`,
      result: length(worst.toM),
      paths: [worst.path],
    },
    {
      what: 'What of it is cut: the nearer end less the farther beginning',
      sum: say`${length(endM)} − ${inBrackets(startM)}${isCut ? '' : say` = ${length(byM)}${apart}`}`,
      result: length(isCut ? byM : 0),
    },
  ];
}

interface Cut {
  readonly rib: Rib;
  readonly byM: number;
}

function findingOf(opening: ShellOpening, layout: Layout): Finding {
  const { name, surface } = opening;
  const common = { subject: name, path: [...opening.path, 'at'] };
  const ribs = ribsOf(opening, layout);
  if (ribs.length === 0)
    return fitFinding(text, {
      ...common,
      verdict: 'not checked',
      reason: say`The plan gives no ribs of the ${surface}, which ${name} is in.`,
      remedy: say`Add those of the ${surface} to \`van.load_bay.ribs\`.`,
      missing: ['van.load_bay.ribs'],
    });
  const cuts = ribs.flatMap((rib): Cut[] => {
    const byM = sharedM(opening, rib);
    return byM > TOUCH_TOLERANCE_M ? [{ rib, byM }] : [];
  });
  if (cuts.length === 0)
    return fitFinding(text, {
      ...common,
      verdict: 'pass',
      measured: length(0),
      reason: say`${name} lies clear of the ribs of the ${surface}.`,
    });
  return fitFinding(text, {
    ...common,
    verdict: 'warn',
    measured: length(Math.max(...cuts.map(({ byM }) => byM))),
    reason: say`${name} cuts into ${count(cuts.length)} ${cuts.length === 1 ? 'rib' : 'ribs'} of the ${surface}: ${listed(cuts.map(cutInWords))}.`,
    remedy: remedyOf(opening, ribs, layout),
  });
}

const cutInWords = ({ rib, byM }: Cut): Phrase =>
  say`${length(byM)} of the one ${length(rib.fromM)} from the front, which is ${length(rib.toM - rib.fromM)} wide`;

interface Stretch {
  readonly fromM: number;
  readonly toM: number;
}

function remedyOf(opening: ShellOpening, ribs: readonly Rib[], layout: Layout): Phrase {
  const { box, surface } = opening;
  const needM = box.mostXM - box.leastXM;
  const clear = clearStretches([...ribs, ...beside(opening, layout)], layout.shell.lengthM);
  const starts = clear
    .filter(({ fromM, toM }) => toM - fromM >= needM - TOUCH_TOLERANCE_M)
    .map(({ fromM, toM }) => Math.max(fromM, Math.min(box.leastXM, toM - needM)))
    .sort((a, b) => Math.abs(a - box.leastXM) - Math.abs(b - box.leastXM) || a - b);
  const [nearest] = starts;
  const guide =
    "Otherwise the base vehicle maker's guide says whether a rib may be cut, and how it is framed.";
  if (nearest !== undefined) {
    const way = nearest < box.leastXM ? 'forward' : 'rearward';
    return say`Move it ${length(Math.abs(nearest - box.leastXM))} ${way}, to begin ${length(nearest)} from the front: there it lies between the ribs. ${guide}`;
  }
  const widestM = Math.max(0, ...clear.map(({ fromM, toM }) => toM - fromM));
  return say`Nowhere between the ribs of the ${surface} is there room for its ${length(needM)}; the widest clear stretch is ${length(downToMillimetre(widestM))}: choose one no longer. ${guide}`;
}

/** The other openings that this one cannot be moved along its surface past, as stretches of it. */
function beside(opening: ShellOpening, { openings }: Layout): Stretch[] {
  const { surface, box } = opening;
  return openings
    .filter((other) => other !== opening && other.surface === surface)
    .filter((other) =>
      isLying(surface)
        ? meets(box.leastYM, box.mostYM, other.box.leastYM, other.box.mostYM)
        : meets(box.bottomM, box.topM, other.box.bottomM, other.box.topM),
    )
    .map((other) => ({ fromM: other.box.leastXM, toM: other.box.mostXM }));
}

const meets = (from: number, to: number, otherFrom: number, otherTo: number): boolean =>
  Math.min(to, otherTo) - Math.max(from, otherFrom) > TOUCH_TOLERANCE_M;

function clearStretches(taken: readonly Stretch[], lengthM: number): Stretch[] {
  const clear: Stretch[] = [];
  let atM = 0;
  for (const { fromM, toM } of [...taken].sort((a, b) => a.fromM - b.fromM)) {
    if (fromM > atM) clear.push({ fromM: atM, toM: Math.min(fromM, lengthM) });
    atM = Math.max(atM, toM);
  }
  if (atM < lengthM) clear.push({ fromM: atM, toM: lengthM });
  return clear;
}
