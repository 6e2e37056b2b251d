import { plan } from './test-van.ts';

/** Things that circuits go to, and the battery's place. */
const things = `
fixtures:
  battery: {mass: 24 kg, size: {length: 400 mm, width: 200 mm, height: 200 mm}, at: {from_front: 3 m, from_left: 0.1 m, above_floor: 0 m}}
  panel: {mass: 3 kg, size: {length: 200 mm, width: 100 mm, height: 200 mm}, at: {from_front: 2 m, from_left: 0.1 m, above_floor: 0 m}}
  fridge: {mass: 22 kg, size: {length: 400 mm, width: 400 mm, height: 500 mm}, at: {from_front: 1 m, from_left: 0.1 m, above_floor: 0 m}}
  pump: {mass: 2 kg, size: {length: 200 mm, width: 150 mm, height: 150 mm}, at: {from_front: 0.2 m, from_left: 0.1 m, above_floor: 0 m}}
  inverter: {mass: 5 kg, size: {length: 300 mm, width: 200 mm, height: 100 mm}, at: {from_front: 3 m, from_right: 0.1 m, above_floor: 0 m}}
  sockets: {mass: 1 kg, size: {length: 100 mm, width: 100 mm, height: 100 mm}, at: {from_front: 1 m, from_right: 0.1 m, above_floor: 1 m}}
`;

/** An electrical part with something of everything, and two circuits that lack keys. */
export const wholeElectrical = `${things}
electrical:
  voltage: 12 V
  coldest: -10 degC
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah, in_parallel: 2, discharge_limit: 100 A, thing: battery}
  distribution:
    fuse box: {kind: fuse box, rating: 100 A, thing: panel, at_once: 80 %}
  circuits:
    main feed: {from: battery, to: fuse box, conductor: 16 mm2, strands: flexible, length: 1.5 m, fuse: {type: "small bolt-in", rating: 60 A, from_source: 100 mm}}
    fridge: {from: fuse box, to: fridge, load: 45 W, conductor: 2.5 mm2, length: 3.2 m, length_back: 1.8 m, fuse: {type: blade, rating: 10 A, from_source: 0 m}, drop: critical}
    pump: {from: fuse box, to: pump, load: 4 A, surge: 10 A, conductor: 12 AWG, tinned: true, length: 4 m, bundled: 2, fuse: {type: blade, rating: 10 A}}
    spare: {from: fuse box, to: sockets}
    inverter feed: {from: battery, to: inverter, conductor: 50 mm2, strands: flexible, length: 1 m, fuse: {type: class T, rating: 150 A, from_source: 150 mm}}
    solar feed: {from: battery, to: panel, conductor: 6 mm2, length: 2 m, lies: roof}
  solar:
    roof: {modules: 2, in_series: 2, power: 115 W, open_circuit: 22.4 V, short_circuit: 6.5 A, controller: {kind: MPPT, current_limit: 20 A, voltage_limit: 100 V}, circuit: solar feed}
  charging_while_driving: {current: 30 A, alternator: 150 A}
  inverter: {power: 1000 W, surge: 2000 W, efficiency: 88 %, idle: 8 W, circuit: inverter feed, changeover: automatic}
  shore: {current: 10 A, residual_current: 30 mA, breaker: 10 A, double_pole: true, bonding: 4 mm2, lead: {length: 25 m, conductor: 2.5 mm2}, charger: {current: 20 A}}
  mains_circuits:
    sockets: {from: both, to: sockets, load: 1000 W, conductor: 2.5 mm2, breaker: 10 A, residual_current: 30 mA}
`;

/** The test van with that part. */
export const electricalVan = plan(wholeElectrical);

/** The test van with things and this electrical part, which is YAML under `electrical`. */
export const wired = (electrical: string): string => plan(`${things}\nelectrical:\n${electrical}`);
