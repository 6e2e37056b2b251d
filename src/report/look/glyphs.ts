/** How a line leaves a cell: the greater one wins where two meet. */
export const arm = { none: 0, dashed: 1, light: 2, heavyDashed: 3, heavy: 4, double: 5 } as const;
export type Arm = (typeof arm)[keyof typeof arm];

/** The lines that leave a cell upwards, to the right, downwards and to the left. */
export type Arms = readonly [up: Arm, right: Arm, down: Arm, left: Arm];

/** All joints of light and heavy lines: up × 27 + right × 9 + down × 3 + left, each none, light or heavy. */
const joints = ' ╴╸╷┐┑╻┒┓╶─╾┌┬┭┎┰┱╺╼━┍┮┯┏┲┳╵┘┙│┤┥╽┧┪└┴┵├┼┽┟╁╅┕┶┷┝┾┿┢╆╈╹┚┛╿┦┩┃┨┫┖┸┹┞╀╃┠╂╉┗┺┻┡╄╇┣╊╋';

/** Straight dashed lines and joints of double ones; a double line has no joint with a heavy one. */
const special: ReadonlyMap<string, string> = new Map([
  ['0101', '┄'],
  ['1010', '┆'],
  ['0303', '╍'],
  ['3030', '╏'],
  ['0505', '═'],
  ['5050', '║'],
  ['0550', '╔'],
  ['0055', '╗'],
  ['5500', '╚'],
  ['5005', '╝'],
  ['0525', '╤'],
  ['2505', '╧'],
  ['2525', '╪'],
  ['5250', '╟'],
  ['5052', '╢'],
  ['5252', '╫'],
]);

const isDouble = (each: Arm) => each === arm.double;

/** The box-drawing character for what meets in a cell. */
export function glyphOf(arms: Arms): string {
  // Across a double line a dashed one is as good as a light one.
  const met = arms.some(isDouble) ? arms.map((each) => (each === arm.dashed ? arm.light : each)) : arms;
  const found = special.get(met.join(''));
  if (found !== undefined) return found;
  const weightOf = (each: Arm): number => {
    if (each === arm.none) return 0;
    // A double line ends beside a heavy one and begins again after it; among light ones it is light.
    if (isDouble(each)) return arms.some((other) => other === arm.heavy) ? 2 : 1;
    return each >= arm.heavyDashed ? 2 : 1;
  };
  return joints[arms.reduce<number>((sum, each) => 3 * sum + weightOf(each), 0)] ?? ' ';
}
