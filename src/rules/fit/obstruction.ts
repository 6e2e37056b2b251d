import type { FixedPart, Layout, Solid } from '../../build/layout.ts';
import { boundsNear, TOUCH_TOLERANCE_M } from '../../calc/space/plane.ts';
import { prismOverlap } from '../../calc/space/prism.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { fitCaution } from '../cautions.ts';
import {
  boxOf,
  depthOf,
  type Mend,
  type Mover,
  mender,
  mendInWords,
  sharedBox,
  sizeOf,
} from '../clearing.ts';
import { fitFinding, listed, piece, shapesMethod, things } from '../fit-finding.ts';
import { layout, some } from '../needs.ts';
import { goesThroughOpening, isRearDoorLining } from '../sticking-out.ts';
import { placePaths, sharedSteps } from '../working/box.ts';

const text: RuleText = {
  id: 'fit.obstruction',
  topic: 'fit',
  title: 'clear of the parts of the van',
  why: 'Wheel arches, door linings, pillars and step wells stay where they are; furniture has to go round them.',
  formula:
    'shared = outline ∩ part of the van on the plan, from the higher bottom to the lower top; 0.5 mm only touches',
  sources: shapesMethod,
  cautions: [fitCaution],
  fix: 'Move the thing, or cut it out round the part of the van.',
  place: ['van', 'wheel_arches'],
};

const solids = some('fixtures.NAME.size', (layout) => layout.solids);
const parts = some('van.wheel_arches', (layout) => [...layout.fixedParts, ...layout.unplacedParts]);

interface Met {
  readonly solid: Solid;
  /** Parts of the van that it stands in. */
  readonly standsIn: readonly FixedPart[];
  /** Wheel arches that reach up into it. */
  readonly straddles: readonly FixedPart[];
}

export default defineRule({
  ...text,
  needs: { layout, solids, parts },
  check: ({ facts: { layout, solids } }) => {
    const { fixedParts, unplacedParts } = layout;
    const met = meetings(layout);
    const standing = standingIn(met);
    const mend = mender(layout);
    const unknown = unplacedParts.map(({ name, path, missing }) =>
      fitFinding(text, {
        subject: name,
        path,
        verdict: 'not checked',
        reason: say`Where ${name} may be in the way is not known.`,
        remedy: say`Add ${missing.map((key) => `\`${[...path, key].join('.')}\``).join(', ')}.`,
        missing: missing.map((key) => [...path, key].join('.')),
      }),
    );
    const findings = met.flatMap(({ solid, standsIn, straddles }) => {
      const own = ownParts(solid, standsIn, standing);
      return [
        ...(own.length > 0 ? [inTheWay(solid, own, mend([moverOf(solid, own, met)]))] : []),
        ...(straddles.length > 0 ? [takesRoom(solid, straddles)] : []),
      ];
    });
    if (findings.length > 0 || fixedParts.length === 0) return { findings: [...findings, ...unknown] };
    return {
      findings: [
        fitFinding(text, {
          subject: 'all things',
          path: text.place,
          verdict: 'pass',
          reason: say`${things(solids.length)} looked at: ${solids.length === 1 ? 'it stands' : 'none stands'} in ${fixedParts.map(({ name }) => name).join(', ')}.`,
        }),
        ...unknown,
      ],
    };
  },
  work: ({ facts: { layout } }, finding) => {
    const met = meetings(layout);
    const found = met.find(({ solid }) => solid.name === finding.subject);
    if (!finding.measured || !found) return undefined;
    const { solid, standsIn } = found;
    const own = ownParts(solid, standsIn, standingIn(met));
    const deepest = own.reduce<FixedPart | undefined>(
      (worst, part) => (worst && depthIn(solid, worst) >= depthIn(solid, part) ? worst : part),
      undefined,
    );
    if (!deepest) return undefined;
    const { name, prism, path } = deepest;
    const steps = sharedSteps(
      { ...solid, paths: placePaths(solid, layout) },
      { name, prism, paths: [path] },
      layout,
    );
    if (own.length === 1) return steps;
    return [
      {
        what: `It stands in ${own.length} parts of the van, deepest in ${name}`,
        sum: listed(own.map((part) => say`${part.name} by ${length(depthIn(solid, part))}`)),
      },
      ...steps,
    ];
  },
});

const standingIn = (met: readonly Met[]): ReadonlyMap<string, readonly FixedPart[]> =>
  new Map(met.map(({ solid, standsIn }) => [solid.name, standsIn]));

/** Without those that what it is in or on stands in as well: with that it moves. */
const ownParts = (
  { hosts }: Solid,
  standsIn: readonly FixedPart[],
  standing: ReadonlyMap<string, readonly FixedPart[]>,
): readonly FixedPart[] =>
  standsIn.filter((part) => !hosts.some((host) => standing.get(host)?.some((other) => other === part)));

const depthIn = ({ prism }: Solid, part: FixedPart): number => depthOf(sharedBox(prism, part.prism));

function meetings(layout: Layout): readonly Met[] {
  const { solids, fixedParts, unplaced, shell } = layout;
  const parts = fixedParts.map((part) => ({ part, box: boxOf(part.prism) }));
  const holding = new Set([
    ...solids.filter(({ isInside }) => isInside).map(({ hosts: [nearest] }) => nearest),
    ...unplaced.map(({ inside }) => inside),
  ]);
  const bearing = new Set(solids.filter(({ use }) => use === 'bed').flatMap(({ hosts }) => hosts));
  return solids.flatMap((solid) => {
    const { box, prism, name, use } = solid;
    const isOut = box.mostXM > shell.lengthM + TOUCH_TOLERANCE_M;
    const met = parts
      .filter(
        ({ part, box: other }) =>
          boundsNear(box, other, 0) &&
          box.topM > other.bottomM &&
          box.bottomM < other.topM &&
          // Out past the doors is out of the load bay, which is said there; through an opening in them is meant.
          !(isRearDoorLining(part) && (isOut || goesThroughOpening(layout, solid, 'rear'))) &&
          prismOverlap(prism, part.prism) !== undefined,
      )
      .map(({ part }) => part);
    if (met.length === 0) return [];
    const mayStraddle = use === 'bed' || holding.has(name);
    const isStraddled = (part: FixedPart) => mayStraddle && part.path[1] === 'wheel_arches';
    const standsIn = met.filter((part) => !isStraddled(part));
    // The frame of a bed is open below; what is kept in it is held against the arches by itself.
    const isFrame = bearing.has(name) || (use === 'bed' && holding.has(name));
    const straddles = isFrame ? [] : met.filter(isStraddled);
    return standsIn.length + straddles.length > 0 ? [{ solid, standsIn, straddles }] : [];
  });
}

/** A thing has to come free of these parts of the van, and with it what it carries. */
const moverOf = (solid: Solid, parts: readonly FixedPart[], met: readonly Met[]): Mover => ({
  solid,
  from: parts.map(({ prism }) => prism),
  along: met
    .filter((other) => other.solid.hosts.includes(solid.name))
    .flatMap((other) =>
      other.standsIn
        .filter((part) => parts.includes(part))
        .map((part) => ({ moving: other.solid.prism, fixed: part.prism })),
    ),
});

function inTheWay(solid: Solid, parts: readonly FixedPart[], found: Mend | undefined) {
  const pieces = parts.map(
    ({ name, prism, walkable }) =>
      say`${name}${walkable ? ', where people may walk but nothing may stand' : ''} (a piece ${piece(sizeOf(sharedBox(solid.prism, prism)))})`,
  );
  return fitFinding(text, {
    subject: solid.name,
    path: solid.path,
    verdict: 'fail',
    measured: length(Math.max(...parts.map((part) => depthIn(solid, part)))),
    reason: say`Part of ${solid.name} is where the van has something already: in ${listed(pieces)}.`,
    remedy: found
      ? mendInWords(found)
      : say`No one straight move frees it: find another place for it, or cut out ${listed(parts.map(({ prism }) => piece(sizeOf(sharedBox(solid.prism, prism)))))} of it.`,
  });
}

/** A bed frame or cupboard that is open inside can be built over a wheel arch, but the arch takes its room. */
function takesRoom(solid: Solid, arches: readonly FixedPart[]) {
  const pieces = arches.map(
    ({ name, prism }) => say`${name} takes a piece ${piece(sizeOf(sharedBox(solid.prism, prism)))}`,
  );
  return fitFinding(text, {
    subject: solid.name,
    path: solid.path,
    verdict: 'warn',
    reason: say`${solid.name} can be built over a wheel arch, but room inside is lost: ${listed(pieces)}.`,
    remedy: say`Build ${solid.name} round ${arches.length === 1 ? 'it' : 'them'}, and keep what goes into it ${listed(arches.map(({ prism }) => say`${length(sizeOf(sharedBox(solid.prism, prism)).widthM)} off the ${prism.outline.every(({ yM }) => yM < 0) ? 'left' : 'right'} wall`))} there.`,
  });
}
