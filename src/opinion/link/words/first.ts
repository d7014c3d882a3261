/**
 * What version 1 of the link takes for granted. Frozen: a change here would make every link of that
 * version unreadable, so a new word is a new version with a file of its own.
 *
 * Codes stand by their place in these lists. The dictionary holds what is likely to stand in a
 * round, so that deflate [RFC1951] can point at it rather than spell it; the likeliest stands last.
 */
export const effectCodes = [
  ...['solid', 'metallic', 'pearl', 'candy', 'clear'],
  ...['ribbon', 'flock', 'rubber', 'foil', 'leather', 'bare-metal', 'lens'],
] as const;
export const chemistryCodes = ['none', 'lacquer', 'acrylic', 'enamel', 'urethane'] as const;
export const provenanceCodes = ['guess', 'swatch', 'photo', 'measured'] as const;
export const lightCodes = ['D65', 'A', 'LED-B3', 'D50', 'FL11'] as const;
export const roleCodes = ['primer', 'base'] as const;

export const dictionary = [
  'caliper-lettering calipers lug-nuts disc-hats discs tyres wheel-barrels wheel-caps wheel-rims wheel-spokes',
  ' gauges number-plate pedals gear-lever steering-wheel dash-top fuel-cap dashboard lamp-lenses windscreen',
  ' exhaust-bores underbody mirror-glass indicators tail-lamps headlamps roll-hoops carpet tub badge-rims',
  ' badges exhausts door-handles engine-cover body bumpers roof bonnet doors spoiler wing stripe-left stripe-right',
  ' seat-bolsters seat-inserts seat-piping belts buckles mirrors mirror-stalks wipers windscreen-frame grille',
  ' side-vents diffuser splitter sills',
  'Harbour Copper Bronze Gold Brass Nickel Titanium Gunmetal Graphite Charcoal Slate Stone Sand Ivory Cream',
  'Parchment Oyster Pearl Silver Aluminium Chrome Steel Navy Midnight Royal Sky Teal Turquoise Racing Forest',
  'Olive Moss Lime Lemon Yellow Marigold Amber Orange Rust Crimson Cherry Maroon Wine Burgundy Plum Violet',
  'Purple Magenta Pink Rose Peach Brown Chestnut Walnut Cocoa Tan Saddle Leather Hide Suede Ribbon Flock Rubber',
  'Foil Candy Clear Tinted Smoke Primer Dark Light Deep Pale Bright Matt Satin Gloss Black White Grey Red Blue Green',
  'Wheel nuts","Brake discs","Brake calipers","Caliper lettering","Door handles","Exhaust tips","Side vents',
  'Front splitter","Rear diffuser","Windscreen frame","Fuel cap","Gear lever","Steering wheel","Dash top',
  'Roll hoops","","Buckles","","Carpet","","Tub","","Belts","","Harness belts","","Dashboard","","Engine cover","',
  'Sills and trim","sills splitter diffuser side-vents grille windscreen-frame mirror-stalks wipers",-',
  'Stripes","stripe-left stripe-right",[0,1,0]],["Mirrors","",[0,1,1]],["Mirror shells","mirrors",[',
  'Seats","seat-bolsters",],["Seat inserts","",],["Seat piping","",],["Wheels","wheel-spokes wheel-rims",',
  ' roadster","roadster",24,400,0,[["Body","",1],["',
  '"],0,90,3,1,2],["',
  '"],[["","",0],["","",1],["","",2],["","",3],["","",4],["","",5],["","",6],["","",7]],"ABCD",[]]',
].join('');
