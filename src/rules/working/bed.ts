import type { Layout, Solid } from '../../build/layout.ts';
import { widthAt } from '../../calc/space/shell.ts';
import { bodyCorrections } from '../../catalogue/body-measures.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { count, length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { narrowestHeight } from '../clear-height.ts';
import { type Bed, type Lying, lyingIn, type Peopled, shouldersM } from '../peopled-beds.ts';
import { told } from '../told.ts';
import { betweenCorners } from './rise.ts';

/*
 * How long someone lies, and how long and wide the bed is.
 */

const sleepers: PlanPath = ['people', 'sleepers'];

/** The limit comes last but one, what is held against it last. */
export function bedLengthSteps(bed: Peopled, clearanceM: number, room: Layout): readonly Step[] {
  const { tallestM } = bed;
  if (tallestM === undefined) return [];
  const lying = lyingIn(bed, tallestM, clearanceM);
  const { how, lyingM, wantedM, diagonalM, crossM } = lying;
  const straight = straightSteps(bed, room);
  const body: Step = {
    what: `What the body takes, lying: the stature of ${whose(bed)}, and a little more than standing`,
    sum: say`${told(tallestM)} + ${told(bodyCorrections.supine.valueM)}`,
    result: length(lyingM),
    paths: [sleepers],
  };
  if (how === 'not stretched out')
    return crossM === undefined ? [body, ...straight] : [...straight, body, cornersStep(bed, lying, crossM)];
  const wanted: Step = {
    what: 'The least length of the bed, with room to move',
    sum: say`${told(lyingM)} + ${told(clearanceM)} beyond feet and head`,
    result: length(wantedM),
  };
  const corners = diagonalM === undefined ? [] : [cornersStep(bed, lying, diagonalM)];
  return [body, ...corners, wanted, ...straight];
}

const whose = ({ sleepers: howMany }: Peopled): string =>
  howMany > 1 ? 'the taller who sleeps there' : 'who sleeps there';

/** The greatest body across the corners, put to the test: it and its shoulders just fit. */
function cornersStep({ lengthM, widthM, bed }: Bed, { lyingM }: Lying, longestM: number): Step {
  return {
    what: `The longest body, p, that lies across the corners of ${bed.name}, with shoulders q as wide as a broad man's`,
    sum: say`it needs a bed w = (2·p·q·l + (p² − q²)·√(p² + q² − l²)) / (p² + q²) wide: with p = ${told(longestM)}, q = ${told(shouldersM)} and l = ${told(lengthM)} just the ${told(widthM)} that there are; the body takes ${told(lyingM)}`,
    result: length(longestM),
  };
}

const sizesOf = ({ bed, surface }: Bed): readonly PlanPath[] =>
  (surface.cushions.length > 0 ? surface.cushions : [bed]).flatMap(({ path }: Solid) => [
    [...path, 'size', 'length'],
    [...path, 'size', 'width'],
  ]);

/** "1890 mm along the van and 1220 mm across it" */
function sidesInWords({ bed, surface: { box, cushions } }: Bed): Phrase {
  const part = cushions.length > 0 ? say`, as much of what lies on it as ${bed.name} bears` : [];
  return say`${told(box.mostXM - box.leastXM)} along the van and ${told(box.mostYM - box.leastYM)} across it${part}`;
}

function straightSteps(bed: Bed, room: Layout): readonly Step[] {
  const { lostM, lengthM, widthM, acrossM, body, surface } = bed;
  const { box } = surface;
  const longM = Math.max(box.mostXM - box.leastXM, box.mostYM - box.leastYM);
  const whole: Step = {
    what: `The length of ${bed.bed.name}: the longer of its sides`,
    sum: sidesInWords(bed),
    result: length(longM),
    paths: sizesOf(bed),
  };
  if (lostM === 0 || acrossM === undefined || !body) return [whole];
  const { profile } = room.shell;
  const heightM = narrowestHeight(room.shell, body.fromM, body.toM);
  const corners = profile.map((each, index) => ({
    at: each.heightM,
    value: each.widthM,
    path: ['van', 'load_bay', 'profile', index],
  }));
  const { sum, paths } = betweenCorners(corners, heightM, ['van', 'load_bay', 'width']);
  const half = told(acrossM / 2);
  return [
    whole,
    {
      what: 'Clear between the walls where the body lies, at the narrowest',
      sum: say`${sum}; the body lies between ${told(body.fromM)} and ${told(body.toM)} above the floor`,
      result: length(widthAt(profile, heightM)),
      paths,
    },
    {
      what: `What of ${bed.bed.name} lies between them: right of the centre line and left of it, to the wall at the most`,
      sum: say`the lesser of ${told(box.mostYM)} and ${half} + the lesser of ${told(-box.leastYM)} and ${half}`,
      result: length(longM - lostM),
    },
    ...(longM - lostM < widthM
      ? [{ what: 'Its other side is longer, so one lies along that', result: length(lengthM) }]
      : []),
  ];
}

export function bedWidthSteps(bed: Peopled, singleM: number): readonly Step[] {
  const { sleepers: howMany, widthM } = bed;
  return [
    {
      what: 'The least width for those who sleep there',
      sum: say`${count(howMany)} · ${told(singleM)}`,
      result: length(howMany * singleM),
      paths: [sleepers],
    },
    {
      what: `The width of ${bed.bed.name}: the shorter of its sides`,
      sum: sidesInWords(bed),
      result: length(widthM),
      paths: sizesOf(bed),
    },
  ];
}
