import type { Layout, Solid, Stowed } from '../../build/layout.ts';
import { boxAbout, boxesBeside, boxesOver } from '../../calc/space/box-cover.ts';
import {
  type BestFit,
  bestFit,
  type Cuboid,
  extentOf,
  freeBoxes,
  packsTogether,
} from '../../calc/space/packing.ts';
import type { Prism } from '../../calc/space/prism.ts';
import { widthAt } from '../../calc/space/shell.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { fitCaution } from '../cautions.ts';
import { fitFinding, listed } from '../fit-finding.ts';
import { layout, some } from '../needs.ts';
import { keysOfRoom } from '../unknown-room.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { stowingSteps, tightestOf } from '../working/stowing.ts';

const text: RuleText = {
  id: 'fit.stowage',
  topic: 'fit',
  title: 'what must go in',
  why: 'What has no place of its own travels on the bed and is carried about all day.',
  formula:
    'a ≤ A, b ≤ B, c ≤ C in one way round; a, b, c: the thing; A, B, C: a box free of all else in the room inside or underneath, mm',
  sources: [
    {
      title:
        'All greatest free boxes of the room, exactly; round and slanted outlines are covered by strips of 20 mm, a little too much; nothing is tilted',
      provenance: 'computed',
    },
    {
      title: 'Things together: the largest first, with going back, up to a limit of places tried',
      provenance: 'own choice',
    },
  ],
  cautions: [
    fitCaution,
    'Outside sizes count, as if boards had no thickness, and whether a thing goes in through the door is not looked at.',
  ],
  fix: 'Make room for it, or put it where there is room.',
  place: ['fixtures'],
};

export default defineRule({
  ...text,
  needs: { layout, stowed: some<Stowed>('fixtures.NAME.stows', ({ stowed }) => stowed) },
  check: ({ facts }) => ({
    findings: rooms(facts.stowed).flatMap((group) => roomFindings(group, facts.layout)),
  }),
  work: ({ facts: { stowed, layout: room } }, finding) => {
    const group = rooms(stowed).find((things) =>
      things.some((thing) => subjectOf(thing) === finding.subject),
    );
    const thing = group?.find((each) => subjectOf(each) === finding.subject);
    const host = room.solids.find(({ name }) => name === thing?.of);
    const space = thing && host && spaceOf(host, thing.place, room.solids);
    if (!finding.measured || !thing || !host || !space) return undefined;
    const free = freeIn(host, thing.place, space, room);
    const best = bestFit(thing, free);
    return best && stowingSteps({ thing, host, best, howMany: free.length, room });
  },
});

const subjectOf = (thing: Stowed): string => `${thing.name} ${placeOf(thing)}`;

/** Things that go into the same room. */
type Group = readonly [Stowed, ...Stowed[]];

function rooms(stowed: readonly Stowed[]): readonly Group[] {
  const groups = new Map<string, [Stowed, ...Stowed[]]>();
  for (const thing of stowed) {
    const key = JSON.stringify([thing.of, thing.place]);
    const group = groups.get(key);
    if (group) group.push(thing);
    else groups.set(key, [thing]);
  }
  return [...groups.values()];
}

function roomFindings(group: Group, room: Layout): Finding[] {
  const { solids, unplaced } = room;
  const [{ of, place }] = group;
  const host = solids.find(({ name }) => name === of);
  if (!host) return [unknownHost(group, room)];
  const space = spaceOf(host, place, solids);
  if (!space) return group.map((thing) => noRoom(thing, of));
  const free = freeIn(host, place, space, room);
  const fits = group.map((thing) => ({ thing, best: bestFit(thing, free) }));
  const going = fits.filter(({ best }) => best?.fits);
  const together = packsTogether(
    going.map(({ thing }) => thing),
    free,
  );
  const loose = unplaced.filter(({ inside }) => place === 'inside' && inside === of).map(({ name }) => name);
  return fits.flatMap(({ thing, best }): Finding[] => {
    if (!best?.fits) return [alone(thing, best, loose)];
    if (together) return [alone(thing, best, loose)];
    return thing === going[0]?.thing
      ? [
          notTogether(
            going.map((each) => each.thing),
            free,
          ),
        ]
      : [];
  });
}

const spaceOf = (host: Solid, place: Stowed['place'], solids: readonly Solid[]): Prism | undefined =>
  place === 'inside' ? host.prism : beneath(host, solids);

/** All greatest free boxes in a thing or beneath it. */
function freeIn(
  host: Solid,
  place: Stowed['place'],
  space: Prism,
  { solids, fixedParts, shell }: Layout,
): readonly Cuboid[] {
  const box = boxAbout(space);
  const others = solids.filter((solid) =>
    place === 'inside'
      ? solid.hosts.includes(host.name)
      : solid.name !== host.name && !host.hosts.includes(solid.name),
  );
  return freeBoxes(box, [
    ...boxesBeside(space),
    ...[...others, ...fixedParts].flatMap(({ prism }) => boxesOver(prism)),
    ...(host.leans ? behindWalls(box, shell) : []),
  ]);
}

function unknownHost(group: Group, room: Layout): Finding {
  const [{ of, path }] = group;
  const missing = keysOfRoom(of, path, room);
  return fitFinding(text, {
    verdict: 'not checked',
    subject: `all ${placeOf(group[0])}`,
    path: path.slice(0, -1),
    reason: say`The room that ${of} takes is not known, so neither is what goes into it or under it.`,
    remedy: say`Add ${missing.map((key) => `\`${key}\``).join(', ')}.`,
    missing,
  });
}

/** The room between a thing and what it stands over: the floor, or the thing that it stands on or in. */
function beneath({ prism, hosts, isInside }: Solid, solids: readonly Solid[]): Prism | undefined {
  const host = solids.find(({ name }) => name === hosts[0]);
  const baseM = host ? (isInside ? host.box.bottomM : host.box.topM) : 0;
  const topM = prism.bottomM;
  return topM - baseM > 1e-6 ? { outline: prism.outline, bottomM: baseM, topM } : undefined;
}

/** A thing that leans has no room beyond the wall; the wall's slope in steps of 50 mm, each as narrow as its top. */
function behindWalls({ least, most }: Cuboid, shell: Layout['shell']): Cuboid[] {
  const stepM = 0.05;
  const walls: Cuboid[] = [];
  for (let bottomM = least[2]; bottomM < most[2]; bottomM += stepM) {
    const topM = Math.min(bottomM + stepM, most[2]);
    const halfM = Math.min(widthAt(shell.profile, bottomM), widthAt(shell.profile, topM)) / 2;
    const [leftM, rightM] = [shell.centreYM - halfM, shell.centreYM + halfM];
    if (least[1] < leftM) walls.push({ least: [least[0], least[1], bottomM], most: [most[0], leftM, topM] });
    if (most[1] > rightM) walls.push({ least: [least[0], rightM, bottomM], most: [most[0], most[1], topM] });
  }
  return walls;
}

const across = ([lengthM, widthM, heightM]: readonly [number, number, number]): Phrase =>
  say`${length(lengthM)} × ${length(widthM)} × ${length(heightM)}`;

const sizeOf = ({ size }: Stowed): Phrase => across([size.lengthM, size.widthM, size.heightM]);

const placeOf = ({ place, of }: Stowed): string => `${place === 'inside' ? 'in' : 'under'} ${of}`;

const into = ({ place, of }: Stowed): string => `${place === 'inside' ? 'into' : 'under'} ${of}`;

const longer = ['longer', 'wider', 'higher'] as const;

/** One thing by itself: the side that has least to spare decides. */
function alone(thing: Stowed, best: BestFit | undefined, loose: readonly string[]): Finding {
  const where = into(thing);
  if (!best)
    return fitFinding(text, {
      verdict: 'fail',
      subject: subjectOf(thing),
      path: thing.path,
      reason: say`${thing.name} (${sizeOf(thing)}) does not go ${where}: nothing is free there.`,
      remedy: say`Take something out, or make room for ${sizeOf(thing)}.`,
    });
  const { free, spare, fits } = best;
  const { neededM, freeM } = tightestOf(best);
  const lacking = spare.flatMap((spareM, axis): Phrase[] =>
    spareM < -1e-6 ? [say`${length(upToMillimetre(-spareM))} ${longer[axis] ?? ''}`] : [],
  );
  const room = across(extentOf(free));
  const round = thing.upright ? ' It has to stay upright.' : '';
  const counted =
    loose.length > 0
      ? say` Not counted, because they have no place in the plan: ${listed(loose.map((name) => say`${name}`))}.`
      : say``;
  return judge({
    rule: text,
    subject: subjectOf(thing),
    path: thing.path,
    kind: 'length',
    measured: { value: neededM, standard: 0 },
    limit: freeM,
    sense: 'at most',
    broken: 'fail',
    reason: fits
      ? say`${thing.name} (${sizeOf(thing)}) goes ${where}, where ${room} is free.${counted}`
      : say`${thing.name} (${sizeOf(thing)}) does not go ${where}. The free room that suits it best is ${room} (length × width × height in the van), and would have to be ${listed(lacking)}.${round}`,
    remedy: () => say`Make that room ${listed(lacking)}, move what stands in it, or stow something smaller.`,
  });
}

function noRoom(thing: Stowed, of: string): Finding {
  return fitFinding(text, {
    verdict: 'fail',
    subject: subjectOf(thing),
    path: thing.path,
    reason: say`${thing.name} (${sizeOf(thing)}) is to go under ${of}, but ${of} stands on what is below it: there is no room in between.`,
    remedy: say`Raise ${of} with \`at.above_floor\` by ${length(least(thing))} at least, or stow it \`inside\`.`,
  });
}

const least = ({ size: { lengthM, widthM, heightM }, upright }: Stowed): number =>
  upright ? heightM : Math.min(lengthM, widthM, heightM);

function notTogether(things: readonly Stowed[], free: readonly Cuboid[]): Finding {
  const [first] = things;
  const where = first ? into(first) : '';
  const names = listed(things.map((thing) => say`${thing.name} (${sizeOf(thing)})`));
  const largest = free.reduce<Cuboid | undefined>(
    (best, box) => (best && volume(best) >= volume(box) ? best : box),
    undefined,
  );
  return fitFinding(text, {
    verdict: 'warn',
    subject: `all ${first ? placeOf(first) : ''}`,
    path: first?.path.slice(0, -1) ?? text.place,
    reason: say`Each of these goes ${where} alone; no way was found for all of them together: ${names}. ${largest ? say`The largest free room there is ${across(extentOf(largest))}.` : ''}`,
    remedy: say`Try it with boxes, or find another place for one of the ${String(things.length)}.`,
  });
}

const volume = (box: Cuboid): number => extentOf(box).reduce((product, sideM) => product * sideM, 1);
