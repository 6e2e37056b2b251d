import type { Box3, Layout, ShellOpening, Solid, Unplaced } from '../../build/layout.ts';
import { boundsOf, type Outline, rectangle } from '../../calc/space/plane.ts';
import type { Prism } from '../../calc/space/prism.ts';
import { heightAt } from '../../calc/space/shell.ts';
import type { Citation } from '../../catalogue/citation.ts';
import type { Finding } from '../../engine/finding.ts';
import { length, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { closedShell } from '../beyond-shell.ts';
import { escapeCaution, fitCaution } from '../cautions.ts';
import { type Mend, mendInWords } from '../clearing.ts';
import {
  areaOf,
  BEFORE_OPENING_M,
  type Cover,
  coversOf,
  FLAT_M,
  inPlane,
  isLying,
  isWall,
} from '../covering.ts';
import { coveredShare as keptShare } from '../exits.ts';
import { fitFinding, listed } from '../fit-finding.ts';
import { outOfRoom } from '../out-of-room.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { type Covering, coveredSteps } from '../working/covered.ts';

/** Nobody reaches up with their head any further to get through a door. */
const DOORWAY_HEIGHT_M = 1.9;

/** From this part on a window is behind something; below, something runs across it. */
const MOSTLY_COVERED = 0.5;

/** What is covered is told as a strip where it fills this part of one. Own choice. */
const STRIP_FILLED = 0.9;

/** A thing that would lose more than this part of itself is not cut but put elsewhere. Own choice. */
const MOST_CUT = 0.5;

/** Nobody hangs a thing up that much higher than it was meant to be. Own choice. */
const MOST_LIFT_M = 0.3;

/** So far from the opening nothing is left when the remedy is done: things belong beside it, not a hand before it. */
const LEFT_FREE_M = 0.6;

const ownChoices: Citation = {
  title: `Within ${BEFORE_OPENING_M * 1000} mm of its surface a thing stands before an opening; no deeper than ${FLAT_M * 1000} mm and within the opening it belongs to it; a window of which half is covered is behind something`,
  provenance: 'own choice',
};
const doorwayHeight: Citation = {
  title: `A doorway is used up to ${DOORWAY_HEIGHT_M} m above the floor; no source`,
  provenance: 'common practice',
};

const text: RuleText = {
  id: 'fit.covered-opening',
  topic: 'fit',
  title: 'openings behind furniture',
  why: 'A window behind a cupboard gives no light and no air, and a door behind one lets nobody out.',
  formula:
    'covered share = area of (shadows of all things before the opening ∩ opening) / area of the opening, m²/m², square to its surface',
  sources: [ownChoices, doorwayHeight],
  cautions: [fitCaution],
  fix: 'Move what stands before the opening, or move the opening.',
  lifeSafety: true,
  place: ['van', 'openings'],
};

interface Openings {
  readonly layout: Layout;
  readonly unplaced: readonly Unplaced[];
}

const openings: Need<Openings> = ({ layout }) => {
  if (!layout) return missing('van.load_bay');
  const { openings: known, unplacedOpenings: unplaced } = layout;
  return known.length + unplaced.length > 0 ? given({ layout, unplaced }) : missing('van.openings');
};

export default defineRule({
  ...text,
  needs: { openings },
  check: ({ facts: { openings: all } }) => ({
    findings: [
      ...all.layout.openings.map((opening) => findingOf(opening, all.layout)),
      ...(all.unplaced.length > 0 ? [unknown(all.unplaced)] : []),
    ],
  }),
  work: ({ facts: { openings: all } }, finding) => {
    const opening = all.layout.openings.find(({ name }) => name === finding.subject);
    return opening && coveredSteps(opening, coveringOf(opening, all.layout));
  },
});

function coveringOf(opening: ShellOpening, layout: Layout): Covering {
  const hole = inPlane(opening);
  const used = usedPart(opening, hole);
  const all = used ? coversOf(opening, used, layout) : [];
  const reached = opening.escape ? new Set<string>() : reachedThrough(opening, layout);
  const covers = all.filter(({ solid }) => !reached.has(solid.name));
  const coveredShare = areaOf(covers.flatMap(({ onOpening }) => onOpening)) / areaOf([hole]);
  return { hole, all, covers, coveredShare };
}

/** One finding about all openings of which the plan says too little. */
function unknown(openingsLeft: readonly Unplaced[]): Finding {
  const keys = openingsLeft.flatMap(({ name, missing: lacks }) =>
    lacks.map((key) => `van.openings.${name}.${key}`),
  );
  return fitFinding(text, {
    verdict: 'not checked',
    subject: 'openings without a place',
    path: openingsLeft.length === 1 ? (openingsLeft[0]?.path ?? text.place) : text.place,
    reason: say`The plan does not say what ${listed(openingsLeft.map(({ name }) => [name]))} ${openingsLeft.length === 1 ? 'is' : 'are'} and where.`,
    remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
    missing: keys,
  });
}

function findingOf(opening: ShellOpening, layout: Layout): Finding {
  const { all, covers, coveredShare } = coveringOf(opening, layout);
  const common = { subject: opening.name, path: opening.path };
  if (covers.length === 0) {
    const behind = all.map(({ solid }) => [solid.name]);
    return withEscape(
      opening,
      fitFinding(text, {
        ...common,
        verdict: 'pass',
        measured: share(0),
        reason:
          behind.length > 0
            ? say`Only what is reached through ${opening.name} stands behind it: ${listed(behind)}.`
            : say`Nothing stands within ${length(BEFORE_OPENING_M)} of ${opening.name}.`,
      }),
    );
  }
  const groups = groupsOf(covers);
  return withEscape(
    opening,
    fitFinding(text, {
      ...common,
      verdict: verdictOf(opening, covers, coveredShare, layout),
      measured: share(coveredShare),
      reason: reasonOf(opening, groups, coveredShare),
      remedy: remedyOf(opening, groups, layout),
    }),
  );
}

const withEscape = (opening: ShellOpening, finding: Finding): Finding =>
  opening.escape ? { ...finding, cautions: [...finding.cautions, escapeCaution] } : finding;

/** A door counts as high as people walk; a way out counts whole. Undefined where nothing of a door is that low. */
function usedPart(
  { kind, escape: isWayOut, surface, box }: ShellOpening,
  hole: Outline,
): Outline | undefined {
  if (kind !== 'door' || isWayOut || isLying(surface) || box.topM <= DOORWAY_HEIGHT_M) return hole;
  const { leastXM, mostXM, leastYM } = boundsOf(hole);
  return leastYM < DOORWAY_HEIGHT_M
    ? rectangle(leastXM, leastYM, mostXM - leastXM, DOORWAY_HEIGHT_M - leastYM)
    : undefined;
}

/** Things that are emptied or serviced through the opening stand behind it on purpose, and so does what they are in. */
function reachedThrough(opening: ShellOpening, { services, solids }: Layout): ReadonlySet<string> {
  const served = new Set(services.filter(({ from }) => from === opening.name).map(({ of }) => of));
  const names = new Set(served);
  for (const { name, hosts } of solids) {
    if (served.has(name)) for (const host of hosts) names.add(host);
    if (hosts.some((host) => served.has(host))) names.add(name);
  }
  return names;
}

/** With another door to come in by, one that is built over is a choice. */
const isFreeDoor =
  (layout: Layout) =>
  (opening: ShellOpening): boolean => {
    const used = usedPart(opening, inPlane(opening));
    return opening.kind === 'door' && used !== undefined && coversOf(opening, used, layout).length === 0;
  };

/** Luggage can be put elsewhere; what is built in cannot. */
const isBuiltIn = ({ path }: Solid): boolean => path[0] !== 'stores';

function verdictOf(
  { kind, escape: isWayOut }: ShellOpening,
  covers: readonly Cover[],
  coveredShare: number,
  layout: Layout,
): 'fail' | 'warn' {
  if (isWayOut) return kind === 'door' && coveredShare <= keptShare ? 'warn' : 'fail';
  if (kind === 'door')
    return covers.some(({ solid }) => isBuiltIn(solid)) && !layout.openings.some(isFreeDoor(layout))
      ? 'fail'
      : 'warn';
  return coveredShare > MOSTLY_COVERED - 1e-9 ? 'fail' : 'warn';
}

/** A thing that covers, with what stands in or on it and covers too. */
interface Group {
  readonly root: Solid;
  readonly along: readonly Solid[];
  readonly onOpening: readonly Outline[];
}

/** The most covering first; equal ones in the order of the plan. */
function groupsOf(covers: readonly Cover[]): Group[] {
  const covering = new Set(covers.map(({ solid }) => solid.name));
  const rootOf = ({ name, hosts }: Solid): string => hosts.findLast((host) => covering.has(host)) ?? name;
  return covers
    .filter(({ solid }) => rootOf(solid) === solid.name)
    .map(({ solid: root }) => {
      const members = covers.filter(({ solid }) => rootOf(solid) === root.name);
      return {
        root,
        along: members.map(({ solid }) => solid).filter((solid) => solid !== root),
        onOpening: members.flatMap((each) => each.onOpening),
      };
    })
    .sort((a, b) => areaOf(b.onOpening) - areaOf(a.onOpening));
}

function reasonOf(opening: ShellOpening, groups: readonly Group[], coveredShare: number): Phrase {
  const names = listed(groups.map(({ root }) => [root.name]));
  const stands = groups.length === 1 ? 'stands' : 'stand';
  const strip = stripOf(opening, groups, coveredShare);
  const way = opening.escape ? say`, a way out` : '';
  if (opening.kind === 'door')
    return say`${names} ${stands} before ${opening.name}${way}: nobody gets through ${strip ? say`a strip of it ${strip} (${share(coveredShare)})` : say`${share(coveredShare)} of it`}.`;
  const which = strip ? say`: a strip ${strip}` : '';
  if (opening.escape)
    return say`${names} ${stands} before ${opening.name}${way}, over ${share(coveredShare)} of it${which}.`;
  return coveredShare > MOSTLY_COVERED - 1e-9
    ? say`${opening.name} is behind ${names}, with ${share(coveredShare)} of it covered.`
    : say`${names} ${groups.length === 1 ? 'runs' : 'run'} across ${opening.name} and ${groups.length === 1 ? 'covers' : 'cover'} ${share(coveredShare)} of it${which}.`;
}

/** The size of what is covered, if that is one rectangle or nearly: two things apart cover no strip between them. */
function stripOf(opening: ShellOpening, groups: readonly Group[], coveredShare: number): Phrase | undefined {
  const { leastXM, mostXM, leastYM, mostYM } = boundsOf(groups.flatMap(({ onOpening }) => onOpening.flat()));
  const [acrossM, upM] = [mostXM - leastXM, mostYM - leastYM];
  if (coveredShare * areaOf([inPlane(opening)]) < STRIP_FILLED * acrossM * upM) return undefined;
  return isLying(opening.surface)
    ? say`${length(acrossM)} long and ${length(upM)} wide`
    : say`${length(acrossM)} wide and ${length(upM)} high`;
}

function remedyOf(opening: ShellOpening, groups: readonly Group[], layout: Layout): Phrase | undefined {
  const [first] = groups;
  if (!first) return undefined;
  const { root, along } = first;
  const room = roomBefore(opening, layout);
  const mend = unlessLiftedHigh(outOfRoom(root, room, layout, along));
  const cut = smallestCut(opening, root.box, room);
  const moves = mend !== undefined && !mend.leaves && mend.blockedBy === undefined;
  const cuts = cut !== undefined && !(moves && mend.move.distanceM <= cut.byM);
  const what = cuts
    ? say`Make ${root.name} ${length(cut.byM)} ${cut.how}.`
    : mend
      ? mendInWords(mend)
      : say`Find another place for ${root.name}.`;
  const others = groups.slice(1).map(({ root: other }) => [other.name]);
  const more = others.length > 0 ? say` Then see to ${listed(others)}.` : '';
  const purpose = opening.escape
    ? ''
    : say` If it stands there to be reached through ${opening.name}, give it \`service_from: ${opening.name}\`.`;
  return say`${what}${more}${purpose}`;
}

const unlessLiftedHigh = (mend: Mend | undefined): Mend | undefined =>
  mend?.move.direction === 'up' && mend.move.distanceM > MOST_LIFT_M ? undefined : mend;

interface CutOff {
  readonly byM: number;
  readonly how: string;
}

/** The least that has to come off a thing for it to end at the opening's edge, if enough of it is left then. */
function smallestCut(
  { surface }: ShellOpening,
  { leastXM, mostXM, leastYM, mostYM, bottomM, topM }: Box3,
  room: Prism,
): CutOff | undefined {
  const before = boundsOf(room.outline);
  const cuts = [
    ...[
      { byM: topM - room.bottomM, how: 'lower', fits: surface !== 'floor' },
      { byM: room.topM - bottomM, how: 'less high from below', fits: !isLying(surface) },
    ].map((each) => ({ ...each, ofM: topM - bottomM })),
    ...[
      { byM: mostXM - before.leastXM, how: 'shorter at its rear end' },
      { byM: before.mostXM - leastXM, how: 'shorter at its front end' },
    ].map((each) => ({ ...each, ofM: mostXM - leastXM, fits: isLying(surface) || isWall(surface) })),
    ...[
      { byM: mostYM - before.leastYM, how: 'narrower on its right side' },
      { byM: before.mostYM - leastYM, how: 'narrower on its left side' },
    ].map((each) => ({ ...each, ofM: mostYM - leastYM, fits: !isWall(surface) })),
  ];
  const [least] = cuts
    .map((each) => ({ ...each, byM: upToMillimetre(each.byM) }))
    .filter(({ byM, ofM, fits }) => fits && byM <= MOST_CUT * ofM)
    .sort((a, b) => a.byM - b.byM);
  return least;
}

/** The room before an opening that a thing has to leave. */
function roomBefore(opening: ShellOpening, layout: Layout): Prism {
  const { surface, box, kind } = opening;
  const shell = closedShell(layout);
  const depthM = LEFT_FREE_M;
  const [lengthM, widthM] = [box.mostXM - box.leastXM, box.mostYM - box.leastYM];
  const topM = kind === 'door' && !opening.escape ? Math.min(box.topM, DOORWAY_HEIGHT_M) : box.topM;
  const between = { bottomM: box.bottomM, topM };
  if (surface === 'floor')
    return {
      outline: rectangle(box.leastXM, box.leastYM, lengthM, widthM),
      bottomM: 0,
      topM: BEFORE_OPENING_M,
    };
  if (surface === 'ceiling') {
    const roofM = Math.min(heightAt(shell.heights, box.leastXM), heightAt(shell.heights, box.mostXM));
    return {
      outline: rectangle(box.leastXM, box.leastYM, lengthM, widthM),
      bottomM: roofM - BEFORE_OPENING_M,
      topM: Math.max(roofM, layout.heightM),
    };
  }
  if (isWall(surface)) {
    const isLeft = surface === 'left wall';
    // From the wall at its farthest, at the floor, to the same clear depth where it leans in most.
    const leastHalfM = Math.min(...shell.profile.map((each) => each.widthM), layout.widthM) / 2;
    const deepM = layout.widthM / 2 - leastHalfM + depthM;
    const leastYM = isLeft ? -layout.widthM / 2 : layout.widthM / 2 - deepM;
    return { outline: rectangle(box.leastXM, leastYM, lengthM, deepM), ...between };
  }
  const leastXM = surface === 'bulkhead' ? 0 : shell.lengthM - depthM;
  return { outline: rectangle(leastXM, box.leastYM, depthM, widthM), ...between };
}
