/** A small van with something of every sort that is drawn. */
export const wholeVan = `storystick: 1
name: Whole van
codes: uk
van:
  max_mass: 3500 kg
  unladen: {front: 1190 kg, rear: 870 kg, from: weighbridge, includes: {driver: false}, centre_height: 680 mm}
  wheelbase: 3640 mm
  track: 1710 mm
  load_bay:
    behind_front_axle: 1130 mm
    length: 3270 mm
    width: 1760 mm
    height: 1890 mm
    floor_above_ground: 560 mm
    profile: [{above_floor: 0 mm, width: 1760 mm}, {above_floor: 1000 mm, width: 1760 mm}, {above_floor: 1800 mm, width: 1560 mm}]
    heights: [{from_front: 0 mm, height: 1900 mm}, {from_front: 2500 mm, height: 1890 mm}, {from_front: 3270 mm, height: 1700 mm}]
    rear_door_thickness: 60 mm
    ribs: [{in: left wall, from_front: 1300 mm, width: 60 mm}, {in: right wall, from_front: 1640 mm, width: 60 mm}, {in: left wall, from_front: 2000 mm, width: 60 mm}]
  wheel_arches: {from_front: 2050 mm, length: 840 mm, width: 170 mm, height: 290 mm}
  openings:
    sliding door: {kind: door, in: right wall, length: 1050 mm, height: 1580 mm, at: {from_front: 60 mm}}
    kitchen window: {kind: window, in: left wall, length: 700 mm, height: 350 mm, at: {from_front: 400 mm, above_floor: 1050 mm}}
    bed window: {kind: window, in: right wall, length: 600 mm, height: 350 mm, at: {from_front: 2300 mm, above_floor: 1050 mm}}
    roof fan: {kind: vent, in: ceiling, length: 400 mm, width: 400 mm, at: {from_front: 700 mm, centred: true}}
    rear door: {kind: door, in: rear doors, width: 1500 mm, height: 1700 mm, at: {centred: true}}
    heater vent: {kind: vent, in: left wall, length: 100 mm, height: 60 mm, at: {from_front: 1400 mm, above_floor: 100 mm}}
people:
  seats:
    driver: {at: {from_front: -700 mm, from_left: 1270 mm, above_floor: 650 mm}}
    passenger: {at: {from_front: -700 mm, from_left: 490 mm, above_floor: 650 mm}, swivel_radius: 420 mm}
  sleepers: [{stature: 1.78 m}, {stature: 1.66 m}]
fixtures:
  kitchen unit: {is: worktop, mass: 30 kg, size: {length: 1100 mm, width: 480 mm, height: 860 mm}, at: {from_front: 80 mm, from_left: 0 mm}, on: floor, opens: {drawer: {kind: drawer, side: right, from_left: 500 mm, width: 500 mm, travel: 400 mm}}}
  sink: {is: sink, mass: 4 kg, size: {length: 380 mm, width: 330 mm, height: 150 mm}, in: kitchen unit, at: {from_front: 60 mm, from_left: 60 mm, above_floor: 690 mm}}
  hob: {is: cooker, mass: 4 kg, size: {length: 380 mm, width: 300 mm, height: 80 mm}, on: kitchen unit, at: {from_rear: 100 mm, from_left: 60 mm}}
  wardrobe: {is: wardrobe, mass: 30 kg, size: {length: 500 mm, width: 600 mm, height: 1750 mm}, at: {from_front: 1300 mm, from_left: 0 mm}, on: floor, opens: {door: {kind: door, side: right, hinge: right}}}
  shower: {is: shower, mass: 30 kg, size: {length: 680 mm, width: 700 mm, height: 1780 mm}, at: {from_front: 1150 mm, from_right: 0 mm}, on: floor, cut_out: {corner: front left, length: 250 mm, width: 250 mm}}
  bed: {is: bed, mass: 40 kg, size: {length: 1350 mm, width: 1760 mm, height: 700 mm}, at: {from_rear: 60 mm, centred: true}, on: floor, opens: {lid: {kind: lid, side: front}}}
  stool: {is: seat, mass: 3 kg, size: {length: 350 mm, width: 350 mm, height: 450 mm}, shape: cylinder, at: {from_front: 100 mm, from_left: 620 mm}, on: floor}
  locker: {mass: 10 kg, size: {length: 1250 mm, width: 300 mm, height: 300 mm}, at: {from_rear: 70 mm, from_left: 100 mm, above_floor: 1380 mm}}
  solar module: {mass: 20 kg, size: {length: 1400 mm, width: 1000 mm, height: 35 mm}, at: {from_front: 1300 mm, centred: true, above_floor: 1960 mm}}
tanks:
  fresh tank: {contents: fresh, holds: 70 L, mass: 5 kg, in: bed, size: {length: 500 mm, width: 500 mm, height: 320 mm}, at: {from_front: 20 mm, centred: true, above_floor: 0 mm}}
  waste tank: {contents: waste, holds: 50 L, mass: 5 kg, size: {length: 700 mm, width: 420 mm, height: 200 mm}, at: {from_front: 900 mm, from_right: 300 mm, above_floor: -330 mm}}
stores:
  clothes: {full: 40 kg, empty: 10 kg, in: wardrobe}
`;
