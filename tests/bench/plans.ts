/**
 * A plan with this many fixtures, written as people write them: each with a mass and its tolerance, a size and a
 * place, one in ten standing in another. All numbers follow from the fixture's number, so that the plan is always
 * the same.
 */
export function planWithFixtures(count: number): string {
  const fixtures = Array.from({ length: count }, (_, at) => {
    const massKg = (0.05 + ((at * 7919) % 97) / 1000).toFixed(3);
    const host = at % 10 === 9 ? `, in: part ${at - 9}` : '';
    const place =
      host === ''
        ? `from_front: ${(at * 37) % 3000} mm, from_left: ${(at * 53) % 1500} mm, above_floor: ${(at * 29) % 1700} mm`
        : 'from_front: 5 mm, from_left: 5 mm, above_floor: 0 mm';
    return `  part ${at}: {mass: ${massKg} kg ± 5 %, size: {length: 90 mm, width: 60 mm, height: 40 mm}, at: {${place}}${host}}`;
  });
  return `${frame}\nfixtures:\n${fixtures.join('\n')}\n`;
}

const frame = `storystick: 1
name: Bench
codes: uk
van:
  max_mass: 7500 kg
  axle_limits: {front: 3500 kg, rear: 4500 kg}
  unladen: {front: 1194 kg ± 8 kg, rear: 870 kg ± 8 kg, from: weighbridge, includes: {driver: false, fuel: 25 %}, centre_height: 680 mm ± 30 mm}
  wheelbase: 3640 mm
  track: 1710 mm
  overall_length: 5.54 m
  load_bay: {behind_front_axle: 1130 mm, length: 3270 mm, width: 1760 mm, height: 1890 mm, floor_above_ground: 560 mm}
  fuel_tank: {holds: 75 L, fuel: diesel, at: {from_front: -250 mm, from_left: 350 mm}}
people:
  seats: {driver: {mass: 78 kg ± 3 kg, at: {from_front: -700 mm, from_left: 1270 mm, above_floor: 650 mm}}}
tanks:
  fresh tank: {contents: fresh, holds: 70 L, at: {from_front: 1500 mm, centred: true, above_floor: 0 mm}}
  waste tank: {contents: waste, holds: 50 L, at: {from_front: 900 mm, from_right: 300 mm, above_floor: -330 mm}}
stores:
  clothes: {full: 42 kg ± 6 kg, empty: 12 kg, at: {from_front: 1200 mm, from_left: 0 mm, above_floor: 900 mm}}
`;

/** A plan without its \`params\`: what they are used for is written out. Throws where that leaves a name behind. */
export function withoutExpressions(plan: string): string {
  const written = plan
    .replace(/^params:\n(?: .*\n)+/m, '')
    .replaceAll('2 * shelf_mass', '4.8 kg ± 0.6 kg')
    .replaceAll('4 * shelf_mass', '9.6 kg ± 1.2 kg')
    .replaceAll('locker_depth', '300 mm');
  if (/^params:|\* |_depth|_mass: \w+_/m.test(written)) {
    throw new Error('The example has expressions that tests/bench/plans.ts does not know how to write out.');
  }
  return written;
}

/** A plan with one misspelt key in each fixture, store and tank: nothing is checked, everything is explained. */
export const withProblems = (plan: string): string =>
  plan
    .replaceAll('{mass: ', '{mas: ')
    .replaceAll('{full: ', '{ful: ')
    .replaceAll('{contents: ', '{content: ');
