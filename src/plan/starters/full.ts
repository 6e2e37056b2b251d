import { type Starting, withComment } from './starting.ts';

/** A plan with nearly everything that a plan can say, for a van that is invented. It checks without a failure. */
export const full = ({
  heading,
  name,
  codes,
  units,
  file,
}: Starting): string => `# ${heading}: a whole plan to begin with. Everything in it is invented: a small panel van for one, with a bed, a kitchen,
# water, a battery and a solar module. Put your own van and your own things in their place, and after each change run
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
    roof vent: {kind: vent, in: ceiling, length: 400 mm, width: 400 mm, at: {from_front: 600 mm, centred: true}}
  fuel_tank: {holds: 65 L, fuel: diesel, at: {from_front: -200 mm, from_left: 1000 mm}}

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
  worktop: {is: worktop, material: ash, size: {length: 1000 mm, width: 470 mm, height: 27 mm}, at: {from_front: 0 mm, from_left: 0 mm}, on: kitchen unit, fixings: {count: 8, each: 30 kg}}
  fridge: {mass: 19 kg ± 1 kg, size: {length: 420 mm, width: 440 mm, height: 520 mm}, in: kitchen unit, at: {from_rear: 20 mm, from_right: 0 mm, above_floor: 20 mm}}
  pump: {mass: 2 kg, size: {length: 200 mm, width: 120 mm, height: 120 mm}, in: kitchen unit, at: {from_front: 340 mm, from_left: 20 mm, above_floor: 0 mm}}
  sink: {is: sink, mass: 3.5 kg, size: {length: 350 mm, width: 320 mm, height: 150 mm}, on: worktop, at: {from_front: 60 mm, from_left: 60 mm, above_floor: -150 mm}}
  bed frame: {mass: 24 kg ± 2 kg, size: {length: 1880 mm, width: 900 mm, height: 500 mm}, at: {from_rear: 20 mm, from_right: 0 mm}, on: floor, fixings: {count: 12, each: 80 kg}, service_from: rear doors}
  mattress: {is: bed, material: mattress foam, size: {length: 1880 mm, width: 900 mm, height: 100 mm}, at: {from_front: 0 mm, from_left: 0 mm}, on: bed frame, fixings: {count: 4, each: 40 kg}}
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
  alarms: {count: 2, each: 0.2 kg, size: {length: 120 mm, width: 40 mm, height: 120 mm}, at: {from_front: 1450 mm, from_left: 30 mm, above_floor: 1150 mm}}

tanks:
  fresh tank: {contents: fresh, holds: 40 L, usable: 95 %, drinking_water: true, vent: 12 mm, inspection: 100 mm, filled_from: outside, overflows_to: outside, mass: 3.5 kg, size: {length: 450 mm, width: 400 mm, height: 280 mm}, in: bed frame, at: {from_front: 20 mm, from_left: 20 mm, above_floor: 0 mm}, service_from: inside, fixings: {count: 4, each: 60 kg}}
  waste tank: {contents: waste, holds: 25 L, vent: 12 mm, mass: 2.5 kg, size: {length: 300 mm, width: 250 mm, height: 400 mm}, in: kitchen unit, at: {from_front: 20 mm, from_left: 20 mm, above_floor: 0 mm}, service_from: inside, fixings: {count: 2, each: 60 kg}}

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
  chases:
    riser: {between: [panel, panel high], carries: [cable], runs: inside, bore: 40 mm}
    along the ceiling: {between: [panel high, kitchen high], carries: [cable], runs: inside, bore: 32 mm, through: [rib]}
    down to the kitchen: {between: [kitchen high, kitchen low], carries: [cable], runs: inside, bore: 25 mm}
    gland: {between: [panel high, roof], carries: [cable], runs: outside, bore: 25 mm, through: [roof]}
  runs:
    fridge supply: {carries: cable, from: fuse panel, to: fridge, diameter: 4.5 mm, count: 2, linear_mass: 0.06 kg/m}
    pump supply: {carries: cable, from: fuse panel, to: pump, diameter: 3.5 mm, count: 2, linear_mass: 0.04 kg/m}
    light supply: {carries: cable, from: fuse panel, to: lights, diameter: 3 mm, count: 2, linear_mass: 0.03 kg/m}
    solar supply: {carries: cable, from: solar module, to: fuse panel, diameter: 6 mm, count: 2, linear_mass: 0.1 kg/m}

water:                                # cold water only; a heater is \`heater: {kind: storage, ...}\`
  pump: {thing: pump, flow: 8 L/min, cut_out: 2 bar, cut_in: 1.4 bar, circuit: pump}
  outlets:
    sink tap: {thing: sink, use: tap, flow: 4 L/min, trap: 50 mm}
  pipes:                              # what one carries follows from where it begins
    suction: {from: fresh tank, to: pump, length: 1.6 m, material: hose, size: 13 mm, drinking_water: true}
    cold to sink: {from: pump, to: sink tap, length: 1.2 m, material: PEX, size: 15 mm, fittings: {elbow: 3}, drinking_water: true}
    sink waste: {from: sink tap, to: waste tank, length: 0.5 m, rise: -300 mm, material: rigid plastic, size: 32 mm}
  valves:
    low point drain: {kind: drain, pipe: cold to sink}

air:                                  # what cannot be closed keeps you alive: never cover it
  vents:
    roof vent: {opening: roof vent, free_area: 160 cm2, closes: false}
    floor vent: {in: floor, free_area: 120 cm2, closes: false, at: {from_front: 1300 mm, from_left: 700 mm, above_floor: 0 mm}}

heat:                                 # have the heater installed by a qualified person
  ribs: {depth: 45 mm, metal: 1.2 mm, covered_by: {material: elastomeric foam, thickness: 10 mm}}
  panes:
    bed window: {kind: double acrylic, cover: true}
  cab: {closed_by: insulated cover}
  heater: {output: 2 kW, heated_by: diesel, efficiency: 80 %, flue: room-sealed, exhaust: {from_front: -600 mm, from_left: 100 mm, above_floor: -300 mm}}

protection:
  alarms:
    carbon monoxide: {kind: carbon monoxide alarm, at: {from_front: 1450 mm, from_left: 30 mm, above_floor: 1150 mm}}
    smoke: {kind: smoke alarm, at: {from_front: 1500 mm, centred: true, above_floor: 1850 mm}}
  extinguisher: {kind: dry powder, holds: 2 kg}
  fire_blanket: {at: {from_front: 1100 mm, from_left: 20 mm, above_floor: 1200 mm}}

# There is no gas in this plan. Where there is, \`gas:\` has its locker, regulator, pipes, appliances and drop-outs.

electrical:                           # have it looked at by a qualified person before you switch it on
  voltage: 12 V
  coldest: -8 degC
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah, internal_resistance: 16 mohm, charges_from: -20 degC, thing: battery}   # from its data sheet; it warms itself
  distribution:
    fuse box: {kind: fuse box, rating: 120 A, thing: fuse panel}
  circuits:                           # lengths are one way; a run of the routes gives them
    panel feed: {from: battery, to: fuse box, conductor: 25 mm2, insulation: 90 degC, length: 0.6 m, fuse: {type: class T, rating: 110 A, from_source: 100 mm}}
    fridge: {from: fuse box, to: fridge, load: 45 W, hours: {summer: 7 h, winter: 3 h}, conductor: 4 mm2, run: fridge supply, fuse: {type: blade, rating: 10 A}, drop: critical}
    pump: {from: fuse box, to: pump, load: 48 W, conductor: 2.5 mm2, run: pump supply, fuse: {type: blade, rating: 10 A}}
    lights: {from: fuse box, to: lights, load: 12 W, hours: {summer: 1.5 h, winter: 3 h}, conductor: 1.5 mm2, run: light supply, fuse: {type: blade, rating: 5 A}, drop: lighting}
    carbon monoxide alarm: {from: battery, to: alarms, load: 20 mA, standing: 20 mA, hours: 24 h, switched: false, alarm: carbon monoxide alarm, conductor: 1.5 mm2, length: 1.5 m, fuse: {type: industrial gG, rating: 10 A, from_source: 150 mm}}
    charging line: {from: fuse box, to: driving charger, conductor: 6 mm2, insulation: 90 degC, length: 0.6 m, fuse: {type: maxi blade, rating: 30 A}}
    solar feed: {from: fuse box, to: charge controller, conductor: 6 mm2, insulation: 90 degC, length: 0.6 m, fuse: {type: maxi blade, rating: 30 A}}
  solar:
    roof: {modules: 1, power: 190 W, open_circuit: 24.1 V, short_circuit: 9.9 A, voltage_per_kelvin: -65 mV/K, controller: {kind: MPPT, current_limit: 20 A, voltage_limit: 75 V}, circuit: solar feed}
  charging_while_driving: {current: 20 A, alternator: 120 A, efficiency: 88 %, circuit: charging line}

living:
  nights_off_grid: 2
  place: {latitude: 44, longitude: 1.4}   # the year of sun is worked out for here: \`storystick energy ${file}\`
  driving: 1 h                        # on a usual day
  winter_low: -5 degC
  summer_high: 32 degC
  parking_slope: 1 %                  # one degree is 1.75 %
  days_between_fills: 3
  litres_per_person_day: 10 L
  asleep: 8 h

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
