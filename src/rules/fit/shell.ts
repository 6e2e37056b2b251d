import type { Layout, Solid } from '../../build/layout.ts';
import { boundsOf, TOUCH_TOLERANCE_M } from '../../calc/space/plane.ts';
import { heightAt, outOfShell, type Protrusion, widthAt } from '../../calc/space/shell.ts';
import type { Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { fitCaution } from '../cautions.ts';
import { sizeOf } from '../clearing.ts';
import { fitFinding, listed, shapesMethod, things } from '../fit-finding.ts';
import { layout, some } from '../needs.ts';
import {
  bringIn,
  type Excess,
  excessOf,
  goesThroughOpening,
  isRearDoorLining,
  type Side,
} from '../sticking-out.ts';
import { inBrackets, placePaths } from '../working/box.ts';
import { beyondSteps } from '../working/shell.ts';

const text: RuleText = {
  id: 'fit.shell',
  topic: 'fit',
  title: 'inside the load bay',
  why: 'What is longer, wider or higher than the van where it stands cannot be built in.',
  formula:
    'out by = −x_front; x_rear − L; |y| − b(z)/2 at the narrowest height z it reaches; z_top − h(x) at the lowest place x; −z_bottom',
  sources: [
    ...shapesMethod,
    {
      title:
        'What goes through a window, vent or hatch may be 10 mm larger than the opening on every side: frames and seals',
      provenance: 'own choice',
    },
  ],
  cautions: [fitCaution],
  fix: 'Move the thing inwards, or make it smaller.',
  place: ['van', 'load_bay'],
};

const inside = some('fixtures.NAME.size', ({ solids }) =>
  solids.filter(({ whereabouts }) => whereabouts === 'inside'),
);

interface Protruding extends Excess {
  /** Where along that side it is worst, as the words after the side. */
  readonly where: Phrase;
  /** Undefined below the floor, which is no side of the shell. */
  readonly protrusion?: Protrusion;
}

export default defineRule({
  ...text,
  needs: { layout, inside },
  check: ({ facts: { layout, inside } }) => {
    const { stickingOut, through } = stickingOutOf(layout, inside);
    const findings = stickingOut.map(({ solid, host, out }) => findingOf(layout, solid, host, out));
    if (findings.length > 0) return { findings };
    const [isOne, throughs] = [inside.length === 1, through.size];
    const purposely =
      throughs > 0
        ? say` ${things(throughs)} ${throughs === 1 ? 'goes' : 'go'} out through an opening made for it.`
        : '';
    return {
      findings: [
        fitFinding(text, {
          subject: 'all things in the load bay',
          path: text.place,
          verdict: 'pass',
          reason: say`${things(inside.length)} looked at: ${isOne ? 'it does not stick' : 'none sticks'} out of the load bay.${purposely}`,
        }),
      ],
    };
  },
  work: ({ facts: { layout, inside } }, finding) => {
    const { stickingOut } = stickingOutOf(layout, inside);
    const found = stickingOut.find(({ solid }) => solid.name === finding.subject);
    return finding.measured && found && stepsOf(layout, found);
  },
});

interface StickingOut {
  readonly solid: Solid;
  readonly host: Solid | undefined;
  /** The worst first. */
  readonly out: readonly Protruding[];
}

interface AllStickingOut {
  readonly stickingOut: readonly StickingOut[];
  /** Names of what goes out through an opening made for it. */
  readonly through: ReadonlySet<string>;
}

/** Where things stick out of the load bay, without what is said of what they are in or on. */
function stickingOutOf(layout: Layout, things: readonly Solid[]): AllStickingOut {
  const known = new Map(layout.solids.map((solid) => [solid.name, solid]));
  const through = new Set<string>();
  const outOf = new Map<string, readonly Protruding[]>();
  for (const solid of things) {
    const all = protrusions(layout, solid);
    const out = all.filter(({ side }) => !goesThroughOpening(layout, solid, side));
    if (out.length < all.length) through.add(solid.name);
    outOf.set(solid.name, out);
  }
  const stickingOut = things.flatMap((solid): StickingOut[] => {
    const isSaidOfHost = ({ side }: Excess) =>
      solid.hosts.some((host) => outOf.get(host)?.some((each) => each.side === side));
    // What sticks out of the thing it is in is named there.
    const host = solid.isInside ? known.get(solid.hosts[0] ?? '') : undefined;
    const isSaidOfContents = ({ side }: Excess) =>
      host !== undefined && excessOf(solid.box, host.box).some((each) => each.side === side);
    const out = (outOf.get(solid.name) ?? []).filter(
      (each) => !isSaidOfHost(each) && !isSaidOfContents(each),
    );
    return out.length > 0 ? [{ solid, host, out }] : [];
  });
  return { stickingOut, through };
}

function stepsOf(layout: Layout, { solid, out }: StickingOut): readonly Step[] | undefined {
  const [worst] = out;
  if (!worst) return undefined;
  const { name, prism } = solid;
  const paths = placePaths(solid, layout);
  const steps = worst.protrusion
    ? beyondSteps({ name, prism, paths, protrusion: worst.protrusion }, layout.shell, layout)
    : [
        {
          what: `How far ${name} begins below the floor: the floor less its bottom`,
          sum: say`${length(0)} − ${inBrackets(prism.bottomM)}`,
          result: length(worst.byM),
          paths,
        },
      ];
  if (out.length === 1) return steps;
  return [
    {
      what: `It sticks out on ${out.length} sides, most ${faces[worst.side]}`,
      sum: listed(out.map(({ side, byM }) => say`${length(byM)} ${faces[side]}`)),
    },
    ...steps,
  ];
}

const sideOf = { front: 'front', rear: 'rear', left: 'left', right: 'right', top: 'top' } as const;

const whereText = ({ atHeightM, fromFrontM }: Protrusion): Phrase =>
  atHeightM !== undefined
    ? say`, most at ${length(atHeightM)} above the floor`
    : fromFrontM !== undefined
      ? say`, most at ${length(fromFrontM)} from the front`
      : [];

/** Where a thing sticks out of the load bay, the worst first; the floor is a side here. */
function protrusions({ shell }: Layout, { prism, leans }: Solid): Protruding[] {
  const out = outOfShell(prism, shell, { leans }).map(
    (protrusion): Protruding => ({
      side: sideOf[protrusion.face],
      byM: protrusion.byM,
      where: whereText(protrusion),
      protrusion,
    }),
  );
  const below: Protruding = { side: 'bottom', byM: -prism.bottomM, where: [] };
  return [...out, ...(below.byM > TOUCH_TOLERANCE_M ? [below] : [])].sort((a, b) => b.byM - a.byM);
}

const faces: Readonly<Record<Side, string>> = {
  front: 'past the front of the load bay (the line of the bulkhead)',
  rear: 'past the rear doors',
  left: 'out of the left wall',
  right: 'out of the right wall',
  top: 'out of the roof',
  bottom: 'below the floor',
};

function findingOf(layout: Layout, solid: Solid, host: Solid | undefined, out: readonly Protruding[]) {
  const { name, path } = solid;
  const [worst] = out;
  const reason = say`Not all of ${name} is in the load bay: ${listed(out.map(({ side, byM, where }) => say`${length(byM)} ${faces[side]}${where}`))}.`;
  const unplaced = layout.unplacedOpenings.find((opening) => opening.name === name);
  if (unplaced)
    return fitFinding(text, {
      subject: name,
      path: unplaced.path,
      verdict: 'not checked',
      ...(worst && { measured: length(worst.byM) }),
      reason: say`${reason} It may go through the opening of its name, but the plan does not say where that is.`,
      remedy: say`Add ${unplaced.missing.map((key) => `\`${[...unplaced.path, key].join('.')}\``).join(', ')}; its hole may be ${length(0.01)} smaller on every side than the thing.`,
      missing: unplaced.missing.map((key) => [...unplaced.path, key].join('.')),
    });
  return fitFinding(text, {
    subject: name,
    path,
    verdict: 'fail',
    ...(worst && { measured: length(worst.byM) }),
    reason,
    remedy: remedyFor(layout, solid, host, out),
  });
}

function remedyFor(
  layout: Layout,
  solid: Solid,
  host: Solid | undefined,
  out: readonly Protruding[],
): Phrase {
  const { shell, fixedParts } = layout;
  const { name, prism, box, leans, hosts, isInside } = solid;
  // It has to come out of the lining of the doors too.
  const lining = fixedParts.find(isRearDoorLining);
  const rearM = lining ? boundsOf(lining.prism.outline).leastXM : shell.lengthM;
  const heights = [
    prism.bottomM,
    ...(leans ? [] : [prism.topM, ...shell.profile.map(({ heightM }) => heightM)]),
  ];
  const places = [box.leastXM, box.mostXM, ...shell.heights.map(({ fromFrontM }) => fromFrontM)];
  const within = (values: readonly number[], least: number, most: number) =>
    values.filter((value) => value >= least && value <= most);
  const footM = isInside ? (host?.box.bottomM ?? 0) : hosts.length > 0 ? prism.bottomM : 0;
  const room = {
    lengthM: rearM,
    widthM: Math.min(
      ...within(heights, prism.bottomM, prism.topM).map((heightM) => widthAt(shell.profile, heightM)),
    ),
    heightM:
      Math.min(...within(places, box.leastXM, box.mostXM).map((xM) => heightAt(shell.heights, xM))) - footM,
  };
  const excesses = out.map(({ side, byM }) => ({
    side,
    byM: side === 'rear' ? byM + shell.lengthM - rearM : byM,
  }));
  const mend = bringIn(name, excesses, sizeOf(box), room);
  const isAtWall = out.some(({ side }) => side === 'left' || side === 'right');
  const fitsLeaning =
    isAtWall &&
    !leans &&
    outOfShell(prism, shell, { leans: true }).every(({ face }) => face !== 'left' && face !== 'right');
  return fitsLeaning ? say`${mend} If it follows the slope of the wall, write \`leans: true\`.` : mend;
}
