import { contains, overlap, thickerThan } from '../../calc/space/clip.ts';
import { boxFits } from '../../calc/space/fit-in.ts';
import { isBox, TOUCH_TOLERANCE_M } from '../../calc/space/plane.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { fitCaution } from '../cautions.ts';
import { sizeOf, upToMillimetre } from '../clearing.ts';
import { fitFinding, listed, shapesMethod, things } from '../fit-finding.ts';
import { layout } from '../needs.ts';
import { bringIn, type Excess, excessOf, tooLarge } from '../sticking-out.ts';
import { cutSteps, type Held, outsideOf, piecesOutside, sides, stickingSteps } from '../working/contents.ts';

const text: RuleText = {
  id: 'fit.contents',
  topic: 'fit',
  title: 'contents within what holds them',
  why: 'What is larger than the cupboard it is meant for does not go in, and then has no place in the van.',
  formula:
    'out by = how far each side of the thing lies beyond the same side of its host, walls of the host not counted',
  sources: shapesMethod,
  cautions: [
    fitCaution,
    'The host is taken as hollow from edge to edge: the thickness of its boards comes off its inside.',
  ],
  fix: 'Make what holds it larger, or put the thing elsewhere.',
  place: ['fixtures'],
};

const contents: Need<readonly Held[]> = ({ layout }) => {
  if (!layout) return missing('van.load_bay');
  const known = new Map(layout.solids.map((solid) => [solid.name, solid]));
  const held = layout.solids.flatMap((solid) => {
    const host = known.get(solid.hosts[0] ?? '');
    return host ? [{ solid, host }] : [];
  });
  return held.length > 0 ? given(held) : missing('fixtures.NAME.in');
};

export default defineRule({
  ...text,
  needs: { layout, contents },
  check: ({ facts: { contents } }) => {
    const findings = contents.flatMap((held) => {
      if (!held.solid.isInside) return standsBeside(held) ? [offItsHost(held)] : [];
      const excesses = excessOf(held.solid.box, held.host.box);
      if (excesses.length > 0) return [sticksOut(held, excesses)];
      const { outline } = held.host.prism;
      // Within the box of a host that is a box is within the host.
      const isWithin = isBox(outline, held.host.box) || contains([outline], held.solid.prism.outline);
      return isWithin ? [] : [cutsThrough(held)];
    });
    if (findings.length > 0) return { findings };
    return {
      findings: [
        fitFinding(text, {
          subject: 'all contents',
          path: text.place,
          verdict: 'pass',
          reason: say`${things(contents.length)} in or on others: ${contents.length === 1 ? 'it lies' : 'each lies'} within or over what holds it.`,
        }),
      ],
    };
  },
  work: ({ facts }, finding) => {
    const held = facts.contents.find(({ solid }) => solid.name === finding.subject);
    if (!finding.measured || !held) return undefined;
    const excesses = excessOf(held.solid.box, held.host.box);
    return excesses.length > 0 ? stickingSteps(held, excesses, facts.layout) : cutSteps(held, facts.layout);
  },
});

/** Nothing of it is over what it is said to stand on. */
const standsBeside = ({ solid, host }: Held): boolean =>
  !thickerThan({ outlines: overlap(solid.prism.outline, host.prism.outline), holes: [] }, TOUCH_TOLERANCE_M);

const offItsHost = ({ solid, host }: Held) =>
  fitFinding(text, {
    subject: solid.name,
    path: [...solid.path, 'on'],
    verdict: 'fail',
    reason: say`${solid.name} is on ${host.name}, but its place is beside it: nothing of ${solid.name} is over ${host.name}.`,
    remedy: say`Look at \`at\`: it counts from the front left corner of ${host.name}, which is ${length(sizeOf(host.box).lengthM)} long and ${length(sizeOf(host.box).widthM)} wide.`,
  });

const dimensions = { lengthM: 'length', widthM: 'width', heightM: 'height' } as const;

function sticksOut({ solid, host }: Held, excesses: readonly Excess[]) {
  const [worst] = excesses;
  const [size, room] = [sizeOf(solid.box), sizeOf(host.box)];
  const [largest] = tooLarge(size, room);
  const turned = boxFits(size, room, { upright: true });
  const mend = bringIn(solid.name, excesses, size, room);
  const cannot =
    largest === undefined
      ? ''
      : say` It cannot fit${turned ? ' this way round' : ' at all'}: its ${dimensions[largest]} is ${length(size[largest])}, and ${host.name} has ${length(room[largest])}.`;
  return fitFinding(text, {
    subject: solid.name,
    path: solid.path,
    verdict: 'fail',
    ...(worst && { measured: length(worst.byM) }),
    reason: say`Not all of ${solid.name} is within ${host.name}: ${listed(excesses.map(({ side, byM }) => say`${length(byM)} outside ${sides[side]}`))}.${cannot}`,
    remedy:
      turned && largest !== undefined
        ? say`Turn ${solid.name} a quarter round, so that it is ${length(size.widthM)} long and ${length(size.lengthM)} wide. Or else: ${mend}`
        : mend,
  });
}

/** Within the box of its host, but not within its outline: into a corner that is cut off, or out of a round. */
function cutsThrough(held: Held) {
  const { solid, host } = held;
  const outside = piecesOutside(held);
  const { leastXM, mostXM, leastYM, mostYM } = outsideOf(held);
  const byM = Math.min(mostXM - leastXM, mostYM - leastYM);
  return fitFinding(text, {
    subject: solid.name,
    path: solid.path,
    verdict: 'fail',
    measured: length(byM),
    reason: say`Not all of ${solid.name} is within the shape of ${host.name}, though it is within the box about it: ${length(mostXM - leastXM)} by ${length(mostYM - leastYM)} of its plan, from ${length(leastXM)} behind the front of the load bay, ${outside.length === 1 ? 'is' : 'are'} outside.`,
    remedy: say`Move ${solid.name} at least ${length(upToMillimetre(byM))} further into ${host.name}, or cut that corner off.`,
  });
}
