import type { Air } from '../../build/air.ts';
import { type Fanned, fanKeys, fanned, type KnownFan, knownFans } from '../../build/fanned.ts';
import type { Solid } from '../../build/layout.ts';
import type { AirLimitId } from '../../catalogue/air/limits.ts';
import type { Finding, Part, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { airFlow } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { airLimit } from '../air-facts.ts';
import { airCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { some } from '../needs.ts';
import { namesOf } from '../routed.ts';
import { balanceSteps } from '../working/fans.ts';

const text: RuleText = {
  id: 'air.wet-room',
  topic: 'air',
  title: 'air out of shower and toilet',
  why: 'A shower leaves half a litre of water in the air in ten minutes: drawn out at once it never reaches the bedding.',
  formula:
    'ΣQ_exhaust ≥ Q_limit of the shower while it runs, of the toilet all the time; the flow that the open vents leave to the fans, m³/s',
  sources: [
    {
      title:
        'A fan counts for a shower or a toilet if it serves it or what it stands in, else a fan of the whole room does; a vent without a fan draws nothing out for certain',
      provenance: 'own choice',
    },
  ],
  cautions: [airCaution],
  fix: 'Give the shower and the toilet a fan or a vent of their own.',
  limits: ['extract-wet-room-brief', 'extract-toilet'],
  place: ['air', 'fans'],
};

const wet: Need<readonly Solid[]> = (build) => {
  const found = some('fixtures.NAME.is', ({ solids }) =>
    solids.filter(({ use }) => use === 'shower' || use === 'toilet'),
  )(build);
  return found;
};

const air: Need<Air> = ({ air: found }) => {
  if (!found) return missing('air.fans', 'air.vents');
  const keys = found.fans.filter(({ blows }) => blows !== 'intake').flatMap(fanKeys);
  return keys.length > 0 ? missing(...keys) : { ok: true, value: found };
};

export default defineRule({
  ...text,
  needs: { wet, air },
  check: ({ facts }) => ({
    findings: foldPasses(
      facts.wet.map((thing) => findingFor(thing, facts.air)),
      'place',
    ),
  }),
  work: ({ facts }, { subject }) => {
    const thing = facts.wet.find(({ name }) => name === subject);
    return thing && steps(thing, facts.air);
  },
});

interface Drawing {
  /** Fans that serve it or what it stands in; without any, those of the whole room. */
  readonly counted: readonly KnownFan[];
  readonly isOwn: boolean;
  readonly together?: Fanned;
  readonly flowM3PerS: number;
}

function drawingFrom({ name, hosts }: Solid, all: Air): Drawing {
  const around = new Set([name, ...hosts]);
  const exhausts = knownFans(all).filter(({ blows }) => blows === 'exhaust');
  const own = exhausts.filter(({ fan }) => fan.serves !== undefined && around.has(fan.serves));
  const counted = own.length > 0 ? own : exhausts.filter(({ fan }) => fan.serves === undefined);
  if (counted.length === 0) return { counted, isOwn: false, flowM3PerS: 0 };
  const together = fanned(all, counted);
  return {
    counted,
    isOwn: own.length > 0,
    together,
    flowM3PerS: together.flowsM3PerS.reduce((sum, each) => sum + each, 0),
  };
}

function steps(thing: Solid, all: Air): readonly Step[] {
  const { counted, isOwn, together, flowM3PerS } = drawingFrom(thing, all);
  const what = `What is drawn out of ${isOwn ? thing.name : 'the whole room'}`;
  if (!together) return [{ what, sum: say`no fan draws anything out`, result: airFlow(0) }];
  const rows = counted.map(
    ({ fan, openFlowM3PerS }, index): Part => ({
      name: fan.name,
      path: fan.path,
      origin: 'computed',
      values: [airFlow(openFlowM3PerS)],
      adds: airFlow(together.flowsM3PerS[index] ?? 0),
    }),
  );
  return [
    ...balanceSteps(counted, together),
    { what, result: airFlow(flowM3PerS), parts: { columns: ['in the open', 'moves'], rows } },
  ];
}

function findingFor(thing: Solid, all: Air): Finding {
  const { name, path, use, hosts } = thing;
  const row = airLimit(limitOf(use));
  const around = new Set([name, ...hosts]);
  const { counted, isOwn, flowM3PerS } = drawingFrom(thing, all);
  const vents = all.vents.filter(({ serves }) => serves !== undefined && around.has(serves));
  return judge({
    rule: text,
    subject: name,
    path,
    kind: 'air flow',
    measured: { value: flowM3PerS, standard: 0 },
    limit: row.value,
    sense: 'at least',
    broken: 'warn',
    reason: say`${fansInWords(counted, isOwn, flowM3PerS, name)}${ventsInWords(vents.map((vent) => vent.name))} A ${use ?? ''} asks for ${airFlow(row.value)}.`,
    remedy: (shortM3PerS) =>
      say`Let a fan draw ${airFlow(counted.length === 0 ? row.value : shortM3PerS)}${counted.length === 0 ? '' : ' more'} out of it, with a vent or a gap under its door that lets as much in.`,
    sources: row.citations,
    cautions: row.cautions,
  });
}

const limitOf = (use: Solid['use']): AirLimitId =>
  use === 'shower' ? 'extract-wet-room-brief' : 'extract-toilet';

function fansInWords(fans: readonly KnownFan[], isOwn: boolean, flowM3PerS: number, name: string): Phrase {
  const names = namesOf(fans.map(({ fan }) => fan.name));
  if (fans.length === 0) return say`No fan draws air out of ${name} or out of the room.`;
  const verb = fans.length === 1 ? 'draws' : 'draw';
  return say`${names} ${verb} ${airFlow(flowM3PerS)} out of ${isOwn ? name : 'the whole room'} with the vents open.`;
}

const ventsInWords = (names: readonly string[]): string =>
  names.length === 0 ? '' : ` ${namesOf(names)} ${names.length === 1 ? 'opens' : 'open'} it to the outside.`;
