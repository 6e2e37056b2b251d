import type { Build } from '../../build/build.ts';
import type { Circuit, Electrical } from '../../build/electrical.ts';
import type { Finding } from '../../engine/finding.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { electrical, figuresOf } from '../circuits.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';

const text: RuleText = {
  id: 'electrical.alarms',
  topic: 'electrical',
  title: 'alarms with a supply of their own',
  why: 'An alarm behind a switch is off on the night when it counts.',
  formula: 'every alarm: `switched: false`, and no isolator on the way from the battery to it',
  sources: [
    {
      title: 'Alarms are supplied without any switch between them and the battery',
      provenance: 'common practice',
      caution: 'No source.',
    },
    {
      title: 'EN 50291-2:2019, scope: carbon monoxide alarms for recreational vehicles and craft',
      readAt: 'https://standardsupdate.com/en/cei/cei-en-50291-2_2725404.html',
      provenance: 'read',
      caution: 'The scope alone was read. That anything that burns fuel calls for such an alarm is advice.',
    },
  ],
  cautions: [
    electricalCaution,
    'Carbon monoxide has no smell and kills people in their sleep: whatever burns fuel calls for an alarm for it, made for vehicles, at the height at which sleepers breathe, as its maker says. Propane and butane sink, smoke rises. Test every alarm when it is fitted and before every journey, and mind the date on it; nothing here shows that one will sound.',
  ],
  fix: 'Take the supply of each alarm from the battery before any switch, and write `switched: false`.',
  lifeSafety: true,
  place: ['electrical', 'circuits'],
};

type Alarm = NonNullable<Circuit['alarm']>;

export default defineRule({
  ...text,
  needs: { electrical },
  check: ({ build, facts }) => {
    const seen = facts.electrical.circuits.flatMap((circuit) => {
      const { alarm } = circuit;
      return alarm ? [lookAt(facts.electrical, circuit, alarm)] : [];
    });
    const absent = wantedOf(build).filter((kind) => seen.every(({ alarm }) => alarm !== kind));
    return {
      findings: [
        ...seen.filter(({ faults }) => faults.length > 0).map(interruptible),
        ...notSaid(
          seen.filter(({ faults, missing }) => faults.length === 0 && missing.length > 0),
          absent,
        ),
        ...uninterrupted(seen.filter(({ faults, missing }) => faults.length + missing.length === 0)),
      ],
    };
  },
});

interface Seen {
  readonly circuit: Circuit;
  readonly alarm: Alarm;
  /** What can switch it off. */
  readonly faults: readonly string[];
  /** A fault that is not the circuit's own. */
  readonly isolators: readonly string[];
  readonly missing: readonly string[];
}

function lookAt(plan: Electrical, circuit: Circuit, alarm: Alarm): Seen {
  const chain = figuresOf(plan).get(circuit.name)?.chain;
  const kinds = new Map(plan.distribution.map(({ name, kind }) => [name, kind]));
  // Without a whole chain at least the point that it comes from is known.
  const points = chain ? chain.map(({ from }) => from) : [circuit.from];
  const isolators = points.filter((name) => kinds.get(name) === 'isolator');
  const key = circuit.path.join('.');
  return {
    circuit,
    alarm,
    isolators,
    faults: [
      ...(circuit.switched === true ? ['has a switch of its own'] : []),
      ...(isolators.length > 0 ? [`is behind ${namesOf(isolators)}, which switches it off`] : []),
    ],
    missing: [
      ...(circuit.switched === undefined ? [`${key}.switched`] : []),
      ...(chain ? [] : ['electrical.circuits.NAME.to']),
    ],
  };
}

const isGasAboard = ({ bodies }: Build): boolean => bodies.some(({ variable }) => variable?.group === 'gas');

/** What burns other than gas the plan does not say. */
const wantedOf = (build: Build): readonly Alarm[] =>
  isGasAboard(build) ? ['gas alarm', 'carbon monoxide alarm', 'smoke alarm'] : ['smoke alarm'];

const interruptible = ({ circuit, alarm, faults, isolators }: Seen): Finding =>
  observed(text, {
    verdict: 'warn',
    subject: circuit.name,
    path: circuit.switched === true ? [...circuit.path, 'switched'] : [...circuit.path, 'from'],
    reason: say`The ${alarm} ${faults.join(' and ')}.`,
    remedy: say`Supply it ${isolators.length > 0 ? 'from `battery`, or from a point before the isolator, ' : ''}through a fuse of its own near its source${circuit.switched === true ? ' and without a switch (`switched: false`)' : ''}, or fit a self-contained alarm with a battery of its own.`,
  });

/** Circuits that say too little, and alarms that no circuit supplies: one finding. */
function notSaid(unclear: readonly Seen[], absent: readonly Alarm[]): readonly Finding[] {
  const [first] = unclear;
  if (!first && absent.length === 0) return [];
  const keys = [
    ...unclear.flatMap(({ missing }) => missing),
    ...(absent.length > 0 ? ['electrical.circuits.NAME.alarm'] : []),
  ];
  const unsaid: Phrase = first
    ? say`Whether ${namesOf(unclear.map(({ circuit }) => circuit.name))} can be switched off is not said. `
    : [];
  const without: Phrase =
    absent.length > 0
      ? say`No circuit supplies a ${namesOf(absent)}; one with a battery of its own needs none, and the plan cannot show it.`
      : [];
  return [
    observed(text, {
      verdict: 'not checked',
      subject: namesOf([...new Set([...unclear.map(({ alarm }) => alarm), ...absent])]),
      path: first?.circuit.path ?? text.place,
      reason: [...unsaid, ...without],
      remedy: say`Add ${[...new Set(keys)].map((key) => `\`${key}\``).join(', ')}${absent.length > 0 ? ', or fit 1 self-contained alarm of each kind' : ''}.`,
      missing: [...new Set(keys)],
    }),
  ];
}

function uninterrupted(good: readonly Seen[]): readonly Finding[] {
  const [first] = good;
  if (!first) return [];
  const kinds = [...new Set(good.map(({ alarm }) => alarm))];
  return [
    observed(text, {
      verdict: 'pass',
      subject: namesOf(good.map(({ circuit }) => circuit.name)),
      path: first.circuit.path,
      reason: say`The plan shows the ${namesOf(kinds)} supplied without a switch or an isolator on the way.`,
    }),
  ];
}
