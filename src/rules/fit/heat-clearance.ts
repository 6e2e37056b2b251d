import type { Build, BuiltBuildUp } from '../../build/build.ts';
import type { HeatClearance, Layout, Solid } from '../../build/layout.ts';
import { overlap } from '../../calc/space/clip.ts';
import { type Bounds, boundsOf, TOUCH_TOLERANCE_M } from '../../calc/space/plane.ts';
import { prismOverlap } from '../../calc/space/prism.ts';
import { outOfShell, type ShellFace } from '../../calc/space/shell.ts';
import { burningKnowledge, burns } from '../../catalogue/burning.ts';
import { materialNamed } from '../../catalogue/materials.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { count, length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { heatCaution } from '../cautions.ts';
import { fitFinding, listed } from '../fit-finding.ts';
import { layout, some } from '../needs.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { gapSteps, inside, liningSteps } from '../working/clearance.ts';

const text: RuleText = {
  id: 'fit.heat-clearance',
  topic: 'fit',
  title: 'room about hot things',
  why: 'Wood, foam and cloth beside something hot char for months before they catch fire, mostly at night.',
  formula: 'd ≥ c; d: from the hot thing to the nearest thing that burns, mm; c: clearance in the plan, mm',
  sources: [burningKnowledge],
  cautions: [
    heatCaution,
    'Only things with a place in the plan are looked at: not curtains, bedding, coats, or what somebody puts down there.',
  ],
  fix: 'Move what burns away from the hot thing.',
  lifeSafety: true,
  place: ['fixtures'],
};

export default defineRule({
  ...text,
  needs: {
    layout,
    zones: some<HeatClearance>('fixtures.NAME.heat_clearance', ({ heatClearances }) => heatClearances),
  },
  check: ({ build, facts }) => {
    const { layout: room, zones } = facts;
    const hotThings = [...new Set(zones.map(({ of }) => of))];
    return {
      findings: hotThings.flatMap((name) => {
        const own = zones.filter(({ of }) => of === name);
        const hot = room.solids.find((solid) => solid.name === name);
        if (!hot) return [];
        const found = own.flatMap((zone) => intrusionsOf(zone, hot, room, build));
        return found.length > 0 ? found.map(({ finding }) => finding) : [allFree(hot, own, room)];
      }),
    };
  },
  work: ({ build, facts: { layout: room, zones } }, finding) => {
    const all = zones.flatMap((zone) => {
      const hot = room.solids.find(({ name }) => name === zone.of);
      return hot ? intrusionsOf(zone, hot, room, build) : [];
    });
    // A thing may be too near on two sides, and the room on one side reach two walls of one lining.
    const found = all.find(
      ({ finding: { subject, path, measured } }) =>
        subject === finding.subject &&
        path.at(-1) === finding.path.at(-1) &&
        measured?.value === finding.measured?.value,
    );
    return found?.steps();
  },
});

/** Something that burns in the room that a hot thing needs, and how that was worked out. */
interface Intrusion {
  readonly finding: Finding;
  readonly steps: () => readonly Step[];
}

const intrusionsOf = (zone: HeatClearance, hot: Solid, room: Layout, build: Build): readonly Intrusion[] => [
  ...room.solids.flatMap((solid) => intrusion(zone, hot, solid, room)),
  ...linings(zone, hot, room, build.buildUps),
];

const sideInWords: Readonly<Record<HeatClearance['side'], string>> = {
  front: 'in front of',
  rear: 'behind',
  left: 'to the left of',
  right: 'to the right of',
  above: 'above',
};

/** The way that leads away from the hot thing. */
const away: Readonly<Record<HeatClearance['side'], string>> = {
  front: 'forward',
  rear: 'rearward',
  left: 'to the left',
  right: 'to the right',
  above: 'up',
};

/** What is known of a thing and fire: it burns, it does not, or the plan does not say. */
function burning({ combustible, material }: Solid): boolean | undefined {
  if (combustible !== undefined) return combustible;
  const row = material === undefined ? undefined : materialNamed(material);
  return row && burns(row);
}

function intrusion(zone: HeatClearance, hot: Solid, solid: Solid, room: Layout): Intrusion[] {
  const burnt = burning(solid);
  if (solid.name === hot.name || burnt === false) return [];
  if (!prismOverlap(zone.prism, solid.prism)) return [];
  const isHost = hot.hosts.includes(solid.name);
  // A thing stands clear inside its host; only the host's own wall, past which the zone would reach, can be too near.
  if (isHost && !reachesPast(zone, solid)) return [];
  if (isHost && zone.side !== 'above' && solid.combustible !== true) return [];
  const apartM = isHost ? toWallOf(zone, solid) : apart(zone, solid);
  const lackingM = upToMillimetre(zone.depthM - apartM);
  const where = sideInWords[zone.side];
  const move = say`Leave ${length(zone.depthM)} between them: move ${isHost ? hot.name : solid.name} ${length(lackingM)} ${isHost ? back[zone.side] : away[zone.side]}`;
  const steps = () => gapSteps({ zone, hot, solid, isHost, apartM, room });
  return [
    {
      steps,
      finding: judge({
        rule: text,
        subject: `${hot.name} and ${solid.name}`,
        path: zone.path,
        kind: 'length',
        measured: { value: apartM, standard: 0 },
        limit: zone.depthM,
        sense: 'at least',
        broken: burnt ? 'fail' : 'warn',
        reason: say`${solid.name} ${burnt ? say`burns and stands` : say`stands`} ${length(apartM)} ${where} ${hot.name}, which needs ${length(zone.depthM)} there: it is ${length(lackingM)} too near.${burnt ? '' : ' The plan does not say whether it burns.'}`,
        remedy: () =>
          burnt
            ? say`${move}.`
            : say`${move}; or, if it does not burn, add \`combustible: false\` to ${solid.name}.`,
      }),
    },
  ];
}

const back: Readonly<Record<HeatClearance['side'], string>> = {
  front: 'rearward',
  rear: 'forward',
  left: 'to the right',
  right: 'to the left',
  above: 'down',
};

/** How far a zone's outer end lies beyond something's end on that side; negative where it ends within it. */
function pastM({ side, prism }: HeatClearance, bounds: Bounds, topM: number): number {
  const zone = boundsOf(prism.outline);
  if (side === 'front') return bounds.leastXM - zone.leastXM;
  if (side === 'rear') return zone.mostXM - bounds.mostXM;
  if (side === 'left') return bounds.leastYM - zone.leastYM;
  if (side === 'right') return zone.mostYM - bounds.mostYM;
  return prism.topM - topM;
}

const reachesPast = (zone: HeatClearance, { box }: Solid): boolean =>
  pastM(zone, box, box.topM) > TOUCH_TOLERANCE_M;

const toWallOf = (zone: HeatClearance, { box }: Solid): number =>
  Math.max(0, zone.depthM - pastM(zone, box, box.topM));

/** From the hot thing to the nearest part of another that stands in the zone. They overlap. */
function apart({ side, prism }: HeatClearance, solid: Solid): number {
  if (side === 'above') return Math.max(0, solid.prism.bottomM - prism.bottomM);
  const zone = boundsOf(prism.outline);
  const part = boundsOf(overlap(prism.outline, solid.prism.outline).flat());
  const gapM = {
    front: zone.mostXM - part.mostXM,
    rear: part.leastXM - zone.leastXM,
    left: zone.mostYM - part.mostYM,
    right: part.leastYM - zone.leastYM,
  }[side];
  return Math.max(0, gapM);
}

const surfacesAt: Readonly<Record<ShellFace, readonly string[]>> = {
  front: ['bulkhead'],
  rear: ['rear doors'],
  left: ['left wall', 'walls'],
  right: ['right wall', 'walls'],
  top: ['ceiling'],
};

/** The linings of the shell that a zone reaches into: what a wall is lined with is part of it. */
function linings(
  zone: HeatClearance,
  hot: Solid,
  room: Layout,
  buildUps: readonly BuiltBuildUp[],
): Intrusion[] {
  const { shell } = room;
  if (hot.whereabouts !== 'inside') return [];
  const own = outOfShell(hot.prism, shell, { leans: hot.leans });
  return outOfShell(zone.prism, shell, { leans: false }).flatMap((protrusion): Intrusion[] => {
    const { face, byM } = protrusion;
    // A hot thing that sticks out of the shell itself is another trouble.
    if (own.some((each) => each.face === face)) return [];
    const burnt = buildUps.filter(
      ({ surface, layers }) =>
        surface !== undefined &&
        surfacesAt[face].includes(surface) &&
        layers.some(({ material }) => material === undefined || burns(material)),
    );
    if (burnt.length === 0) return [];
    const apartM = Math.max(0, zone.depthM - byM);
    const lackingM = upToMillimetre(zone.depthM - apartM);
    const names = listed(burnt.map(({ name }) => say`${name}`));
    return [
      {
        steps: () => liningSteps(zone, hot, room, protrusion),
        finding: judge({
          rule: text,
          subject: `${hot.name} and ${burnt.map(({ name }) => name).join(', ')}`,
          path: zone.path,
          kind: 'length',
          measured: { value: apartM, standard: 0 },
          limit: zone.depthM,
          sense: 'at least',
          broken: 'warn',
          reason: say`${hot.name} needs ${length(zone.depthM)} clear ${inside[zone.side]}, and the ${surfaceInWords[face]} is ${length(apartM)} away. Its lining (${names}) has a layer that burns or may burn.`,
          remedy: () =>
            say`Move ${hot.name} ${length(lackingM)} away from the ${surfaceInWords[face]}, or build that part of it as the maker's instructions ask.`,
        }),
      },
    ];
  });
}

const surfaceInWords: Readonly<Record<ShellFace, string>> = {
  front: 'bulkhead',
  rear: 'rear doors',
  left: 'left wall',
  right: 'right wall',
  top: 'ceiling',
};

function allFree(hot: Solid, zones: readonly HeatClearance[], { unplaced }: Layout): Finding {
  const rooms = listed(zones.map(({ side, depthM }): Phrase => say`${length(depthM)} ${inside[side]}`));
  const unseen =
    unplaced.length > 0
      ? say` ${count(unplaced.length)} ${unplaced.length === 1 ? 'thing has' : 'things have'} no place in the plan, and might stand there.`
      : say``;
  return fitFinding(text, {
    verdict: 'pass',
    subject: hot.name,
    path: ['fixtures', hot.name, 'heat_clearance'],
    reason: say`Nothing in the plan that burns reaches into the room that ${hot.name} needs: ${rooms}.${unseen}`,
  });
}
