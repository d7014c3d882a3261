/**
 * Which names of the list should a builder not be shown?
 *
 * Makes and models of vehicles, brands and products, people and invented persons, peoples and
 * beliefs, drugs, and crude jokes. Found by reading the whole list (version 14.29, its short
 * edition); our judgement, and generous: a colour name lost costs nothing, the next one is near.
 */

/** A name with one of these words anywhere in it is left out. Lower case, accents kept. */
const words = new Set(
  `
  anna ariel athena barbara barbarossa barbera barbiecore batman becquerel bianca bison botticelli
  bulma casper castro cinderella cousteau cupid dallas debian desi dolly donkey dorn electra
  frankenstein garfield godzilla goku goldfrapp goldie goldilocks goldzilla james john katy
  kendall kermit kirby kirk krabs lolita lucius luigi madonna marsupilami mario miyamoto monet
  mona morris munsell olivia perkin perrywinkle pinkman polly poseidon prunella rushmore titian
  triton vader vampirella voldemort zeus

  alpine aurora beetle beluga capri cayenne corona carona eagle eclipse fiesta fox galaxy ghost
  golf hunter jaguar java lotus lynx malibu mamba marina mercury monza mustang phantom puma sablé
  saturn sierra sunbeam tempest thunderbird tiger triumph viking vulcan

  bioshock butterbeer c64 chantilly channel cola coca cup ega firewatch flickr frogger hulk
  indiglow jacuzzi jigglypuff laser magento master mcnuke megaman metroid minions mithril mvs nyc
  orangina pac pika pimm pimm’s protoss ravenclaw saiyan sriracha subnautical tabasco tardis
  vaporwave wonka wu yoshi zoodles gotham grinch ninja jedi super

  aztec communist creole german greek hindu inca indian inuit irish kosher maharaja mecca mosque
  ottoman persian rajah rasta sheikh socialist soviet sultan thai turkish crusade cheesus holy
  feminism queer kabul

  methadone opium sinsemilla indica hemp aphrodisiac assassin badass blood bloodlust bloodshed
  bloodsport bloodthirsty busty donor fat gory harem illicit intoxicate kinky lust lusty nipple
  nude naked smooch succubus testosterose technolust love wet ghee
  `
    .trim()
    .split(/\s+/),
);

/** Names left out as a whole, where their words are good ones elsewhere. */
const wholeNames = new Set([
  'Amazon',
  'Amazon Queen',
  'Arcade Fire',
  'Bat-Signal',
  'Battletoad',
  'Black Knight',
  'Black Power',
  'Blue Bikini',
  'Blue Chip',
  'Blue Mana',
  'Black Mana',
  'Blue Velvet',
  'Cafe Royale',
  'Cyber Yellow',
  'Cheese Wiz',
  'Crash Dummy',
  'Dark Knight',
  'Dark Soul',
  'Dr Who',
  'Dr. White',
  'Dragon Ball',
  'Duck Hunt',
  'Earthbound',
  'Fatal Fury',
  'Forester',
  'Fuzzy Wuzzy',
  'Girl Crush',
  'Goldfinger',
  'Green Goblin',
  'Green Mana',
  'Gremlin',
  'H₂O',
  'Highlander',
  'Homeworld',
  'Hyper Beam',
  'Ice Climber',
  'Ice Ice Baby',
  'Iron Fist',
  'Iron Maiden',
  'Jazz',
  'Je t’aime',
  'Juggernaut',
  'Juvie',
  'Kid Icarus',
  'King Kong',
  'King’s Field',
  'Knight Rider',
  'Labrador',
  'Lion King',
  'M. Bison',
  'Mental Floss',
  'Metal Gear',
  'Mountain Dew',
  'Mutabilis',
  'Nero',
  'Night Rider',
  'Nirvana',
  'Nomad',
  'Old Whiskey',
  'Orange Crush',
  'Outback',
  'Perfect Dark',
  'Pink Floyd',
  'Pink Panther',
  'Pinkalicious',
  'Plastic Lips',
  'Prismarine',
  'Purple Rain',
  'Radiant Hulk',
  'Red Arremer',
  'Red Baron',
  'Red Mana',
  'Ridgeback',
  'Run Lola Run',
  'Sailor Moon',
  'Salt-N-Pepa',
  'School Bus',
  'Sea of Stars',
  'Solar Ash',
  'Skinny Jeans',
  'Sub-Zero',
  'Techno Taupe',
  'The Matrix',
  'Them Apples',
  'Thorne Wines',
  'Thunderdome',
  'Tree Hugger',
  'Vice City',
  'Virtual Boy',
  'Waterworld',
  'Yellow Mana',
  'York Pink',
  'York Plum',
  '№5',
  'Potion № 9',
]);

/** Whether a name of the list may be shown to a builder. */
export function isSuited(name: string): boolean {
  if (wholeNames.has(name)) return false;
  const parts = name.toLowerCase().split(/[^\p{L}\p{N}’]+/u);
  return !parts.some((part) => words.has(part) || words.has(part.replace(/’s$/, '')));
}
