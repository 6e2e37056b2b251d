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

/**
 * A plan with room for everything and ways for what runs: cupboards along both walls and over them, with things in
 * them, an aisle between; among them beds, seats, sinks, and a few that stand in each other by mistake; cables, pipes
 * and ducts through a grid of chases. All numbers follow from the counts, so that the plan is always the same.
 */
export function planWithRoutes(bodies: number, runs: number): string {
  const uses = ['bed', 'seat', 'sink', 'cooker', 'worktop', 'wardrobe'];
  const hosts = 50;
  const fixtures = Array.from({ length: bodies }, (_, at) => {
    const massKg = (0.3 + ((at * 7919) % 97) / 100).toFixed(2);
    if (at < hosts) return `  cupboard ${at}: ${cupboard(at, uses[at % 9])}`;
    const [host, nth] = [at % hosts, Math.floor(at / hosts) - 1];
    // Three rows of three in each; every fiftieth is a little too long for its place.
    const lengthMm = at % 50 === 7 ? 90 : 70;
    return `  part ${at}: {mass: ${massKg} kg ± 5 %, in: cupboard ${host}, size: {length: ${lengthMm} mm, width: 60 mm, height: 70 mm}, at: {from_front: ${10 + 80 * (nth % 3)} mm, from_left: ${20 + 110 * Math.floor(nth / 3)} mm, above_floor: 20 mm}}`;
  });
  const columns = 12;
  const points = Array.from(
    { length: 60 },
    (_, at) =>
      `    p${at}: {at: {from_front: ${100 + 270 * (at % columns)} mm, from_left: ${60 + 400 * Math.floor(at / columns)} mm, above_floor: ${at % 2 === 0 ? 60 : 1700} mm}}`,
  );
  const chases = points.flatMap((_, at) => [
    ...((at + 1) % columns === 0 ? [] : [chase(at, at + 1)]),
    ...(at + columns < points.length ? [chase(at, at + columns)] : []),
  ]);
  const kinds = ['cable', 'water', 'cable', 'duct'];
  const routed = Array.from({ length: runs }, (_, at) => {
    const [from, to] = [hosts + ((at * 37) % (bodies - hosts)), hosts + ((at * 101 + 13) % (bodies - hosts))];
    return `    run ${at}: {carries: ${kinds[at % 4]}, from: part ${from}, to: part ${to === from ? to - 1 : to}, diameter: ${3 + (at % 5)} mm, linear_mass: 0.05 kg/m}`;
  });
  return [
    frame.replace('  fuel_tank:', `${shell}  fuel_tank:`),
    'fixtures:',
    ...fixtures,
    'routes:',
    '  points:',
    ...points,
    '  chases:',
    ...chases,
    '  runs:',
    ...routed,
    '',
  ].join('\n');
}

const shell = `  openings:
    sliding door: {kind: door, in: left wall, length: 1050 mm, height: 1600 mm, at: {from_front: 100 mm}}
    rear doors: {kind: door, in: rear doors, width: 1540 mm, height: 1750 mm, at: {centred: true}}
    window: {kind: window, in: right wall, length: 700 mm, height: 400 mm, escape: true, at: {from_front: 2200 mm, above_floor: 950 mm}}
`;

/** Ten along each wall on the floor, but for the door; two rows of lockers over them. Every twelfth is too long. */
function cupboard(at: number, use: string | undefined): string {
  const [tier, place] = [Math.floor(at / 20), at % 20];
  const isLeft = place < 10;
  const fromFrontMm = isLeft && tier === 0 ? 1200 + 205 * place : 20 + 322 * (place % 10);
  const lengthMm = (isLeft && tier === 0 ? 200 : 317) + (at % 12 === 5 ? 20 : 0);
  const [bottomMm, heightMm] = [
    [0, 850],
    [1250, 300],
    [1560, 300],
  ][tier] ?? [0, 850];
  const side = isLeft ? 'from_left' : 'from_right';
  const is = use === undefined ? '' : `is: ${use}, `;
  const opens =
    at % 5 === 2 ? `, opens: {door: {kind: door, side: ${isLeft ? 'right' : 'left'}, hinge: left}}` : '';
  return `{${is}mass: 9 kg ± 1 kg, size: {length: ${lengthMm} mm, width: ${tier === 0 ? 450 : 350} mm, height: ${heightMm} mm}, at: {from_front: ${fromFrontMm} mm, ${side}: 0 mm, above_floor: ${bottomMm} mm}, fixings: {count: 8, each: 60 kg}${opens}}`;
}

const chase = (from: number, to: number): string =>
  `    c${from} to ${to}: {between: [p${from}, p${to}], carries: [${(from * 7 + to) % 5 === 0 ? 'cable' : 'cable, water, duct'}], bore: ${40 + (from % 4) * 10} mm, runs: inside}`;

/** Circuits from ten fuse boxes, each with hours of use, and a year at one place: everything the energy checks need. */
export function planWithCircuits(circuits: number): string {
  const boxes = Array.from({ length: 10 }, (_, at) => at);
  const loads = Array.from({ length: circuits }, (_, at) => at);
  return `storystick: 1
codes: uk
van: {max_mass: 3500 kg, load_bay: {behind_front_axle: 1130 mm, length: 3270 mm, width: 1760 mm, height: 1890 mm}}
fixtures:
${loads.map((at) => `  thing ${at}: {mass: 1 kg, at: {from_front: ${(at * 9) % 3200} mm, centred: true, above_floor: 0 mm}}`).join('\n')}
electrical:
  voltage: 12 V
  coldest: -10 degC
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 400 Ah, internal_resistance: 10 mohm}
  distribution:
${boxes.map((at) => `    box ${at}: {kind: fuse box, rating: 100 A}`).join('\n')}
  circuits:
${boxes.map((at) => `    feed ${at}: {from: battery, to: box ${at}, conductor: 16 mm2, length: 1 m, fuse: {type: small bolt-in, rating: 60 A, from_source: 100 mm}}`).join('\n')}
${loads.map((at) => `    load ${at}: {from: box ${at % 10}, to: thing ${at}, load: ${2 + (at % 7)} W, hours: 1 h, conductor: 1.5 mm2, length: ${1 + (at % 5)} m, fuse: {type: blade, rating: 3 A}}`).join('\n')}
  solar:
    roof: {modules: 2, power: 175 W, open_circuit: 24.3 V, short_circuit: 9.1 A, controller: {kind: MPPT, current_limit: 40 A, voltage_limit: 75 V}}
living:
  nights_off_grid: 2
  place: {latitude: 55.9, longitude: -3.2}
`;
}
