import type { Codes } from '../../catalogue/codes.ts';
import { type Starting, withComment } from './starting.ts';

/** What regulators of new vehicles give for propane; see `src/catalogue/gas`. */
const gasPressure: Readonly<Record<Codes, string>> = {
  uk: '30 mbar',
  eu: '30 mbar',
  us: '27.4 mbar',
  au: '2.75 kPa',
};

/** A plan with nearly everything that a plan can say, for a van that is invented. It checks without a failure. */
export const full = ({
  heading,
  name,
  codes,
  units,
  file,
}: Starting): string => `# ${heading}: a whole plan to begin with. Everything in it is invented: a small panel van for one, with a bed, a kitchen,
# water, gas, heat, a battery and a solar module. Put your own van and things in their place, and after each change run
#   storystick check ${file}
# Delete what you do not need: every section but \`van\` is optional, and what is not there is said to be not checked.
#
# Quantities carry their unit: 38 kg, 1.2 m, 47 in, 70 L. A tolerance: 38 kg ± 2 kg, or 38 kg ± 5 %.
# Places are measured as a builder measures, to the nearest face of the thing: from_front from the front of the load bay
# rearwards, from_left and from_right from the wall linings, above_floor from the finished floor. Left and right are as
# seen facing forward. Sizes are length (along the van), width (across) and height.
# For completion and hover in an editor see \`storystick schema --help\`.
storystick: 1
name: ${name}
${withComment(`codes: ${codes}`, 'whose limits: uk, eu, us or au')}
${withComment(`units: ${units}`, 'of the report; a plan may mix them')}

params:                               # names for what is used more than once
  shelf_mass: 1.8 kg ± 0.2 kg

van:
  max_mass: 3000 kg                   # these three stand on the plate on the door pillar
  axle_limits: {front: 1650 kg, rear: 1700 kg}
  unladen:                            # a weighbridge ticket of the empty van is worth the trip
    front: 1080 kg ± 5 kg
    rear: 720 kg ± 5 kg
    from: weighbridge                 # or brochure, which is less certain
    includes: {driver: false, fuel: 50 %}
    centre_height: 650 mm ± 30 mm
  wheelbase: 3400 mm
  track: 1630 mm
  overall_length: 5.28 m
  overall_width: 1.95 m               # without mirrors
  exhaust: {from_rear: -100 mm, from_left: 250 mm, above_floor: -250 mm}   # where the engine's exhaust ends
  load_bay:
    behind_front_axle: 1050 mm        # from the middle of the front axle to where the load bay begins
    length: 3000 mm
    width: 1660 mm
    height: 1880 mm
    floor_above_ground: 560 mm
    ribs:                             # do not drill or cut here
      - {in: left wall, from_front: 1120 mm, width: 60 mm}
      - {in: right wall, from_front: 1080 mm, width: 60 mm}
      - {in: ceiling, from_front: 1120 mm, width: 50 mm}
  wheel_arches: {from_front: 2000 mm, length: 780 mm, width: 170 mm, height: 280 mm}
  openings:
    sliding door: {kind: door, in: right wall, length: 930 mm, height: 1500 mm, at: {from_front: 100 mm}}
    rear doors: {kind: door, in: rear doors, width: 1450 mm, height: 1700 mm, at: {centred: true}}
    bed window: {kind: window, in: right wall, length: 700 mm, height: 500 mm, escape: true, at: {from_front: 1900 mm, above_floor: 900 mm}}
    gas hatch: {kind: hatch, in: right wall, length: 260 mm, height: 450 mm, at: {from_front: 1180 mm, above_floor: 10 mm}}
    roof fan: {kind: vent, in: ceiling, length: 400 mm, width: 400 mm, at: {from_front: 600 mm, centred: true}}
  fuel_tank: {holds: 65 L, fuel: diesel, at: {from_front: -200 mm, from_left: 1000 mm}}
  centre_limits: {height: 850 mm, sideways: 80 mm}   # from the maker's body-building guide

people:
  licence: {category: B, test_passed: 2011-06-20}
  seats:
    driver: {mass: 76 kg ± 3 kg, at: {from_front: -650 mm, from_left: 430 mm, above_floor: 650 mm}}
  sleepers: [{stature: 1.74 m}]

build_ups:                            # layers on the surfaces, from the van's skin inwards; mass and warmth follow
  floor:
    of: floor
    layers:
      - {material: XPS, thickness: 20 mm}
      - {name: vapour barrier, areal_mass: 0.12 kg/m2, vapour_air_layer: 1500 m}
      - {material: birch plywood, thickness: 9 mm}
  walls:
    of: walls
    layers:
      - {material: sheep wool, thickness: 40 mm, share: 85 %}   # not where the ribs are
      - {name: vapour barrier, areal_mass: 0.12 kg/m2, vapour_air_layer: 1500 m}   # or the wool gets wet
      - {material: poplar plywood, thickness: 4 mm}
  ceiling:
    of: ceiling
    layers:
      - {material: sheep wool, thickness: 40 mm, share: 85 %}
      - {name: vapour barrier, areal_mass: 0.12 kg/m2, vapour_air_layer: 1500 m}
      - {material: poplar plywood, thickness: 4 mm}
  rear doors:
    of: rear doors
    layers:
      - {material: sheep wool, thickness: 40 mm, share: 70 %}
      - {name: vapour barrier, areal_mass: 0.12 kg/m2, vapour_air_layer: 1500 m}
      - {material: poplar plywood, thickness: 4 mm}

fixtures:
  # In braces in one line, or key by key in lines of their own: both are the same
  kitchen unit:
    mass: 27 kg ± 3 kg
    size: {length: 1000 mm, width: 460 mm, height: 945 mm}
    at: {from_front: 60 mm, from_left: 0 mm}
    on: floor
    fixings: {count: 12, each: 60 kg}       # what holds it in a crash: each as the mass that may hang on it
    needs_space: {right: 600 mm}            # clear floor to stand in front of it
    opens:
      drawer: {kind: drawer, side: right, from_left: 60 mm, width: 400 mm, travel: 400 mm, above_floor: 600 mm, height: 180 mm}
      door: {kind: door, side: right, from_left: 500 mm, width: 280 mm, above_floor: 20 mm, height: 700 mm, hinge: right}
  worktop: {is: worktop, material: ash, size: {length: 1000 mm, width: 470 mm, height: 27 mm}, at: {from_front: 0 mm, from_left: 0 mm}, on: kitchen unit, fixings: {count: 8, each: 30 kg}}
  fridge: {mass: 19 kg ± 1 kg, size: {length: 420 mm, width: 440 mm, height: 520 mm}, in: kitchen unit, at: {from_rear: 20 mm, from_right: 0 mm, above_floor: 20 mm}}
  sink: {is: sink, mass: 3.5 kg, size: {length: 350 mm, width: 320 mm, height: 150 mm}, on: worktop, at: {from_front: 60 mm, from_left: 60 mm, above_floor: -150 mm}}
  hob: {is: cooker, mass: 3 kg, size: {length: 330 mm, width: 300 mm, height: 80 mm}, on: worktop, at: {from_front: 590 mm, from_left: 90 mm, above_floor: -70 mm}, heat_clearance: {above: 500 mm, left: 60 mm}}   # from its instructions
  bed frame: {mass: 24 kg ± 2 kg, size: {length: 1880 mm, width: 900 mm, height: 500 mm}, at: {from_rear: 20 mm, from_right: 0 mm}, on: floor, fixings: {count: 12, each: 80 kg}, service_from: rear doors, stows: {folding chair: {size: {length: 750 mm, width: 450 mm, height: 80 mm}}}}
  mattress: {is: bed, material: mattress foam, size: {length: 1880 mm, width: 900 mm, height: 100 mm}, at: {from_front: 0 mm, from_left: 0 mm}, on: bed frame, fixings: {count: 4, each: 40 kg}}
  pump: {mass: 2 kg, size: {length: 200 mm, width: 120 mm, height: 120 mm}, in: bed frame, at: {from_front: 500 mm, from_left: 240 mm, above_floor: 0 mm}}
  water heater: {mass: 6.5 kg, size: {length: 300 mm, width: 300 mm, height: 300 mm}, in: bed frame, at: {from_front: 590 mm, from_right: 20 mm, above_floor: 0 mm}}
  air heater: {mass: 3 kg, size: {length: 310 mm, width: 120 mm, height: 130 mm}, in: bed frame, at: {from_front: 520 mm, from_left: 30 mm, above_floor: 0 mm}}
  gas locker: {mass: 5 kg, size: {length: 300 mm, width: 300 mm, height: 480 mm}, in: bed frame, at: {from_front: 60 mm, from_right: 0 mm, above_floor: 0 mm}}
  gas valves: {mass: 1 kg, size: {length: 120 mm, width: 80 mm, height: 80 mm}, in: bed frame, at: {from_front: 380 mm, from_right: 20 mm, above_floor: 350 mm}}
  cupboard:
    is: wardrobe
    mass: 15 kg ± 1 kg
    size: {length: 500 mm, width: 420 mm, height: 900 mm}
    at: {from_front: 1200 mm, from_left: 0 mm}
    on: floor
    fixings: {count: 8, each: 60 kg}
    opens:
      front door: {kind: door, side: right, from_left: 250 mm, width: 250 mm, hinge: right}
      rear door: {kind: door, side: right, from_left: 0 mm, width: 250 mm, hinge: left}
  shelves: {mass: 2 * shelf_mass, in: cupboard}          # arithmetic over params
  battery: {mass: 12 kg ± 0.5 kg, size: {length: 330 mm, width: 180 mm, height: 220 mm}, in: cupboard, at: {from_front: 20 mm, from_left: 20 mm, above_floor: 0 mm}}
  fuse panel: {mass: 2.5 kg, size: {length: 300 mm, width: 80 mm, height: 200 mm}, in: cupboard, at: {from_front: 20 mm, from_left: 20 mm, above_floor: 300 mm}}
  solar module: {mass: 11 kg, size: {length: 1500 mm, width: 670 mm, height: 40 mm}, at: {from_front: 1100 mm, centred: true, above_floor: 1930 mm}, fixings: {count: 8, each: 40 kg}}
  charge controller: {mass: 1.2 kg, in: cupboard}
  driving charger: {mass: 1.1 kg, in: cupboard}
  lights: {count: 6, each: 0.12 kg, solid: false, size: {length: 2200 mm, width: 1000 mm, height: 20 mm}, at: {from_front: 250 mm, centred: true, above_floor: 1840 mm}}
  roof fan: {mass: 4.5 kg, size: {length: 400 mm, width: 400 mm, height: 110 mm}, at: {from_front: 600 mm, centred: true, above_floor: 1840 mm}}
  fire extinguisher: {mass: 2.2 kg, size: {length: 100 mm, width: 100 mm, height: 300 mm}, at: {from_front: -120 mm, from_left: 1200 mm, above_floor: 0 mm}}
  alarms: {count: 3, each: 0.2 kg, size: {length: 120 mm, width: 40 mm, height: 120 mm}, at: {from_front: 2650 mm, from_left: 30 mm, above_floor: 1000 mm}}

tanks:
  fresh tank: {contents: fresh, holds: 40 L, usable: 95 %, drinking_water: true, vent: 12 mm, inspection: 100 mm, filled_from: outside, fill_rate: 8 L/min, overflows_to: outside, mass: 3.5 kg, size: {length: 450 mm, width: 400 mm, height: 280 mm}, in: bed frame, at: {from_front: 20 mm, from_left: 20 mm, above_floor: 0 mm}, service_from: inside, fixings: {count: 4, each: 60 kg}}
  waste tank: {contents: waste, holds: 25 L, usable: 95 %, vent: 12 mm, mass: 2.5 kg, size: {length: 300 mm, width: 250 mm, height: 400 mm}, in: kitchen unit, at: {from_front: 20 mm, from_left: 20 mm, above_floor: 0 mm}, service_from: inside, fixings: {count: 2, each: 60 kg}}
  gas cylinder: {contents: propane, holds: 3 kg, mass: 4.5 kg, size: {length: 240 mm, width: 240 mm, height: 420 mm}, in: gas locker, at: {from_front: 30 mm, centred: true, above_floor: 0 mm}, service_from: gas hatch, fixings: {count: 2, each: 60 kg}}

stores:                               # what comes and goes: its mass at the most and at the least
  clothes: {full: 25 kg ± 4 kg, empty: 8 kg, in: cupboard}
  food and pans: {full: 22 kg ± 3 kg, empty: 8 kg, in: kitchen unit}
  bedding: {full: 7 kg, empty: 7 kg, on: mattress}
  outdoor gear: {full: 30 kg ± 5 kg, empty: 5 kg, size: {length: 800 mm, width: 600 mm, height: 400 mm}, in: bed frame, at: {from_rear: 20 mm, from_left: 20 mm, above_floor: 0 mm}}

routes:                               # where cables and pipes run; their length and mass follow
  slack: 10 %
  points:
    panel: {at: {from_front: 1250 mm, from_left: 60 mm, above_floor: 1000 mm}}
    panel high: {at: {from_front: 1250 mm, from_left: 60 mm, above_floor: 1850 mm}}
    kitchen high: {at: {from_front: 900 mm, from_left: 20 mm, above_floor: 1850 mm}}
    kitchen low: {at: {from_front: 900 mm, from_left: 20 mm, above_floor: 60 mm}}
    roof: {at: {from_front: 1250 mm, from_left: 300 mm, above_floor: 1920 mm}}
    right high: {at: {from_front: 1840 mm, from_right: 30 mm, above_floor: 1850 mm}}
    bed low: {at: {from_front: 1840 mm, from_right: 30 mm, above_floor: 460 mm}}
    pipes at the bed: {at: {from_front: 1590 mm, from_right: 430 mm, above_floor: 40 mm}}
    pipes below the bed: {at: {from_front: 1590 mm, from_right: 430 mm, above_floor: -60 mm}}
    pipes below the kitchen: {at: {from_front: 520 mm, from_left: 400 mm, above_floor: -60 mm}}
    pipes in the kitchen: {at: {from_front: 520 mm, from_left: 400 mm, above_floor: 700 mm}}
    gas at the valves: {at: {from_front: 1500 mm, from_right: 330 mm, above_floor: 350 mm}}
    gas below the valves: {at: {from_front: 1500 mm, from_right: 330 mm, above_floor: -60 mm}}
    gas below the kitchen: {at: {from_front: 560 mm, from_left: 250 mm, above_floor: -60 mm}}
    gas at the hob: {at: {from_front: 560 mm, from_left: 250 mm, above_floor: 860 mm}}
  chases:
    riser: {between: [panel, panel high], carries: [cable], runs: inside, bore: 40 mm}
    along the ceiling: {between: [panel high, kitchen high], carries: [cable], runs: inside, bore: 32 mm, through: [rib]}
    down to the kitchen: {between: [kitchen high, kitchen low], carries: [cable], runs: inside, bore: 25 mm}
    across the ceiling: {between: [panel high, right high], carries: [cable], runs: inside, bore: 25 mm}
    down to the bed: {between: [right high, bed low], carries: [cable], runs: inside, bore: 25 mm}
    pipes down: {between: [pipes at the bed, pipes below the bed], carries: [water], runs: heated, bore: 60 mm, through: [floor]}
    pipes across: {between: [pipes below the bed, pipes below the kitchen], carries: [water], runs: heated, bore: 60 mm}   # insulated, and kept warm
    pipes up: {between: [pipes below the kitchen, pipes in the kitchen], carries: [water], runs: heated, bore: 60 mm, through: [floor]}
    gas down: {between: [gas at the valves, gas below the valves], carries: [gas], runs: inside, bore: 20 mm, through: [floor]}
    gas across: {between: [gas below the valves, gas below the kitchen], carries: [gas], runs: under floor, bore: 20 mm}
    gas up: {between: [gas below the kitchen, gas at the hob], carries: [gas], runs: inside, bore: 20 mm, through: [floor]}
    gland: {between: [panel high, roof], carries: [cable], runs: outside, bore: 25 mm, through: [roof]}
  runs:
    fridge supply: {carries: cable, from: fuse panel, to: fridge, diameter: 4.5 mm, count: 2, linear_mass: 0.06 kg/m}
    pump supply: {carries: cable, from: fuse panel, to: pump, diameter: 3.5 mm, count: 2, linear_mass: 0.04 kg/m}
    light supply: {carries: cable, from: fuse panel, to: lights, diameter: 3 mm, count: 2, linear_mass: 0.03 kg/m}
    solar supply: {carries: cable, from: solar module, to: fuse panel, diameter: 6 mm, count: 2, linear_mass: 0.1 kg/m}
    heater supply: {carries: cable, from: fuse panel, to: air heater, diameter: 4.5 mm, count: 2, linear_mass: 0.06 kg/m}
    cold to sink: {carries: water, from: pump, to: sink, diameter: 15 mm, linear_mass: 0.2 kg/m}
    hot to sink: {carries: water, from: water heater, to: sink, diameter: 12 mm, linear_mass: 0.15 kg/m}
    gas to hob: {carries: gas, from: gas valves, to: hob, diameter: 8 mm, linear_mass: 0.25 kg/m}

water:
  pump: {thing: pump, flow: 8 L/min, cut_out: 2 bar, cut_in: 1.4 bar, circuit: pump}   # its hours follow from the water
  accumulator: {holds: 0.7 L, charged_to: 1.2 bar}
  heater: {thing: water heater, kind: storage, holds: 6 L, power: 1.2 kW, temperature: 60 degC, heated_by: gas, efficiency: 80 %, relief_valve: true, mixing_valve: true}
  outlets:
    sink tap: {thing: sink, use: tap, flow: 4 L/min, trap: 50 mm}
  pipes:                              # what one carries follows from where it begins
    suction: {from: fresh tank, to: pump, length: 0.5 m, material: hose, size: 13 mm, fittings: {entrance: 1, elbow: 1}, drinking_water: true}
    cold to the sink: {from: pump, to: sink tap, run: cold to sink, material: PEX, size: 15 mm, fittings: {elbow: 4}, drinking_water: true}
    cold to the heater: {from: pump, to: heater, length: 0.8 m, material: PEX, size: 15 mm, fittings: {elbow: 2, non-return valve: 1}, drinking_water: true}
    hot to the sink: {from: heater, to: sink tap, run: hot to sink, material: PEX, size: 12 mm, fittings: {elbow: 4}, insulation: {material: elastomeric foam, thickness: 9 mm}, drinking_water: true}
    sink waste: {from: sink tap, to: waste tank, length: 0.5 m, rise: -300 mm, material: rigid plastic, size: 32 mm, fittings: {elbow: 2}}
  valves:                             # what lets the water out before a frost
    low point drain: {kind: drain, pipe: cold to the heater}
    heater drain: {kind: drain, thing: water heater}

gas:                                  # a qualified gas engineer builds it, tests it and signs for it
  stored_in: cylinders
  in_use: 1
  upright: true
  locker: {thing: gas locker, sealed: true, opens: outside, low_vent: 110 cm2, high_vent: 50 cm2, vent: {from_front: 1310 mm, from_right: 150 mm, above_floor: -10 mm}, source_of_ignition: false}
  regulator: {pressure: ${gasPressure[codes]}, capacity: 1.5 kg/h, dated: 2026-02-01}
  hoses:
    cylinder hose: {length: 400 mm, dated: 2026-02-01}
  manifold: {thing: gas valves}
  appliances:                         # what they take stands on their plates
    hob: {thing: hob, use: cooking, input: 3 kW, heating_value: net, flue: flueless, flame_failure: true, isolating_valve: true, pressure: ${gasPressure[codes]}}
    water heater: {thing: water heater, use: water heating, input: 1.5 kW, heating_value: net, flue: room-sealed, flame_failure: true, isolating_valve: true, pressure: ${gasPressure[codes]}, exhaust: {from_front: 1950 mm, from_right: -20 mm, above_floor: 150 mm}}
  pipes:
    to the valves: {from: regulator, to: manifold, length: 0.4 m, material: copper, size: 8 mm, wall: 1 mm, bends: 2, hidden_joints: 0}
    to the hob: {from: manifold, to: hob, run: gas to hob, material: copper, size: 8 mm, wall: 1 mm, bends: 5, hidden_joints: 0}
    to the water heater: {from: manifold, to: water heater, length: 0.5 m, material: copper, size: 8 mm, wall: 1 mm, bends: 2, hidden_joints: 0}
  drop_outs:                          # gas is heavier than air: it must find a way out at the floor
    under the hob: {in: kitchen unit, area: 40 cm2, at: {from_front: 480 mm, from_left: 350 mm, above_floor: 0 mm}}
    under the bed: {in: bed frame, area: 40 cm2, at: {from_front: 1480 mm, from_right: 550 mm, above_floor: 0 mm}}
  tightness_test: true

air:                                  # what cannot be closed keeps you alive: never cover it
  vents:                              # free area is what air gets through, less than the hole
    roof vent: {opening: roof fan, free_area: 200 cm2, closes: false}
    floor vent: {in: floor, free_area: 150 cm2, closes: false, at: {from_front: 1850 mm, from_left: 200 mm, above_floor: 0 mm}}
  fans:
    roof fan: {thing: roof fan, vent: roof vent, blows: exhaust, flow: 700 m3/h, pressure: 50 Pa}

heat:                                 # have the heater installed by a qualified person
  inside: 19 degC
  asleep: 15 degC
  air_changes_per_hour: 0.8           # leaks included
  skin: {material: steel, thickness: 0.9 mm}
  ribs: {depth: 45 mm, metal: 1.2 mm, covered_by: {material: elastomeric foam, thickness: 13 mm}}
  panes:                              # by the name of the opening
    bed window: {kind: double acrylic, cover: true}
  cab: {closed_by: insulated cover}
  heater: {thing: air heater, output: 2 kW, heated_by: diesel, efficiency: 80 %, flue: room-sealed, exhaust: {from_front: 2350 mm, from_right: 150 mm, above_floor: -300 mm}, combustion_air: {from_front: 1800 mm, from_right: 700 mm, above_floor: -250 mm}, circuit: air heater, duct_limit: 5 m, duct_outlets_limit: 2}
  ducts:
    to the aisle: {length: 0.5 m, bore: 60 mm, outlets: 1}
  warms_up_in: 1 h

protection:                           # test every alarm before a journey
  alarms:
    gas: {kind: gas alarm, thing: alarms, at: {from_front: 1150 mm, from_left: 20 mm, above_floor: 200 mm}}
    carbon monoxide: {kind: carbon monoxide alarm, thing: alarms, at: {from_front: 2650 mm, from_left: 30 mm, above_floor: 1000 mm}, replace_by: 2033-05-01}
    smoke: {kind: smoke alarm, thing: alarms, at: {from_front: 1600 mm, centred: true, above_floor: 1830 mm}}
  extinguisher: {kind: dry powder, holds: 1 kg, thing: fire extinguisher}
  fire_blanket: {at: {from_front: 1080 mm, from_left: 20 mm, above_floor: 1200 mm}}

electrical:                           # have it looked at by a qualified person before you switch it on
  voltage: 12 V
  coldest: -8 degC
  lay_up: 14 d
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah, internal_resistance: 16 mohm, charges_from: -20 degC, thing: battery}   # from its data sheet; it warms itself
  distribution:
    fuse box: {kind: fuse box, rating: 120 A, thing: fuse panel}
  circuits:                           # lengths are one way; a run of the routes gives them
    panel feed: {from: battery, to: fuse box, conductor: 25 mm2, insulation: 90 degC, length: 0.6 m, fuse: {type: class T, rating: 110 A, from_source: 100 mm}}
    fridge: {from: fuse box, to: fridge, load: 40 W, hours: 5 h, hours_at: 25 degC, conductor: 4 mm2, run: fridge supply, fuse: {type: blade, rating: 10 A}, drop: critical}
    pump: {from: fuse box, to: pump, load: 48 W, conductor: 2.5 mm2, run: pump supply, fuse: {type: blade, rating: 10 A}}
    lights: {from: fuse box, to: lights, load: 9 W, hours: {summer: 1.5 h, winter: 3 h}, conductor: 1.5 mm2, run: light supply, fuse: {type: blade, rating: 5 A}, drop: lighting}
    roof fan: {from: fuse box, to: roof fan, load: 24 W, hours: {summer: 3 h, winter: 0.3 h}, conductor: 2.5 mm2, length: 3 m, fuse: {type: blade, rating: 5 A}}
    air heater: {from: fuse box, to: air heater, load: 15 W, surge: 100 W, conductor: 4 mm2, run: heater supply, fuse: {type: blade, rating: 15 A}, drop: critical}
    gas alarm: {from: battery, to: alarms, load: 40 mA, standing: 40 mA, hours: 24 h, switched: false, alarm: gas alarm, conductor: 1.5 mm2, length: 2.5 m, fuse: {type: industrial gG, rating: 10 A, from_source: 150 mm}}
    smoke alarm: {from: battery, to: alarms, load: 10 mA, standing: 10 mA, hours: 24 h, switched: false, alarm: smoke alarm, conductor: 1.5 mm2, length: 2.5 m, fuse: {type: industrial gG, rating: 10 A, from_source: 150 mm}}
    carbon monoxide alarm: {from: battery, to: alarms, load: 20 mA, standing: 20 mA, hours: 24 h, switched: false, alarm: carbon monoxide alarm, conductor: 1.5 mm2, length: 2.5 m, fuse: {type: industrial gG, rating: 10 A, from_source: 150 mm}}
    charging line: {from: fuse box, to: driving charger, conductor: 6 mm2, insulation: 90 degC, length: 0.6 m, fuse: {type: maxi blade, rating: 30 A}}
    solar feed: {from: fuse box, to: charge controller, conductor: 6 mm2, insulation: 90 degC, length: 0.6 m, fuse: {type: maxi blade, rating: 30 A}}
  solar:
    roof: {modules: 1, power: 190 W, open_circuit: 24.1 V, short_circuit: 9.9 A, voltage_per_kelvin: -65 mV/K, controller: {kind: MPPT, current_limit: 20 A, voltage_limit: 75 V}, circuit: solar feed}
  charging_while_driving: {current: 20 A, alternator: 120 A, efficiency: 88 %, circuit: charging line}

living:
  nights_off_grid: 2
  place: {latitude: 44, longitude: 1.4}   # the year of sun is worked out for here: \`storystick energy ${file}\`
  driving: 1.5 h                      # on a usual day
  winter_low: -6 degC                 # the coldest that the van must bear
  cold_spell: 12 h                    # how long it stays that cold
  summer_high: 32 degC
  parking_slope: 1 %
  days_between_fills: 3
  litres_per_person_day: 7 L          # with a shower aboard also showers_per_person_day and litres_per_shower
  hot_litres_per_person_day: 2.5 L
  cooking: 30 min                     # on a day
  asleep: 8 h
  wet_clothes: 0.2 L                  # of water that comes in with them, on a day
  days_between_gas_refills: 7

load_states:                          # states of your own; the worst ones are found without them
  setting out: {fresh tank: 100 %, fuel: 100 %}
  on the way home: {fresh tank: 10 %, waste tank: 80 %, fuel: 30 %, food and pans: 0 %}

# When you have been on a weighbridge again, the plan is held against the ticket:
# weighed:
#   lined and floored: {date: 2026-03-14, front: 1120 kg, rear: 800 kg, state: {fuel: 50 %}, without: [bed frame, kitchen unit]}
#
# A published limit may be replaced, with a reason:
# rules:
#   balance.sides: {limit: 5 %, reason: "the maker's guide, page 14"}
`;
