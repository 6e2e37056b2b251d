import type { Layout, Sweep } from '../../build/layout.ts';
import { hingedOtherwise, withReach } from '../../build/sweeps.ts';
import type { Citation } from '../../catalogue/citation.ts';
import type { Finding } from '../../engine/finding.ts';
import { count, length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type Need, type RuleText } from '../../engine/rule.ts';
import { shellInWords } from '../beyond-shell.ts';
import { fitCaution } from '../cautions.ts';
import { mendInWords } from '../clearing.ts';
import { fitFinding, listed, shapesMethod } from '../fit-finding.ts';
import { layout, some } from '../needs.ts';
import { outOfRoom } from '../out-of-room.ts';
import { pairOf } from '../pair.ts';
import { type Clash, clashBy, clashesOf, type Hit, hitsOf, isFixed } from '../sweep-hits.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { blockedSteps, clashSteps, freeSteps } from '../working/swing.ts';

/** A narrower leaf or a shorter travel than this is no remedy. */
const LEAST_REACH_M = 0.1;

const method: Citation = {
  title:
    'A door opens by 90° about its edge, a lid stands upright, a drawer comes out whole, a seat turns about its pivot between 0.4 m and 1.2 m above the floor; no source',
  provenance: 'common practice',
};

const text: RuleText = {
  id: 'fit.swing',
  topic: 'fit',
  title: 'doors, drawers, lids and seats',
  why: 'A door that hits the bed does not open, and nobody sees that on a plan of closed cupboards.',
  formula:
    'room swept by a door: quarter disc of radius leaf width, m; drawer: width · travel; lid: arc of radius depth',
  sources: [method, ...shapesMethod],
  cautions: [fitCaution],
  fix: 'Hang the door on its other side, choose a drawer or a lid, or move what it hits.',
  place: ['fixtures'],
};

const opened: Need<readonly Sweep[]> = some('fixtures.NAME.opens', ({ sweeps }) => sweeps);

export default defineRule({
  ...text,
  needs: { layout, sweeps: opened },
  check: ({ facts: { layout: laidOut, sweeps } }) => {
    const { clashes, hits, free } = outcomeOf(sweeps, laidOut);
    return {
      findings: [
        ...hits.flatMap(({ sweep, hits: met }) => (met.length > 0 ? [blocked(sweep, met, laidOut)] : [])),
        ...clashes.map((clash) => onlyOne(clash, laidOut)),
        ...allFree(free),
      ],
    };
  },
  work: ({ facts: { layout: laidOut, sweeps } }, finding) => {
    const { clashes, hits, free } = outcomeOf(sweeps, laidOut);
    if (finding.measured?.kind === 'count') return freeSteps(sweeps, free);
    const clash = clashes.find(({ first, second }) => pairOf(first.name, second.name) === finding.subject);
    if (clash) return clashSteps(clash, laidOut);
    const found = hits.find(({ sweep, hits: met }) => met.length > 0 && sweep.name === finding.subject);
    return found && blockedSteps(found.sweep, decisive(found.hits), laidOut);
  },
});

interface Outcome {
  readonly clashes: readonly Clash[];
  readonly hits: readonly { readonly sweep: Sweep; readonly hits: readonly Hit[] }[];
  readonly free: readonly Sweep[];
}

function outcomeOf(sweeps: readonly Sweep[], laidOut: Layout): Outcome {
  const clashes = clashesOf(sweeps, laidOut);
  const hits = sweeps.map((sweep) => ({ sweep, hits: hitsOf(sweep, laidOut) }));
  const free = hits
    .filter((each) => each.hits.length === 0)
    .map(({ sweep }) => sweep)
    .filter((sweep) => clashes.every(({ first, second }) => first !== sweep && second !== sweep));
  return { clashes, hits, free };
}

/** What decides: fixed things; where there are none, what has only to be opened or taken away first. */
function decisive(hits: readonly Hit[]): readonly Hit[] {
  const fixed = hits.filter(isFixed);
  return fixed.length > 0 ? fixed : hits;
}

function allFree(free: readonly Sweep[]): Finding[] {
  const [first] = free;
  if (!first) return [];
  return [
    fitFinding(text, {
      verdict: 'pass',
      subject: free.length === 1 ? first.name : 'all others',
      path: first.path,
      measured: count(free.length),
      reason: say`Nothing of the plan is in the way of ${listed(free.map(({ name }) => [name]))}.`,
    }),
  ];
}

const verb = {
  door: ['open', 'opens'],
  drawer: ['come out', 'comes out'],
  lid: ['open', 'opens'],
  seat: ['turn', 'turns'],
} as const;

/** What fixed things it hits comes first; what has only to be opened or taken away first is said where that is all. */
function blocked(sweep: Sweep, hits: readonly Hit[], laidOut: Layout): Finding {
  const fixed = hits.filter(isFixed);
  const common = { subject: sweep.name, path: sweep.path };
  if (fixed.length === 0)
    return fitFinding(text, {
      ...common,
      verdict: 'warn',
      measured: length(Math.max(...hits.map(({ byM }) => byM))),
      reason: say`${sweep.name} ${verb[sweep.kind][1]} only ${listed(hits.map(conditionOf))}.`,
      remedy: remedyOf(sweep, hits, laidOut),
    });
  return fitFinding(text, {
    ...common,
    verdict: 'fail',
    measured: length(Math.max(...fixed.map(({ byM }) => byM))),
    reason: say`${sweep.name} cannot ${verb[sweep.kind][0]} fully: it hits ${listed(fixed.map(obstacleOf))}.`,
    remedy: remedyOf(sweep, fixed, laidOut),
  });
}

function conditionOf({ solid, door, onLid, byM }: Hit): Phrase {
  if (door) return say`with ${door.name} open, through which it reaches out by ${length(byM)}`;
  return onLid
    ? say`with ${solid?.name ?? ''} taken off it`
    : say`with ${solid?.name ?? ''} out of its way, which it goes into by ${length(byM)}`;
}

const obstacleOf = ({ solid, part, face, byM }: Hit): Phrase =>
  say`${solid?.name ?? part?.name ?? (face ? shellInWords[face] : '')} (by ${length(byM)})`;

/** The other hinge side if that is free of everything; else a smaller leaf, or moving the one thing in the way. */
function remedyOf(sweep: Sweep, hits: readonly Hit[], laidOut: Layout): Phrase {
  const otherwise = otherHinge(sweep, laidOut);
  if (otherwise) return otherwise;
  const [only] = hits;
  if (hits.length === 1 && only?.onLid)
    return say`Part ${only.solid?.name ?? 'it'} over ${sweep.name}, or move the lid to where nothing stands on it.`;
  const smaller = smallerReach(sweep, laidOut);
  const mend = hits.length === 1 && only?.solid ? outOfRoom(only.solid, sweep.prism, laidOut) : undefined;
  const move = mend && mendInWords(mend);
  if (smaller && move) return say`${smaller}. Or: ${move}`;
  if (smaller) return say`${smaller}.`;
  if (move) return move;
  const byM = upToMillimetre(Math.max(...hits.map((hit) => hit.byM)));
  if (sweep.kind === 'seat') return say`Move the seat ${length(byM)} away, or what it hits.`;
  return sweep.kind === 'lid'
    ? say`Lift it off whole, hinge it at another edge, or divide it and keep its ends ${length(byM)} off.`
    : say`Let it open on another side of ${sweep.of}, or move ${sweep.of} ${length(byM)} away.`;
}

function otherHinge(sweep: Sweep, laidOut: Layout): Phrase | undefined {
  const other = hingedOtherwise(sweep);
  if (!other) return undefined;
  const clashes = laidOut.sweeps.some(
    (each) => each.path !== sweep.path && clashBy(other, each, laidOut) !== undefined,
  );
  return clashes || hitsOf(other, laidOut).length > 0
    ? undefined
    : say`Hinge ${sweep.name} on its ${other.leaf?.hinge ?? ''} side, as you look at it: with its ${length(other.leaf?.reachM ?? 0)} it is free there.`;
}

const reachInWords = {
  door: 'A leaf of at most ',
  drawer: 'A travel of at most ',
  lid: 'A lid no deeper than ',
} as const;

/** The greatest width, travel or depth, in whole millimetres, that meets nothing fixed: it grows with the leaf. */
function smallerReach(sweep: Sweep, laidOut: Layout): Phrase | undefined {
  const { leaf, kind } = sweep;
  if (!leaf || kind === 'seat') return undefined;
  let [clearMm, stuckMm] = [0, Math.ceil(leaf.reachM * 1000)];
  while (stuckMm - clearMm > 1) {
    const tryMm = Math.floor((clearMm + stuckMm) / 2);
    if (hitsOf(withReach(sweep, tryMm / 1000), laidOut).length > 0) stuckMm = tryMm;
    else clearMm = tryMm;
  }
  const reachM = clearMm / 1000;
  return reachM < LEAST_REACH_M ? undefined : say`${reachInWords[kind]}${length(reachM)} is free of it`;
}

function onlyOne(clash: Clash, laidOut: Layout): Finding {
  const { first, second, byM } = clash;
  const free = otherHinge(first, laidOut) ?? otherHinge(second, laidOut);
  return fitFinding(text, {
    verdict: 'warn',
    subject: pairOf(first.name, second.name),
    path: first.path,
    measured: length(byM),
    reason: say`${first.name} and ${second.name} meet by ${length(byM)}: only one of them can be open at a time.`,
    remedy: free ?? say`Open one at a time, or part them by ${length(upToMillimetre(byM))}.`,
  });
}
