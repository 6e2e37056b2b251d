import type { Layout, Service, ShellOpening, Solid } from '../../build/layout.ts';
import { overlap } from '../../calc/space/clip.ts';
import type { Citation } from '../../catalogue/citation.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type EffectiveLimit, type RuleText } from '../../engine/rule.ts';
import { fitCaution } from '../cautions.ts';
import { fitFinding, listed, shapesMethod } from '../fit-finding.ts';
import { floorBeside } from '../free-floor.ts';
import { layout, some } from '../needs.ts';
import {
  distanceTo,
  inTheWay,
  type Masked,
  maskedBy,
  moveAside,
  planOf,
  shownShare,
  swept,
  wayTo,
} from '../straight-way.ts';
import { keysOfRoom } from '../unknown-room.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { deepestOf, insideSteps, throughSteps } from '../working/service.ts';

/** So much of a thing must show in its opening; a frame or a corner may stand beyond the edge. */
const shownEnough = 0.8;
const shown: Citation = {
  title: `${shownEnough * 100} % of a thing shows in the opening through which it is reached`,
  provenance: 'own choice',
};

const text: RuleText = {
  id: 'fit.service',
  topic: 'fit',
  title: 'emptied and serviced from its side',
  why: 'A tank that cannot be emptied without taking the kitchen apart is not emptied.',
  formula:
    'the straight way of the whole thing to the opening is free and at least 80 % of its face shows in the opening; r ≤ R: r from the opening to the thing, R reach of both hands, mm; from inside: 600 mm of free floor within R',
  sources: [...shapesMethod, shown],
  cautions: [
    fitCaution,
    'The straight way only: pipes, cables and screws on it, and room for a spanner, are not looked at.',
  ],
  fix: 'Leave the straight way to the opening free, or move the thing to where it can be reached.',
  limits: ['service-reach'],
  place: ['fixtures'],
};

/** Floor that someone needs who works at a thing. */
const standingM = 0.6;
const standing: Citation = {
  title: '600 mm of free floor, clear from 0.1 m to 1.4 m, to kneel or stand at a thing from inside',
  provenance: 'common practice',
};
export default defineRule({
  ...text,
  override: { limit: 'service-reach', kinds: ['length'] },
  needs: { layout, services: some<Service>('tanks.NAME.service_from', ({ services }) => services) },
  check: ({ facts, limit }) => {
    const reach = limit('service-reach');
    return { findings: facts.services.map((service) => serviced(service, facts.layout, reach)) };
  },
  work: ({ facts: { services, layout: room }, limit }, finding) => {
    const service = services.find((each) => subjectOf(each) === finding.subject);
    const thing = service && room.solids.find(({ name }) => name === service.of);
    if (!finding.measured || !thing) return undefined;
    const opening = openingFor(service, thing, room);
    return opening
      ? throughSteps(thing, opening, room)
      : insideSteps(thing, room, limit('service-reach').value);
  },
});

/** Which opening a thing is reached through; from underneath it is the one in the floor below it. */
const openingFor = ({ from }: Service, thing: Solid, room: Layout): ShellOpening | undefined =>
  room.openings.find(({ name }) => name === from) ??
  (from === 'underneath' ? hatchBelow(thing, room) : undefined);

const hatchBelow = (thing: Solid, { openings }: Layout): ShellOpening | undefined =>
  openings.find(
    ({ surface, box }) => surface === 'floor' && overlap(planOf(thing.box), planOf(box)).length > 0,
  );

function serviced(service: Service, room: Layout, reach: EffectiveLimit): Finding {
  const { of, from } = service;
  const thing = room.solids.find(({ name }) => name === of);
  if (!thing)
    return notChecked(
      service,
      say`The plan does not say where ${of} is.`,
      keysOfRoom(of, service.path, room),
    );
  const opening = room.openings.find(({ name }) => name === from);
  if (opening) return throughOpening({ service, thing, room, reach }, opening);
  if (from === 'underneath') return fromUnderneath({ service, thing, room, reach });
  if (from === 'inside') return fromInside({ service, thing, room, reach });
  const vague = room.unplacedOpenings.find(({ name }) => name === from);
  return notChecked(
    service,
    say`The plan does not say where ${from} is.`,
    vague?.missing.map((key) => `van.openings.${from}.${key}`) ?? [`van.openings.${from}`],
  );
}

interface Case {
  readonly service: Service;
  readonly thing: Solid;
  readonly room: Layout;
  readonly reach: EffectiveLimit;
}

const subjectOf = ({ of, from }: Service): string =>
  from === 'inside'
    ? `${of} from inside`
    : from === 'underneath'
      ? `${of} from underneath`
      : `${of} through ${from}`;

function notChecked(service: Service, reason: Phrase, keys: readonly string[]): Finding {
  return fitFinding(text, {
    verdict: 'not checked',
    subject: subjectOf(service),
    path: service.path,
    reason,
    remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
    missing: keys,
  });
}

function throughOpening({ service, thing, room, reach }: Case, opening: ShellOpening): Finding {
  const way = wayTo[opening.surface];
  const distanceM = distanceTo(thing.box, opening.box, way);
  const sweep = swept(thing.box, way, 0, distanceM);
  const blocking = sweep ? inTheWay(thing, sweep, room, opening.surface === 'rear doors') : [];
  const subject = subjectOf(service);
  if (sweep && blocking.length > 0) {
    const names = listed(blocking.map(({ name }) => say`${name}`));
    return fitFinding(text, {
      verdict: 'fail',
      subject,
      path: service.path,
      reason: say`${names} ${blocking.length === 1 ? 'stands' : 'stand'} between ${thing.name} and ${opening.name}, and must come out first.`,
      remedy: say`Clear the way of ${length(distanceM)} from ${thing.name} to ${opening.name}: ${listed(blocking.map((other) => moveAside(other, sweep, way)))}.`,
    });
  }
  const masked = maskedBy(thing.box, opening, way);
  if (shownShare(thing.box, opening, way) < shownEnough - 1e-9)
    return fitFinding(text, {
      verdict: 'warn',
      subject,
      path: service.path,
      reason: say`Behind ${opening.name} only a part of ${thing.name} shows: ${listed(masked.map(({ side, byM }) => say`${length(byM)} of it ${side}`))} lies beyond the edge of the opening.`,
      remedy: say`${masked.length === 1 ? moveBack(thing, masked) : say`Make ${opening.name} larger by that much`}, or see to it that what must be undone is in the part that shows.`,
    });
  return judge({
    rule: text,
    subject,
    path: service.path,
    kind: 'length',
    measured: { value: distanceM, standard: 0 },
    limit: reach.value,
    sense: 'at most',
    broken: reach.failing ? 'fail' : 'warn',
    reason: say`Nothing in the plan stands on the straight way of ${length(distanceM)} from ${opening.name} to ${thing.name}.${masked.length > 0 ? say` ${listed(masked.map(({ side, byM }) => say`${length(byM)} of it ${side}`))} lies beyond the edge of the opening.` : ''}`,
    remedy: (shortM) =>
      say`Move ${thing.name} ${length(upToMillimetre(shortM))} nearer to ${opening.name}, or bring its drain, valve or cap there.`,
    sources: reach.citations,
    cautions: reach.cautions,
  });
}

const moveBack = (thing: Solid, masked: readonly Masked[]): Phrase =>
  say`Move ${thing.name} ${listed(masked.map(({ byM, back }) => say`${length(byM)} ${back}`))}`;

function fromUnderneath(found: Case): Finding {
  const { service, thing, room } = found;
  if (thing.whereabouts === 'under the floor')
    return fitFinding(text, {
      verdict: 'pass',
      subject: subjectOf(service),
      path: service.path,
      reason: say`${thing.name} hangs under the floor.`,
    });
  const hatch = hatchBelow(thing, room);
  if (hatch) return throughOpening(found, hatch);
  return fitFinding(text, {
    verdict: 'fail',
    subject: subjectOf(service),
    path: service.path,
    reason: say`${thing.name} stands ${length(Math.max(0, thing.box.bottomM))} above the floor, and the plan has no opening in the floor below it.`,
    remedy: say`Plan an opening in the floor below it, ${length(thing.box.mostXM - thing.box.leastXM)} × ${length(thing.box.mostYM - thing.box.leastYM)} to show all of it, or another side to service it from.`,
  });
}

function fromInside({ service, thing, room, reach }: Case): Finding {
  if (thing.whereabouts !== 'inside')
    return fitFinding(text, {
      verdict: 'not checked',
      subject: subjectOf(service),
      path: service.path,
      reason: say`${thing.name} is ${thing.whereabouts}, and the plan does not lay out the way to it from there.`,
      remedy: say`Name the opening that it is serviced through as \`${service.path.join('.')}\`.`,
      missing: [service.path.join('.')],
    });
  const places = floorBeside(thing, room, reach.value);
  const best = deepestOf(places);
  const depthM = best?.depthM ?? 0;
  return judge({
    rule: text,
    subject: subjectOf(service),
    path: service.path,
    kind: 'length',
    measured: { value: depthM, standard: 0 },
    limit: standingM,
    sense: 'at least',
    broken: 'warn',
    reason: best
      ? say`The most free floor within ${length(reach.value)} of ${thing.name} is ${best.words}: ${length(depthM)} deep, up to ${best.end}.`
      : say`There is no free floor within ${length(reach.value)} of ${thing.name} on any side, or something else stands in between.`,
    remedy: (shortM) =>
      best
        ? say`Move ${best.endMoves ? best.end : thing.name} ${length(upToMillimetre(shortM))} away, or name the opening that ${thing.name} is serviced through.`
        : say`Leave ${length(standingM)} of floor free beside ${thing.name}, or name the opening that it is serviced through.`,
    sources: [standing, ...reach.citations],
    cautions: reach.cautions,
  });
}
