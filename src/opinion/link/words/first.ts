/**
 * What version 1 of the link takes for granted. Frozen: a change of one character would make every
 * link of that version unreadable, so a new word is a new version with a file of its own.
 *
 * Codes stand by their place in these lists. The dictionary holds what is likely to stand in a
 * round, so that deflate [RFC1951] can point at it rather than spell it: words for finishes, the
 * names of the racks that come with the program, and the parts that a new build begins with; the
 * likeliest stands last, where pointing is shortest. No figures: those are the builder's own.
 */
export const effectCodes = [
  ...(['solid', 'metallic', 'pearl', 'candy', 'clear'] as const),
  ...(['ribbon', 'flock', 'rubber', 'foil', 'leather', 'bare-metal', 'lens'] as const),
];
export const chemistryCodes = ['none', 'lacquer', 'acrylic', 'enamel', 'urethane'] as const;
export const provenanceCodes = ['guess', 'swatch', 'photo', 'measured'] as const;
export const lightCodes = ['D65', 'A', 'LED-B3', 'D50', 'FL11'] as const;
export const roleCodes = ['primer', 'base'] as const;
/** What a finish may have beyond the usual, in the order in which it is told. */
export const moreFields = [
  ...(['deltaE', 'sampleGloss60', 'face', 'flop', 'flopIndex', 'undercoat', 'clear'] as const),
];

/** Words that names of finishes are made of. */
const words = [
  'Titanium Gunmetal Graphite Chrome Nickel Brass Gold Bronze Copper Aluminium Steel Champagne Anthracite',
  'Turquoise Aqua Teal Cobalt Royal Midnight Navy Racing British Forest Olive Moss Lime Mint Sage Khaki',
  'Lemon Yellow Ochre Amber Orange Coral Rust Brick Crimson Scarlet Cherry Ruby Maroon Wine Burgundy',
  'Plum Violet Purple Magenta Pink Rose Peach Brown Chestnut Walnut Caramel Tan Beige Sand Ivory Cream',
  'Stone Slate Charcoal Smoke Leather Suede Hide Fabric Carbon Ribbon Flock Rubber Foil Candy Pearl',
  'Metallic Tinted Clear Primer Surfacer Interior Exterior Trim Wheel Engine Body Light Dark Deep Pale',
  'Bright Warm Cool Matt Satin Semi-gloss Gloss Silver White Black Grey Red Green Blue',
];

/** Names of the finishes that come with the program, with bars between. */
const finishes = [
  'Harbour grey|Chapel white|Rowan red|Barn door|Pond green|Night ferry blue|Duck egg|Custard',
  'Toffee|Plum skin|Ink black|Ink black under matt clear|Stove black|Chalkboard|Slate trim',
  'Blotting paper|Dust sheet|Cocoa|Cabin grey|Pewter dust|Tin lid|Moss glint|Wheel silver',
  'Bronze leaf|Oyster|Lilac mist|Cherry syrup|Barley sugar|Cellar green|Plain gloss clear',
  'Smoke tint|Smoked silver|Navy ribbon|Tomato ribbon|Oat ribbon|Charcoal flock|Rust flock',
  'Saddle tan|Parchment hide|Tyre rubber|Kitchen foil|Turned aluminium|Brass rod|Clear lens',
  'Ruby lens|Sea glass|Marigold|Field poppy|Iris bed|Spearmint|Morning fog|Mustard seed',
  'Raspberry fool|Deep petrol|Lichen|Wet clay|Tangerine|Lemon peel|Lime lamp|Pencil lead',
  'Velvet plum|Old piano|Tea stain|Storm front|Pale ale|Copper pan|Grate iron|Moonstone|Dragonfly',
  'Kingfisher|Blackcurrant|Honeycomb|Ember|Plain matt clear|Amber lamp tint|Lime ribbon|Coal ribbon',
  'Violet ribbon|Cream flock|Forest flock|Oxblood hide|Cobalt hide|Grey hose rubber|Gold foil',
  'Copper wire|Smoke lens|Amber lens',
  'Deep green|Chalk|Silver|Satin black|Saddle hide|Grey ribbon|Dark flock|Bare steel|Grey primer',
];

/** Car parts that a build may take one by one, by name and id. */
const single = [
  'Wheel spokes|Wheel rims|Wheel barrels|Wheel caps|Lug nuts|Disc hats|Discs|Left stripe|stripe-left',
  'Right stripe|stripe-right|Splitter|Sills|Diffuser|Side vents|Grille|Windscreen frame|Mirror stalks',
  'Wipers|Exhausts|Fuel cap|Door handles|Badge rims|Steering wheel|Dash top|Roll hoops|Gear lever',
  'Pedals|Buckles|Headlamps|Tail lamps|Indicators|Number plate|Bonnet|Roof|Doors|Bumpers|Spoiler|Wing',
];

/** Parts that a new build begins with, by name and what they cover where the name does not tell. */
const parts = [
  'Body||Stripes|stripe-left stripe-right|Mirrors||Engine cover||Sills and trim',
  'sills splitter diffuser side-vents grille windscreen-frame mirror-stalks wipers',
  'Seats|seat-bolsters|Seat inserts||Seat piping||Belts||Carpet||Tub||Dashboard|',
  'Dash top and steering wheel|dash-top steering-wheel',
  'Hoops, lever, pedals and buckles|roll-hoops gear-lever pedals buckles|Wheels|wheel-spokes',
  'Rims, barrels and caps|wheel-rims wheel-barrels wheel-caps|Calipers||Caliper lettering||Badges|',
  'Badge rims, handles, fuel cap and exhausts|badge-rims door-handles fuel-cap exhausts',
];

const quoted = (lines: readonly string[]): string => `"${lines.join('|').replaceAll('|', '","')}"`;

export const dictionary = [
  words.join(' '),
  quoted(single),
  quoted(finishes),
  ' roadster",0,"roadster",24,400,0,[',
  quoted(parts),
  '],[0,0,[0,1,2],[0,1,0],-1,"AB","ABCD","ABC",[],["',
].join('');
